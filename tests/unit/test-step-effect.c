/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What one more weight does, found a second time without the model: the sixth disc is added to the
 * rig's mass and mass centre by hand, where it must lie, and each hand's balance is then found by
 * halving intervals in the physics page's equation −M g cosβ (y cosφ − w sinφ) − Kφ + B = 0.
 */
#include "document-fixture.h"
#include "model/fields.h"
#include "widgets/step-effect.h"

#define G 9.80665
#define OUNCE_KG 0.028349523125 /* NIST Handbook 44 */
#define RAD 0.017453292519943295

typedef struct
{
  double m, x, y, z; /* kg, m */
} Lump;

static Lump
lump_of_rig (const PhReport *report)
{
  return (Lump){ report->mass.mass_kg, report->mass.com_m.x, report->mass.com_m.y,
                 report->mass.com_m.z };
}

static Lump
add (Lump a, Lump b)
{
  double m = a.m + b.m;
  return (Lump){ m, (a.m * a.x + b.m * b.x) / m, (a.m * a.y + b.m * b.y) / m,
                 (a.m * a.z + b.m * b.z) / m };
}

/* Middle of the sixth disc: (−48, 14, −150) mm + (305 + 5.5·7.2) d. */
static Lump
sixth_disc (void)
{
  double s = (305 + 5.5 * 7.2) / 1000, lift = -12 * RAD, swing = 20 * RAD;
  return (Lump){ OUNCE_KG, -0.048 - s * cos (lift) * cos (swing),
                 0.014 + s * cos (lift) * sin (swing), -0.150 + s * sin (lift) };
}

static double
bubble (Lump rig, double stiffness, double bias)
{
  double beta = atan2 (42, 660), w = rig.x * sin (beta) + rig.z * cos (beta);
  double lo = -60 * RAD, hi = 60 * RAD;
  for (int i = 0; i < 80; i++)
    {
      double phi = (lo + hi) / 2;
      double torque =
          -rig.m * G * cos (beta) * (rig.y * cos (phi) - w * sin (phi)) - stiffness * phi + bias;
      if (torque > 0)
        lo = phi;
      else
        hi = phi;
    }
  return asin (cos (beta) * sin ((lo + hi) / 2));
}

static double
change (Lump before, Lump after, double stiffness, double bias)
{
  return bubble (after, stiffness, bias) - bubble (before, stiffness, bias);
}

static PhStepEffect
try_count (const Fixture *f, const char *stack, double count)
{
  PhStepEffect effect = { 0 };
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, stack, "count", 0);
  CHECK (ph_step_effect_try (ph_document_get_rig (f->document),
                             ph_document_get_report (f->document),
                             ph_document_get_compiled (f->document), &ref, count, &effect));
  ph_number_ref_clear (&ref);
  return effect;
}

static void
one_more_weight_moves_the_bubble_as_by_hand (void)
{
  Fixture f = fixture_new ();
  PhStepEffect effect = try_count (&f, "back-stack", 6);
  Lump before = lump_of_rig (ph_document_get_report (f.document));
  Lump after = add (before, sixth_disc ());
  CHECK (!effect.fitted && effect.has_level);
  /* 1e-9 rad: what 80 halvings and the program's own solver leave */
  CHECK_NEAR (effect.lo_rad, change (before, after, 1, 0), 1e-9); /* the loosest hand, most */
  CHECK_NEAR (effect.hi_rad, change (before, after, 4, 0), 1e-9); /* the firmest, least */
  CHECK (effect.hi_rad < 0, "weight on the left sends the bubble right");
  fixture_clear (&f);
}

static void
front_pull_changes_as_weight_at_the_tip (void)
{
  Fixture f = fixture_new ();
  PhStepEffect effect = try_count (&f, "back-stack", 6);
  /* Tip: the far face of the front stack, 62 + (762 + 8·7.2) cos 8° mm ahead. */
  double tip = 0.062 + (0.762 + 8 * 0.0072) * cos (8 * RAD);
  CHECK_REL (effect.front_g, 1000 * sixth_disc ().m * sixth_disc ().x / tip, 1e-9);
  fixture_clear (&f);
}

static bool
add_check (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const PhReport *report = data;
  PhArcher *archer = &rig->archer;
  archer->checks = realloc (archer->checks, (archer->n_checks + 1) * sizeof *archer->checks);
  PhCheck check = ph_check_default ();
  check.mass_g = 1000 * report->mass.mass_kg;
  check.com_mm[0] = 1000 * report->mass.com_m.x;
  check.com_mm[1] = 1000 * report->mass.com_m.y;
  check.com_mm[2] = 1000 * report->mass.com_m.z;
  check.draw_length_mm = archer->draw_length_mm;
  check.nock_height_mm = archer->nock_height_mm;
  check.bubble_deg = -1.2;
  check.sd_deg = 0.3;
  const char *const given[] = { "mass_g", "com_mm", "draw_length_mm", "nock_height_mm",
                                "bubble_deg" };
  for (gsize i = 0; i < G_N_ELEMENTS (given); i++)
    check.given |= ph_given_bit (PH_OBJECT_CHECK, given[i]);
  archer->checks[archer->n_checks++] = check;
  archer->present = archer->hand_present = true;
  return true;
}

