/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One program and one vertex array a kind of thing: solids, strips, flats. Solids write depth;
 * strips are drawn over them, pulled a little toward the eye, and only read it.
 */
#include "render/renderer.h"

#include <assert.h>
#include <epoxy/gl.h>
#include <stddef.h>
#include <stdlib.h>

#include "base/text.h"
#include "render/gl-program.h"
#include "render/multisample.h"
#include "render/shaders.h"
#include "scene/light.h"

/* How far strips stand before the surface they bound [mm]. */
#define STRIP_NEARER_MM 2.5f
#define DETAILS 2

typedef struct
{
  const PhDrawList *list; /* borrowed; null: nothing */
  PhMesh *mesh[DETAILS];  /* null: stale */
} Layer;

typedef struct
{
  GLuint array, buffer, index;
} Buffers;

typedef struct
{
  float x, y;
  uint8_t colour[4];
} FlatVertex;

struct PhRenderer
{
  PhProgram solid, strip, flat;
  Buffers solids[DETAILS]; /* of the open rig */
  bool uploaded[DETAILS];
  Buffers strips, flats;
  Layer rig, reference;
  PhStrips lines, halo, marks;
  PhMultisample multisample;
  size_t triangles;
};

static void
attribute (GLuint place, GLint n, GLenum type, bool normalised, size_t stride, size_t offset)
{
  glEnableVertexAttribArray (place);
  glVertexAttribPointer (place, n, type, normalised ? GL_TRUE : GL_FALSE, (GLsizei)stride,
                         (const void *)offset);
}

static Buffers
make_buffers (void)
{
  Buffers b;
  glGenVertexArrays (1, &b.array);
  glGenBuffers (1, &b.buffer);
  glGenBuffers (1, &b.index);
  glBindVertexArray (b.array);
  glBindBuffer (GL_ARRAY_BUFFER, b.buffer);
  return b;
}

static void
free_buffers (Buffers *b)
{
  glDeleteVertexArrays (1, &b->array);
  glDeleteBuffers (1, &b->buffer);
  glDeleteBuffers (1, &b->index);
}

static void
lay_out_buffers (PhRenderer *self)
{
  for (int i = 0; i < DETAILS; i++)
    {
      self->solids[i] = make_buffers ();
      size_t stride = sizeof (PhVertex);
      attribute (PH_ATTRIBUTE_AT, 3, GL_FLOAT, false, stride, offsetof (PhVertex, at));
      attribute (PH_ATTRIBUTE_NORMAL, 3, GL_FLOAT, false, stride, offsetof (PhVertex, normal));
      attribute (PH_ATTRIBUTE_HOLE, 2, GL_FLOAT, false, stride, offsetof (PhVertex, hole));
      attribute (PH_ATTRIBUTE_MARKS, 4, GL_UNSIGNED_BYTE, false, stride, offsetof (PhVertex, role));
      glBindBuffer (GL_ELEMENT_ARRAY_BUFFER, self->solids[i].index);
    }
  self->strips = make_buffers ();
  size_t stride = sizeof (PhStrip);
  attribute (PH_ATTRIBUTE_A, 3, GL_FLOAT, false, stride, offsetof (PhStrip, a));
  attribute (PH_ATTRIBUTE_B, 3, GL_FLOAT, false, stride, offsetof (PhStrip, b));
  attribute (PH_ATTRIBUTE_COLOUR, 4, GL_UNSIGNED_BYTE, true, stride, offsetof (PhStrip, colour));
  attribute (PH_ATTRIBUTE_LINE, 2, GL_FLOAT, false, stride, offsetof (PhStrip, half_px));
  for (GLuint i = 0; i < 4; i++)
    glVertexAttribDivisor (i, 1);
  self->flats = make_buffers ();
  attribute (PH_ATTRIBUTE_AT, 2, GL_FLOAT, false, sizeof (FlatVertex), 0);
  attribute (PH_ATTRIBUTE_COLOUR, 4, GL_UNSIGNED_BYTE, true, sizeof (FlatVertex),
             offsetof (FlatVertex, colour));
  glBindVertexArray (0);
}

PhStatus
ph_renderer_new (bool es, PhRenderer **renderer, char **why)
{
  PhRenderer *self = ph_alloc_zeroed (1, sizeof *self);
  PhStatus status =
      ph_program_new (es, ph_shader_solid_vertex, ph_shader_solid_fragment, &self->solid, why);
  if (status == PH_OK)
    status =
        ph_program_new (es, ph_shader_strip_vertex, ph_shader_strip_fragment, &self->strip, why);
  if (status == PH_OK)
    status = ph_program_new (es, ph_shader_flat_vertex, ph_shader_flat_fragment, &self->flat, why);
  if (status != PH_OK)
    {
      ph_program_free (&self->solid);
      ph_program_free (&self->strip);
      free (self);
      return status;
    }
  lay_out_buffers (self);
  *renderer = self;
  return PH_OK;
}

