/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places of uniforms are asked for once; the light is set once, colours when they change.
 */
#include "render/solid-drawer.h"

#include <epoxy/gl.h>
#include <stddef.h>
#include <string.h>

#include "render/shaders.h"
#include "scene/light.h"

enum
{
  TO_CLIP,
  TO_PICTURE,
  COLOURS,
  ACCENT,
  SELECTED,
  PIXEL,
  HOLES,
  N_HOLES
};
static const char *const names[PH_SOLID_UNIFORMS] = {
  "to_clip", "to_picture", "colours", "accent", "selected", "pixel", "holes", "n_holes"
};

static void
set_light (const PhProgram *program)
{
  static const float key[3] = PH_LIGHT_KEY, fill[3] = PH_LIGHT_FILL, shine[3] = PH_LIGHT_SHINE;
  GLuint name = program->name;
  glUseProgram (name);
  glUniform3fv (glGetUniformLocation (name, "key"), 1, key);
  glUniform3fv (glGetUniformLocation (name, "fill"), 1, fill);
  glUniform3fv (glGetUniformLocation (name, "shine"), 1, shine);
  glUniform4f (glGetUniformLocation (name, "shares"), PH_LIGHT_AMBIENT, PH_LIGHT_KEY_SHARE,
               PH_LIGHT_FILL_SHARE, PH_LIGHT_SHINE_SHARE);
  glUniform1f (glGetUniformLocation (name, "shine_power"), PH_LIGHT_SHINE_POWER);
}

PhStatus
ph_solid_drawer_init (PhSolidDrawer *self, bool es, char **why)
{
  PhStatus status =
      ph_program_new (es, ph_shader_solid_vertex, ph_shader_solid_fragment, &self->program, why);
  if (status != PH_OK)
    return status;
  for (int i = 0; i < PH_SOLID_UNIFORMS; i++)
    self->places[i] = glGetUniformLocation (self->program.name, names[i]);
  set_light (&self->program);
  return PH_OK;
}

void
ph_solid_drawer_clear (PhSolidDrawer *self)
{
  ph_program_free (&self->program);
}

static void
attribute (GLuint place, GLint n, GLenum type, size_t offset)
{
  glEnableVertexAttribArray (place);
  glVertexAttribPointer (place, n, type, GL_FALSE, (GLsizei)sizeof (PhVertex),
                         (const void *)offset);
}

void
ph_solid_buffers_init (PhSolidBuffers *buffers)
{
  glGenVertexArrays (1, &buffers->array);
  glGenBuffers (1, &buffers->vertices);
  glGenBuffers (1, &buffers->indices);
  glBindVertexArray (buffers->array);
  glBindBuffer (GL_ARRAY_BUFFER, buffers->vertices);
  glBindBuffer (GL_ELEMENT_ARRAY_BUFFER, buffers->indices);
  attribute (PH_ATTRIBUTE_AT, 3, GL_FLOAT, offsetof (PhVertex, at));
  attribute (PH_ATTRIBUTE_NORMAL, 3, GL_FLOAT, offsetof (PhVertex, normal));
  attribute (PH_ATTRIBUTE_HOLE, 2, GL_FLOAT, offsetof (PhVertex, hole));
  attribute (PH_ATTRIBUTE_MARKS, 4, GL_UNSIGNED_BYTE, offsetof (PhVertex, role));
  glBindVertexArray (0);
}

void
ph_solid_buffers_clear (PhSolidBuffers *buffers)
{
  glDeleteVertexArrays (1, &buffers->array);
  glDeleteBuffers (1, &buffers->vertices);
  glDeleteBuffers (1, &buffers->indices);
}

static void
set_colours (PhSolidDrawer *self, const PhSolidView *view)
{
  uint8_t wanted[PH_ROLES + 1][3];
  float rgb[PH_ROLES + 1][3];
  memcpy (wanted, view->role, PH_ROLES * sizeof wanted[0]);
  memcpy (wanted[PH_ROLES], view->accent, sizeof wanted[0]);
  if (self->coloured && memcmp (wanted, self->colours, sizeof wanted) == 0)
    return;
  for (int i = 0; i <= PH_ROLES; i++)
    for (int k = 0; k < 3; k++)
      rgb[i][k] = (float)wanted[i][k] / 255.0f;
  glUniform3fv (self->places[COLOURS], PH_ROLES, rgb[0]);
  glUniform3fv (self->places[ACCENT], 1, rgb[PH_ROLES]);
  memcpy (self->colours, wanted, sizeof wanted);
  self->coloured = true;
}

void
ph_solid_drawer_begin (PhSolidDrawer *self, const PhSolidView *view)
{
  const PhCamera *camera = view->camera;
  const PhPoint *r = &camera->right, *u = &camera->up, *t = &camera->toward;
  const float picture[9] = { r->x, u->x, t->x, r->y, u->y, t->y, r->z, u->z, t->z };
  float clip[16];
  ph_camera_matrix (camera, view->reach_mm, clip);
  glUseProgram (self->program.name);
  glUniformMatrix4fv (self->places[TO_CLIP], 1, GL_FALSE, clip);
  glUniformMatrix3fv (self->places[TO_PICTURE], 1, GL_FALSE, picture);
  glUniform1f (self->places[PIXEL], view->pixel);
  glUniform1f (self->places[SELECTED], (float)ph_mesh_mark (view->selected));
  set_colours (self, view);
  glEnable (GL_DEPTH_TEST);
  glDepthFunc (GL_LESS);
  glDepthMask (GL_TRUE);
  glEnable (GL_CULL_FACE);
  glDisable (GL_BLEND);
}

static void
fill (PhSolidBuffers *buffers, const PhMesh *mesh)
{
  if (buffers->filled)
    return;
  glBindBuffer (GL_ARRAY_BUFFER, buffers->vertices);
  glBufferData (GL_ARRAY_BUFFER, (GLsizeiptr)(mesh->n_vertices * sizeof *mesh->vertices),
                mesh->vertices, GL_DYNAMIC_DRAW);
  glBufferData (GL_ELEMENT_ARRAY_BUFFER, (GLsizeiptr)(mesh->n_indices * sizeof *mesh->indices),
                mesh->indices, GL_DYNAMIC_DRAW);
  buffers->filled = true;
}

void
ph_solid_drawer_draw (PhSolidDrawer *self, PhSolidBuffers *buffers, const PhMesh *mesh)
{
  if (mesh->n_indices == 0)
    return;
  glBindVertexArray (buffers->array);
  fill (buffers, mesh);
  glUniform1i (self->places[N_HOLES], (GLint)mesh->n_holes);
  if (mesh->n_holes > 0)
    glUniform4fv (self->places[HOLES], (GLsizei)mesh->n_holes, mesh->holes);
  glDrawElements (GL_TRIANGLES, (GLsizei)mesh->n_indices, GL_UNSIGNED_INT, NULL);
}
