/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Loads, computes, lays out and paints, as the window does, on an image surface.
 */
#include "tests/render/sheet.h"

#include <math.h>
#include <pango/pangocairo.h>
#include <stdio.h>

#include "store/rig-file.h"
#include "widgets/bow-picture.h"
#include "widgets/views-layout.h"

#define GAP_PX 1.0f
#define FONT "DejaVu Sans 10"

typedef struct
{
  PhRig *rig;
  PhCompiled *compiled;
  PhReport *report;
  PhDrawList *list;
} Loaded;

PhSheet
ph_sheet_default (const char *path)
{
  return (PhSheet){ .path = path, .width = 1200, .height = 760, .factor = 5.0 };
}

void
ph_sheet_colours (bool dark, unsigned colours[3])
{
  colours[0] = dark ? 0x2d2d2d : 0xffffff;
  colours[1] = dark ? 0xeeeeec : 0x2e3436;
  colours[2] = dark ? 0x62a0ea : 0x1c71d8;
}

static PhShade
shade_of (unsigned rgb)
{
  return (PhShade){ (rgb >> 16) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0 };
}

static bool
load (const char *path, const PhDrawOptions *options, Loaded *loaded)
{
  PhIssues issues = { 0 };
  if (ph_rig_load (path, &loaded->rig, &issues) != PH_OK)
    {
      for (size_t i = 0; i < issues.n; i++)
        {
          char *line = ph_issue_line (&issues.items[i]);
          fprintf (stderr, "%s: %s\n", path, line);
          free (line);
        }
      ph_issues_clear (&issues);
      return false;
    }
  ph_issues_clear (&issues);
  loaded->compiled = ph_compile_rig (loaded->rig);
  loaded->report = ph_report_new (loaded->rig, loaded->compiled);
  loaded->list = ph_draw_list_new (loaded->rig, loaded->compiled, loaded->report, options);
  return true;
}

static void
unload (Loaded *loaded)
{
  if (!loaded->rig)
    return;
  ph_draw_list_free (loaded->list);
  ph_report_free (loaded->report);
  ph_compiled_free (loaded->compiled);
  ph_rig_free (loaded->rig);
}

typedef struct
{
  const PhSheet *sheet;
  PhPalette palette;
  Loaded rig, reference;
  PhMarkFacts facts;
  PhLeanDrawn reference_lean;
  PangoContext *context;
  cairo_t *cr;
} Desk;

static void
paint_view (const Desk *desk, const PhCamera *camera, const PhViewRect *rect)
{
  if (rect->height <= 0.0f)
    return;
  PhOutlines *outlines = ph_outlines_new (), *reference = ph_outlines_new ();
  PhMarks *marks = ph_marks_new (&desk->facts, camera, desk->context);
  PhBowPicture picture = { desk->rig.list, outlines, desk->reference.list, reference, marks };
  ph_outlines_update (outlines, desk->rig.list, camera);
  if (desk->reference.list)
    {
      PhCamera other = *camera;
      if (camera->view == PH_VIEW_BEHIND)
        other.lean_rad = desk->reference_lean.lean_rad;
      ph_camera_update (&other);
      ph_outlines_update (reference, desk->reference.list, &other);
    }
  cairo_save (desk->cr);
  cairo_translate (desk->cr, rect->x, rect->y);
  cairo_rectangle (desk->cr, 0, 0, rect->width, rect->height);
  cairo_clip (desk->cr);
  PhShade ground = desk->palette.ground;
  cairo_set_source_rgb (desk->cr, ground.red, ground.green, ground.blue);
  cairo_paint (desk->cr);
  ph_bow_picture_paint (desk->cr, &desk->palette, &picture);
  cairo_restore (desk->cr);
  ph_marks_free (marks);
  ph_outlines_free (outlines);
  ph_outlines_free (reference);
}

static int
selected_part (const PhSheet *sheet, const PhRig *rig)
{
  if (!sheet->select)
    return PH_PART_NONE;
  int part = ph_rig_find (rig, sheet->select);
  return part >= 0 ? part : PH_PART_BOW;
}

static void
paint_sheet (Desk *desk)
{
  const PhSheet *sheet = desk->sheet;
  const PhArcher *archer = &desk->rig.rig->archer;
  double slope = atan2 (archer->nock_height_mm, archer->draw_length_mm);
  PhMarkFacts *facts = &desk->facts;
  facts->rig = desk->rig.rig;
  facts->report = desk->rig.report;
  facts->settle = ph_settle_of (desk->rig.rig, desk->rig.report, desk->reference.report);
  facts->selected = selected_part (sheet, desk->rig.rig);
  facts->units = sheet->units;
  facts->lean_factor = sheet->factor;
  facts->lean = ph_lean_drawn_of (&facts->settle, slope, sheet->factor);
  desk->reference_lean = ph_lean_drawn_reference (&facts->settle, slope, sheet->factor);
  ph_draw_list_select (desk->rig.list, facts->selected);
  PhViewsExtent extent = {
    ph_extent_of (desk->rig.list, PH_VIEW_SIDE, 0.0f, (float)slope),
    ph_extent_of (desk->rig.list, PH_VIEW_BEHIND, facts->lean.lean_rad, (float)slope),
    ph_extent_of (desk->rig.list, PH_VIEW_ABOVE, 0.0f, (float)slope),
  };
  PhViewsLayout layout =
      ph_views_layout (&extent, true, (float)sheet->width, (float)sheet->height, GAP_PX);
  PhCamera cameras[3];
  ph_views_cameras (&extent, &layout, ph_views_scale (&extent, &layout), facts->lean.lean_rad,
                    (float)slope, cameras);
  paint_view (desk, &cameras[PH_VIEW_SIDE], &layout.side);
  paint_view (desk, &cameras[PH_VIEW_BEHIND], &layout.behind);
  paint_view (desk, &cameras[PH_VIEW_ABOVE], &layout.above);
}

cairo_surface_t *
ph_sheet_paint (const PhSheet *sheet)
{
  Desk desk = { .sheet = sheet };
  PhDrawOptions options = ph_draw_options_default (), plain = options;
  options.show_arrow = sheet->arrow;
  options.show_hand = sheet->hand;
  plain.plain = true;
  cairo_surface_t *surface = NULL;
  if (load (sheet->path, &options, &desk.rig)
      && (!sheet->reference || load (sheet->reference, &plain, &desk.reference)))
    {
      unsigned colours[3];
      ph_sheet_colours (sheet->dark, colours);
      desk.palette =
          ph_palette_of (shade_of (colours[0]), shade_of (colours[1]), shade_of (colours[2]));
      surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, sheet->width, sheet->height);
      desk.cr = cairo_create (surface);
      cairo_set_source_rgb (desk.cr, 0.5, 0.5, 0.5);
      cairo_paint (desk.cr);
      desk.context = pango_cairo_create_context (desk.cr);
      PangoFontDescription *font = pango_font_description_from_string (FONT);
      pango_context_set_font_description (desk.context, font);
      pango_font_description_free (font);
      paint_sheet (&desk);
      g_object_unref (desk.context);
      cairo_destroy (desk.cr);
    }
  unload (&desk.rig);
  unload (&desk.reference);
  return surface;
}