static void
free_meshes (Layer *layer)
{
  for (int i = 0; i < DETAILS; i++)
    {
      ph_mesh_free (layer->mesh[i]);
      layer->mesh[i] = NULL;
    }
}

void
ph_renderer_free (PhRenderer *self, bool context_lost)
{
  if (!self)
    return;
  if (!context_lost)
    {
      ph_program_free (&self->solid);
      ph_program_free (&self->strip);
      ph_program_free (&self->flat);
      for (int i = 0; i < DETAILS; i++)
        free_buffers (&self->solids[i]);
      free_buffers (&self->strips);
      free_buffers (&self->flats);
      ph_multisample_free (&self->multisample);
    }
  free_meshes (&self->rig);
  free_meshes (&self->reference);
  ph_strips_free (&self->lines);
  ph_strips_free (&self->halo);
  ph_strips_free (&self->marks);
  free (self);
}

void
ph_renderer_set_list (PhRenderer *self, const PhDrawList *list)
{
  free_meshes (&self->rig);
  self->rig.list = list;
  self->uploaded[PH_DETAIL_MOVING] = self->uploaded[PH_DETAIL_STILL] = false;
}

void
ph_renderer_set_reference (PhRenderer *self, const PhDrawList *list)
{
  free_meshes (&self->reference);
  self->reference.list = list;
}

static const PhMesh *
mesh_of (Layer *layer, PhDetail detail)
{
  if (!layer->mesh[detail])
    layer->mesh[detail] = ph_mesh_new (layer->list, detail);
  return layer->mesh[detail];
}

static void
upload (PhRenderer *self, const PhMesh *mesh, PhDetail detail)
{
  if (self->uploaded[detail])
    return;
  glBindBuffer (GL_ARRAY_BUFFER, self->solids[detail].buffer);
  glBufferData (GL_ARRAY_BUFFER, (GLsizeiptr)(mesh->n_vertices * sizeof *mesh->vertices),
                mesh->vertices, GL_STREAM_DRAW);
  glBufferData (GL_ELEMENT_ARRAY_BUFFER, (GLsizeiptr)(mesh->n_indices * sizeof *mesh->indices),
                mesh->indices, GL_STREAM_DRAW);
  self->uploaded[detail] = true;
}

static GLint
uniform (const PhProgram *program, const char *name)
{
  return glGetUniformLocation (program->name, name);
}

static void
set_light (const PhProgram *program)
{
  static const float key[3] = PH_LIGHT_KEY, fill[3] = PH_LIGHT_FILL, shine[3] = PH_LIGHT_SHINE;
  glUniform3fv (uniform (program, "key"), 1, key);
  glUniform3fv (uniform (program, "fill"), 1, fill);
  glUniform3fv (uniform (program, "shine"), 1, shine);
  glUniform4f (uniform (program, "shares"), PH_LIGHT_AMBIENT, PH_LIGHT_KEY_SHARE,
               PH_LIGHT_FILL_SHARE, PH_LIGHT_SHINE_SHARE);
  glUniform1f (uniform (program, "shine_power"), PH_LIGHT_SHINE_POWER);
}

static void
set_colours (const PhProgram *program, const PhRenderColours *colours)
{
  float rgb[PH_ROLES][3];
  for (int i = 0; i < PH_ROLES; i++)
    for (int k = 0; k < 3; k++)
      rgb[i][k] = (float)colours->role[i][k] / 255.0f;
  glUniform3fv (uniform (program, "colours"), PH_ROLES, &rgb[0][0]);
}

/* Everything drawn lies within this of the camera's middle. */
static float
reach_of (const PhMesh *mesh, const PhCamera *camera)
{
  return mesh->reach_mm + ph_point_length (camera->middle) + 50.0f;
}

