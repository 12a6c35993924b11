/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A name that needs no quoting in a shell and holds no slash, whatever the title holds.
 */
#include "app/file-name.h"

char *
ph_file_name_for (const char *rig_title)
{
  GString *name = g_string_new (NULL);
  for (const char *c = rig_title ? rig_title : ""; *c && name->len < 60; c = g_utf8_next_char (c))
    {
      gunichar letter = g_utf8_get_char (c);
      if (g_unichar_isalnum (letter))
        g_string_append_unichar (name, g_unichar_tolower (letter));
      else if (name->len > 0 && name->str[name->len - 1] != '-')
        g_string_append_c (name, '-');
    }
  while (name->len > 0 && name->str[name->len - 1] == '-')
    g_string_truncate (name, name->len - 1);
  if (name->len == 0)
    g_string_append (name, "rig");
  g_string_append (name, PH_RIG_SUFFIX);
  return g_string_free (name, FALSE);
}
