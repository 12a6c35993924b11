/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two numbers that are tied to each other are both named with what they are now: the same sentence
 * is then right whichever of them was about to change.
 */
#include "document/refusal.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#include "document/format.h"
#include "model/edit.h"

char *
ph_refusal_of_range (const PhField *field, double value, PhUnits units)
{
  if (ph_field_accepts (field, value, NULL))
    return NULL;
  g_autofree char *lo = ph_format_quantity_short (field->lo, field->quantity, units);
  g_autofree char *hi = ph_format_quantity_short (field->hi, field->quantity, units);
  if (field->hi > 1e12) /* no upper end */
    return g_strdup_printf (_ ("Must be above %s."), lo);
  if (field->type == PH_FIELD_WHOLE)
    return g_strdup_printf (_ ("Must be a whole number from %s to %s."), lo, hi);
  if (field->hi_open)
    return g_strdup_printf (_ ("Must be above %s and below %s."), lo, hi);
  if (field->lo_open)
    return g_strdup_printf (_ ("Must be above %s and at most %s."), lo, hi);
  return g_strdup_printf (_ ("Must lie between %s and %s."), lo, hi);
}

/* Two keys of a part and the sentence that ties their numbers. */
typedef struct
{
  PhPartKind kind;
  const char *key; /* of the issue */
  const char *first, *second;
  const char *sentence;
} Tie;

static const Tie ties[] = {
  { PH_PART_BAR, "inner_mm", "inner_mm", "outer_mm",
    N_ ("The inner diameter (now %s) must stay below the outer (now %s).") },
  { PH_PART_BAR, "fitting_mm", "fitting_mm", "length_mm",
    N_ ("A fitting (now %s) must be no longer than the bar (now %s).") },
  { PH_PART_BAR, "root_fitting_g", "root_fitting_g", "mass_g",
    N_ ("Both fittings together (the bow end’s is now %s) must weigh no more than the bar (now "
        "%s).") },
  { PH_PART_BAR, "tip_fitting_g", "tip_fitting_g", "mass_g",
    N_ ("The fitting at the tip (now %s) must weigh no more than the bar (now %s).") },
  { PH_PART_WEIGHTS, "bore_mm", "bore_mm", "diameter_mm",
    N_ ("The hole (now %s) must be narrower than the discs (now %s).") },
  { PH_PART_WEIGHTS, "diameter_mm", "diameter_mm", "bore_mm",
    N_ ("The discs (now %s) must be wider than their hole (now %s).") },
  { PH_PART_WEIGHTS, "count", "count", "each_g",
    N_ ("So many discs (now %s of %s each) are more than 20 kg, the most a part may weigh.") },
};

static char *
shown (const PhPart *part, const char *key, PhUnits units)
{
  const PhField *field = ph_field_find (PH_OBJECT_PART, key, NULL);
  return ph_format_quantity_short (ph_field_number (field, part, 0), field->quantity, units);
}

static char *
part_sentence (const PhPart *part, const PhIssue *issue, PhUnits units)
{
  for (size_t i = 0; i < G_N_ELEMENTS (ties); i++)
    if (part->kind == ties[i].kind && strcmp (issue->key, ties[i].key) == 0)
      {
        g_autofree char *first = shown (part, ties[i].first, units);
        g_autofree char *second = shown (part, ties[i].second, units);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
        return g_strdup_printf (_ (ties[i].sentence), first, second);
#pragma GCC diagnostic pop
      }
  if (strcmp (issue->key, PH_KEY_MIRROR) == 0)
    {
      g_autofree char *first =
          g_utf8_strup (issue->text, g_utf8_next_char (issue->text) - issue->text);
      return g_strconcat (first, g_utf8_next_char (issue->text), ".", NULL);
    }
  return strcmp (issue->key, "along_mm") == 0
             ? g_strdup (_ ("Weights along a bar must stay between its two ends."))
         : strcmp (issue->key, "on") == 0
             ? g_strdup (_ ("This place is taken or does not fit: choose another, or take off what "
                            "is there first."))
             : NULL;
}

static char *
bow_sentence (const PhRig *rig, const PhIssue *issue, PhUnits units)
{
  g_autofree char *draw =
      ph_format_quantity_short (rig->archer.draw_length_mm, PH_QUANTITY_LENGTH, units);
  if (strcmp (issue->key, "brace_height_mm") == 0)
    return g_strdup_printf (_ ("The brace height must stay below the draw length (now %s)."), draw);
  if (strcmp (issue->key, "mass_g") == 0)
    return g_strdup (_ ("The bow or a part on it must weigh something."));
  return NULL;
}

char *
ph_refusal_of_issue (const PhRig *rig, const PhIssue *issue, PhUnits units)
{
  int part = issue->part != NULL ? ph_rig_find (rig, issue->part) : -1;
  char *sentence = NULL;
  if (issue->key != NULL && issue->where == PH_WHERE_PART && part >= 0)
    sentence = part_sentence (&rig->parts[part], issue, units);
  else if (issue->key != NULL && issue->where == PH_WHERE_BOW)
    sentence = bow_sentence (rig, issue, units);
  if (sentence != NULL)
    return sentence;
  char *line = ph_issue_line (issue);
  char *copy = g_strdup (line);
  free (line);
  return copy;
}