static void
draw_solids (PhRenderer *self, const PhRenderColours *colours, const PhCamera *camera, float pixel,
             PhDetail detail)
{
  const PhMesh *mesh = mesh_of (&self->rig, detail);
  float clip[16];
  const PhPoint *r = &camera->right, *u = &camera->up, *t = &camera->toward;
  const float picture[9] = { r->x, u->x, t->x, r->y, u->y, t->y, r->z, u->z, t->z };
  ph_camera_matrix (camera, reach_of (mesh, camera), clip);
  glUseProgram (self->solid.name);
  glBindVertexArray (self->solids[detail].array);
  upload (self, mesh, detail);
  glUniformMatrix4fv (uniform (&self->solid, "to_clip"), 1, GL_FALSE, clip);
  glUniformMatrix3fv (uniform (&self->solid, "to_picture"), 1, GL_FALSE, picture);
  glUniform1f (uniform (&self->solid, "pixel"), pixel);
  glUniform1i (uniform (&self->solid, "n_holes"), (GLint)mesh->n_holes);
  if (mesh->n_holes > 0)
    glUniform4fv (uniform (&self->solid, "holes"), (GLsizei)mesh->n_holes, mesh->holes);
  set_light (&self->solid);
  set_colours (&self->solid, colours);
  glEnable (GL_DEPTH_TEST);
  glDepthMask (GL_TRUE);
  glEnable (GL_CULL_FACE);
  glDisable (GL_BLEND);
  glDrawElements (GL_TRIANGLES, (GLsizei)mesh->n_indices, GL_UNSIGNED_INT, NULL);
  self->triangles += mesh->n_indices / 3;
}

