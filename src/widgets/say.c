/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/say.h"

static GQuark
said_quark (void)
{
  return g_quark_from_static_string ("ph-said");
}

const char *
ph_said (GtkWidget *widget)
{
  g_return_val_if_fail (GTK_IS_WIDGET (widget), NULL);
  return g_object_get_qdata (G_OBJECT (widget), said_quark ());
}

gboolean
ph_say (GtkWidget *widget, const char *text)
{
  g_return_val_if_fail (GTK_IS_WIDGET (widget) && text != NULL, FALSE);
  if (g_strcmp0 (ph_said (widget), text) == 0)
    return FALSE;
  g_object_set_qdata_full (G_OBJECT (widget), said_quark (), g_strdup (text), g_free);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  return TRUE;
}
