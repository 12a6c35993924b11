/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long a view takes to draw on paper, step by step: the demo beside a frame of 60 a second, a
 * rig of 256 parts beside one of 20 (processor time; without OpenGL this is every frame). Prints
 * and never fails. Each figure is the best of some runs.
 */
#include <cairo.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "drawn-rig.h"
#include "scene/fit.h"
#include "scene/outline.h"
#include "scene/pick.h"
#include "widgets/bow-painter.h"

#define RUNS 20
#define WIDTH 750
#define HEIGHT 510

static double
now_ms (void)
{
  struct timespec t;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &t);
  return 1e3 * (double)t.tv_sec + 1e-6 * (double)t.tv_nsec;
}

/* The demo with stacks of two weights along its front bar until it has 256 parts. */
static PhRig *
large_rig (void)
{
  PhRig *rig = drawn_rig_load ("demo");
  PhIssues issues = { 0 };
  PhPart disc = ph_part_copy (&rig->parts[ph_rig_find (rig, "back-stack")]);
  disc.count = 2;
  for (int i = 0; rig->n_parts < PH_RIG_PARTS_MOST; i++)
    {
      size_t index;
      disc.along_mm = 20.0 + 2.9 * i;
      if (!ph_edit_add (rig, &disc, "front-bar", &index, &issues))
        break;
    }
  ph_issues_clear (&issues);
  ph_part_clear (&disc);
  return rig;
}

typedef struct
{
  double list, outlines, paint, pick;
} Times;

static void
least (double *best, double value)
{
  if (value < *best)
    *best = value;
}

static Times
measure (DrawnRig *drawn, PhView view)
{
  Times best = { INFINITY, INFINITY, INFINITY, INFINITY };
  PhShade ground = { 1, 1, 1 }, ink = { 0.2, 0.2, 0.2 }, accent = { 0.1, 0.4, 0.8 };
  PhPalette palette = ph_palette_of (ground, ink, accent);
  PhMargins margins = { 14, 14, 14, 40 };
  PhExtent extent = ph_extent_of (drawn->list, view, 0.0f, 0.06f);
  PhCamera camera = ph_camera_default (view);
  camera.width_px = WIDTH;
  camera.height_px = HEIGHT;
  camera.px_per_mm = ph_extent_scale (extent, WIDTH, HEIGHT, margins);
  ph_camera_centre (&camera, extent, margins);
  PhOutlines *outlines = ph_outlines_new ();
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH, HEIGHT);
  for (int i = 0; i < RUNS; i++)
    {
      double start = now_ms ();
      PhDrawOptions options = ph_draw_options_default ();
      ph_draw_list_free (drawn->list);
      drawn->list = ph_draw_list_new (drawn->rig, drawn->compiled, drawn->report, &options);
      double listed = now_ms ();
      ph_outlines_update (outlines, drawn->list, &camera);
      double outlined = now_ms ();
      cairo_t *cr = cairo_create (surface);
      ph_bow_paint (cr, &palette, drawn->list, outlines);
      cairo_destroy (cr);
      double painted = now_ms ();
      ph_pick_part (outlines, drawn->list, (PhPixel){ 20, 20 }, 4.0f);
      least (&best.list, listed - start);
      least (&best.outlines, outlined - listed);
      least (&best.paint, painted - outlined);
      least (&best.pick, now_ms () - painted);
    }
  cairo_surface_destroy (surface);
  ph_outlines_free (outlines);
  return best;
}

static void
print (const char *name, DrawnRig *drawn, double target_ms)
{
  static const char *const views[] = { "side", "behind", "above" };
  double frame = 0;
  for (int view = PH_VIEW_SIDE; view <= PH_VIEW_ABOVE; view++)
    {
      Times t = measure (drawn, (PhView)view);
      printf ("%-10s %-6s %4zu solids: list %6.2f, outlines %6.2f, paint %6.2f, pick %6.2f ms\n",
              name, views[view], ph_draw_list_count (drawn->list), t.list, t.outlines, t.paint,
              t.pick);
      frame += t.list + t.outlines + t.paint;
    }
  printf ("%-10s all three views %6.2f ms   target %6.2f   %s\n", name, frame, target_ms,
          frame <= target_ms ? "met" : "MISSED");
}

int
main (void)
{
  ph_math_init ();
  DrawnRig demo = drawn_rig_of (drawn_rig_load ("demo"));
  DrawnRig large = drawn_rig_of (large_rig ());
  print ("demo", &demo, 1000.0 / 60);
  printf ("%zu parts:\n", large.rig->n_parts);
  print ("256 parts", &large, 1000.0 / 20);
  drawn_rig_clear (&demo);
  drawn_rig_clear (&large);
  return 0;
}
