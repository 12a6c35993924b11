/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The parts pane and the form alone in a window, for looking at them and for driving them without
 * the views: try-parts RIG CATALOGUE [WIDTH [HEIGHT]]. Not installed; closes with the window.
 */
#include <stdlib.h>

#include "store/rig-file.h"
#include "widgets/part-form.h"
#include "widgets/parts-pane.h"
#include "widgets/style.h"

/* What a script checks: selection, undo step, and the rig as it would be saved, on one line each.
 */
static void
dump (PhDocument *document)
{
  size_t size;
  char *text = ph_rig_print (ph_document_get_rig (document), &size);
  g_autofree char *line = g_strdelimit (g_strdup (text), "\n", ' ');
  free (text);
  g_print ("selected %s\nundo %s\nrig %s\n", ph_document_get_selected (document),
           ph_document_get_undo_label (document), line);
}

static void
act_cb (GSimpleAction *action, GVariant *parameter G_GNUC_UNUSED, gpointer data)
{
  PhDocument *document = data;
  const char *name = g_action_get_name (G_ACTION (action));
  g_autofree char *id = g_strdup (ph_document_get_selected (document));
  if (g_str_equal (name, "undo"))
    ph_document_undo (document);
  else if (g_str_equal (name, "dump"))
    dump (document);
  else if (ph_document_get_selected_part (document) < 0)
    return;
  else if (g_str_equal (name, "remove"))
    ph_document_remove (document, id);
  else if (g_str_equal (name, "duplicate"))
    ph_document_duplicate (document, id, NULL);
  else if (g_str_equal (name, "toggle-fitted"))
    ph_document_set_off (
        document, id,
        !ph_document_get_rig (document)->parts[ph_document_get_selected_part (document)].off, NULL);
}

static void
add_actions (GtkWidget *window, PhDocument *document)
{
  const char *const names[] = { "remove",        "duplicate", "copy", "paste",
                                "toggle-fitted", "undo",      "dump", NULL };
  GSimpleActionGroup *group = g_simple_action_group_new ();
  for (int i = 0; names[i]; i++)
    {
      g_autoptr (GSimpleAction) action = g_simple_action_new (names[i], NULL);
      g_signal_connect (action, "activate", G_CALLBACK (act_cb), document);
      g_action_map_add_action (G_ACTION_MAP (group), G_ACTION (action));
    }
  gtk_widget_insert_action_group (window, "win", G_ACTION_GROUP (group));
  g_object_unref (group);

  GtkEventController *keys = gtk_shortcut_controller_new ();
  const struct
  {
    const char *trigger, *action;
  } shortcuts[] = { { "Delete", "action(win.remove)" },
                    { "<Control>d", "action(win.duplicate)" },
                    { "<Control>z", "action(win.undo)" },
                    { "F9", "action(win.dump)" },
                    { "<Control>w", "action(window.close)" } };
  for (gsize i = 0; i < G_N_ELEMENTS (shortcuts); i++)
    gtk_shortcut_controller_add_shortcut (
        GTK_SHORTCUT_CONTROLLER (keys),
        gtk_shortcut_new (gtk_shortcut_trigger_parse_string (shortcuts[i].trigger),
                          gtk_shortcut_action_parse_string (shortcuts[i].action)));
  gtk_widget_add_controller (window, keys);
}

static gboolean closed;

static void
closed_cb (void)
{
  closed = TRUE;
}

static GtkWidget *
make_window (PhDocument *document, const PhCatalogue *catalogue, int width, int height)
{
  GtkWidget *window = gtk_window_new ();
  gtk_window_set_title (GTK_WINDOW (window), "try-parts");
  gtk_window_set_default_size (GTK_WINDOW (window), width, height);
  GtkWidget *pane = ph_parts_pane_new (document, catalogue);
  GtkWidget *form = ph_part_form_new (document);
  GtkWidget *panes = gtk_paned_new (GTK_ORIENTATION_VERTICAL);
  gtk_paned_set_start_child (GTK_PANED (panes), pane);
  gtk_paned_set_end_child (GTK_PANED (panes), form);
  gtk_paned_set_shrink_start_child (GTK_PANED (panes), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (panes), FALSE);
  gtk_paned_set_resize_start_child (GTK_PANED (panes), FALSE);
  gtk_paned_set_position (GTK_PANED (panes), 320);
  g_signal_connect_swapped (pane, "edit-form", G_CALLBACK (ph_part_form_edit), form);
  gtk_window_set_child (GTK_WINDOW (window), panes);
  add_actions (window, document);
  g_signal_connect (window, "destroy", G_CALLBACK (closed_cb), NULL);
  return window;
}

int
main (int argc, char **argv)
{
  if (argc < 3)
    return 2;
  g_set_prgname ("try-parts");
  gtk_init ();
  ph_style_load (gdk_display_get_default ());
  g_autoptr (PhDocument) document = ph_document_new ();
  g_autofree char *folder = g_dir_make_tmp ("try-parts-XXXXXX", NULL);
  ph_document_set_recovery_folder (document, folder);
  g_autoptr (GFile) file = g_file_new_for_path (argv[1]);
  g_autoptr (GError) error = NULL;
  if (!ph_document_load_copy (document, file, &error))
    g_printerr ("%s\n", error->message);
  ph_document_set_units (document, PH_UNITS_MIXED);
  PhCatalogue catalogue = { 0 };
  PhIssues issues = { 0 };
  if (ph_catalogue_load (argv[2], &catalogue, &issues) != PH_OK)
    g_printerr ("no catalogue\n");

  GtkWidget *window = make_window (document, &catalogue, argc > 3 ? atoi (argv[3]) : 340,
                                   argc > 4 ? atoi (argv[4]) : 860);
  gtk_window_present (GTK_WINDOW (window));
  while (!closed)
    g_main_context_iteration (NULL, TRUE);
  ph_document_forget_recovery (document);
  ph_catalogue_clear (&catalogue);
  ph_issues_clear (&issues);
  return 0;
}
