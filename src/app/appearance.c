/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A desktop says "dark" in one of two ways: by a preference, or by a theme whose name ends in
 * "-dark". A person's own choice overrides both; "system" gives both back.
 */
#include "app/appearance.h"

static const char *const words[] = { "system", "light", "dark" };

void
ph_appearance_apply (PhAppearance appearance)
{
  GtkSettings *settings = gtk_settings_get_default ();
  gtk_settings_reset_property (settings, "gtk-application-prefer-dark-theme");
  gtk_settings_reset_property (settings, "gtk-theme-name");
  if (appearance == PH_APPEARANCE_SYSTEM)
    return;
  g_object_set (settings, "gtk-application-prefer-dark-theme", appearance == PH_APPEARANCE_DARK,
                NULL);
  g_autofree char *theme = NULL;
  g_object_get (settings, "gtk-theme-name", &theme, NULL);
  if (appearance == PH_APPEARANCE_LIGHT && theme && g_str_has_suffix (theme, "-dark"))
    {
      theme[strlen (theme) - strlen ("-dark")] = '\0';
      g_object_set (settings, "gtk-theme-name", theme, NULL);
    }
}

const char *
ph_appearance_word (PhAppearance appearance)
{
  g_return_val_if_fail ((gsize)appearance < G_N_ELEMENTS (words), words[0]);
  return words[appearance];
}

gboolean
ph_appearance_from_word (const char *word, PhAppearance *appearance)
{
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    if (g_str_equal (word, words[i]))
      {
        *appearance = (PhAppearance)i;
        return TRUE;
      }
  return FALSE;
}
