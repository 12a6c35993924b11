/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Both sides are folded to one case and lose their spaces and hyphens; what is left of a typed word
 * is looked for in what is left of each phrase.
 */
#include "widgets/search-words.h"

#include <string.h>

/* A shorter word may end in s of its own. */
#define PLURAL_LEAST 4

/* Without spaces and hyphens, the written ones of other keyboards too. */
static char *
squeezed (const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  GString *left = g_string_new (NULL);
  for (const char *c = folded; *c; c = g_utf8_next_char (c))
    {
      gunichar letter = g_utf8_get_char (c);
      if (!g_unichar_isspace (letter) && g_unichar_type (letter) != G_UNICODE_DASH_PUNCTUATION)
        g_string_append_unichar (left, letter);
    }
  return g_string_free (left, FALSE);
}

static gboolean
is_in_a_phrase (char **phrases, const char *word)
{
  g_autofree char *wanted = squeezed (word);
  gsize n = strlen (wanted);
  if (n >= PLURAL_LEAST && wanted[n - 1] == 's')
    wanted[n - 1] = '\0';
  for (char **phrase = phrases; *phrase; phrase++)
    {
      g_autofree char *text = squeezed (*phrase);
      if (strstr (text, wanted))
        return TRUE;
    }
  return FALSE;
}

gboolean
ph_search_matches (const char *text, const char *search)
{
  g_auto (GStrv) phrases = g_strsplit (text, ",", -1);
  g_auto (GStrv) words = g_strsplit_set (search, " \t,", -1);
  for (char **word = words; *word; word++)
    if (!is_in_a_phrase (phrases, *word))
      return FALSE;
  return TRUE;
}
