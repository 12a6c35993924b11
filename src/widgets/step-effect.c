/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bubble before and after a step, for the archer's own hand or for all from loose to firm. An
 * effect that is smaller than what is shown is called so, never rounded up.
 */
#include "widgets/step-effect.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"
#include "model/front-tip.h"
#include "physics/lean.h"
#include "widgets/lean-words.h"

/* Less than this at the front tip is not worth a word [g]. */
#define LEAST_FRONT_G 1.0

static gboolean
own_change (const PhRoll *from, const PhRoll *to, const PhHand *hand, double *change_rad)
{
  double before, after;
  if (ph_cant_predict (from, hand->stiffness_nm_per_rad, hand->bias_nm, &before) != PH_OK
      || ph_cant_predict (to, hand->stiffness_nm_per_rad, hand->bias_nm, &after) != PH_OK)
    return FALSE;
  *change_rad = ph_cant_bubble (to, after) - ph_cant_bubble (from, before);
  return TRUE;
}

static PhCompiled *
compile_changed (const PhRig *rig, const PhNumberRef *ref, double to_value)
{
  PhRig *copy = ph_rig_copy (rig);
  PhCompiled *compiled = ph_number_ref_apply (ref, copy, to_value) ? ph_compile_rig (copy) : NULL;
  ph_rig_free (copy);
  return compiled;
}

gboolean
ph_step_effect_try (const PhRig *rig, const PhReport *report, const PhCompiled *compiled,
                    const PhNumberRef *ref, double to_value, PhStepEffect *effect)
{
  PhCompiled *changed = compile_changed (rig, ref, to_value);
  if (!changed)
    return FALSE;
  PhMassProperties mass = ph_assembly_properties (changed->assembly);
  PhRoll roll = ph_roll_of (mass.mass_kg, mass.com_m, &changed->draw);
  ph_compiled_free (changed);

  *effect =
      (PhStepEffect){ rig->bow.kind == PH_BOW_COMPOUND, report->hand_fitted, NAN, NAN, NAN, NAN };
  double pull = mass.mass_kg * mass.com_m.x - report->mass.mass_kg * report->mass.com_m.x;
  effect->front_g = ph_to_milli (pull / ph_front_tip (compiled, report).ahead_m);
  if (!report->hand_fitted)
    {
      PhLeanRange range = ph_lean_change_range (&report->roll, &roll);
      effect->lo_rad = range.lo_rad;
      effect->hi_rad = range.hi_rad;
    }
  else if (own_change (&report->roll, &roll, &report->hand, &effect->lo_rad))
    {
      effect->hi_rad = effect->lo_rad;
      effect->sure_rad = (report->cant_90_rad[1] - report->cant_90_rad[0]) / 2;
    }
  return TRUE;
}

/* "0.1–0.4°" over hands, near ≤ far; null where it is too small to be shown. */
static char *
size_over_hands (double near_rad, double far_rad)
{
  double near = ph_deg_from_rad (near_rad), far = ph_deg_from_rad (far_rad);
  if (round (far * 10) <= 0)
    return NULL;
  g_autofree char *near_text = ph_format_number (near, 1), *far_text = ph_format_number (far, 1);
  if (round (near * 10) <= 0)
    return g_strdup_printf (_ ("up to %s°"), far_text);
  if (g_str_equal (near_text, far_text))
    return g_strdup_printf (_ ("about %s°"), far_text);
  return g_strdup_printf ("%s–%s°", near_text, far_text);
}

/* A bubble runs to the other side than the bow leans; without a level the words follow the bow. */
static char *
movement (const PhStepEffect *effect, const char *size, double tilt_rad)
{
  if (!size)
    return g_strdup (effect->has_level ? _ ("bubble hardly moves") : _ ("lean hardly changes"));
  if (effect->has_level)
    return g_strdup_printf (
        tilt_rad < 0 ? _ ("bubble %s to the right") : _ ("bubble %s to the left"), size);
  return g_strdup_printf (tilt_rad < 0 ? _ ("leans %s farther left") : _ ("leans %s farther right"),
                          size);
}

static char *
assumed_words (const PhStepEffect *effect)
{
  double lo = effect->lo_rad, hi = effect->hi_rad;
  if (lo < 0 && hi > 0)
    {
      g_autofree char *left = size_over_hands (0, hi), *right = size_over_hands (0, -lo);
      if (left && right)
        return g_strdup (effect->has_level ? _ ("bubble to either side, by the hand")
                                           : _ ("lean to either side, by the hand"));
      return movement (effect, left ? left : right, left ? hi : lo);
    }
  double near = fmin (fabs (lo), fabs (hi)), far = fmax (fabs (lo), fabs (hi));
  g_autofree char *size = size_over_hands (near, far);
  return movement (effect, size, lo + hi);
}

static char *
fitted_words (const PhStepEffect *effect)
{
  double width = 2 * effect->sure_rad;
  g_autofree char *size = ph_lean_degrees (effect->lo_rad, width);
  g_autofree char *none = ph_lean_degrees (0, width);
  return movement (effect, g_str_equal (size, none) ? NULL : size, effect->lo_rad);
}

static char *
front_words (double front_g, PhUnits units)
{
  if (!(fabs (front_g) >= LEAST_FRONT_G))
    return NULL;
  g_autofree char *size = ph_format_quantity_short (fabs (front_g), PH_QUANTITY_MASS, units);
  g_autofree char *none = ph_format_quantity_short (0, PH_QUANTITY_MASS, units);
  if (g_str_equal (size, none))
    return NULL;
  return g_strdup_printf (front_g > 0 ? _ ("front pull %s more at the tip")
                                      : _ ("front pull %s less at the tip"),
                          size);
}

char *
ph_step_effect_movement (const PhStepEffect *effect)
{
  if (isnan (effect->lo_rad))
    return g_strdup (_ ("no hand could hold it level"));
  return effect->fitted ? fitted_words (effect) : assumed_words (effect);
}

char *
ph_step_effect_text (const PhStepEffect *effect, const char *step, PhUnits units)
{
  g_autofree char *bubble = ph_step_effect_movement (effect);
  g_autofree char *front = front_words (effect->front_g, units);
  if (!front)
    return g_strdup_printf ("%s: %s", step, bubble);
  return g_strdup_printf (_ ("%s: %s, %s"), step, bubble, front);
}
