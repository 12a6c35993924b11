/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bubble checks, limits and sources: what is stored, what is refused, and that a refusal changes
 * nothing. Dates: the Gregorian leap years of ISO 8601 (from memory).
 */
#include "model/checks.h"

#include "base/units.h"
#include "check.h"
#include "model/report.h"
#include "rigs.h"

static bool
add (PhRig *rig, PhReading reading)
{
  PhIssues issues = { 0 };
  bool added = ph_edit_add_check (rig, &reading, NULL, &issues);
  CHECK (added == (ph_issues_errors (&issues) == 0));
  ph_issues_clear (&issues);
  return added;
}

static void
check_holds_the_rig_as_its_report_has_it (void)
{
  PhRig *rig = rigs_example ();
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  double draw = 1.2;
  PhReading reading = ph_reading_of (&draw, 1);
  reading.date = "2026-03-08";
  reading.note = "eyes closed";
  reading.predicted_deg = ph_checks_predict_deg (rig);
  reading.predicted_at = "2026-03-08T10:00:00Z";
  CHECK_NEAR (reading.predicted_deg, ph_deg_from_rad (report->bubble_rad), 0);
  CHECK (add (rig, reading));
  const PhCheck *check = &rig->archer.checks[1];
  CHECK (rig->archer.n_checks == 2);
  CHECK_NEAR (check->mass_g, 1000 * report->mass.mass_kg, 0);
  CHECK_NEAR (check->com_mm[1], 1000 * report->mass.com_m.y, 0);
  CHECK_NEAR (check->draw_length_mm, 660, 0);
  CHECK_NEAR (check->nock_height_mm, 42, 0);
  CHECK_NEAR (check->bubble_deg, 1.2, 0);
  CHECK_NEAR (check->sd_deg, 0.3, 0);
  CHECK (check->n_draws == 1);
  CHECK_NEAR (check->draws_deg[0], 1.2, 0);
  CHECK_TEXT (check->date, "2026-03-08");
  CHECK_TEXT (check->note, "eyes closed");
  CHECK_NEAR (check->predicted_deg, reading.predicted_deg, 0);
  CHECK_TEXT (check->predicted_at, "2026-03-08T10:00:00Z");
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
several_draws_are_stored_as_their_mean (void)
{
  /* 1, 2 and 4: mean 7/3, s = √(7/3), s/√3 = √7/3. */
  static const double draws[] = { 1, 2, 4 };
  PhReading reading = ph_reading_of (draws, 3);
  CHECK_REL (ph_reading_mean_deg (&reading), 7.0 / 3, 1e-15);
  CHECK_REL (ph_reading_sd_deg (&reading), sqrt (7) / 3, 1e-15);
  static const double alike[] = { 1, 1.1 };
  reading = ph_reading_of (alike, 2);
  CHECK_NEAR (ph_reading_sd_deg (&reading), 0.15, 0);
  reading.sd_deg = 0.07; /* typed */
  CHECK_NEAR (ph_reading_sd_deg (&reading), 0.07, 0);
  PhRig *rig = rigs_example ();
  CHECK (add (rig, ph_reading_of (draws, 3)));
  CHECK (rig->archer.checks[1].n_draws == 3);
  CHECK_NEAR (rig->archer.checks[1].draws_deg[2], 4, 0);
  ph_rig_free (rig);
}

static void
bad_reading_is_refused_and_changes_nothing (void)
{
  PhRig *rig = rigs_example (), *before = ph_rig_copy (rig);
  static const double bubbles[] = { 60, -60, 90, NAN, INFINITY };
  for (size_t i = 0; i < sizeof bubbles / sizeof *bubbles; i++)
    CHECK (!add (rig, ph_reading_of (&bubbles[i], 1)), "%g", bubbles[i]);
  static const double sds[] = { 0, -1, INFINITY };
  for (size_t i = 0; i < sizeof sds / sizeof *sds; i++)
    {
      double draw = 1;
      PhReading reading = ph_reading_of (&draw, 1);
      reading.sd_deg = sds[i];
      CHECK (!add (rig, reading), "%g", sds[i]);
    }
  static const double draws[] = { 1, 2, 3, 4 };
  CHECK (!add (rig, ph_reading_of (draws, 4)));
  CHECK (!add (rig, ph_reading_of (draws, 0)));
  static const double one_wild[] = { 1, 75 };
  CHECK (!add (rig, ph_reading_of (one_wild, 2)));
  PhReading dated = ph_reading_of (draws, 1);
  dated.date = "8 March";
  CHECK (!add (rig, dated));
  CHECK (ph_rig_equal (rig, before));
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
dates_are_days_of_the_calendar (void)
{
  static const char *const good[] = { "2026-03-01", "2024-02-29", "2000-02-29", "1999-12-31" };
  static const char *const bad[] = { "",           "2026-3-1",    "2026-02-29", "1900-02-29",
                                     "2026-13-01", "2026-00-10",  "2026-04-31", "0000-01-01",
                                     "2026/03/01", "2026-03-01 ", "2026-03-0x", "26-03-01" };
  for (size_t i = 0; i < sizeof good / sizeof *good; i++)
    CHECK (ph_is_date (good[i]), "%s", good[i]);
  for (size_t i = 0; i < sizeof bad / sizeof *bad; i++)
    CHECK (!ph_is_date (bad[i]), "%s", bad[i]);
}

static void
changed_check_keeps_its_rig_and_its_prediction (void)
{
  PhRig *rig = rigs_example ();
  rig->archer.checks[0].predicted_deg = 0.9;
  rig->archer.checks[0].given |= ph_given_bit (PH_OBJECT_CHECK, "predicted_deg");
  static const double draws[] = { -1, -2 };
  PhReading reading = ph_reading_of (draws, 2);
  PhIssues issues = { 0 };
  CHECK (ph_edit_change_check (rig, 0, &reading, &issues));
  const PhCheck *check = &rig->archer.checks[0];
  CHECK_NEAR (check->bubble_deg, -1.5, 0);
  CHECK_NEAR (check->mass_g, 3100, 0);
  CHECK_NEAR (check->predicted_deg, 0.9, 0);
  reading.sd_deg = 0;
  CHECK (!ph_edit_change_check (rig, 0, &reading, &issues));
  CHECK_NEAR (rig->archer.checks[0].sd_deg, 0.5, 1e-15); /* s/√2 of −1 and −2 */
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
check_set_aside_is_not_used_and_a_deleted_one_is_gone (void)
{
  PhRig *rig = rigs_example ();
  PhHand hand;
  bool fitted;
  double draw = -2;
  CHECK (add (rig, ph_reading_of (&draw, 1)));
  ph_edit_set_check_aside (rig, 0, true);
  ph_edit_set_check_aside (rig, 1, true);
  CHECK (ph_compile_hand (rig, &hand, &fitted) == PH_OK && !fitted);
  ph_edit_set_check_aside (rig, 0, false);
  CHECK (ph_compile_hand (rig, &hand, &fitted) == PH_OK && fitted);
  ph_edit_delete_check (rig, 0);
  CHECK (rig->archer.n_checks == 1);
  CHECK_NEAR (rig->archer.checks[0].bubble_deg, -2, 0);
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

static void
limits_are_set_stretched_refused_and_cleared (void)
{
  PhRig *rig = rigs_example ();
  PhIssues issues = { 0 };
  CHECK (ph_edit_set_limits (rig, 4, "swing_deg", -5, 10, &issues));
  CHECK_NEAR (rig->parts[4].limit_swing.lo, -5, 0);
  CHECK_NEAR (rig->parts[4].limit_swing.hi, 20, 0);                   /* it stands at 20 */
  CHECK (!ph_edit_set_limits (rig, 4, "lift_deg", 10, -10, &issues)); /* upside down */
  CHECK (!ph_edit_set_limits (rig, 4, "lift_deg", -200, 0, &issues));
  CHECK (!ph_edit_set_limits (rig, 5, "count", 0, INFINITY, &issues));
  CHECK (!rig->parts[4].limit_lift.given && !rig->parts[5].limit_count.given);
  ph_edit_clear_limits (rig, 4, "swing_deg");
  CHECK (!rig->parts[4].limit_swing.given);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
sources_come_and_go (void)
{
  PhRig *rig = rigs_example (), *before = ph_rig_copy (rig);
  ph_edit_set_source (rig, -1, PH_SOURCE_MEASURED);
  ph_edit_set_source (rig, 4, PH_SOURCE_GUESSED);
  CHECK (rig->bow.source == PH_SOURCE_MEASURED && rig->parts[4].source == PH_SOURCE_GUESSED);
  CHECK (!ph_rig_equal (rig, before) && rigs_sound (rig, true));
  ph_edit_set_source (rig, -1, PH_SOURCE_UNSTATED);
  ph_edit_set_source (rig, 4, PH_SOURCE_UNSTATED);
  CHECK (ph_rig_equal (rig, before));
  ph_rig_free (rig);
  ph_rig_free (before);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (check_holds_the_rig_as_its_report_has_it);
  CASE (several_draws_are_stored_as_their_mean);
  CASE (bad_reading_is_refused_and_changes_nothing);
  CASE (dates_are_days_of_the_calendar);
  CASE (changed_check_keeps_its_rig_and_its_prediction);
  CASE (check_set_aside_is_not_used_and_a_deleted_one_is_gone);
  CASE (limits_are_set_stretched_refused_and_cleared);
  CASE (sources_come_and_go);
  return check_end ();
}
