/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/cautions.h"

#include <glib/gi18n.h>

GtkWidget *
ph_cautions_new (void)
{
  static const char *const texts[] = {
    N_ ("Two people: one draws, one reads. The sight’s level is squared to the bow first."),
    N_ ("An arrow is nocked and points at a safe target: a bow is never drawn empty, never "
        "dry-fired."),
    N_ ("The finger stays off the release. The eyes are closed, so the draw is let down and never "
        "shot."),
    N_ ("The helper stands behind the bow-arm shoulder, clear of the drawing elbow, never forward "
        "of the string. Or a camera stands there."),
    N_ ("Hand and sling as for every shot. Rest between the draws; stop when a shoulder hurts."),
  };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *text = g_strdup_printf ("•  %s", _ (texts[i]));
      GtkWidget *label = gtk_label_new (text);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_box_append (GTK_BOX (box), label);
    }
  return box;
}