static void
draw_strips (PhRenderer *self, const PhStrips *strips, const float clip[16],
             const PhRenderView *view, float pixel, float nearer, bool behind_solids_hidden)
{
  if (strips->n == 0)
    return;
  glUseProgram (self->strip.name);
  glBindVertexArray (self->strips.array);
  glBindBuffer (GL_ARRAY_BUFFER, self->strips.buffer);
  glBufferData (GL_ARRAY_BUFFER, (GLsizeiptr)(strips->n * sizeof *strips->items), strips->items,
                GL_STREAM_DRAW);
  glUniformMatrix4fv (uniform (&self->strip, "to_clip"), 1, GL_FALSE, clip);
  glUniform2f (uniform (&self->strip, "half_size"), view->camera.width_px * pixel / 2.0f,
               view->camera.height_px * pixel / 2.0f);
  glUniform1f (uniform (&self->strip, "pixel"), pixel);
  glUniform1f (uniform (&self->strip, "nearer"), nearer);
  if (behind_solids_hidden)
    glEnable (GL_DEPTH_TEST);
  else
    glDisable (GL_DEPTH_TEST);
  glDepthMask (GL_FALSE);
  glDisable (GL_CULL_FACE);
  glEnable (GL_BLEND);
  glBlendFunc (GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glDrawArraysInstanced (GL_TRIANGLE_STRIP, 0, 4, (GLsizei)strips->n);
  self->triangles += 2 * strips->n;
}

/* Pixels of the view, y down, to clip coordinates. */
static void
pixel_matrix (const PhCamera *camera, float clip[16])
{
  const float m[16] = {
    2.0f / camera->width_px, 0, 0, 0, 0, -2.0f / camera->height_px, 0, 0, 0, 0, 1, 0, -1, 1, 0, 1
  };
  for (int i = 0; i < 16; i++)
    clip[i] = m[i];
}

static void
draw_polygon (PhRenderer *self, const PhFlat *flat, const float clip[16])
{
  FlatVertex *corners = ph_alloc (flat->n * sizeof *corners);
  for (size_t i = 0; i < flat->n; i++)
    corners[i] =
        (FlatVertex){ flat->at[i].x,
                      flat->at[i].y,
                      { flat->colour[0], flat->colour[1], flat->colour[2], flat->colour[3] } };
  glUseProgram (self->flat.name);
  glBindVertexArray (self->flats.array);
  glBindBuffer (GL_ARRAY_BUFFER, self->flats.buffer);
  glBufferData (GL_ARRAY_BUFFER, (GLsizeiptr)(flat->n * sizeof *corners), corners, GL_STREAM_DRAW);
  glUniformMatrix4fv (uniform (&self->flat, "to_clip"), 1, GL_FALSE, clip);
  glDisable (GL_DEPTH_TEST);
  glDisable (GL_CULL_FACE);
  glEnable (GL_BLEND);
  glBlendFunc (GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  glDrawArrays (GL_TRIANGLE_FAN, 0, (GLsizei)flat->n);
  self->triangles += flat->n - 2;
  free (corners);
}

static void
draw_flats (PhRenderer *self, const PhRenderView *view, float pixel, bool under)
{
  float clip[16];
  pixel_matrix (&view->camera, clip);
  ph_strips_clear (&self->marks);
  for (size_t i = 0; i < view->n_flats; i++)
    {
      const PhFlat *flat = &view->flats[i];
      if (flat->under != under)
        continue;
      if (flat->n > 2)
        {
          draw_polygon (self, flat, clip);
          continue;
        }
      PhStrip strip = { { flat->at[0].x, flat->at[0].y, 0 },
                        { flat->at[1].x, flat->at[1].y, 0 },
                        { flat->colour[0], flat->colour[1], flat->colour[2], flat->colour[3] },
                        flat->half_px,
                        (float)flat->dash };
      ph_strips_add (&self->marks, strip);
    }
  draw_strips (self, &self->marks, clip, view, pixel, 0.0f, false);
}

static PhStripLook
look_of (const PhRenderColours *colours, int selected, bool is_reference)
{
  PhStripLook look = { .selected = selected, .is_reference = is_reference };
  for (int k = 0; k < 3; k++)
    {
      look.edge[k] = colours->edge[k];
      look.outline[k] = colours->outline[k];
      look.accent[k] = colours->accent[k];
      for (int i = 0; i < PH_ROLES; i++)
        look.role[i][k] = colours->role[i][k];
    }
  return look;
}

static void
draw_lines (PhRenderer *self, const PhRenderColours *colours, const PhRenderView *view, float pixel,
            PhDetail detail)
{
  const PhMesh *mesh = mesh_of (&self->rig, detail);
  PhStripLook look = look_of (colours, view->selected, false);
  float clip[16], reach = reach_of (mesh, &view->camera);
  ph_camera_matrix (&view->camera, reach, clip);
  ph_strips_clear (&self->lines);
  ph_strips_clear (&self->halo);
  ph_strips_of_mesh (&self->lines, &self->halo, mesh, &view->camera, &look);
  draw_strips (self, &self->lines, clip, view, pixel, STRIP_NEARER_MM / reach, true);
  /* The selection shows through whatever hides it. */
  draw_strips (self, &self->halo, clip, view, pixel, 0.0f, false);
}

static void
draw_reference (PhRenderer *self, const PhRenderColours *colours, const PhRenderView *view,
                float pixel)
{
  if (!self->reference.list)
    return;
  const PhMesh *mesh = mesh_of (&self->reference, PH_DETAIL_MOVING);
  PhStripLook look = look_of (colours, PH_PART_NONE, true);
  PhCamera camera = view->camera;
  camera.lean_rad = view->reference_lean_rad;
  ph_camera_update (&camera);
  float clip[16];
  ph_camera_matrix (&camera, reach_of (mesh, &camera), clip);
  ph_strips_clear (&self->lines);
  ph_strips_of_mesh (&self->lines, &self->halo, mesh, &camera, &look);
  draw_strips (self, &self->lines, clip, view, pixel, 0.0f, false);
}

static void
draw_view (PhRenderer *self, const PhRenderFrame *frame, const PhRenderColours *colours,
           const PhRenderView *view)
{
  PhDetail detail = frame->still ? PH_DETAIL_STILL : PH_DETAIL_MOVING;
  float p = frame->pixel;
  int x = (int)lroundf (view->x_px * p), w = (int)lroundf (view->camera.width_px * p);
  int h = (int)lroundf (view->camera.height_px * p);
  int y = frame->height - (int)lroundf (view->y_px * p) - h;
  glViewport (x, y, w, h);
  glScissor (x, y, w, h);
  glEnable (GL_SCISSOR_TEST);
  draw_flats (self, view, p, true);
  if (self->rig.list)
    {
      draw_solids (self, colours, &view->camera, p, detail);
      draw_lines (self, colours, view, p, detail);
    }
  draw_reference (self, colours, view, p);
  draw_flats (self, view, p, false);
  glDisable (GL_SCISSOR_TEST);
}

void
ph_renderer_draw (PhRenderer *self, const PhRenderFrame *frame, const PhRenderColours *colours,
                  const PhRenderView *views, size_t n)
{
  bool fine =
      frame->still && ph_multisample_begin (&self->multisample, frame->width, frame->height);
  self->triangles = 0;
  glDepthMask (GL_TRUE);
  glDisable (GL_SCISSOR_TEST);
  glClearColor (0, 0, 0, 0);
  glClear (GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  for (size_t i = 0; i < n; i++)
    draw_view (self, frame, colours, &views[i]);
  glBindVertexArray (0);
  glUseProgram (0);
  if (fine)
    ph_multisample_end (&self->multisample);
}

size_t
ph_renderer_triangles (const PhRenderer *self)
{
  return self->triangles;
}
