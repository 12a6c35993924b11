/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each struct that changed gives its phrases ("out 20° → 26°"); one or two of them make a label,
 * more are only counted. Parts are matched by id.
 */
#include "document/undo-label.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "document/direction.h"
#include "document/field-word.h"
#include "document/format.h"

#define NAME_MOST 40
#define PHRASES_MOST 2

typedef struct
{
  const PhRig *before, *after;
  PhCompiled *compiled_before, *compiled_after; /* made when an angle asks */
  PhUnits units;
} Comparison;

/* Names. */

char *
ph_name_inside (const char *name)
{
  g_autofree char *cut = ph_text_cut (name, NAME_MOST);
  size_t first_word = strcspn (cut, " ");
  gboolean proper = memchr (cut, '\'', first_word) != NULL
                    || g_strstr_len (cut, (gssize)first_word, "\xe2\x80\x99") != NULL;
  const char *second = *cut != '\0' ? g_utf8_next_char (cut) : cut;
  /* Translators: "lowercase" where part names inside a sentence start with a small letter ("back
   * bar length"), "keep" where they stay as the person wrote them. */
  gboolean keep = !g_str_equal (C_ ("part names inside a sentence", "lowercase"), "lowercase");
  if (proper || keep || !g_unichar_islower (g_utf8_get_char (second)))
    return g_strdup (cut);
  g_autofree char *first = g_utf8_strdown (cut, second - cut);
  return g_strconcat (first, second, NULL);
}

static char *
part_inside (const PhPart *part)
{
  return ph_name_inside (ph_part_name (part));
}

/* "its weights", "its damper", "the 3 parts on it"; null where nothing hangs on part i. */
static char *
guests_of (const PhRig *rig, size_t i)
{
  static const char *const its[PH_PART_KINDS] = { [PH_PART_BAR] = N_ ("its bar"),
                                                  [PH_PART_WEIGHTS] = N_ ("its weights"),
                                                  [PH_PART_DAMPER] = N_ ("its damper"),
                                                  [PH_PART_BRACKET] = N_ ("its mount"),
                                                  [PH_PART_ACCESSORY] = N_ ("its accessory") };
  guint n = 0, weights = 0;
  PhPartKind kind = PH_PART_WEIGHTS;
  for (size_t k = 0; k < rig->n_parts; k++)
    if (k != i && ph_rig_hangs_on (rig, k, i))
      {
        n++;
        kind = rig->parts[k].kind;
        weights += kind == PH_PART_WEIGHTS;
      }
  if (n == 0)
    return NULL;
  if (n == 1 || weights == n)
    return g_strdup (_ (its[kind]));
  return g_strdup_printf (ngettext ("the %u part on it", "the %u parts on it", n), n);
}

static char *
and_guests (char *name, const PhRig *rig, size_t i)
{
  g_autofree char *guests = guests_of (rig, i);
  if (guests == NULL)
    return name;
  /* Translators: "back bar", then "its weights". */
  char *both = g_strdup_printf (_ ("%s and %s"), name, guests);
  g_free (name);
  return both;
}

char *
ph_undo_label_with_guests (const PhRig *rig, size_t i)
{
  return and_guests (part_inside (&rig->parts[i]), rig, i);
}

char *
ph_undo_label_between (const PhRig *rig, size_t i, size_t below)
{
  g_autofree char *name = part_inside (&rig->parts[i]), *bar = part_inside (&rig->parts[below]);
  /* Translators: "quick connect", then "front bar", which now hangs on it. */
  return g_strdup_printf (_ ("put %s before %s"), name, bar);
}

/* Phrases of one struct. */

static void
add (GPtrArray *phrases, char *phrase)
{
  g_ptr_array_add (phrases, phrase);
}

/* "out 20° → 26°", "in 3° → out 5°". */
static char *
directed (PhWay way, double from, double to, PhQuantity quantity, PhUnits units)
{
  if (from * to < 0)
    {
      g_autofree char *first = ph_format_quantity_short (fabs (from), quantity, units);
      g_autofree char *second = ph_format_quantity_short (fabs (to), quantity, units);
      return g_strdup_printf ("%s %s → %s %s", ph_way_word (way, from), first,
                              ph_way_word (way, to), second);
    }
  g_autofree char *step = ph_format_quantity_step (fabs (from), fabs (to), quantity, units);
  return g_strdup_printf ("%s %s", ph_way_word (way, from != 0 ? from : to), step);
}

