/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which views the pane shows: the free one in the place of side and strip, or any one alone over
 * the whole pane; with their keys and buttons.
 */
#include <glib/gi18n.h>

#include "widgets/views-pane-private.h"

/* Where a double click counts as one on the title. */
#define TITLE_PX 28
#define TITLE_WIDE_PX 140

void
ph_views_pane_set_show_free (PhViewsPane *self, gboolean show)
{
  g_return_if_fail (PH_IS_VIEWS_PANE (self));
  if (self->show_free == show)
    return;
  if (!self->free)
    {
      self->free = ph_bow_view_new (self->document, PH_VIEW_FREE);
      ph_views_pane_add_view (self, self->free);
      g_object_bind_property (self->views[PH_VIEW_SIDE], "dragged", self->free, "dragged",
                              G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);
    }
  self->show_free = show;
  GtkWidget *shown = show ? self->free : self->views[PH_VIEW_SIDE];
  GtkWidget *gone = show ? self->views[PH_VIEW_SIDE] : self->free;
  if (self->filling == gone)
    self->filling = shown;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_set_child_visible (shown, TRUE);
  gtk_widget_grab_focus (shown);
  g_object_notify (G_OBJECT (self), "show-free");
}

void
ph_views_pane_bind_settings (PhViewsPane *self, GSettings *settings)
{
  g_return_if_fail (PH_IS_VIEWS_PANE (self));
  if (settings)
    g_settings_bind (settings, "part-dragged", self->views[PH_VIEW_SIDE], "dragged",
                     G_SETTINGS_BIND_DEFAULT);
}

gboolean
ph_views_pane_get_show_free (PhViewsPane *self)
{
  g_return_val_if_fail (PH_IS_VIEWS_PANE (self), FALSE);
  return self->show_free;
}

static void
fill (PhViewsPane *self, GtkWidget *view)
{
  if (self->filling == view)
    return;
  self->filling = view;
  ph_views_pane_fit (self);
  if (view)
    gtk_widget_grab_focus (view);
  g_object_notify (G_OBJECT (self), "filled");
}

gboolean
ph_views_pane_get_filled (PhViewsPane *self)
{
  g_return_val_if_fail (PH_IS_VIEWS_PANE (self), FALSE);
  return self->filling != NULL;
}

void
ph_views_pane_leave_filled (PhViewsPane *self)
{
  g_return_if_fail (PH_IS_VIEWS_PANE (self));
  fill (self, NULL);
}

gboolean
ph_views_pane_is_still (PhViewsPane *self)
{
  g_return_val_if_fail (PH_IS_VIEWS_PANE (self), TRUE);
  return !gtk_widget_get_mapped (GTK_WIDGET (self)) || ph_gl_views_are_still (self->gl);
}

static GtkWidget *
view_with_focus (PhViewsPane *self)
{
  for (int i = 0; i < PH_PANE_VIEWS; i++)
    if (gtk_widget_has_focus (self->views[i]))
      return self->views[i];
  return self->show_free ? self->free : self->views[PH_VIEW_SIDE];
}

/* Before the views' own keys only what leaves the filled state. */
static gboolean
leave_key_cb (PhViewsPane *self, guint key)
{
  /* During a drag they are the drag's: Escape gives it up. */
  if (!self->filling || ph_document_in_gesture (self->document)
      || (key != GDK_KEY_Escape && key != GDK_KEY_Return && key != GDK_KEY_KP_Enter
          && key != GDK_KEY_F11))
    return GDK_EVENT_PROPAGATE;
  fill (self, NULL);
  return GDK_EVENT_STOP;
}

static gboolean
key_cb (PhViewsPane *self, guint key, guint code, GdkModifierType state)
{
  (void)code;
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK | GDK_META_MASK))
    return GDK_EVENT_PROPAGATE;
  if (key == GDK_KEY_v || key == GDK_KEY_V)
    ph_views_pane_set_show_free (self, !self->show_free);
  else if (key == GDK_KEY_F11)
    fill (self, view_with_focus (self));
  else
    return GDK_EVENT_PROPAGATE;
  return GDK_EVENT_STOP;
}

