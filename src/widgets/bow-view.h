/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One view of the open rig: the bow with its parts, the balance point, the lean, and what is
 * selected. A click selects; with the keyboard Tab walks the parts, arrows turn them, + and −
 * change weights. Drawn with cairo, or, over an area that draws the bow, only the words and the
 * balance mark.
 *
 * Keys: ← → turn to the archer's left and right, ↑ ↓ up and down, + − one weight more or less, with
 * Shift five steps; Ctrl with arrows, + and − moves and scales the picture; F or 0 fits it; L
 * switches the drawn lean between 1 and 5 times; Escape drops the selection.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"
#include "scene/fit.h"

G_BEGIN_DECLS

#define PH_TYPE_BOW_VIEW (ph_bow_view_get_type ())
G_DECLARE_FINAL_TYPE (PhBowView, ph_bow_view, PH, BOW_VIEW, GtkWidget)

/* Properties: "lean-factor" (double, 1 or 5; how many times the lean is drawn), "dragged" (boolean;
 * the person has dragged a part once, so that no hint tells of it any more).
 * Signals; the first three are handled by the view itself where no handler returns TRUE:
 *   "zoom" (double factor, double x, double y)  the pointer's place, in the view's pixels
 *   "pan" (double dx, double dy)                in pixels
 *   "fit" ()
 *   "refused" (string why)                      an edit was refused: show the sentence
 *   "activated" (string id)                     a part was double-clicked, or Return pressed
 *   "redraw" (boolean moving)                   the picture is another: what lies beneath draws */

/** Any view. In the free one panning turns about the bow. */
GtkWidget *ph_bow_view_new (PhDocument *document, PhView view);

PhView ph_bow_view_get_view (PhBowView *self);

/** Whether an area beneath draws the bow, its reference and the marks' lines. */
void ph_bow_view_set_over_gl (PhBowView *self, gboolean over);

/** Puts a button into the view's upper right corner; it is styled and owned as a child. */
void ph_bow_view_add_button (PhBowView *self, GtkWidget *button);

double ph_bow_view_get_lean_factor (PhBowView *self);
void ph_bow_view_set_lean_factor (PhBowView *self, double factor);

void ph_bow_view_set_dragged (PhBowView *self, gboolean dragged);

/** Not for the free view (asserted). Extent of the rig, and of the reference where there is one, in
 * this view. The lean as drawn now and plumb are both inside. */
PhExtent ph_bow_view_get_extent (PhBowView *self);

/** Scale and middle; size and lean are the view's own. From then on it does not fit itself. */
void ph_bow_view_set_camera (PhBowView *self, const PhCamera *camera);
const PhCamera *ph_bow_view_get_camera (PhBowView *self);

/** Shows all there is when it is next drawn; for a view whose camera nobody sets. */
void ph_bow_view_fit (PhBowView *self);

/** The part at a point of the widget: an index in the rig's parts, PH_PART_BOW or PH_PART_NONE. */
int ph_bow_view_part_at (PhBowView *self, double x, double y);

G_END_DECLS
