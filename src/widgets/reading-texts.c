/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Digits as deciding section 8 has them: masses to 1 g or 0.1 oz, moments to 0.01 N·m, loads to
 * 0.1 N with pounds beside, places to 1 mm or 0.1 in.
 */
#include "widgets/reading-texts.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"
#include "model/front-tip.h"
#include "model/shot-feel.h"
#include "physics/clearance.h"

#define MISSING "–"

void
ph_reading_text_clear (PhReadingText *text)
{
  g_free (text->value);
  g_free (text->detail);
  g_free (text->change);
  g_free (text->more);
  *text = (PhReadingText){ 0 };
}

static char *
moment_text (double moment_nm)
{
  return ph_format_quantity (moment_nm, PH_QUANTITY_MOMENT, PH_UNITS_METRIC);
}

/* Places near the grip: whole mm, or tenths of an inch where all is in inches. */
static char *
place_number (double m, PhUnits units)
{
  if (units == PH_UNITS_TRADE)
    return ph_format_number (fabs (m) / PH_M_PER_INCH, 1);
  return ph_format_number (fabs (ph_to_milli (m)), 0);
}

static const char *
place_unit (PhUnits units)
{
  return units == PH_UNITS_TRADE ? _ ("in") : _ ("mm");
}

static gboolean
is_nothing (const char *number)
{
  return strpbrk (number, "123456789") == NULL;
}

static char *
weight_text (double kg, PhUnits units)
{
  return ph_format_quantity (ph_to_milli (kg), PH_QUANTITY_BOW_MASS, units);
}

static char *
weight_change (double kg, PhUnits units)
{
  return ph_format_quantity_change (ph_to_milli (kg), PH_QUANTITY_MASS, units);
}

static char *
added_number (double g, PhUnits units)
{
  double shown = ph_quantity_to_shown (PH_QUANTITY_MASS, units, g);
  return ph_format_short (shown, ph_quantity_digits (PH_QUANTITY_MASS, units));
}

PhReadingText
ph_reading_mass (const PhReadingSource *source)
{
  const PhReport *report = source->report;
  PhReadingText text = { .value = weight_text (report->mass.mass_kg, source->units) };
  if (report->front_g + report->back_g + report->side_g > 0.0)
    {
      g_autofree char *front = added_number (report->front_g, source->units);
      g_autofree char *back = added_number (report->back_g, source->units);
      g_autofree char *side = added_number (report->side_g, source->units);
      const char *unit = ph_quantity_unit (PH_QUANTITY_MASS, source->units);
      /* Translators: added weights in ounces or grams: front 8, back 5, side 0 oz */
      text.detail = g_strdup_printf (_ ("front %s, back %s, side %s %s"), front, back, side, unit);
    }
  else
    text.detail = g_strdup (_ ("no weights added"));
  if (source->reference)
    text.change =
        weight_change (report->mass.mass_kg - source->reference->mass.mass_kg, source->units);
  return text;
}

/* "68 ahead", "2 left", "23 low", or what stands there when a number rounds to nothing. */
static char *
ahead_text (double m, PhUnits units)
{
  g_autofree char *n = place_number (m, units);
  if (is_nothing (n))
    return g_strdup (_ ("at the grip"));
  return m > 0.0 ? g_strdup_printf (_ ("%s ahead"), n) : g_strdup_printf (_ ("%s behind"), n);
}

static char *
side_text (double m, PhUnits units)
{
  g_autofree char *n = place_number (m, units);
  if (is_nothing (n))
    return g_strdup (_ ("centred"));
  return m > 0.0 ? g_strdup_printf (_ ("%s left"), n) : g_strdup_printf (_ ("%s right"), n);
}

static char *
height_text (double m, PhUnits units)
{
  g_autofree char *n = place_number (m, units);
  if (is_nothing (n))
    return g_strdup (_ ("level"));
  return m > 0.0 ? g_strdup_printf (_ ("%s high"), n) : g_strdup_printf (_ ("%s low"), n);
}

/* Takes `part` over. */
static void
add_part (GString *text, char *part)
{
  g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", part);
  g_free (part);
}