/* A double click on a view's title. */
static void
pressed_cb (PhViewsPane *self, int n, double x, double y)
{
  GtkWidget *view = gtk_widget_pick (GTK_WIDGET (self), x, y, GTK_PICK_DEFAULT);
  double view_x, view_y;
  if (n != 2 || !view || !PH_IS_BOW_VIEW (view)
      || !gtk_widget_translate_coordinates (GTK_WIDGET (self), view, x, y, &view_x, &view_y)
      || view_y > TITLE_PX || view_x > TITLE_WIDE_PX)
    return;
  fill (self, self->filling ? NULL : view);
}

void
ph_views_pane_init_filling (PhViewsPane *self)
{
  GtkEventController *leave = gtk_event_controller_key_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  gtk_event_controller_set_propagation_phase (leave, GTK_PHASE_CAPTURE);
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (click), GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (leave, "key-pressed", G_CALLBACK (leave_key_cb), self);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), leave);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

static void
free_clicked_cb (PhViewsPane *self)
{
  ph_views_pane_set_show_free (self, !self->show_free);
}

static void
fill_clicked_cb (PhViewsPane *self, GtkWidget *button)
{
  GtkWidget *view = gtk_widget_get_ancestor (button, PH_TYPE_BOW_VIEW);
  fill (self, self->filling ? NULL : view);
}

void
ph_views_pane_add_buttons (PhViewsPane *self, PhBowView *view)
{
  PhView which = ph_bow_view_get_view (view);
  if (which == PH_VIEW_SIDE || which == PH_VIEW_FREE)
    {
      gboolean side = which == PH_VIEW_SIDE;
      GtkWidget *turn = gtk_button_new_with_label (side ? _ ("Free") : _ ("Side"));
      gtk_widget_set_tooltip_text (turn, side ? _ ("Look from anywhere (V)")
                                              : _ ("Look from the side (V)"));
      g_signal_connect_swapped (turn, "clicked", G_CALLBACK (free_clicked_cb), self);
      ph_bow_view_add_button (view, turn);
    }
  GtkWidget *whole = gtk_button_new_from_icon_name ("view-fullscreen-symbolic");
  gtk_widget_set_tooltip_text (whole, _ ("Fill the window, or not (F11)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (whole), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Fill the window, or not"), -1);
  g_signal_connect_swapped (whole, "clicked", G_CALLBACK (fill_clicked_cb), self);
  ph_bow_view_add_button (view, whole);
}

/* Between two views that are shown, where an area covers the pane's own ground. */
static void
append_gap (PhViewsPane *self, GtkSnapshot *snapshot, float x, float y, float width, float height)
{
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (self));
  GdkRGBA line;
  if (gtk_style_context_lookup_color (style, "borders", &line))
    gtk_snapshot_append_color (snapshot, &line, &GRAPHENE_RECT_INIT (x, y, width, height));
}

void
ph_views_pane_snapshot_gaps (PhViewsPane *self, GtkSnapshot *snapshot)
{
  graphene_rect_t behind, above;
  GtkWidget *pane = GTK_WIDGET (self), *strip = self->views[PH_VIEW_ABOVE];
  if (!ph_gl_views_are_on (self->gl) || self->filling
      || !gtk_widget_compute_bounds (self->views[PH_VIEW_BEHIND], pane, &behind))
    return;
  append_gap (self, snapshot, behind.origin.x - PH_PANE_GAP, 0, PH_PANE_GAP,
              (float)gtk_widget_get_height (pane));
  if (gtk_widget_get_mapped (strip) && gtk_widget_compute_bounds (strip, pane, &above))
    append_gap (self, snapshot, 0, above.origin.y - PH_PANE_GAP, above.size.width, PH_PANE_GAP);
}

GtkAllocation
ph_views_pane_allocation (const PhViewRect *rect)
{
  return (GtkAllocation){ (int)rect->x, (int)rect->y, MAX (1, (int)rect->width),
                          MAX (1, (int)rect->height) };
}

void
ph_views_pane_allocate_view (GtkWidget *view, const PhViewRect *rect)
{
  if (!view)
    return;
  gtk_widget_set_child_visible (view, rect != NULL);
  if (!rect)
    return;
  GtkAllocation place = ph_views_pane_allocation (rect);
  gtk_widget_size_allocate (view, &place, -1);
}
