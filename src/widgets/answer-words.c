/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Directions are those of the rig as it is now: a bar is turned from where it stands.
 */
#include "widgets/answer-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/direction.h"
#include "document/format.h"
#include "document/undo-label.h"
#include "widgets/tilt-words.h"

static gboolean
is_count (const PhPartChange *change)
{
  return g_str_equal (change->key, "count");
}

static PhWay
way_of (const PhCompiled *compiled, const PhPartChange *change)
{
  size_t part = (size_t)change->part;
  return g_str_equal (change->key, "lift_deg") ? ph_way_of_lift (compiled, part)
                                               : ph_way_of_swing (compiled, part);
}

static char *
angle_text (double deg)
{
  return ph_format_quantity_short (fabs (deg), PH_QUANTITY_ANGLE, PH_UNITS_METRIC);
}

/* "26°" where the way that it is turned says which side that is, else "10° out". */
static char *
end_text (PhWay way, const PhPartChange *change)
{
  g_autofree char *end = angle_text (change->to);
  const char *turned = ph_way_word (way, change->to - change->from);
  if (change->to == 0 || g_str_equal (turned, ph_way_word (way, change->to)))
    return g_steal_pointer (&end);
  return g_strdup_printf ("%s %s", end, ph_way_word (way, change->to));
}

char *
ph_answer_change_words (const PhRig *rig, const PhCompiled *compiled, const PhPartChange *change)
{
  const char *name = ph_part_name (&rig->parts[change->part]);
  double by = change->to - change->from;
  if (g_str_equal (change->key, PH_KEY_MIRROR))
    return g_strdup_printf (_ ("%s with all on it to the other side"), name);
  if (is_count (change))
    /* Translators: "Front weights 2 more, to 10": discs of a stack. */
    return g_strdup_printf (by > 0 ? _ ("%s %g more, to %g") : _ ("%s %g fewer, to %g"), name,
                            fabs (by), change->to);
  PhWay way = way_of (compiled, change);
  g_autofree char *size = angle_text (by), *end = end_text (way, change);
  /* Translators: "Back bar out 6°, to 26°". */
  return g_strdup_printf (_ ("%s %s %s, to %s"), name, ph_way_word (way, by), size, end);
}

static char *
title_of (const PhRig *rig, const PhCompiled *compiled, const PhPartAnswer *answer)
{
  char *first = ph_answer_change_words (rig, compiled, &answer->changes[0]);
  if (answer->n_changes < 2)
    return first;
  g_autofree char *one = first;
  g_autofree char *two = ph_answer_change_words (rig, compiled, &answer->changes[1]);
  g_autofree char *inside = ph_name_inside (two);
  return g_strdup_printf (_ ("%s · and %s"), one, inside);
}

static char *
chance_of (const PhPartAnswers *answers, const PhPartAnswer *answer)
{
  if (!answers->hand_fitted)
    return NULL;
  g_autofree char *tolerance = ph_format_short (answers->tolerance_deg, 2);
  /* No one is ever quite sure. */
  if (answer->chance > 0.99)
    return g_strdup_printf (_ ("over 99 %% sure within %s°"), tolerance);
  return g_strdup_printf (_ ("%.0f %% sure within %s°"), 100 * answer->chance, tolerance);
}

/* " · slow to roll +2 %": nothing where it would show no change. */
static void
append_inertia (GString *text, const char *what, double now, double then)
{
  double percent = now > 0 ? 100 * (then - now) / now : 0;
  g_autofree char *change = ph_format_change (percent, 0);
  if (fabs (percent) < 0.5)
    return;
  g_string_append_printf (text, " · %s %s %%", what, change);
}

static char *
costs_of (const PhOutcome *now, const PhOutcome *then, PhUnits units)
{
  g_autofree char *mass = ph_format_quantity_change (ph_to_milli (then->mass_kg - now->mass_kg),
                                                     PH_QUANTITY_MASS, units);
  g_autofree char *load =
      ph_format_quantity_change (then->arm_load_n - now->arm_load_n, PH_QUANTITY_FORCE, units);
  g_autofree char *pull = ph_format_quantity_change (then->front_pull_nm - now->front_pull_nm,
                                                     PH_QUANTITY_MOMENT, units);
  const PhVec3 *a = &now->inertia_grip_kg_m2, *b = &then->inertia_grip_kg_m2;
  GString *text = g_string_new (NULL);
  g_string_printf (text, _ ("%s · arm load %s · front pull %s"), mass, load, pull);
  append_inertia (text, _ ("slow to roll"), a->x, b->x);
  append_inertia (text, _ ("to nod"), a->y, b->y);
  append_inertia (text, _ ("to swing"), a->z, b->z);
  return g_string_free (text, FALSE);
}

