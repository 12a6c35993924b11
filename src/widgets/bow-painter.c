/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Farthest first: each solid's faces, then its edge. Costs some ten microseconds a solid, most of
 * it gradients; a whole bow with its rig is some hundred solids.
 */
#include "widgets/bow-painter.h"

#include <math.h>

#define EDGE_PX 1.0
#define EDGE_LEAST_PX 0.35
#define HALO_PX 2.6
#define HATCH_STEP_PX 5.0
/* A string thinner than this is still seen. */
#define LINE_LEAST_PX 1.0
#define REFERENCE_SAME_PX 0.75f

typedef struct
{
  cairo_t *cr;
  const PhPalette *palette;
  const PhDrawList *list;
  const PhOutlines *outlines;
} Painter;

static void
set_shade (cairo_t *cr, PhShade shade, double alpha)
{
  cairo_set_source_rgba (cr, shade.red, shade.green, shade.blue, alpha);
}

static void
trace (const Painter *painter, PhPath path, bool closed)
{
  const PhPixel *pixels = ph_outlines_pixels (painter->outlines, path);
  cairo_new_sub_path (painter->cr);
  for (size_t i = 0; i < path.n; i++)
    cairo_line_to (painter->cr, pixels[i].x, pixels[i].y);
  if (closed)
    cairo_close_path (painter->cr);
}

/* The silhouette with its holes, to be filled even–odd. */
static void
trace_outline (const Painter *painter, const PhOutline *outline)
{
  cairo_new_path (painter->cr);
  trace (painter, outline->edge, !outline->is_line);
  for (size_t i = 0; i < outline->n_holes; i++)
    trace (painter, ph_outlines_hole (painter->outlines, outline, i), true);
}

static void
set_facet_source (const Painter *painter, const PhFacet *facet, PhShade shade)
{
  const float *lights = ph_outlines_lights (painter->outlines, facet);
  if (facet->n_lights == 1)
    {
      set_shade (painter->cr, ph_shade_lit (shade, lights[0]), 1.0);
      return;
    }
  cairo_pattern_t *pattern =
      cairo_pattern_create_linear (facet->from.x, facet->from.y, facet->to.x, facet->to.y);
  for (size_t i = 0; i < facet->n_lights; i++)
    {
      PhShade lit = ph_shade_lit (shade, lights[i]);
      cairo_pattern_add_color_stop_rgb (pattern, (double)i / (double)(facet->n_lights - 1), lit.red,
                                        lit.green, lit.blue);
    }
  cairo_set_source (painter->cr, pattern);
  cairo_pattern_destroy (pattern);
}

/* Faces inside the silhouette, each without the holes that lie in it. */
static void
fill_facets (const Painter *painter, const PhOutline *outline, PhShade shade)
{
  for (size_t i = 0; i < outline->n_facets; i++)
    {
      const PhFacet *facet = ph_outlines_facet (painter->outlines, outline, i);
      cairo_new_path (painter->cr);
      trace (painter, facet->path, true);
      for (size_t k = 0; facet->holed && k < outline->n_holes; k++)
        trace (painter, ph_outlines_hole (painter->outlines, outline, k), true);
      set_facet_source (painter, facet, shade);
      cairo_fill (painter->cr);
    }
}

static double
edge_width (const PhOutline *outline)
{
  return fmin (EDGE_PX, fmax (EDGE_LEAST_PX, 0.16 * (double)outline->width_px));
}

static void
paint_line (const Painter *painter, const PhOutline *outline, PhShade shade)
{
  trace_outline (painter, outline);
  cairo_set_line_width (painter->cr, fmax (LINE_LEAST_PX, (double)outline->width_px));
  set_shade (painter->cr, shade, 1.0);
  cairo_stroke (painter->cr);
}

