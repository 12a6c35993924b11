/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/tilt-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "base/quantity.h"
#include "document/format.h"

gboolean
ph_tilt_has_level (const PhRig *rig)
{
  return rig->bow.kind == PH_BOW_COMPOUND;
}

gboolean
ph_tilt_is_left (double tilt_deg, gboolean level)
{
  return level ? tilt_deg > 0 : tilt_deg < 0;
}

double
ph_tilt_of_side (double size_deg, gboolean left, gboolean level)
{
  return left == level ? size_deg : -size_deg;
}

/* The size with the digit that is shown; null where that is nothing. */
static char *
size_text (double tilt_deg)
{
  g_autofree char *number = ph_format_number (fabs (tilt_deg), 1);
  return round (fabs (tilt_deg) * 10) > 0 ? g_strconcat (number, "°", NULL) : NULL;
}

char *
ph_tilt_words (double tilt_deg, gboolean level)
{
  if (!isfinite (tilt_deg))
    return ph_format_number (tilt_deg, 1);
  g_autofree char *size = size_text (tilt_deg);
  if (size == NULL)
    return g_strdup (level ? _ ("centred") : _ ("plumb"));
  return g_strdup_printf (ph_tilt_is_left (tilt_deg, level) ? _ ("%s left") : _ ("%s right"), size);
}

char *
ph_tilt_phrase (double tilt_deg, gboolean level)
{
  g_autofree char *words = ph_tilt_words (tilt_deg, level);
  if (level)
    return g_strdup_printf (_ ("bubble %s"), words);
  g_autofree char *size = isfinite (tilt_deg) ? size_text (tilt_deg) : NULL;
  return size != NULL ? g_strdup_printf (_ ("leans %s"), words)
                      : g_strdup_printf (_ ("stands %s"), words);
}

/* Takes a word off the text's start or end, whatever its letters' size. */
static gboolean
take_word (GString *text, const char *word)
{
  gsize n = strlen (word);
  g_autofree char *small = g_utf8_strdown (text->str, -1);
  gssize at = g_str_has_prefix (small, word)   ? 0
              : g_str_has_suffix (small, word) ? (gssize)(strlen (small) - n)
                                               : -1;
  /* Small letters of another length would put it elsewhere. */
  if (at < 0 || strlen (small) != text->len)
    return FALSE;
  g_string_erase (text, at, (gssize)n);
  return TRUE;
}

gboolean
ph_tilt_parse (const char *text, gboolean level, double *tilt_deg)
{
  g_autoptr (GString) rest = g_string_new (NULL);
  g_autofree char *trimmed = g_strstrip (g_strdup (text));
  double size;
  g_string_assign (rest, trimmed);
  if (take_word (rest, _ ("centred")) || take_word (rest, _ ("plumb")))
    {
      *tilt_deg = 0;
      return rest->len == 0;
    }
  gboolean left = take_word (rest, _ ("left")), right = !left && take_word (rest, _ ("right"));
  if (ph_quantity_parse (rest->str, PH_QUANTITY_ANGLE, PH_UNITS_METRIC, &size) != PH_TYPED_OK
      || ((left || right) && (size < 0 || strchr (rest->str, '+') != NULL)))
    return FALSE;
  *tilt_deg = left || right ? ph_tilt_of_side (size, left, level) : size;
  return TRUE;
}

char *
ph_tilt_half (double half_deg)
{
  g_autofree char *number = ph_format_number (half_deg, 1);
  return g_strdup_printf ("±%s°", number);
}
