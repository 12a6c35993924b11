/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Solids write depth; lines are drawn over them, pulled a little toward the eye, and only read it.
 * The bow's mesh is apart from its parts', and kept while the bow is the same: moving a part makes
 * only the parts' anew.
 */
#include "render/renderer.h"

#include <epoxy/gl.h>
#include <stdlib.h>

#include "base/text.h"
#include "render/line-drawer.h"
#include "render/multisample.h"
#include "render/solid-drawer.h"

/* How far lines stand before the surface they bound [mm]. */
#define STRIP_NEARER_MM 2.5f
/* The halo stands behind what it surrounds, before what is farther. */
#define HALO_NEARER_MM -1.0f
#define HALO_HIDDEN 0.4f
#define DETAILS 2
#define SHARES 2

struct PhRenderer
{
  PhSolidDrawer solid;
  PhLineDrawer line;
  PhSolidBuffers buffers[SHARES][DETAILS];
  const PhDrawList *list, *reference_list, *reference_same; /* borrowed */
  uint64_t fingerprint[SHARES];                             /* of the meshes */
  PhMesh *mesh[SHARES][DETAILS];                            /* null: stale */
  PhMesh *reference;
  PhStrips lines, halo, marks;
  PhMultisample multisample;
  size_t triangles, meshes_made;
};

PhStatus
ph_renderer_new (bool es, PhRenderer **renderer, char **why)
{
  PhRenderer *self = ph_alloc_zeroed (1, sizeof *self);
  PhStatus status = ph_solid_drawer_init (&self->solid, es, why);
  if (status == PH_OK)
    {
      status = ph_line_drawer_init (&self->line, es, why);
      if (status != PH_OK)
        ph_solid_drawer_clear (&self->solid);
    }
  if (status != PH_OK)
    {
      free (self);
      return status;
    }
  for (int i = 0; i < SHARES * DETAILS; i++)
    ph_solid_buffers_init (&self->buffers[i / DETAILS][i % DETAILS]);
  *renderer = self;
  return PH_OK;
}

/* Of one share of the rig, both details. */
static void
forget (PhRenderer *self, int share)
{
  for (int i = 0; i < DETAILS; i++)
    {
      ph_mesh_free (self->mesh[share][i]);
      self->mesh[share][i] = NULL;
      self->buffers[share][i].filled = false;
    }
}

static void
free_names (PhRenderer *self)
{
  ph_solid_drawer_clear (&self->solid);
  ph_line_drawer_clear (&self->line);
  for (int i = 0; i < SHARES * DETAILS; i++)
    ph_solid_buffers_clear (&self->buffers[i / DETAILS][i % DETAILS]);
  ph_multisample_free (&self->multisample);
}

void
ph_renderer_free (PhRenderer *self, bool context_lost)
{
  if (!self)
    return;
  if (!context_lost)
    free_names (self);
  for (int share = 0; share < SHARES; share++)
    forget (self, share);
  ph_mesh_free (self->reference);
  ph_strips_free (&self->lines);
  ph_strips_free (&self->halo);
  ph_strips_free (&self->marks);
  free (self);
}

void
ph_renderer_set_list (PhRenderer *self, const PhDrawList *list)
{
  self->list = list;
  for (int share = 0; share < SHARES; share++)
    {
      uint64_t now = list ? ph_mesh_fingerprint (list, (PhMeshShare)share) : 0;
      if (now != self->fingerprint[share])
        forget (self, share);
      self->fingerprint[share] = now;
    }
}

void
ph_renderer_set_reference (PhRenderer *self, const PhDrawList *list, const PhDrawList *same)
{
  ph_mesh_free (self->reference);
  self->reference = NULL;
  self->reference_list = list;
  self->reference_same = same;
}

static const PhMesh *
mesh_of (PhRenderer *self, int share, PhDetail detail)
{
  PhMesh **mesh = &self->mesh[share][detail];
  if (!*mesh)
    {
      *mesh = ph_mesh_new (self->list, (PhMeshShare)share, detail, NULL);
      self->meshes_made++;
    }
  return *mesh;
}

