/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Soft-sided lines and flat polygons. All calls need the context of the first.
 */
#pragma once

#include "render/gl-program.h"
#include "render/strips.h"

typedef struct
{
  PhProgram strip, flat;
  int to_clip, half_size, pixel, nearer, faint, flat_to_clip; /* places of uniforms */
  unsigned strip_array, strip_buffer, flat_array, flat_buffer;
} PhLineDrawer;

PhStatus ph_line_drawer_init (PhLineDrawer *self, bool es, char **why);
void ph_line_drawer_clear (PhLineDrawer *self);

typedef enum
{
  PH_LINES_OVER,   /* whatever stands before them */
  PH_LINES_SEEN,   /* where no solid stands before them */
  PH_LINES_HIDDEN, /* where one does */
} PhLinesWhere;

typedef struct
{
  float clip[16];
  float width_px, height_px; /* of the view, logical pixels */
  float pixel;               /* device pixels to a logical one */
  float nearer;              /* pulled toward the eye, in clip depth */
  float faint;               /* 1: as they are; less: fainter */
  PhLinesWhere where;
} PhLineView;

void ph_line_drawer_draw (PhLineDrawer *self, const PhStrips *strips, const PhLineView *view);

/** A convex polygon. */
void ph_line_drawer_fill (PhLineDrawer *self, const PhPixel *at, size_t n, const uint8_t colour[4],
                          const float clip[16]);