static char *
balance_change (PhVec3 now, PhVec3 before, PhUnits units)
{
  g_autofree char *x = place_number (now.x - before.x, units);
  g_autofree char *y = place_number (now.y - before.y, units);
  g_autofree char *z = place_number (now.z - before.z, units);
  GString *text = g_string_new (NULL);
  if (!is_nothing (x))
    add_part (text, now.x > before.x ? g_strdup_printf (_ ("%s forward"), x)
                                     : g_strdup_printf (_ ("%s back"), x));
  if (!is_nothing (y))
    add_part (text, now.y > before.y ? g_strdup_printf (_ ("%s to the left"), y)
                                     : g_strdup_printf (_ ("%s to the right"), y));
  if (!is_nothing (z))
    add_part (text, now.z > before.z ? g_strdup_printf (_ ("%s up"), z)
                                     : g_strdup_printf (_ ("%s down"), z));
  if (text->len == 0)
    g_string_append (text, _ ("no change"));
  return g_string_free (text, FALSE);
}

PhReadingText
ph_reading_balance (const PhReadingSource *source)
{
  PhVec3 c = source->report->mass.com_m;
  g_autofree char *x = ahead_text (c.x, source->units), *y = side_text (c.y, source->units);
  g_autofree char *z = height_text (c.z, source->units);
  PhReadingText text = {
    .value = g_strdup_printf ("%s, %s, %s", x, y, z),
    .detail = g_strdup_printf (_ ("%s from the grip throat"), place_unit (source->units)),
  };
  if (source->reference)
    text.change = balance_change (c, source->reference->mass.com_m, source->units);
  return text;
}

static char *
moment_more (double moment_nm)
{
  g_autofree char *size = moment_text (fabs (moment_nm));
  return moment_nm < 0.0 ? g_strdup_printf (_ ("%s, nose up"), size)
                         : g_strdup_printf (_ ("%s, nose down"), size);
}

PhReadingText
ph_reading_front (const PhReadingSource *source)
{
  const PhReport *report = source->report;
  PhFrontTip tip = ph_front_tip (source->compiled, report);
  PhReadingText text = { .more = moment_more (report->pitch.moment_nm) };
  if (isnan (tip.weight_kg))
    {
      text.value = g_strdup (MISSING);
      text.detail = g_strdup (_ ("no front bar to name it by"));
      return text;
    }
  g_autofree char *size =
      ph_format_quantity (fabs (ph_to_milli (tip.weight_kg)), PH_QUANTITY_MASS, source->units);
  text.value = tip.weight_kg < 0.0 ? g_strdup_printf (_ ("back-heavy by %s"), size)
                                   : g_strdup_printf (_ ("like %s"), size);
  text.detail = g_strdup (_ ("at the front bar’s tip"));
  if (source->reference)
    {
      double change_nm = report->pitch.moment_nm - source->reference->pitch.moment_nm;
      text.change = weight_change (change_nm / (PH_GRAVITY * tip.ahead_m), source->units);
    }
  return text;
}

static char *
load_text (double n)
{
  g_autofree char *newton = ph_format_quantity (n, PH_QUANTITY_FORCE, PH_UNITS_METRIC);
  g_autofree char *pound = ph_format_quantity (n, PH_QUANTITY_FORCE, PH_UNITS_TRADE);
  return g_strdup_printf ("%s (%s)", newton, pound);
}

/* What the arm feels is not known to the gram: one digit fewer than the mass. */
static char *
felt_text (double kg, PhUnits units)
{
  double shown = ph_quantity_to_shown (PH_QUANTITY_BOW_MASS, units, ph_to_milli (kg));
  g_autofree char *number = ph_format_number (shown, 2);
  return g_strdup_printf ("%s %s", number, ph_quantity_unit (PH_QUANTITY_BOW_MASS, units));
}

PhReadingText
ph_reading_arm (const PhReadingSource *source)
{
  const PhReport *report = source->report;
  g_autofree char *felt = felt_text (report->pitch.bow_arm_load_n / PH_GRAVITY, source->units);
  g_autofree char *weighs = felt_text (report->mass.mass_kg, source->units);
  g_autofree char *load = load_text (report->pitch.bow_arm_load_n);
  g_autofree char *string = load_text (report->pitch.nock_load_n);
  g_autofree char *shoulder = moment_text (report->pitch.shoulder_moment_nm);
  PhReadingText text = {
    .value = g_strdup_printf (_ ("feels like %s"), felt),
    .detail = g_strdup_printf (_ ("weighs %s"), weighs),
    .more = g_strdup_printf (_ ("arm %s\nstring %s\nshoulder %s"), load, string, shoulder),
  };
  if (source->reference)
    {
      double change_n = report->pitch.bow_arm_load_n - source->reference->pitch.bow_arm_load_n;
      text.change = weight_change (change_n / PH_GRAVITY, source->units);
    }
  return text;
}

