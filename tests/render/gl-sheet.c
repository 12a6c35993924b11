/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colours are the sheet's (sheet.h), so that both kinds of picture can be laid side by side.
 */
#include "tests/render/gl-sheet.h"

#include <stdio.h>
#include <stdlib.h>

#include "base/text.h"
#include "scene/fit.h"
#include "store/rig-file.h"
#include "tests/render/sheet.h"
#include "widgets/marks-flats.h"
#include "widgets/views-layout.h"

GlRig
gl_rig_load (const char *name)
{
  GlRig loaded = { 0 };
  PhIssues issues = { 0 };
  char path[512];
  snprintf (path, sizeof path, "%s/%s.rig.json", DATA_DIR, name);
  if (ph_rig_load (path, &loaded.rig, &issues) != PH_OK)
    {
      fprintf (stderr, "%s cannot be read\n", path);
      exit (EXIT_FAILURE);
    }
  ph_issues_clear (&issues);
  loaded.compiled = ph_compile_rig (loaded.rig);
  loaded.report = ph_report_new (loaded.rig, loaded.compiled);
  PhDrawOptions options = ph_draw_options_default ();
  loaded.list = ph_draw_list_new (loaded.rig, loaded.compiled, loaded.report, &options);
  return loaded;
}

void
gl_rig_free (GlRig *rig)
{
  ph_draw_list_free (rig->list);
  ph_report_free (rig->report);
  ph_compiled_free (rig->compiled);
  ph_rig_free (rig->rig);
}

PhCamera
gl_sheet_camera (const GlRig *rig, PhView view)
{
  PhCamera camera = ph_camera_default (view);
  const PhArcher *archer = &rig->rig->archer;
  PhMargins margins = { 8, 8, 8, 8 };
  camera.width_px = GL_SHEET_WIDTH;
  camera.height_px = GL_SHEET_HEIGHT;
  camera.slope_rad = (float)atan2 (archer->nock_height_mm, archer->draw_length_mm);
  /* A lean of its own in the view from behind; the free view half from behind. */
  camera.lean_rad = view == PH_VIEW_BEHIND ? -0.15f : 0.0f;
  camera.azimuth_rad = 0.8f;
  camera.elevation_rad = 0.3f;
  ph_camera_update (&camera);
  if (view == PH_VIEW_FREE)
    {
      ph_camera_fit (&camera, rig->list, margins);
      return camera;
    }
  PhExtent extent = ph_extent_of (rig->list, view, camera.lean_rad, camera.slope_rad);
  camera.px_per_mm = ph_extent_scale (extent, camera.width_px, camera.height_px, margins);
  ph_camera_centre (&camera, extent, margins);
  return camera;
}

static PhShade
shade_of (unsigned rgb)
{
  return (PhShade){ (rgb >> 16) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0 };
}

PhPalette
gl_sheet_palette (bool dark)
{
  unsigned colours[3];
  ph_sheet_colours (dark, colours);
  return ph_palette_of (shade_of (colours[0]), shade_of (colours[1]), shade_of (colours[2]));
}

PhRenderColours
gl_sheet_colours (bool dark)
{
  PhPalette palette = gl_sheet_palette (dark);
  return ph_render_colours_of (&palette);
}

static void
draw (const Offscreen *screen, PhRenderer *renderer, const PhRenderView *view,
      const PhRenderFrame *frame, bool dark, uint8_t *rgb)
{
  size_t pixels = (size_t)screen->width * (size_t)screen->height;
  uint8_t *rgba = ph_alloc (4 * pixels);
  unsigned colours[3];
  PhRenderColours look = gl_sheet_colours (dark);
  ph_sheet_colours (dark, colours);
  ph_renderer_draw (renderer, frame, &look, view, 1);
  offscreen_read (screen, rgba);
  for (size_t i = 0; i < pixels; i++)
    for (int k = 0; k < 3; k++)
      {
        unsigned ground = colours[0] >> (16 - 8 * k) & 255;
        rgb[3 * i + (size_t)k] =
            (uint8_t)(rgba[4 * i + (size_t)k] + ground * (255U - rgba[4 * i + 3]) / 255U);
      }
  free (rgba);
}

void
gl_sheet_draw (const Offscreen *screen, PhRenderer *renderer, const PhRenderView *view, bool dark,
               bool still, uint8_t *rgb)
{
  PhRenderFrame frame = {
    .width = screen->width, .height = screen->height, .pixel = 1.0f, .still = still
  };
  draw (screen, renderer, view, &frame, dark, rgb);
}

void
gl_sheet_draw_bare (const Offscreen *screen, PhRenderer *renderer, const PhRenderView *view,
                    float pixel, uint8_t *rgb)
{
  PhRenderFrame frame = {
    .width = screen->width, .height = screen->height, .pixel = pixel, .bare = true
  };
  draw (screen, renderer, view, &frame, false, rgb);
}