static const PhMesh *
reference_mesh (PhRenderer *self)
{
  if (!self->reference)
    {
      self->reference =
          ph_mesh_new (self->reference_list, PH_MESH_ALL, PH_DETAIL_MOVING, self->reference_same);
      self->meshes_made++;
    }
  return self->reference;
}

/* One picture of one view, and what is the same for all that is drawn in it. */
typedef struct
{
  PhRenderer *self;
  const PhRenderFrame *frame;
  const PhRenderColours *colours;
  const PhRenderView *view;
  PhDetail detail;
  float reach_mm; /* everything drawn lies within this of the camera's middle */
} Picture;

static PhLineView
line_view (const Picture *picture, const PhCamera *camera, PhLinesWhere where, float nearer_mm)
{
  PhLineView view = { .width_px = camera->width_px,
                      .height_px = camera->height_px,
                      .pixel = picture->frame->pixel,
                      .nearer = ph_camera_clip_depth (camera, picture->reach_mm, nearer_mm),
                      .faint = 1.0f,
                      .where = where };
  ph_camera_matrix (camera, picture->reach_mm, view.clip);
  return view;
}

static void
draw_strips (const Picture *picture, const PhStrips *strips, const PhLineView *view)
{
  ph_line_drawer_draw (&picture->self->line, strips, view);
  picture->self->triangles += 2 * strips->n;
}

/* Pixels of the view, y down, to clip coordinates. */
static PhLineView
pixel_view (const Picture *picture)
{
  const PhCamera *camera = &picture->view->camera;
  PhLineView view = { .clip = { 2.0f / camera->width_px, 0, 0, 0, 0, -2.0f / camera->height_px, 0,
                                0, 0, 0, 1, 0, -1, 1, 0, 1 },
                      .width_px = camera->width_px,
                      .height_px = camera->height_px,
                      .pixel = picture->frame->pixel,
                      .faint = 1.0f,
                      .where = PH_LINES_OVER };
  return view;
}

static void
draw_flats (const Picture *picture, bool under)
{
  PhRenderer *self = picture->self;
  PhLineView view = pixel_view (picture);
  ph_strips_clear (&self->marks);
  for (size_t i = 0; i < picture->view->n_flats; i++)
    {
      const PhFlat *flat = &picture->view->flats[i];
      if (flat->under != under)
        continue;
      if (flat->n > 2)
        {
          ph_line_drawer_fill (&self->line, flat->at, flat->n, flat->colour, view.clip);
          self->triangles += flat->n - 2;
          continue;
        }
      PhStrip strip = { { flat->at[0].x, flat->at[0].y, 0 },
                        { flat->at[1].x, flat->at[1].y, 0 },
                        { flat->colour[0], flat->colour[1], flat->colour[2], flat->colour[3] },
                        flat->half_px,
                        (float)flat->dash };
      ph_strips_add (&self->marks, strip);
    }
  draw_strips (picture, &self->marks, &view);
}

static void
draw_solids (const Picture *picture)
{
  PhRenderer *self = picture->self;
  PhSolidView view = { .role = picture->colours->role,
                       .accent = picture->colours->accent,
                       .camera = &picture->view->camera,
                       .reach_mm = picture->reach_mm,
                       .pixel = picture->frame->pixel,
                       .selected = picture->view->selected };
  ph_solid_drawer_begin (&self->solid, &view);
  for (int share = 0; share < SHARES; share++)
    {
      const PhMesh *mesh = mesh_of (self, share, picture->detail);
      ph_solid_drawer_draw (&self->solid, &self->buffers[share][picture->detail], mesh);
      self->triangles += mesh->n_indices / 3;
    }
}

