/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits of numbers, names and flags: what is taken, and that what is refused leaves the very same
 * rig.
 */
#include "model/edit.h"


#include "check.h"
#include "rigs.h"

enum
{
  SIGHT,
  FRONT_BAR,
  FRONT_STACK,
  BLOCK,
  BACK_BAR,
  BACK_STACK
};

static void
number_is_set_and_stands_in_the_file (void)
{
  PhRig *rig = rigs_example ();
  PhPart *bar = &rig->parts[BACK_BAR];
  CHECK (!(bar->given & ph_given_bit (PH_OBJECT_PART, "modulus_gpa")));
  CHECK (ph_edit_set_number (rig, BACK_BAR, "modulus_gpa", 0, 90, NULL));
  CHECK (bar->modulus_gpa == 90 && bar->given & ph_given_bit (PH_OBJECT_PART, "modulus_gpa"));
  CHECK (ph_edit_set_number (rig, BACK_BAR, "swing_deg", 0, -33.5, NULL));
  CHECK (bar->swing_deg == -33.5);
  CHECK (ph_edit_set_number (rig, SIGHT, "at_mm", 2, 101, NULL));
  CHECK (rig->parts[SIGHT].at_mm[2] == 101 && rig->parts[SIGHT].at_mm[0] == 150);
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

/* Refused, with one issue of that key, and not a bit of the rig has changed. */
static void
check_refused (size_t part, const char *key, double value, const char *named, int line)
{
  PhRig *rig = rigs_example (), *before = rigs_example ();
  PhIssues issues = { 0 };
  CHECK (!ph_edit_set_number (rig, part, key, 0, value, &issues), "line %d", line);
  CHECK (ph_rig_equal (rig, before), "line %d left a change", line);
  CHECK (issues.n >= 1 && strcmp (issues.items[0].key, named) == 0, "line %d: %s", line,
         issues.n ? issues.items[0].key : "no issue");
  ph_issues_clear (&issues);
  ph_rig_free (rig);
  ph_rig_free (before);
}
#define REFUSED(part, key, value, named) check_refused (part, key, value, named, __LINE__)

static void
refused_number_leaves_the_very_same_rig (void)
{
  REFUSED (BACK_BAR, "swing_deg", 181, "swing_deg");
  REFUSED (BACK_BAR, "swing_deg", (double)NAN, "swing_deg");
  REFUSED (BACK_BAR, "inner_mm", 18, "inner_mm");
  REFUSED (BACK_BAR, "outer_mm", 16, "inner_mm");
  REFUSED (FRONT_BAR, "fitting_mm", 800, "fitting_mm");
  REFUSED (FRONT_BAR, "length_mm", 10, "fitting_mm");
  REFUSED (FRONT_BAR, "mass_g", 59, "root_fitting_g");
  REFUSED (FRONT_BAR, "modulus_gpa", -1, "modulus_gpa");
  REFUSED (BACK_STACK, "count", 2.5, "count");
  REFUSED (BACK_STACK, "count", 800, "count");
  REFUSED (BACK_STACK, "bore_mm", 30, "bore_mm");
  REFUSED (BACK_STACK, "along_mm", 305.5, "along_mm");
  REFUSED (BACK_STACK, "along_mm", -1, "along_mm");
}

static void
bar_is_not_shortened_under_a_stack_along_it (void)
{
  PhRig *rig = rigs_example ();
  PhIssues issues = { 0 };
  CHECK (ph_edit_set_number (rig, BACK_STACK, "along_mm", 0, 250, NULL));
  CHECK (!ph_edit_set_number (rig, BACK_BAR, "length_mm", 0, 200, &issues));
  CHECK (issues.n == 1);
  CHECK_TEXT (issues.items[0].part, "back-stack");
  CHECK (rig->parts[BACK_BAR].length_mm == 305);
  CHECK (ph_edit_set_number (rig, BACK_BAR, "length_mm", 0, 250, NULL));
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
optional_numbers_can_be_taken_away (void)
{
  PhRig *rig = rigs_example (), *before = rigs_example ();
  CHECK (ph_edit_set_number (rig, BACK_STACK, "along_mm", 0, 40, NULL));
  CHECK (ph_edit_set_number (rig, BACK_STACK, "along_mm", 0, (double)NAN, NULL));
  CHECK (ph_rig_equal (rig, before), "back at the far end");
  CHECK (ph_edit_set_number (rig, BACK_BAR, "modulus_gpa", 0, 90, NULL));
  CHECK (ph_edit_set_number (rig, BACK_BAR, "modulus_gpa", 0, 0, NULL));
  CHECK (ph_rig_equal (rig, before), "rigid again");
  CHECK (ph_edit_set_number (rig, SIGHT, "aperture_mm", 0, (double)NAN, NULL));
  CHECK (isnan (rig->parts[SIGHT].aperture_mm[2]));
  CHECK (ph_edit_set_number (rig, SIGHT, "aperture_mm", 2, 120, NULL));
  CHECK (rig->parts[SIGHT].aperture_mm[0] == 0 && rig->parts[SIGHT].aperture_mm[2] == 120);
  CHECK (ph_edit_set_bow_number (rig, "brace_height_mm", 0, (double)NAN, NULL));
  CHECK (isnan (rig->bow.brace_height_mm) && rigs_sound (rig, true));
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
stack_does_not_return_to_an_end_that_is_taken (void)
{
  PhRig *rig = rigs_example ();
  CHECK (ph_edit_set_number (rig, BACK_STACK, "along_mm", 0, 40, NULL));
  ph_rig_append (rig, rigs_stack ("other", "back-bar", 2));
  PhIssues issues = { 0 };
  CHECK (!ph_edit_set_number (rig, BACK_STACK, "along_mm", 0, (double)NAN, &issues));
  CHECK (rig->parts[BACK_STACK].along_mm == 40 && issues.n == 1);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
bow_and_archer_numbers_are_held_together (void)
{
  PhRig *rig = rigs_example (), *before = rigs_example ();
  PhIssues issues = { 0 };
  CHECK (!ph_edit_set_bow_number (rig, "brace_height_mm", 0, 661, &issues));
  CHECK (!ph_edit_set_archer_number (rig, "draw_length_mm", 170, &issues));
  CHECK (!ph_edit_set_archer_number (rig, "holding_weight_n", 401, &issues));
  CHECK (!ph_edit_set_archer_number (rig, "roll_stiffness_nm_per_rad", 0, &issues));
  CHECK (!ph_edit_set_bow_number (rig, "gyration_mm", 1, -1, &issues));
  CHECK (ph_rig_equal (rig, before) && issues.n == 5);
  CHECK (ph_edit_set_archer_number (rig, "draw_length_mm", 700, NULL));
  CHECK (ph_edit_set_archer_number (rig, "roll_bias_nm", 0.1, NULL));
  CHECK (ph_edit_set_bow_number (rig, "com_mm", 1, -4.5, NULL));
  CHECK (rig->archer.draw_length_mm == 700 && rig->archer.roll_bias_nm == 0.1);
  CHECK (rig->bow.com_mm[1] == -4.5 && rig->archer.hand_given);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
last_weight_of_a_rig_is_not_taken (void)
{
  PhRig *rig = rigs_example ();
  while (rig->n_parts > 1)
    ph_rig_drop (rig, 1);
  CHECK (ph_edit_set_bow_number (rig, "mass_g", 0, 0, NULL), "the sight is left");
  PhIssues issues = { 0 };
  CHECK (!ph_edit_set_number (rig, SIGHT, "mass_g", 0, 0, &issues));
  CHECK (!ph_edit_set_off (rig, SIGHT, true, &issues));
  CHECK (issues.n == 2 && rig->parts[SIGHT].mass_g == 310 && !rig->parts[SIGHT].off);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
edit_beyond_the_limits_stretches_them (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[BACK_BAR].limit_swing = (PhLimits){ true, 10, 30 };
  CHECK (ph_edit_set_number (rig, BACK_BAR, "swing_deg", 0, 44, NULL));
  CHECK (rig->parts[BACK_BAR].limit_swing.hi == 44);
  CHECK (rig->parts[BACK_BAR].limit_swing.lo == 10);
  ph_rig_free (rig);
}

static void
name_may_be_long_but_not_endless (void)
{
  char name[1002];
  memset (name, 'n', 1001);
  name[1001] = '\0';
  PhRig *rig = rigs_example ();
  PhIssues issues = { 0 };
  CHECK (!ph_edit_set_name (rig, BLOCK, name, &issues) && issues.n == 1);
  name[1000] = '\0';
  CHECK (ph_edit_set_name (rig, BLOCK, name, &issues) && issues.n == 1);
  CHECK (!ph_edit_set_name (rig, BLOCK, "\xff", &issues) && issues.n == 2);
  CHECK (strlen (rig->parts[BLOCK].name) == 1000);
  CHECK (ph_edit_set_name (rig, BLOCK, "", NULL));
  CHECK_TEXT (ph_part_name (&rig->parts[BLOCK]), "block");
  CHECK (ph_edit_set_rig_name (rig, "Quay club", NULL));
  CHECK_TEXT (rig->name, "Quay club");
  CHECK (ph_edit_set_rig_notes (rig, "an invented club", NULL));
  CHECK_TEXT (rig->notes, "an invented club");
  CHECK (ph_edit_set_rig_notes (rig, "", NULL) && !rig->notes);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
part_is_not_fitted_where_another_is (void)
{
  PhRig *rig = rigs_example ();
  PhPart other = rigs_stack ("other", "front-bar", 2);
  other.off = true;
  ph_rig_append (rig, other);
  PhIssues issues = { 0 };
  CHECK (!ph_edit_set_off (rig, 6, false, &issues) && rig->parts[6].off);
  CHECK (issues.n == 1 && strstr (issues.items[0].text, "front-stack"));
  CHECK (ph_edit_set_off (rig, FRONT_STACK, true, NULL));
  CHECK (ph_edit_set_off (rig, 6, false, NULL) && !rig->parts[6].off);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
off_and_on_again_is_the_very_same_rig (void)
{
  PhRig *rig = rigs_example (), *before = rigs_example ();
  CHECK (ph_edit_set_off (rig, BLOCK, true, NULL) && !ph_rig_equal (rig, before));
  CHECK (ph_edit_set_off (rig, BLOCK, false, NULL) && ph_rig_equal (rig, before));
  ph_edit_set_locked (rig, BLOCK, true);
  CHECK (rig->parts[BLOCK].locked && !ph_rig_equal (rig, before));
  ph_edit_set_locked (rig, BLOCK, false);
  CHECK (ph_rig_equal (rig, before));
  ph_rig_free (rig);
  ph_rig_free (before);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (number_is_set_and_stands_in_the_file);
  CASE (refused_number_leaves_the_very_same_rig);
  CASE (bar_is_not_shortened_under_a_stack_along_it);
  CASE (optional_numbers_can_be_taken_away);
  CASE (stack_does_not_return_to_an_end_that_is_taken);
  CASE (bow_and_archer_numbers_are_held_together);
  CASE (last_weight_of_a_rig_is_not_taken);
  CASE (edit_beyond_the_limits_stretches_them);
  CASE (name_may_be_long_but_not_endless);
  CASE (part_is_not_fitted_where_another_is);
  CASE (off_and_on_again_is_the_very_same_rig);
  return check_end ();
}
