/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a bow view shows, rebuilt when it is stale and somebody asks: lists, camera, marks,
 * outlines.
 */
#include <math.h>

#include "widgets/bow-view-private.h"
#include "widgets/views-layout.h"

static double
slope_of (const PhRig *rig)
{
  return atan2 (rig->archer.nock_height_mm, rig->archer.draw_length_mm);
}

/* The bow leans along with the part that is on its way: its words do not wait. */
static float
drawn_lean (PhBowView *self, double lean_rad)
{
  const PhBowScene *scene = self->scene;
  if (self->view != PH_VIEW_BEHIND)
    return 0.0f;
  if (!scene->easing)
    self->lean = ph_ease_rest (lean_rad);
  ph_ease_to (&self->lean, lean_rad, scene->now_us);
  return (float)ph_ease_at (&self->lean, scene->now_us);
}

static void
read_facts (PhBowView *self)
{
  PhMarkFacts *facts = &self->facts;
  PhShown shown = ph_document_get_shown (self->document);
  facts->rig = shown.rig;
  facts->report = shown.report;
  facts->units = ph_document_get_units (self->document);
  facts->lean_factor = self->lean_factor;
  facts->settle =
      ph_settle_of (shown.rig, shown.report, ph_document_get_compared (self->document).report);
  double slope = slope_of (facts->rig);
  facts->lean = ph_lean_drawn_of (&facts->settle, slope, self->lean_factor);
  self->reference_lean = ph_lean_drawn_reference (&facts->settle, slope, self->lean_factor);
  self->camera.slope_rad = (float)slope;
  self->camera.lean_rad = drawn_lean (self, (double)facts->lean.lean_rad);
  ph_camera_update (&self->camera);
}

/* An index, PH_PART_BOW or PH_PART_NONE: the document tells the bow and nothing apart by id only.
 * Nothing is selected in a reference that is only looked at. */
static int
selected_part (PhBowView *self)
{
  if (!ph_document_get_selected (self->document) || ph_document_get_flipped (self->document))
    return PH_PART_NONE;
  int part = ph_document_get_selected_part (self->document);
  return part >= 0 ? part : PH_PART_BOW;
}

static void
rebuild_list (PhBowView *self)
{
  self->scene = ph_bow_scene_of (self->document);
  self->list = self->scene->list;
  self->list_stale = FALSE;
  self->picture_stale = TRUE;
}

static void
rebuild_marks (PhBowView *self)
{
  PhMarkFacts *facts = &self->facts;
  read_facts (self);
  facts->selected = selected_part (self);
  facts->corner_px[0] = facts->corner_px[1] = 0;
  if (gtk_widget_get_first_child (self->corner))
    {
      facts->corner_px[0] = gtk_widget_get_width (self->corner) + 8;
      facts->corner_px[1] = gtk_widget_get_height (self->corner) + 8;
    }
  facts->hand = ph_view_drag_marks (self);
  facts->list = self->list;
  ph_draw_list_select (self->list, facts->selected);
  g_clear_pointer (&self->marks, ph_marks_free);
  self->marks =
      ph_marks_new (facts, &self->camera, gtk_widget_get_pango_context (GTK_WIDGET (self)));
  facts->rig = NULL;
  facts->report = NULL;
  facts->hand = NULL;
  facts->list = NULL;
  self->picture_stale = FALSE;
  self->outlines_stale = TRUE;
}

static void
rebuild_outlines (PhBowView *self)
{
  ph_outlines_update (self->outlines, self->list, &self->camera);
  if (self->scene->reference)
    {
      PhCamera camera = self->camera;
      camera.lean_rad = self->view == PH_VIEW_BEHIND ? self->reference_lean.lean_rad : 0.0f;
      ph_camera_update (&camera);
      ph_outlines_update (self->reference_outlines, self->scene->reference, &camera);
    }
  self->outlines_stale = FALSE;
}

PhExtent
ph_bow_view_get_extent (PhBowView *self)
{
  g_return_val_if_fail (PH_IS_BOW_VIEW (self) && self->view != PH_VIEW_FREE, (PhExtent){ 0 });
  if (self->list_stale)
    rebuild_list (self);
  read_facts (self);
  float slope = self->camera.slope_rad;
  PhExtent extent = ph_extent_of (self->list, self->view, 0.0f, slope);
  if (self->camera.lean_rad != 0.0f)
    extent = ph_extent_join (extent,
                             ph_extent_of (self->list, self->view, self->camera.lean_rad, slope));
  if (self->scene->reference)
    extent =
        ph_extent_join (extent, ph_extent_of (self->scene->reference, self->view, 0.0f, slope));
  return extent;
}

/* The view that no pane looks after shows all there is. */
static void
fit_alone (PhBowView *self)
{
  PhMargins margins = ph_view_margins (self->view);
  self->fitted = TRUE;
  self->picture_stale = TRUE;
  if (self->view == PH_VIEW_FREE)
    {
      ph_camera_fit (&self->camera, self->list, margins);
      return;
    }
  PhExtent extent = ph_bow_view_get_extent (self);
  self->camera.px_per_mm =
      ph_extent_scale (extent, self->camera.width_px, self->camera.height_px, margins);
  ph_camera_centre (&self->camera, extent, margins);
}

void
ph_bow_view_refresh_marks (PhBowView *self)
{
  if (self->list_stale)
    rebuild_list (self);
  if (!self->driven && !self->fitted)
    fit_alone (self);
  if (self->picture_stale)
    rebuild_marks (self);
}

void
ph_bow_view_refresh (PhBowView *self)
{
  ph_bow_view_refresh_marks (self);
  if (self->outlines_stale)
    rebuild_outlines (self);
}
