/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two numbers that are tied to each other are both named with what they are now: the same sentence
 * is then right whichever of them was about to change.
 */
#include "document/refusal.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "document/direction.h"
#include "document/field-word.h"
#include "document/format.h"
#include "model/edit.h"

#define NAME_MOST 40

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

/* What would be right: "from 0 kg to 20 kg". */
static char *
range_words (const PhField *field, PhUnits units)
{
  g_autofree char *lo = ph_format_quantity_short (field->lo, field->quantity, units);
  g_autofree char *hi = ph_format_quantity_short (field->hi, field->quantity, units);
  if (field->hi > 1e12) /* no upper end */
    return g_strdup_printf (_ ("above %s"), lo);
  if (field->type == PH_FIELD_WHOLE)
    return g_strdup_printf (_ ("a whole number from %s to %s"), lo, hi);
  if (field->hi_open)
    return g_strdup_printf (_ ("above %s and below %s"), lo, hi);
  if (field->lo_open)
    return g_strdup_printf (_ ("above %s and at most %s"), lo, hi);
  return g_strdup_printf (_ ("from %s to %s"), lo, hi);
}

/* "301.433 kg"; of a point's number "4000 mm ahead". */
static char *
value_words (const PhIssue *issue, PhUnits units)
{
  const PhField *field = issue->field;
  gboolean point = field->type == PH_FIELD_VECTOR && field->lo < 0;
  g_autofree char *size =
      ph_format_quantity_short (point ? fabs (issue->value) : issue->value, field->quantity, units);
  if (!point || !isfinite (issue->value))
    return g_steal_pointer (&size);
  return g_strdup_printf ("%s %s", size,
                          ph_way_word (ph_way_of_position (issue->component), issue->value));
}

/* Numbers that go without a word in an undo step's name. */
static const struct
{
  PhObject object;
  const char *key, *word;
} more_words[] = {
  { PH_OBJECT_PART, "swing_deg", N_ ("angle out or in") },
  { PH_OBJECT_PART, "lift_deg", N_ ("angle up or down") },
  { PH_OBJECT_PART, "count", N_ ("number of discs") },
  { PH_OBJECT_PART, "at_mm", N_ ("place") },
  { PH_OBJECT_CHECK, "mass_g", N_ ("mass of a check’s rig") },
  { PH_OBJECT_CHECK, "com_mm", N_ ("balance point of a check’s rig") },
  { PH_OBJECT_CHECK, "draw_length_mm", N_ ("draw length of a check") },
  { PH_OBJECT_CHECK, "nock_height_mm", N_ ("nock height of a check") },
  { PH_OBJECT_CHECK, "bubble_deg", N_ ("bubble of a check") },
  { PH_OBJECT_CHECK, "sd_deg", N_ ("give or take of a check’s bubble") },
  { PH_OBJECT_CHECK, "predicted_deg", N_ ("predicted bubble of a check") },
  { PH_OBJECT_CHECK, "predicted_90_deg", N_ ("give or take of a check’s prediction") },
};

static const char *
word_for (PhObject object, const char *key)
{
  const char *word = ph_field_word_of (object, key);
  for (size_t i = 0; i < G_N_ELEMENTS (more_words) && word == NULL; i++)
    if (more_words[i].object == object && strcmp (more_words[i].key, key) == 0)
      word = _ (more_words[i].word);
  return word;
}

static const char *
word_of (const PhField *field)
{
  static const PhObject objects[] = { PH_OBJECT_PART, PH_OBJECT_BOW, PH_OBJECT_ARCHER,
                                      PH_OBJECT_HAND, PH_OBJECT_CHECK };
  for (size_t i = 0; i < G_N_ELEMENTS (objects); i++)
    {
      size_t n;
      const PhField *fields = ph_fields_of (objects[i], &n);
      if (field >= fields && field < fields + n)
        return word_for (objects[i], field->key);
    }
  return NULL;
}

/* "The bow mass is 301.433 kg; from 0 kg to 20 kg would be right." Null: no words for it. */
static char *
number_sentence (const PhRig *rig, int part, const PhIssue *issue, PhUnits units)
{
  const char *word = word_of (issue->field);
  if (word == NULL)
    return NULL;
  g_autofree char *value = value_words (issue, units), *range = range_words (issue->field, units);
  if (part < 0)
    return g_strdup_printf (_ ("The %s is %s; %s would be right."), word, value, range);
  g_autofree char *name = ph_text_cut (ph_part_name (&rig->parts[part]), NAME_MOST);
  return g_strdup_printf (_ ("%s: the %s is %s; %s would be right."), name, word, value, range);
}

char *
ph_refusal_of_issue (const PhRig *rig, const PhIssue *issue, PhUnits units)
{
  int part = issue->part != NULL ? ph_rig_find (rig, issue->part) : -1;
  char *sentence = NULL;
  if (issue->field != NULL)
    sentence = number_sentence (rig, part, issue, units);
  else if (issue->key != NULL && issue->where == PH_WHERE_PART && part >= 0)
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
