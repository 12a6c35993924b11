/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which edges of a mesh are seen as lines from a camera, and how. No OpenGL: plain arrays.
 */
#pragma once

#include "render/mesh.h"
#include "scene/camera.h"

typedef enum
{
  PH_STRIP_WHOLE,
  PH_STRIP_DOTS,
  PH_STRIP_DASHES,
  PH_STRIP_DASH_DOT
} PhStripDash;

/** One line: 36 bytes, as the strip shader reads it. */
typedef struct
{
  float a[3], b[3];  /* bow frame in mm, or pixels of the view */
  uint8_t colour[4]; /* red, green, blue, alpha; not premultiplied */
  float half_px;     /* half the width in logical pixels */
  float dash;        /* PhStripDash */
} PhStrip;

typedef struct
{
  PhStrip *items;
  size_t n, room;
} PhStrips;

void ph_strips_add (PhStrips *strips, PhStrip strip);
void ph_strips_clear (PhStrips *strips); /* keeps the room */
void ph_strips_free (PhStrips *strips);

/** Red, green, blue of everything that is drawn, 0 … 255. */
typedef struct
{
  uint8_t edge[3];    /* silhouettes and creases */
  uint8_t outline[3]; /* dotted outlines of what is off, dashed ones of a reference */
  uint8_t accent[3];  /* about what is selected */
  uint8_t role[PH_ROLES][3];
} PhRenderColours;

/** What lines look like. */
typedef struct
{
  const PhRenderColours *colours;
  int selected;      /* part, or PH_PART_NONE */
  bool is_reference; /* everything is a dashed outline */
  bool plain;        /* while things move: no creases between two seen faces */
  bool leans_alike;  /* as the open rig: what is the same there is left out */
} PhStripLook;

/** Adds the lines that `camera` sees of `mesh`; those of the selected part to `halo` besides. */
void ph_strips_of_mesh (PhStrips *strips, PhStrips *halo, const PhMesh *mesh,
                        const PhCamera *camera, const PhStripLook *look);
