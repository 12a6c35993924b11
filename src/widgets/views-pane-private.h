/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the pane's own sources share: views-pane.c (layout and the shared camera), views-fill.c
 * (which views are shown).
 */
#pragma once

#include "widgets/gl-views.h"
#include "widgets/views-layout.h"
#include "widgets/views-pane.h"

G_BEGIN_DECLS

#define PH_PANE_VIEWS 3
/* Between two views [px]. */
#define PH_PANE_GAP 1.0f

struct _PhViewsPane
{
  GtkWidget parent_instance;

  PhDocument *document;            /* owned */
  GtkWidget *views[PH_PANE_VIEWS]; /* in the order of PhView */
  GtkWidget *free; /* in place of side and above, or hidden; made when first wanted */
  GtkWidget *foot; /* under the view from behind, or null */
  PhGlViews *gl;
  gboolean show_above, show_free;
  GtkWidget *filling; /* the view that has the whole pane, or null */

  PhViewsExtent extent;
  gboolean measured; /* extent holds for the rig */
  gboolean moved;    /* the person zoomed or moved: resizing keeps that */
  PhCamera cameras[PH_PANE_VIEWS];
};

/** views-size.c: what the pane and its foot ask for. */
void ph_views_pane_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                            int *minimum, int *natural, int *minimum_baseline,
                            int *natural_baseline);
GtkSizeRequestMode ph_views_pane_get_request_mode (GtkWidget *widget);
void ph_views_pane_measure_foot (PhViewsPane *self, int pane_width, int *width, int *height);

/** Makes a view a child, with its buttons, over its area. */
void ph_views_pane_add_view (PhViewsPane *self, GtkWidget *widget);

/** Keys and double clicks; called once by init. */
void ph_views_pane_init_filling (PhViewsPane *self);
void ph_views_pane_add_buttons (PhViewsPane *self, PhBowView *view);

/** The thin lines between views, where areas draw. */
void ph_views_pane_snapshot_gaps (PhViewsPane *self, GtkSnapshot *snapshot);

GtkAllocation ph_views_pane_allocation (const PhViewRect *rect);
/** Null: not shown. */
void ph_views_pane_allocate_view (GtkWidget *view, const PhViewRect *rect);

G_END_DECLS