static PhWay
way_of_angle (Comparison *all, const PhField *field, size_t i_before, size_t i_after)
{
  double from = ph_field_number (field, &all->before->parts[i_before], 0);
  double to = ph_field_number (field, &all->after->parts[i_after], 0);
  if (all->compiled_before == NULL)
    {
      all->compiled_before = ph_compile_rig (all->before);
      all->compiled_after = ph_compile_rig (all->after);
    }
  if (g_str_equal (field->key, "lift_deg"))
    return ph_way_of_lift (all->compiled_after, i_after);
  return ph_way_of_change (ph_way_of_swing (all->compiled_before, i_before),
                           ph_way_of_swing (all->compiled_after, i_after), from * to < 0);
}

static gboolean
is_point (const PhField *field)
{
  return field->type == PH_FIELD_VECTOR && field->lo < 0;
}

/* The phrase of one number without the part's name; `word` may be null. */
static char *
number_phrase (const PhField *field, const char *word, int component, double from, double to,
               PhUnits units)
{
  g_autofree char *step =
      is_point (field) && isfinite (from) && isfinite (to)
          ? directed (ph_way_of_position (component), from, to, field->quantity, units)
          : ph_format_quantity_step (from, to, field->quantity, units);
  return word != NULL ? g_strdup_printf ("%s %s", word, step) : g_steal_pointer (&step);
}

static gboolean
differ (double a, double b)
{
  return a != b && !(isnan (a) && isnan (b));
}

/* Every number of a struct of that kind that differs. */
static void
add_numbers (PhObject object, const void *before, const void *after, PhUnits units,
             GPtrArray *phrases)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    for (int c = 0; c < ph_field_components (&fields[i]); c++)
      {
        double from = ph_field_number (&fields[i], before, c);
        double to = ph_field_number (&fields[i], after, c);
        gboolean angle = object == PH_OBJECT_PART
                         && (g_str_equal (fields[i].key, "swing_deg")
                             || g_str_equal (fields[i].key, "lift_deg"));
        if (!angle && differ (from, to))
          add (phrases, number_phrase (&fields[i], ph_field_word_of (object, fields[i].key), c,
                                       from, to, units));
      }
}

static void
add_angles (Comparison *all, size_t i_before, size_t i_after, GPtrArray *phrases)
{
  static const char *const keys[] = { "swing_deg", "lift_deg" };
  for (size_t k = 0; k < G_N_ELEMENTS (keys); k++)
    {
      const PhField *field = ph_field_find (PH_OBJECT_PART, keys[k], NULL);
      double from = ph_field_number (field, &all->before->parts[i_before], 0);
      double to = ph_field_number (field, &all->after->parts[i_after], 0);
      if (from != to)
        add (phrases, directed (way_of_angle (all, field, i_before, i_after), from, to,
                                PH_QUANTITY_ANGLE, all->units));
    }
}

/* One or two phrases behind the name, or only that there are more. */
static char *
join (const char *name, const GPtrArray *phrases)
{
  const char *const *text = (const char *const *)phrases->pdata;
  if (phrases->len == 1)
    return name != NULL ? g_strdup_printf ("%s %s", name, text[0]) : g_strdup (text[0]);
  if (phrases->len <= PHRASES_MOST)
    return name != NULL ? g_strdup_printf ("%s %s, %s", name, text[0], text[1])
                        : g_strdup_printf ("%s, %s", text[0], text[1]);
  if (name == NULL)
    return g_strdup (_ ("several numbers"));
  return g_strdup_printf (_ ("several numbers of %s"), name);
}

/* Parts. */

static gboolean
same_limits (const PhLimits *a, const PhLimits *b)
{
  return a->given == b->given && (!a->given || (a->lo == b->lo && a->hi == b->hi));
}

