/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bubble and what stands below it: the readings, or in their place Why or Level, so that the
 * views stay as large as they were.
 */
#include "app/window-private.h"
#include "widgets/bubble-pane.h"
#include "widgets/level-panel.h"
#include "widgets/readings-pane.h"
#include "widgets/views-pane.h"
#include "widgets/why-panel.h"

#define PANEL_PX 260

static GtkWidget *
in_scroller (GtkWidget *panel)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  /* The same height whatever is in it: else its buttons would move under the pointer with each
   * answer. */
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), PANEL_PX);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), panel);
  gtk_widget_set_visible (scroller, FALSE);
  return scroller;
}

/* Of the two panels at most one is open. */

static void
why_shown_cb (GtkWidget *why, GParamSpec *pspec, GtkWidget *level)
{
  (void)pspec;
  if (gtk_widget_get_visible (why))
    gtk_widget_set_visible (level, FALSE);
}

static void
level_shown_cb (GtkWidget *level, GParamSpec *pspec, GtkWidget *bubble)
{
  (void)pspec;
  if (gtk_widget_get_visible (level))
    g_object_set (bubble, "why", FALSE, NULL);
}

/* Why, Level and the readings stand in this order. */
static void
panel_shown_cb (GtkWidget *readings)
{
  GtkWidget *level = gtk_widget_get_prev_sibling (readings);
  GtkWidget *why = gtk_widget_get_prev_sibling (level);
  gtk_widget_set_visible (readings,
                          !gtk_widget_get_visible (level) && !gtk_widget_get_visible (why));
}

static void
refused_cb (PhWindow *self, const char *why)
{
  ph_toast_say (self->toast, why, NULL, NULL);
}

static GtkWidget *
new_level (PhWindow *self)
{
  GtkWidget *panel = ph_level_panel_new (self->document), *level = in_scroller (panel);
  g_autoptr (GPropertyAction) action = g_property_action_new ("level", level, "visible");
  g_action_map_add_action (G_ACTION_MAP (self), G_ACTION (action));
  g_signal_connect_swapped (panel, "refused", G_CALLBACK (refused_cb), self);
  g_signal_connect_swapped (panel, "check-wanted", G_CALLBACK (ph_window_add_check), self);
  return level;
}

void
ph_window_add_panels (PhWindow *self)
{
  GtkWidget *bubble = self->bubble = ph_bubble_pane_new (self->document);
  GtkWidget *why = in_scroller (ph_why_panel_new (self->document)), *level = new_level (self);
  GtkWidget *readings = ph_readings_pane_new (self->document);
  ph_readings_pane_bind_settings (PH_READINGS_PANE (readings), self->settings);
  GtkWidget *const children[] = { bubble, why, level, readings };
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_box_append (self->work, children[i]);
  g_signal_connect_object (why, "notify::visible", G_CALLBACK (why_shown_cb), level, 0);
  g_signal_connect_object (level, "notify::visible", G_CALLBACK (level_shown_cb), bubble, 0);
  g_signal_connect_object (why, "notify::visible", G_CALLBACK (panel_shown_cb), readings,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (level, "notify::visible", G_CALLBACK (panel_shown_cb), readings,
                           G_CONNECT_SWAPPED);
  g_object_bind_property (bubble, "why", why, "visible", G_BINDING_SYNC_CREATE);
}

gboolean
ph_window_show_place (PhWindow *self, const char *place)
{
  g_return_val_if_fail (PH_IS_WINDOW (self), FALSE);
  if (g_str_equal (place, "hand"))
    gtk_stack_set_visible_child (self->pages, self->hand);
  else if (g_str_equal (place, "free"))
    g_object_set (self->views, "show-free", TRUE, NULL);
  else if (g_str_equal (place, "why"))
    g_object_set (self->bubble, "why", TRUE, NULL);
  else if (g_str_equal (place, "level"))
    g_action_group_change_action_state (G_ACTION_GROUP (self), "level",
                                        g_variant_new_boolean (TRUE));
  else
    return FALSE;
  return TRUE;
}

gboolean
ph_window_is_still (PhWindow *self)
{
  g_return_val_if_fail (PH_IS_WINDOW (self), TRUE);
  return ph_views_pane_is_still (PH_VIEWS_PANE (self->views));
}