static const char *
shot_words (double release_pitch_rad_s2)
{
  switch (ph_shot_feel (release_pitch_rad_s2))
    {
    case PH_SHOT_STAYS:
      return _ ("stays where it is");
    case PH_SHOT_FORWARD_SLOWLY:
      return _ ("tips forward, slowly");
    case PH_SHOT_FORWARD_QUICKLY:
      return _ ("tips forward, quickly");
    case PH_SHOT_BACK_SLOWLY:
      return _ ("tips back, slowly");
    case PH_SHOT_BACK_QUICKLY:
      return _ ("tips back, quickly");
    case PH_SHOT_UNKNOWN:
    default:
      return MISSING;
    }
}

static char *
shot_change (double now, double before)
{
  double percent = 100.0 * (now / before - 1.0);
  if (now * before <= 0.0 || !isfinite (percent))
    return g_strdup_printf (_ ("the reference %s"), shot_words (before));
  g_autofree char *size = ph_format_number (fabs (percent), 0);
  if (is_nothing (size))
    return g_strdup (_ ("no change"));
  return percent > 0.0 ? g_strdup_printf (_ ("%s %% quicker"), size)
                       : g_strdup_printf (_ ("%s %% slower"), size);
}

PhReadingText
ph_reading_shot (const PhReadingSource *source)
{
  double release = source->report->pitch.release_pitch_rad_s2;
  PhReadingText text = { .value = g_strdup (shot_words (release)) };
  if (isnan (release))
    {
      text.detail = g_strdup (_ ("the rig has no inertia"));
      return text;
    }
  g_autofree char *turn = ph_format_number (fabs (ph_shot_turn_deg (release)), 0);
  g_autofree char *time = ph_format_number (PH_SHOT_SECONDS, 1);
  g_autofree char *rate = ph_format_number (release, 1);
  text.detail = g_strdup_printf (_ ("about %s° in the first %s s"), turn, time);
  text.more = g_strdup_printf (_ ("%s rad/s²"), rate);
  if (source->reference && !isnan (source->reference->pitch.release_pitch_rad_s2))
    text.change = shot_change (release, source->reference->pitch.release_pitch_rad_s2);
  return text;
}

static char *
gap_text (double m, PhUnits units)
{
  g_autofree char *number = place_number (m, units);
  return g_strdup_printf ("%s %s", number, place_unit (units));
}

static PhReadingText
no_clearance (const PhReadingSource *source)
{
  const PhBow *bow = &source->rig->bow;
  PhReadingText text = { .value = g_strdup (MISSING) };
  if (isnan (bow->brace_height_mm))
    text.detail = g_strdup (_ ("the bow’s brace height is not stated"));
  else if (isnan (bow->axle_to_axle_mm))
    text.detail =
        g_strdup (bow->kind == PH_BOW_COMPOUND ? _ ("the bow’s axle to axle is not stated")
                                               : _ ("the bow’s length tip to tip is not stated"));
  else
    {
      g_free (text.value);
      text.value = g_strdup (_ ("clear"));
      text.detail = g_strdup (_ ("no bar or weight is fitted"));
    }
  return text;
}

PhReadingText
ph_reading_string (const PhReadingSource *source)
{
  double gap = source->report->clearance_m;
  int part = source->report->clearance_part;
  if (isnan (gap) || part < 0)
    return no_clearance (source);
  const char *name = ph_part_name (&source->rig->parts[part]);
  PhReadingText text = { .warning = gap < PH_CLEARANCE_LEAST_M };
  text.value = gap < 0.0 ? g_strdup (_ ("in the string’s way")) : gap_text (gap, source->units);
  if (text.warning)
    {
      g_autofree char *least = gap_text (PH_CLEARANCE_LEAST_M, source->units);
      text.detail = g_strdup_printf (_ ("%s is too near: keep %s"), name, least);
    }
  else
    text.detail = g_strdup_printf (_ ("nearest: %s"), name);
  if (source->reference && !isnan (source->reference->clearance_m))
    {
      double change = gap - source->reference->clearance_m;
      gboolean inches = source->units == PH_UNITS_TRADE;
      double shown = inches ? change / PH_M_PER_INCH : ph_to_milli (change);
      g_autofree char *number = ph_format_change (shown, inches ? 1 : 0);
      text.change = g_strdup_printf ("%s %s", number, place_unit (source->units));
    }
  return text;
}