/* What changed of a part beside its numbers; null: nothing that a person would name. */
static char *
special_change (const PhPart *before, const PhPart *after, const char *name)
{
  if (!ph_text_equal (before->name, after->name))
    {
      g_autofree char *old = ph_text_cut (ph_part_name (before), NAME_MOST);
      g_autofree char *fresh = ph_text_cut (ph_part_name (after), NAME_MOST);
      return g_strdup_printf (_ ("renamed %s to %s"), old, fresh);
    }
  if (before->off != after->off)
    return g_strdup_printf (after->off ? _ ("took %s off") : _ ("fitted %s"), name);
  if (!ph_text_equal (before->on, after->on))
    return g_strdup_printf (_ ("moved %s"), name);
  if (before->locked != after->locked)
    return g_strdup_printf (after->locked ? _ ("locked %s") : _ ("unlocked %s"), name);
  if (!same_limits (&before->limit_swing, &after->limit_swing)
      || !same_limits (&before->limit_lift, &after->limit_lift)
      || !same_limits (&before->limit_count, &after->limit_count))
    return g_strdup_printf (_ ("limits of %s"), name);
  return NULL;
}

static const PhSd *
find_sd (const PhSd *sds, size_t n, const char *key)
{
  for (size_t i = 0; i < n; i++)
    if (strcmp (sds[i].key, key) == 0)
      return &sds[i];
  return NULL;
}

/* "sight mass measured": the first number whose stated deviation came or changed; null: none. Of
   the bow the word says whose it is, `name` is null then. */
static char *
measured_label (PhObject object, const PhSd *before, size_t n_before, const PhSd *after,
                size_t n_after, const char *name)
{
  for (size_t i = 0; i < n_after; i++)
    {
      const PhSd *old = find_sd (before, n_before, after[i].key);
      const char *word = ph_field_word_of (object, after[i].key);
      if (old != NULL && memcmp (old->v, after[i].v, sizeof old->v) == 0)
        continue;
      if (word == NULL) /* where a part is needs no word of its own elsewhere */
        word = _ ("place");
      return name != NULL ? g_strdup_printf (_ ("%s %s measured"), name, word)
                          : g_strdup_printf (_ ("%s measured"), word);
    }
  return NULL;
}

static char *
part_label (Comparison *all, size_t i_before, size_t i_after)
{
  const PhPart *before = &all->before->parts[i_before], *after = &all->after->parts[i_after];
  g_autofree char *name = part_inside (after);
  char *special = special_change (before, after, name);
  if (special != NULL)
    return special;
  g_autoptr (GPtrArray) phrases = g_ptr_array_new_with_free_func (g_free);
  add_angles (all, i_before, i_after, phrases);
  add_numbers (PH_OBJECT_PART, before, after, all->units, phrases);
  if (phrases->len > 0)
    return join (name, phrases);
  char *measured =
      measured_label (PH_OBJECT_PART, before->sds, before->n_sds, after->sds, after->n_sds, name);
  return measured != NULL ? measured : g_strdup_printf (_ ("changed %s"), name);
}

/* Whether two parts would be written alike: by way of two rigs of one part each. */
static gboolean
same_part (const PhPart *a, const PhPart *b)
{
  PhRig one = { .parts = (PhPart *)a, .n_parts = 1 };
  PhRig other = { .parts = (PhPart *)b, .n_parts = 1 };
  return ph_rig_equal (&one, &other);
}

/* The parts of `rig` that `other` does not have and whose host it has: how many, and the first. */
static guint
roots_missing (const PhRig *rig, const PhRig *other, size_t *first)
{
  guint n = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      int host = ph_rig_host (rig, i, NULL);
      if (ph_rig_find (other, rig->parts[i].id) >= 0
          || (host >= 0 && ph_rig_find (other, rig->parts[host].id) < 0))
        continue;
      if (n++ == 0)
        *first = i;
    }
  return n;
}