static void
paint_off (const Painter *painter, const PhOutline *outline, PhShade shade)
{
  static const double dots[] = { 0.1, 3.0 };
  cairo_save (painter->cr);
  trace_outline (painter, outline);
  cairo_set_line_cap (painter->cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_dash (painter->cr, dots, 2, 0.0);
  cairo_set_line_width (painter->cr, 1.4);
  set_shade (painter->cr, shade, 1.0);
  cairo_stroke (painter->cr);
  cairo_restore (painter->cr);
}

/* Slanting bars over the silhouette, ground and ink by turns, so that they show on any fill. */
static void
hatch (const Painter *painter, const PhOutline *outline)
{
  cairo_t *cr = painter->cr;
  double x0, y0, x1, y1;
  cairo_save (cr);
  trace_outline (painter, outline);
  cairo_path_extents (cr, &x0, &y0, &x1, &y1);
  cairo_clip (cr);
  for (int pass = 0; pass < 2; pass++)
    {
      /* Bars stand where they stand in the whole picture, so that a part's solids run on. */
      double first = floor ((x0 - y1) / HATCH_STEP_PX) * HATCH_STEP_PX + pass * HATCH_STEP_PX / 2;
      for (double x = first; x < x1 - y0; x += HATCH_STEP_PX)
        {
          cairo_move_to (cr, x + y0, y0);
          cairo_line_to (cr, x + y1, y1);
        }
      set_shade (cr, pass ? painter->palette->ground : painter->palette->ink, 1.0);
      cairo_set_line_width (cr, HATCH_STEP_PX * 0.36);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}

static void
paint_solid (const Painter *painter, const PhOutline *outline, const PhItem *item)
{
  PhShade shade = painter->palette->role[item->role];
  bool selected = item->part == ph_draw_list_get_selected (painter->list);
  if (selected)
    shade = ph_shade_mix (shade, painter->palette->accent, outline->is_line ? 1.0 : 0.28);
  if (item->state == PH_STATE_OFF)
    {
      paint_off (painter, outline, selected ? painter->palette->accent : painter->palette->ink);
      return;
    }
  if (outline->is_line)
    {
      paint_line (painter, outline, shade);
      return;
    }
  if (item->role == PH_ROLE_HAND)
    {
      trace_outline (painter, outline);
      set_shade (painter->cr, shade, 1.0);
      cairo_fill (painter->cr);
      return;
    }
  fill_facets (painter, outline, shade);
  if (item->state == PH_STATE_NEAR)
    hatch (painter, outline);
  trace_outline (painter, outline);
  cairo_set_line_width (painter->cr, edge_width (outline));
  set_shade (painter->cr, painter->palette->edge, 0.9);
  cairo_stroke (painter->cr);
}

/* The accent about everything that is selected, under its solids, so that only its outside is
 * left to see; painted when the farthest of them is due. */
static void
paint_halo (const Painter *painter)
{
  int selected = ph_draw_list_get_selected (painter->list);
  set_shade (painter->cr, painter->palette->accent, 1.0);
  for (size_t i = 0; i < ph_outlines_count (painter->outlines); i++)
    {
      const PhOutline *outline = ph_outlines_get (painter->outlines, i);
      const PhItem *item = ph_draw_list_item (painter->list, outline->item);
      /* A string is thin enough to be coloured instead. */
      if (item->part != selected || item->state == PH_STATE_OFF || item->role == PH_ROLE_HAND
          || outline->is_line)
        continue;
      trace_outline (painter, outline);
      cairo_set_line_width (painter->cr, 2.0 * HALO_PX);
      cairo_stroke (painter->cr);
    }
}

void
ph_bow_paint (cairo_t *cr, const PhPalette *palette, const PhDrawList *list,
              const PhOutlines *outlines)
{
  Painter painter = { cr, palette, list, outlines };
  bool halo = false;
  cairo_save (cr);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  /* Silhouettes are many-cornered: a bevel where a corner is sharp is not seen and costs nothing.
   */
  cairo_set_miter_limit (cr, 2.0);
  for (size_t i = 0; i < ph_outlines_count (outlines); i++)
    {
      const PhOutline *outline = ph_outlines_get (outlines, i);
      const PhItem *item = ph_draw_list_item (list, outline->item);
      if (!halo && item->part == ph_draw_list_get_selected (list))
        {
          paint_halo (&painter);
          halo = true;
        }
      paint_solid (&painter, outline, item);
    }
  cairo_restore (cr);
}

/* Whether the same silhouette stands in the other picture: then its dashes would only blur it. */
static bool
is_shown_already (const Painter *painter, const PhOutline *outline, const PhOutlines *shown)
{
  const PhPixel *mine = ph_outlines_pixels (painter->outlines, outline->edge);
  for (size_t i = 0; i < ph_outlines_count (shown); i++)
    {
      const PhOutline *other = ph_outlines_get (shown, i);
      if (other->edge.n != outline->edge.n)
        continue;
      const PhPixel *theirs = ph_outlines_pixels (shown, other->edge);
      size_t k = 0;
      while (k < outline->edge.n && fabsf (mine[k].x - theirs[k].x) < REFERENCE_SAME_PX
             && fabsf (mine[k].y - theirs[k].y) < REFERENCE_SAME_PX)
        k++;
      if (k == outline->edge.n)
        return true;
    }
  return false;
}

/* Of the bow only its great forms: dashes about every bolt would hide what they are there for. */
static bool
tells_a_rig (const PhItem *item)
{
  return item->part >= 0 || item->role == PH_ROLE_RISER || item->role == PH_ROLE_LIMB
         || item->solid == PH_SOLID_RING;
}

void
ph_bow_paint_reference (cairo_t *cr, const PhPalette *palette, const PhDrawList *list,
                        const PhOutlines *outlines, const PhOutlines *shown)
{
  static const double dashes[] = { 5.0, 3.0 };
  Painter painter = { cr, palette, list, outlines };
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0.0);
  cairo_set_line_width (cr, 1.0);
  set_shade (cr, palette->ink, 0.65);
  for (size_t i = 0; i < ph_outlines_count (outlines); i++)
    {
      const PhOutline *outline = ph_outlines_get (outlines, i);
      const PhItem *item = ph_draw_list_item (list, outline->item);
      if (outline->is_line || item->state == PH_STATE_OFF || !tells_a_rig (item)
          || is_shown_already (&painter, outline, shown))
        continue;
      cairo_new_path (cr);
      trace (&painter, outline->edge, true);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
}
