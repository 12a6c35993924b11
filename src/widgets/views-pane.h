/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The three flat views together: from the side, the strip from above under it on the same x scale,
 * from behind at the right; one scale for all, so that a length in one compares with the other.
 * Zooming any zooms all; moving one moves what the others share with it.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_VIEWS_PANE (ph_views_pane_get_type ())
G_DECLARE_FINAL_TYPE (PhViewsPane, ph_views_pane, PH, VIEWS_PANE, GtkWidget)

/* Properties: "show-above" (boolean), "lean-factor" (double), "show-free" (boolean; V), "filled"
 * (boolean, read only: one view has the whole pane, and would like the window; F11, a double click
 * on its title, or its corner button; Escape leaves).
 * Signals: "refused" (string why), "activated" (string id), as PhBowView has them. */

GtkWidget *ph_views_pane_new (PhDocument *document);

/** A widget that belongs under the view from behind and stands there; null takes it away. It is
 * owned by the pane, as a child. */
void ph_views_pane_set_foot (PhViewsPane *self, GtkWidget *foot);

/** Keeps between runs what the views remember of the person; null keeps nothing. */
void ph_views_pane_bind_settings (PhViewsPane *self, GSettings *settings);

/** Fits the whole rig again: what F does. */
void ph_views_pane_fit (PhViewsPane *self);

/** Whether nothing will be drawn finer than it is, as long as nothing changes. */
gboolean ph_views_pane_is_still (PhViewsPane *self);

/** The free view in place of the side view and the strip. */
gboolean ph_views_pane_get_show_free (PhViewsPane *self);
void ph_views_pane_set_show_free (PhViewsPane *self, gboolean show);

gboolean ph_views_pane_get_filled (PhViewsPane *self);
void ph_views_pane_leave_filled (PhViewsPane *self);

gboolean ph_views_pane_get_show_above (PhViewsPane *self);
void ph_views_pane_set_show_above (PhViewsPane *self, gboolean show);

G_END_DECLS