static char *
came_or_went (const PhRig *before, const PhRig *after)
{
  size_t lost = 0, won = 0;
  guint n_lost = roots_missing (before, after, &lost), n_won = roots_missing (after, before, &won);
  if (n_lost == 0 && n_won == 0)
    return NULL;
  if (n_lost > 0 && n_won > 0)
    return g_strdup (_ ("several parts"));
  g_autofree char *name = n_lost > 0 ? ph_undo_label_with_guests (before, lost)
                                     : ph_undo_label_with_guests (after, won);
  if (n_lost == 1)
    return g_strdup_printf (_ ("removed %s"), name);
  if (n_won == 1)
    return g_strdup_printf (_ ("added %s"), name);
  return n_lost > 0
             ? g_strdup_printf (ngettext ("removed %u part", "removed %u parts", n_lost), n_lost)
             : g_strdup_printf (ngettext ("added %u part", "added %u parts", n_won), n_won);
}

static char *
parts_label (Comparison *all)
{
  char *label = came_or_went (all->before, all->after);
  if (label != NULL)
    return label;
  guint n = 0;
  size_t first_before = 0, first_after = 0;
  for (size_t i = 0; i < all->after->n_parts; i++)
    {
      int k = ph_rig_find (all->before, all->after->parts[i].id);
      if (k < 0 || same_part (&all->before->parts[k], &all->after->parts[i]) || n++ > 0)
        continue;
      first_before = (size_t)k;
      first_after = i;
    }
  if (n == 0)
    return NULL;
  if (n == 1)
    return part_label (all, first_before, first_after);
  return g_strdup_printf (ngettext ("%u part", "%u parts", n), n);
}

/* The rest of the rig. */

static char *
checks_label (const PhArcher *before, const PhArcher *after)
{
  if (after->n_checks > before->n_checks)
    return g_strdup (_ ("added bubble check"));
  if (after->n_checks < before->n_checks)
    return g_strdup (_ ("removed bubble check"));
  for (size_t i = 0; i < after->n_checks; i++)
    if (after->checks[i].aside != before->checks[i].aside)
      return g_strdup (after->checks[i].aside ? _ ("set a bubble check aside")
                                              : _ ("took a bubble check back"));
  g_autoptr (GPtrArray) phrases = g_ptr_array_new_with_free_func (g_free);
  for (size_t i = 0; i < after->n_checks; i++)
    add_numbers (PH_OBJECT_CHECK, &before->checks[i], &after->checks[i], PH_UNITS_METRIC, phrases);
  return phrases->len > 0 ? g_strdup (_ ("bubble check")) : NULL;
}

static char *
numbers_label (const Comparison *all)
{
  g_autoptr (GPtrArray) phrases = g_ptr_array_new_with_free_func (g_free);
  const PhArcher *before = &all->before->archer, *after = &all->after->archer;
  add_numbers (PH_OBJECT_ARCHER, before, after, all->units, phrases);
  add_numbers (PH_OBJECT_HAND, before, after, all->units, phrases);
  add_numbers (PH_OBJECT_BOW, &all->before->bow, &all->after->bow, all->units, phrases);
  if (phrases->len > 0)
    return join (NULL, phrases);
  const PhBow *bow = &all->after->bow, *old = &all->before->bow;
  return measured_label (PH_OBJECT_BOW, old->sds, old->n_sds, bow->sds, bow->n_sds, NULL);
}

static char *
texts_label (const PhRig *before, const PhRig *after)
{
  if (!ph_text_equal (before->name, after->name))
    return g_strdup (_ ("renamed the rig"));
  if (!ph_text_equal (before->notes, after->notes))
    return g_strdup (_ ("notes"));
  return NULL;
}

char *
ph_undo_label (const PhRig *before, const PhRig *after, PhUnits units)
{
  Comparison all = { .before = before, .after = after, .units = units };
  char *labels[] = { parts_label (&all), numbers_label (&all),
                     checks_label (&before->archer, &after->archer), texts_label (before, after) };
  char *label = NULL;
  guint n = 0;
  for (size_t i = 0; i < G_N_ELEMENTS (labels); i++)
    if (labels[i] != NULL && n++ == 0)
      label = g_strdup (labels[i]);
  for (size_t i = 0; i < G_N_ELEMENTS (labels); i++)
    g_free (labels[i]);
  ph_compiled_free (all.compiled_before);
  ph_compiled_free (all.compiled_after);
  if (n == 1)
    return label;
  g_free (label);
  return g_strdup (n == 0 ? _ ("the rig") : _ ("several changes"));
}
