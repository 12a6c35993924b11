/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A window with nothing but bubble, readings, lean and Why, for looking at them by hand:
 *   try-readings RIG [--reference RIG] [--size WxH] [--units WORD] [--select ID] [--more] [--why]
 *                [--speed M_S] [--drag PART:KEY] [--shot FILE.png]
 * --drag turns that number to and fro in one gesture, a step a frame, and prints what a change
 * costs; --shot writes the window as a picture and ends.
 */
#include <gtk/gtk.h>
#include <time.h>

#include "math/root.h"
#include "widgets/bubble-pane.h"
#include "widgets/lean-pane.h"
#include "widgets/readings-pane.h"
#include "widgets/style.h"
#include "widgets/why-panel.h"

static char *reference, *size, *units_word, *selected, *drag, *shot;
static gboolean more, why;
static double speed;

static const GOptionEntry options[] = {
  { "reference", 0, 0, G_OPTION_ARG_FILENAME, &reference, NULL, NULL },
  { "size", 0, 0, G_OPTION_ARG_STRING, &size, NULL, NULL },
  { "units", 0, 0, G_OPTION_ARG_STRING, &units_word, NULL, NULL },
  { "select", 0, 0, G_OPTION_ARG_STRING, &selected, NULL, NULL },
  { "more", 0, 0, G_OPTION_ARG_NONE, &more, NULL, NULL },
  { "why", 0, 0, G_OPTION_ARG_NONE, &why, NULL, NULL },
  { "speed", 0, 0, G_OPTION_ARG_DOUBLE, &speed, NULL, NULL },
  { "drag", 0, 0, G_OPTION_ARG_STRING, &drag, NULL, NULL },
  { "shot", 0, 0, G_OPTION_ARG_FILENAME, &shot, NULL, NULL },
  G_OPTION_ENTRY_NULL,
};

static gboolean open_window = TRUE;

static gboolean
closed_cb (GtkWindow *window, gpointer data)
{
  (void)window;
  (void)data;
  open_window = FALSE;
  return FALSE;
}

/* The first descendant of that type, or null. */
static GtkWidget *
find (GtkWidget *widget, const char *type)
{
  if (g_str_equal (G_OBJECT_TYPE_NAME (widget), type))
    return widget;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, type);
      if (found)
        return found;
    }
  return NULL;
}

static GtkWidget *
new_window (PhDocument *document)
{
  GtkWidget *window = gtk_window_new (), *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *bubble = ph_bubble_pane_new (document), *readings = ph_readings_pane_new (document);
  GtkWidget *lean = ph_lean_pane_new (document), *panel = ph_why_panel_new (document);
  int width = 940, height = 640;
  if (size)
    sscanf (size, "%dx%d", &width, &height);
  gtk_widget_set_visible (panel, FALSE);
  g_object_bind_property (bubble, "why", panel, "visible", G_BINDING_SYNC_CREATE);
  g_object_set (bubble, "why", why, NULL);
  g_object_set (find (readings, "PhShootingButton"), "speed", speed, NULL);
  ph_readings_pane_set_more (PH_READINGS_PANE (readings), more);
  gtk_widget_set_hexpand (panel, TRUE);
  gtk_widget_set_vexpand (row, TRUE);
  gtk_widget_set_valign (lean, GTK_ALIGN_END);
  gtk_widget_set_hexpand (lean, TRUE);
  gtk_box_append (GTK_BOX (row), panel);
  gtk_box_append (GTK_BOX (row), lean);
  gtk_box_append (GTK_BOX (column), row);
  gtk_box_append (GTK_BOX (column), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (column), bubble);
  gtk_box_append (GTK_BOX (column), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (column), readings);
  gtk_window_set_child (GTK_WINDOW (window), column);
  gtk_window_set_title (GTK_WINDOW (window), "try-readings");
  gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  g_signal_connect (window, "close-request", G_CALLBACK (closed_cb), NULL);
  return window;
}

/* Processor time of this thread, so that a busy machine does not count. */
static double
processor_seconds (void)
{
  struct timespec now;
  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

static void
run_for (double seconds)
{
  gint64 end = g_get_monotonic_time () + (gint64)(seconds * G_USEC_PER_SEC);
  while (g_get_monotonic_time () < end && open_window)
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (500);
}

/* One number to and fro over ±10 of its unit, 120 steps, a frame each. */
static void
drag_number (PhDocument *document)
{
  g_auto (GStrv) of = g_strsplit (drag, ":", 2);
  double edits = 0.0, all = processor_seconds ();
  int steps = 120;
  ph_document_begin_gesture (document);
  for (int i = 0; i < steps && of[0] && of[1]; i++)
    {
      g_autoptr (GError) error = NULL;
      double value = 20.0 + 10.0 * (i % 40 < 20 ? i % 20 : 20 - i % 20) / 20.0;
      double start = processor_seconds ();
      if (!ph_document_set_number (document, of[0], of[1], 0, value, &error))
        g_printerr ("%s\n", error->message);
      edits += processor_seconds () - start;
      run_for (0.016);
    }
  all = processor_seconds () - all;
  ph_document_cancel_gesture (document);
  g_print ("a change with its texts %.0f µs, with layout and drawing %.0f µs of processor time\n",
           1e6 * edits / steps, 1e6 * all / steps);
}

/* Null while a layout is still to come. */
static GskRenderNode *
window_node (GtkWidget *window)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (window);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  gdk_paintable_snapshot (paintable, snapshot, gtk_widget_get_width (window),
                          gtk_widget_get_height (window));
  return gtk_snapshot_free_to_node (snapshot);
}

static void
write_shot (GtkWidget *window)
{
  GskRenderNode *node = window_node (window);
  for (int i = 0; i < 50 && !node; i++)
    {
      run_for (0.05);
      node = window_node (window);
    }
  if (!node)
    return;
  GskRenderer *renderer = gtk_native_get_renderer (GTK_NATIVE (window));
  g_autoptr (GdkTexture) texture = gsk_renderer_render_texture (
      renderer, node,
      &GRAPHENE_RECT_INIT (0.0f, 0.0f, (float)gtk_widget_get_width (window),
                           (float)gtk_widget_get_height (window)));
  gdk_texture_save_to_png (texture, shot);
  gsk_render_node_unref (node);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GOptionContext) context = g_option_context_new ("RIG");
  PhUnits units = PH_UNITS_MIXED;
  g_option_context_add_main_entries (context, options, NULL);
  if (!g_option_context_parse (context, &argc, &argv, &error) || argc < 2)
    return 2;
  gtk_init ();
  ph_math_init ();
  ph_style_load (gdk_display_get_default ());
  g_autoptr (PhDocument) document = ph_document_new ();
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (argv[1]);
  if (!ph_document_load_copy (document, file, &error))
    {
      g_printerr ("%s\n", error->message);
      return 1;
    }
  if (reference)
    {
      g_autoptr (GFile) other = g_file_new_for_commandline_arg (reference);
      ph_document_reference_load (document, other, NULL);
    }
  if (units_word && ph_units_from_word (units_word, &units))
    ph_document_set_units (document, units);
  ph_document_select (document, selected);
  GtkWidget *window = new_window (document);
  gtk_widget_show (window);
  run_for (0.8);
  if (drag)
    {
      drag_number (document);
      run_for (0.8);
    }
  if (shot)
    write_shot (window);
  else
    while (open_window)
      g_main_context_iteration (NULL, TRUE);
  gtk_window_destroy (GTK_WINDOW (window));
  run_for (0.05);
  return 0;
}
