/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Over an area that draws the bow: texts as layouts on plates of colour, and the balance mark as a
 * small node of its own, kept from frame to frame. Else a cairo picture of the whole view.
 */
#include <string.h>

#include "widgets/bow-picture.h"
#include "widgets/bow-view-private.h"
#include "widgets/marks-painter.h"
#include "widgets/view-palette.h"

static GdkRGBA
rgba_of (PhShade shade, double alpha)
{
  return (GdkRGBA){ (float)shade.red, (float)shade.green, (float)shade.blue, (float)alpha };
}

static void
append_text (GtkSnapshot *snapshot, const PhPalette *palette, const PhMark *mark)
{
  const PhLabelBox *box = &mark->box;
  GdkRGBA plate = rgba_of (palette->ground, PH_MARK_PLATE_ALPHA);
  GdkRGBA ink = rgba_of (mark->accent ? palette->accent : palette->ink, mark->alpha);
  gtk_snapshot_append_color (
      snapshot, &plate,
      &GRAPHENE_RECT_INIT ((float)box->x, (float)box->y, (float)box->width, (float)box->height));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (mark->at[0].x, mark->at[0].y));
  gtk_snapshot_append_layout (snapshot, mark->layout, &ink);
  gtk_snapshot_restore (snapshot);
}

/* Drawn about its own middle once for each palette. */
static GskRenderNode *
balance_node (PhBowView *self, const PhPalette *palette, const PhMark *mark)
{
  if (self->balance_node && memcmp (&self->balance_palette, palette, sizeof *palette) == 0)
    return self->balance_node;
  float reach = (float)mark->width_px + 3.0f;
  PhMark centred = *mark;
  centred.at[0] = (PhPixel){ 0, 0 };
  g_clear_pointer (&self->balance_node, gsk_render_node_unref);
  self->balance_node =
      gsk_cairo_node_new (&GRAPHENE_RECT_INIT (-reach, -reach, 2.0f * reach, 2.0f * reach));
  cairo_t *cr = gsk_cairo_node_get_draw_context (self->balance_node);
  ph_mark_paint_balance (cr, palette, &centred);
  cairo_destroy (cr);
  self->balance_palette = *palette;
  return self->balance_node;
}

static void
append_balance (PhBowView *self, GtkSnapshot *snapshot, const PhPalette *palette,
                const PhMark *mark)
{
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (mark->at[0].x, mark->at[0].y));
  gtk_snapshot_append_node (snapshot, balance_node (self, palette, mark));
  gtk_snapshot_restore (snapshot);
}

static void
snapshot_over_gl (PhBowView *self, GtkSnapshot *snapshot, const PhPalette *palette)
{
  ph_bow_view_refresh_marks (self);
  for (size_t i = 0; i < ph_marks_count (self->marks); i++)
    {
      const PhMark *mark = ph_marks_get (self->marks, i);
      if (mark->kind == PH_MARK_TEXT)
        append_text (snapshot, palette, mark);
      else if (mark->kind == PH_MARK_BALANCE)
        append_balance (self, snapshot, palette, mark);
    }
}

static void
snapshot_whole (PhBowView *self, GtkSnapshot *snapshot, const PhPalette *palette, float width,
                float height)
{
  ph_bow_view_refresh (self);
  PhBowPicture picture = { self->list, self->outlines, self->scene->reference,
                           self->reference_outlines, self->marks };
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  ph_bow_picture_paint (cr, palette, &picture);
  cairo_destroy (cr);
}

void
ph_bow_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhBowView *self = PH_BOW_VIEW (widget);
  float width = (float)gtk_widget_get_width (widget);
  float height = (float)gtk_widget_get_height (widget);
  if (width < 1.0f || height < 1.0f)
    return;
  PhPalette palette = ph_palette_of_widget (widget);
  if (self->over_gl)
    snapshot_over_gl (self, snapshot, &palette);
  else
    snapshot_whole (self, snapshot, &palette, width, height);
  gtk_widget_snapshot_child (widget, self->corner, snapshot);
}