static void
draw_lines (const Picture *picture)
{
  PhRenderer *self = picture->self;
  const PhCamera *camera = &picture->view->camera;
  PhStripLook look = { .colours = picture->colours,
                       .selected = picture->view->selected,
                       .plain = picture->detail == PH_DETAIL_MOVING };
  ph_strips_clear (&self->lines);
  ph_strips_clear (&self->halo);
  for (int share = 0; share < SHARES; share++)
    ph_strips_of_mesh (&self->lines, &self->halo, mesh_of (self, share, picture->detail), camera,
                       &look);
  PhLineView halo = line_view (picture, camera, PH_LINES_SEEN, HALO_NEARER_MM);
  draw_strips (picture, &self->halo, &halo);
  PhLineView seen = line_view (picture, camera, PH_LINES_SEEN, STRIP_NEARER_MM);
  draw_strips (picture, &self->lines, &seen);
  /* The selection shows through whatever hides it. */
  PhLineView hidden = line_view (picture, camera, PH_LINES_HIDDEN, STRIP_NEARER_MM);
  hidden.faint = HALO_HIDDEN;
  draw_strips (picture, &self->halo, &hidden);
}

static void
draw_reference (const Picture *picture)
{
  PhRenderer *self = picture->self;
  PhCamera camera = picture->view->camera;
  PhStripLook look = { .colours = picture->colours,
                       .selected = PH_PART_NONE,
                       .is_reference = true,
                       .leans_alike =
                           fabsf (camera.lean_rad - picture->view->reference_lean_rad) < 5e-4f };
  camera.lean_rad = picture->view->reference_lean_rad;
  ph_camera_update (&camera);
  ph_strips_clear (&self->lines);
  ph_strips_of_mesh (&self->lines, &self->halo, reference_mesh (self), &camera, &look);
  PhLineView view = line_view (picture, &camera, PH_LINES_OVER, 0.0f);
  draw_strips (picture, &self->lines, &view);
}

static float
reach_of (PhRenderer *self, PhDetail detail, const PhCamera *camera)
{
  float reach = self->reference_list ? reference_mesh (self)->reach_mm : 0.0f;
  for (int share = 0; self->list && share < SHARES; share++)
    reach = fmaxf (reach, mesh_of (self, share, detail)->reach_mm);
  return reach + ph_point_length (camera->middle) + 50.0f;
}

static void
set_viewport (const PhRenderFrame *frame, const PhRenderView *view)
{
  float p = frame->pixel;
  int x = (int)lroundf (view->x_px * p), w = (int)lroundf (view->camera.width_px * p);
  int h = (int)lroundf (view->camera.height_px * p);
  int y = frame->height - (int)lroundf (view->y_px * p) - h;
  glViewport (x, y, w, h);
  glScissor (x, y, w, h);
}

static void
draw_view (const Picture *picture)
{
  set_viewport (picture->frame, picture->view);
  draw_flats (picture, true);
  if (picture->self->list)
    {
      draw_solids (picture);
      if (!picture->frame->bare)
        draw_lines (picture);
    }
  if (picture->self->reference_list)
    draw_reference (picture);
  draw_flats (picture, false);
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
  const uint8_t *ground = frame->ground;
  if (frame->opaque)
    glClearColor ((float)ground[0] / 255.0f, (float)ground[1] / 255.0f, (float)ground[2] / 255.0f,
                  1.0f);
  else
    glClearColor (0, 0, 0, 0);
  glClear (GL_COLOR_BUFFER_BIT | GL_DEPTH_BUFFER_BIT);
  glEnable (GL_SCISSOR_TEST);
  for (size_t i = 0; i < n; i++)
    {
      Picture picture = { .self = self,
                          .frame = frame,
                          .colours = colours,
                          .view = &views[i],
                          .detail = frame->still ? PH_DETAIL_STILL : PH_DETAIL_MOVING };
      picture.reach_mm = reach_of (self, picture.detail, &views[i].camera);
      draw_view (&picture);
    }
  glDisable (GL_SCISSOR_TEST);
  glBindVertexArray (0);
  glUseProgram (0);
  if (fine)
    ph_multisample_end (&self->multisample);
  /* Kept only for the time of a still picture: it is the largest thing here. */
  ph_multisample_free (&self->multisample);
}

size_t
ph_renderer_triangles (const PhRenderer *self)
{
  return self->triangles;
}

size_t
ph_renderer_meshes_made (const PhRenderer *self)
{
  return self->meshes_made;
}
