/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lit triangles of meshes. All calls need the context of the first.
 */
#pragma once

#include "render/gl-program.h"
#include "render/mesh.h"
#include "scene/camera.h"

typedef struct
{
  unsigned array, vertices, indices; /* OpenGL's names */
  bool filled;                       /* holds the mesh */
} PhSolidBuffers;

#define PH_SOLID_UNIFORMS 8

typedef struct
{
  PhProgram program;
  int places[PH_SOLID_UNIFORMS];
  uint8_t colours[PH_ROLES + 1][3]; /* as last set, the accent behind the roles */
  bool coloured;
} PhSolidDrawer;

PhStatus ph_solid_drawer_init (PhSolidDrawer *self, bool es, char **why);
void ph_solid_drawer_clear (PhSolidDrawer *self);

void ph_solid_buffers_init (PhSolidBuffers *buffers);
void ph_solid_buffers_clear (PhSolidBuffers *buffers);

/** What the next draws have in common. */
typedef struct
{
  const uint8_t (*role)[3]; /* PH_ROLES colours */
  const uint8_t *accent;
  const PhCamera *camera;
  float reach_mm; /* of all that is drawn */
  float pixel;    /* device pixels to a logical one */
  int selected;
} PhSolidView;

void ph_solid_drawer_begin (PhSolidDrawer *self, const PhSolidView *view);
/** Uploads the mesh where the buffers do not hold it yet, and draws it. */
void ph_solid_drawer_draw (PhSolidDrawer *self, PhSolidBuffers *buffers, const PhMesh *mesh);
