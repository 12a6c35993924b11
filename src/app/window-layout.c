/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where there is no room for three columns (a window under 900 px, or text at twice its size) the
 * side pane becomes a drawer over the work area, opened by a button and F9. The toolkit's own
 * breakpoints are newer than the version promised, so the surface's size is watched; the change
 * itself waits for an idle moment, since widgets must not move house during their layout.
 */
#include <glib/gi18n.h>
#include <math.h>

#include "app/window-private.h"

#define NARROW_BELOW_PX 900
#define LARGE_TEXT 1.95 /* times the usual size; 2 with room for rounding */
#define SIDE_PX 340
#define SIDE_LEAST_PX 300
#define USUAL_FONT_PT 10.0

/* How large text is: the person's font against the usual one, and the display's factor. */
static double
text_scale (void)
{
  int dpi = -1;
  g_autofree char *font = NULL;
  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, "gtk-font-name", &font, NULL);
  double display = dpi > 0 ? dpi / 1024.0 / 96.0 : 1;
  PangoFontDescription *description = pango_font_description_from_string (font ? font : "");
  int size = pango_font_description_get_size (description);
  gboolean points = !pango_font_description_get_size_is_absolute (description);
  pango_font_description_free (description);
  return display * (size > 0 && points ? (double)size / PANGO_SCALE / USUAL_FONT_PT : 1.0);
}

static void
show_drawer (PhWindow *self, gboolean shown)
{
  if (shown)
    gtk_widget_set_visible (GTK_WIDGET (self->drawer), TRUE);
  gtk_revealer_set_reveal_child (self->drawer, shown);
  gtk_widget_set_visible (self->scrim, shown);
  if (shown)
    gtk_widget_child_focus (GTK_WIDGET (self->side), GTK_DIR_TAB_FORWARD);
}

static void
drawer_toggled_cb (PhWindow *self)
{
  show_drawer (self, self->narrow && gtk_toggle_button_get_active (self->drawer_button));
}

static void
drawer_revealed_cb (PhWindow *self)
{
  if (!gtk_revealer_get_child_revealed (self->drawer)
      && !gtk_revealer_get_reveal_child (self->drawer))
    gtk_widget_set_visible (GTK_WIDGET (self->drawer), FALSE);
}

/* Moves the side pane between its two homes. */
static void
set_narrow (PhWindow *self, gboolean narrow)
{
  if (narrow == self->narrow)
    return;
  self->narrow = narrow;
  g_object_ref (self->side);
  if (narrow)
    {
      gtk_paned_set_start_child (self->panes, NULL);
      gtk_revealer_set_child (self->drawer, GTK_WIDGET (self->side));
    }
  else
    {
      gtk_toggle_button_set_active (self->drawer_button, FALSE);
      gtk_revealer_set_child (self->drawer, NULL);
      gtk_paned_set_start_child (self->panes, GTK_WIDGET (self->side));
      gtk_paned_set_position (self->panes, SIDE_PX);
    }
  g_object_unref (self->side);
  gtk_widget_set_visible (GTK_WIDGET (self->drawer_button), narrow);
  /* Both are in the main menu too. */
  gtk_widget_set_visible (GTK_WIDGET (self->open), !narrow);
  gtk_widget_set_visible (GTK_WIDGET (self->make), !narrow);
  ph_window_show_name (self);
  if (narrow)
    gtk_widget_add_css_class (GTK_WIDGET (self), "narrow");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "narrow");
}

/* Both columns grow with the text. The side pane may be made narrower than what stands in it, or
 * the window could never be made narrow enough for the drawer: here it is given its room. */
static void
lay_out (PhWindow *self, int width)
{
  double scale = MAX (text_scale (), 1.0);
  int side = (int)lround (SIDE_LEAST_PX * scale);
  if (width <= 0)
    return;
  set_narrow (self, width < NARROW_BELOW_PX * scale || scale > LARGE_TEXT);
  if (!self->narrow && gtk_paned_get_position (self->panes) < side)
    gtk_paned_set_position (self->panes, side);
}

static gboolean
lay_out_cb (gpointer data)
{
  PhWindow *self = data;
  self->layout_idle = 0;
  lay_out (self, gtk_widget_get_width (GTK_WIDGET (self)));
  return G_SOURCE_REMOVE;
}

static void
lay_out_soon (PhWindow *self)
{
  if (!self->layout_idle)
    self->layout_idle = g_idle_add_full (G_PRIORITY_HIGH_IDLE, lay_out_cb, self, NULL);
}

static void
realized_cb (PhWindow *self)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (self));
  g_signal_connect_object (surface, "layout", G_CALLBACK (lay_out_soon), self, G_CONNECT_SWAPPED);
}

static gboolean
escape_cb (PhWindow *self, guint keyval)
{
  /* Before what has the focus, but not before a text that Escape would put back. */
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (self));
  if (keyval != GDK_KEY_Escape || !gtk_toggle_button_get_active (self->drawer_button)
      || GTK_IS_TEXT (focus))
    return GDK_EVENT_PROPAGATE;
  gtk_toggle_button_set_active (self->drawer_button, FALSE);
  gtk_widget_grab_focus (GTK_WIDGET (self->drawer_button));
  return GDK_EVENT_STOP;
}

static void
toggle_drawer (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void)action;
  (void)parameter;
  PhWindow *self = data;
  if (self->narrow)
    gtk_toggle_button_set_active (self->drawer_button,
                                  !gtk_toggle_button_get_active (self->drawer_button));
  else
    gtk_widget_child_focus (GTK_WIDGET (self->side), GTK_DIR_TAB_FORWARD);
}

void
ph_window_init_layout (PhWindow *self)
{
  static const GActionEntry entries[] = { { .name = "side-pane", .activate = toggle_drawer } };
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (escape_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect (self, "realize", G_CALLBACK (realized_cb), NULL);
  g_signal_connect_swapped (self->drawer_button, "toggled", G_CALLBACK (drawer_toggled_cb), self);
  g_signal_connect_swapped (self->drawer, "notify::child-revealed", G_CALLBACK (drawer_revealed_cb),
                            self);
  g_signal_connect_object (gtk_settings_get_default (), "notify::gtk-xft-dpi",
                           G_CALLBACK (lay_out_soon), self, G_CONNECT_SWAPPED);
  /* Before the first frame too, or three columns of large text would stretch the window. */
  int width, height;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  lay_out (self, width);
}

void
ph_window_dispose_layout (PhWindow *self)
{
  g_clear_handle_id (&self->layout_idle, g_source_remove);
}
