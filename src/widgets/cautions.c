/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/cautions.h"

#include <glib/gi18n.h>

#define CAUTIONS 5

/* Without a level, and then with one: a recurve is shot off the fingers. */
static const char *const texts[CAUTIONS][2] = {
  { N_ ("Two people: one draws, one reads. Or a camera takes the string from behind."),
    N_ ("Two people: one draws, one reads. The sight’s level is squared to the bow first.") },
  { N_ ("An arrow is nocked and points at a safe target: a bow is never drawn empty, never "
        "dry-fired."),
    NULL },
  { N_ ("The eyes are closed, so the draw is let down slowly, the fingers still on the string, and "
        "never shot."),
    N_ ("The finger stays off the release. The eyes are closed, so the draw is let down and never "
        "shot.") },
  { N_ ("The helper stands behind the bow-arm shoulder, clear of the drawing elbow, never forward "
        "of the string. Or a camera stands there."),
    NULL },
  { N_ ("Hand and sling as for every shot. Rest between the draws; stop when a shoulder hurts."),
    NULL },
};

GtkWidget *
ph_cautions_new (gboolean level)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  for (int i = 0; i < CAUTIONS; i++)
    {
      GtkWidget *label = gtk_label_new (NULL);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_box_append (GTK_BOX (box), label);
    }
  ph_cautions_show (box, level);
  return box;
}

void
ph_cautions_show (GtkWidget *cautions, gboolean level)
{
  GtkWidget *label = gtk_widget_get_first_child (cautions);
  for (int i = 0; i < CAUTIONS; i++, label = gtk_widget_get_next_sibling (label))
    {
      const char *words = level && texts[i][1] ? texts[i][1] : texts[i][0];
      g_autofree char *text = g_strdup_printf ("•  %s", _ (words));
      gtk_label_set_text (GTK_LABEL (label), text);
    }
}