static void
a_known_hand_gives_one_number (void)
{
  Fixture f = fixture_new ();
  CHECK (ph_document_edit (f.document, add_check, (gpointer)ph_document_get_report (f.document),
                           NULL));
  const PhReport *report = ph_document_get_report (f.document);
  PhStepEffect effect = try_count (&f, "back-stack", 6);
  Lump before = lump_of_rig (report), after = add (before, sixth_disc ());
  CHECK (effect.fitted && effect.lo_rad == effect.hi_rad);
  CHECK_NEAR (effect.lo_rad,
              change (before, after, report->hand.stiffness_nm_per_rad, report->hand.bias_nm),
              1e-9);
  g_autofree char *text = ph_step_effect_text (&effect, "one more", PH_UNITS_MIXED);
  CHECK (!strstr (text, "–") && strstr (text, "° to the right"), "%s", text);
  fixture_clear (&f);
}

static void
a_number_that_would_be_refused_has_no_effect (void)
{
  Fixture f = fixture_new ();
  PhStepEffect effect;
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, "back-bar", "inner_mm", 0);
  CHECK (!ph_step_effect_try (ph_document_get_rig (f.document), ph_document_get_report (f.document),
                              ph_document_get_compiled (f.document), &ref, 30, &effect));
  ph_number_ref_clear (&ref);
  fixture_clear (&f);
}

static void
check_text_of (PhStepEffect effect, const char *want)
{
  g_autofree char *text = ph_step_effect_text (&effect, "one more", PH_UNITS_MIXED);
  CHECK_TEXT (text, want);
}

static void
a_range_says_no_more_than_it_knows (void)
{
  const struct
  {
    double lo_deg, hi_deg;
    gboolean level;
    const char *want;
  } cases[] = {
    { -1.24, -0.42, TRUE, "one more: bubble 0.4–1.2° to the right" },
    { 0.11, 0.38, TRUE, "one more: bubble 0.1–0.4° to the left" },
    { 0.01, 0.26, TRUE, "one more: bubble up to 0.3° to the left" },
    { -0.22, -0.18, TRUE, "one more: bubble about 0.2° to the right" },
    { -0.04, -0.01, TRUE, "one more: bubble hardly moves" },
    { -0.2, 0.3, TRUE, "one more: bubble to either side, by the hand" },
    { -1.24, -0.42, FALSE, "one more: leans 0.4–1.2° farther left" },
    { NAN, NAN, TRUE, "one more: no hand could hold it level" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    check_text_of ((PhStepEffect){ cases[i].level, FALSE, cases[i].lo_deg * RAD,
                                   cases[i].hi_deg * RAD, NAN, NAN },
                   cases[i].want);
}

static void
a_sure_hand_gets_half_tenths (void)
{
  check_text_of ((PhStepEffect){ TRUE, TRUE, -0.33 * RAD, -0.33 * RAD, 0.3 * RAD, NAN },
                 "one more: bubble 0.3° to the right");
  check_text_of ((PhStepEffect){ TRUE, TRUE, -0.33 * RAD, -0.33 * RAD, 0.08 * RAD, NAN },
                 "one more: bubble 0.35° to the right");
  check_text_of ((PhStepEffect){ TRUE, TRUE, 0.01 * RAD, 0.01 * RAD, 0.3 * RAD, NAN },
                 "one more: bubble hardly moves");
  check_text_of ((PhStepEffect){ TRUE, TRUE, 0.33 * RAD, 0.33 * RAD, 0.3 * RAD, -OUNCE_KG * 1000 },
                 "one more: bubble 0.3° to the left, front pull 1 oz less at the tip");
}

static void
a_front_pull_that_shows_as_nothing_is_not_mentioned (void)
{
  /* An ounce to a tenth: 0.05 oz is the least that shows. */
  check_text_of ((PhStepEffect){ TRUE, TRUE, 0.33 * RAD, 0.33 * RAD, 0.3 * RAD, 1.3 },
                 "one more: bubble 0.3° to the left");
  check_text_of ((PhStepEffect){ TRUE, TRUE, 0.33 * RAD, 0.33 * RAD, 0.3 * RAD, -1.3 },
                 "one more: bubble 0.3° to the left");
  check_text_of ((PhStepEffect){ TRUE, TRUE, 0.33 * RAD, 0.33 * RAD, 0.3 * RAD, 1.5 },
                 "one more: bubble 0.3° to the left, front pull 0.1 oz more at the tip");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (one_more_weight_moves_the_bubble_as_by_hand);
  CASE (front_pull_changes_as_weight_at_the_tip);
  CASE (a_known_hand_gives_one_number);
  CASE (a_number_that_would_be_refused_has_no_effect);
  CASE (a_range_says_no_more_than_it_knows);
  CASE (a_sure_hand_gets_half_tenths);
  CASE (a_front_pull_that_shows_as_nothing_is_not_mentioned);
  return check_end ();
}