/* The thread that a mirrored part needs and its carrier, as far as the file knows, has not. */
static char *
how_of (const PhRig *rig, const PhPartAnswer *answer)
{
  const PhPartChange *change = &answer->changes[0];
  if (!g_str_equal (change->key, PH_KEY_MIRROR)
      || !ph_edit_mirror_makes_seat (rig, (size_t)change->part))
    return NULL;
  int host = ph_rig_host (rig, (size_t)change->part, NULL);
  g_autofree char *name =
      host < 0 ? g_strdup (_ ("bow")) : ph_name_inside (ph_part_name (&rig->parts[host]));
  return g_strdup_printf (
      _ ("It goes where the %s has no thread yet: to the mirror image of its place now."), name);
}

PhAnswerWords
ph_answer_words_of (const PhRig *rig, const PhCompiled *compiled, const PhPartAnswers *answers,
                    const PhPartAnswer *answer, PhUnits units)
{
  double deg = ph_deg_from_rad (answer->outcome.bubble_rad);
  PhAnswerWords words = { .title = title_of (rig, compiled, answer),
                          .bubble = ph_tilt_phrase (deg, ph_tilt_has_level (rig)),
                          .chance = chance_of (answers, answer),
                          .how = how_of (rig, answer),
                          .costs = costs_of (&answers->now, &answer->outcome, units) };
  if (!answers->hand_fitted)
    {
      /* Of an assumed hand the direction is trusted, the size is not. */
      char *bubble = g_strdup_printf (_ ("%s with an assumed hand"), words.bubble);
      g_free (words.bubble);
      words.bubble = bubble;
    }
  words.spoken =
      words.chance
          ? g_strdup_printf ("%s: %s, %s; %s", words.title, words.bubble, words.chance, words.costs)
          : g_strdup_printf ("%s: %s; %s", words.title, words.bubble, words.costs);
  return words;
}

void
ph_answer_words_clear (PhAnswerWords *words)
{
  g_free (words->title);
  g_free (words->bubble);
  g_free (words->chance);
  g_free (words->how);
  g_free (words->costs);
  g_free (words->spoken);
  *words = (PhAnswerWords){ 0 };
}

/* "Turn the back bar in to 10°", "Take the front weights to 10". No full stop. */
static char *
change_task (const PhRig *rig, const PhCompiled *compiled, const PhPartChange *change)
{
  g_autofree char *name = ph_name_inside (ph_part_name (&rig->parts[change->part]));
  double by = change->to - change->from;
  if (is_count (change))
    return g_strdup_printf (by > 0 ? _ ("Take the %s to %g, %g more")
                                   : _ ("Take the %s to %g, %g fewer"),
                            name, change->to, fabs (by));
  PhWay way = way_of (compiled, change);
  g_autofree char *end = angle_text (change->to);
  if (change->from * change->to < 0) /* through the middle, so the side it ends on is said */
    return g_strdup_printf (_ ("Turn the %s to %s %s"), name, end, ph_way_word (way, change->to));
  return g_strdup_printf (_ ("Turn the %s %s to %s"), name, ph_way_word (way, by), end);
}

char *
ph_check_change_words (const PhRig *rig, const PhCompiled *compiled, const PhPartChange *change)
{
  g_autofree char *task = change_task (rig, compiled, change);
  return g_strconcat (task, ".", NULL);
}

char *
ph_check_task_words (const PhRig *rig, const PhCompiled *compiled, const PhPartCheck *check)
{
  if (!check->changed)
    return g_strdup (_ ("Read the rig as it is"));
  g_autofree char *task = change_task (rig, compiled, &check->change);
  return g_strdup_printf (ph_tilt_has_level (rig) ? _ ("%s, then read the bubble")
                                                  : _ ("%s, then read the lean"),
                          task);
}

char *
ph_check_gain_words (double now_deg, double then_deg)
{
  if (!isfinite (now_deg) || !isfinite (then_deg))
    return NULL;
  g_autofree char *now = ph_tilt_half (now_deg), *then = ph_tilt_half (then_deg);
  if (g_str_equal (now, then))
    return g_strdup_printf (_ ("hardly narrows %s"), now);
  return g_strdup_printf (_ ("narrows %s to %s"), now, then);
}
