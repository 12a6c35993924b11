/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws pictures of draw lists with OpenGL 3.3 core or ES 3.0. All calls need the context that was
 * current at ph_renderer_new. One renderer serves several views of one area; meshes are made again
 * only when a list is set.
 */
#pragma once

#include "base/status.h"
#include "render/strips.h"

/** A flat polygon (convex, n ≥ 3) or, with n = 2, a line, in logical pixels of its view, y down. */
typedef struct
{
  const PhPixel *at;
  size_t n;
  float half_px;     /* of a line */
  PhStripDash dash;  /* of a line */
  uint8_t colour[4]; /* with alpha, not premultiplied */
  bool under;        /* beneath the bow */
} PhFlat;

typedef struct
{
  PhCamera camera;          /* updated; its size is the view's, in logical pixels */
  float reference_lean_rad; /* the reference leans by itself */
  float x_px, y_px;         /* upper left corner in the area, logical pixels, y down */
  int selected;             /* part, PH_PART_BOW or PH_PART_NONE */
  const PhFlat *flats;
  size_t n_flats;
} PhRenderView;

typedef struct
{
  int width, height; /* of the area, device pixels */
  float pixel;       /* device pixels to a logical one */
  bool still;        /* fine meshes and multisampling: the frame after a drag */
  bool bare;         /* solids alone, without any line: for tests */
  bool opaque;       /* over `ground`; else over nothing */
  uint8_t ground[3];
} PhRenderFrame;

typedef struct PhRenderer PhRenderer;

/** PH_ERR_GRAPHICS: `*why` is a new string, `*renderer` untouched. */
PhStatus ph_renderer_new (bool es, PhRenderer **renderer, char **why);
/** With the context current, or lost for good (`context_lost`: names are not given back). */
void ph_renderer_free (PhRenderer *renderer, bool context_lost);

/** The open rig's list, and the reference's (null: none); borrowed until the next set. `same` (may
 * be null) is the open rig as plain as the reference: where both have the very same solid, and lean
 * alike, its dashes are left out. The bow's meshes are kept where the bow is the same. */
void ph_renderer_set_list (PhRenderer *renderer, const PhDrawList *list);
void ph_renderer_set_reference (PhRenderer *renderer, const PhDrawList *list,
                                const PhDrawList *same);

/** Draws into the bound framebuffer, which is cleared to the ground or to nothing; premultiplied
 * alpha. */
void ph_renderer_draw (PhRenderer *renderer, const PhRenderFrame *frame,
                       const PhRenderColours *colours, const PhRenderView *views, size_t n);

/** Triangles of the last draw, all views together, lines counted as two each. */
size_t ph_renderer_triangles (const PhRenderer *renderer);
/** Meshes made so far: to see that none is made without need. */
size_t ph_renderer_meshes_made (const PhRenderer *renderer);
