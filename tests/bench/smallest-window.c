/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The smallest GTK 4 window with two GtkGLAreas: what the program's own start and memory are
 * measured against, in the same run on the same machine.
 */
#include <gtk/gtk.h>

static void
activate_cb (GtkApplication *app)
{
  GtkWidget *window = gtk_application_window_new (app);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  for (int i = 0; i < 2; i++)
    {
      GtkWidget *area = gtk_gl_area_new ();
      gtk_gl_area_set_required_version (GTK_GL_AREA (area), 3, 3);
      gtk_widget_set_hexpand (area, TRUE);
      gtk_box_append (GTK_BOX (box), area);
    }
  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_window_set_default_size (GTK_WINDOW (window), 1280, 800);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) app =
      gtk_application_new ("org.plumbhold.Smallest", G_APPLICATION_NON_UNIQUE);
  g_signal_connect (app, "activate", G_CALLBACK (activate_cb), NULL);
  return g_application_run (G_APPLICATION (app), argc, argv);
}
