/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The length is not kept in a name by side: it stands in its own column beside it.
 */
#include "widgets/part-name.h"

#include <glib/gi18n.h>
#include <string.h>

/* Without what stands after a comma, and without a length at the end: "Back bar 12 in, slim" →
 * "Back bar". */
static char *
stem_of (const char *name)
{
  const char *comma = strchr (name, ',');
  g_autofree char *stem = comma ? g_strndup (name, (gsize)(comma - name)) : g_strdup (name);
  g_autoptr (GRegex) length = g_regex_new (" [0-9½¼¾. /-]+ ?(in|mm|cm)$", 0, 0, NULL);
  return g_regex_replace_literal (length, stem, -1, 0, "", 0, NULL);
}

static gboolean
says_a_side (const char *name)
{
  return g_regex_match_simple ("\\b(left|right)\\b", name, G_REGEX_CASELESS, 0);
}

char *
ph_name_on_side (const char *name, int side)
{
  if (side == 0 || says_a_side (name))
    return g_strdup (name);
  g_autofree char *stem = stem_of (name);
  gunichar first = g_unichar_tolower (g_utf8_get_char (stem));
  char letter[7] = "";
  g_unichar_to_utf8 (first, letter);
  g_autofree char *low = g_strconcat (letter, *stem ? g_utf8_next_char (stem) : "", NULL);
  /* Translators: a part's name by its side, like "Left side rod". */
  return side > 0 ? g_strdup_printf (_ ("Left %s"), low) : g_strdup_printf (_ ("Right %s"), low);
}

char *
ph_name_of_weights_on (const char *bar)
{
  if (!bar)
    return g_strdup (_ ("Weights"));
  g_autofree char *stem = stem_of (bar);
  /* Translators: weights by the bar they hang on, like "Back bar weights". */
  return g_strdup_printf (_ ("%s weights"), stem);
}
