/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every listed error and note of the rig file's page, each made by one change of a sound rig, and
 * rigs that only an enemy would write.
 */

#include "check.h"
#include "rigs.h"

typedef void (*Change) (PhRig *rig);

/* The example with one change must be refused, by an issue of that part and key, whose text holds
   those words. */
static void
check_refused (Change change, const char *part, const char *key, const char *words, int line)
{
  PhRig *rig = rigs_example ();
  PhIssues issues = { 0 };
  change (rig);
  bool sound = ph_check_rig (rig, &issues);
  bool found = false;
  for (size_t i = 0; i < issues.n; i++)
    {
      const PhIssue *issue = &issues.items[i];
      found |= !issue->is_note && strcmp (issue->part ? issue->part : "", part) == 0
               && strcmp (issue->key ? issue->key : "", key) == 0 && strstr (issue->text, words);
    }
  CHECK (!sound, "case of line %d was let through", line);
  CHECK (found, "case of line %d: no issue of %s, %s with «%s»", line, part, key, words);
  for (size_t i = 0; !found && i < issues.n; i++)
    {
      char *text = ph_issue_line (&issues.items[i]);
      printf ("#   there is: %s\n", text);
      free (text);
    }
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}
#define REFUSED(change, part, key, words) check_refused (change, part, key, words, __LINE__)

enum
{
  SIGHT,
  FRONT_BAR,
  FRONT_STACK,
  BLOCK,
  BACK_BAR,
  BACK_STACK
};

#define SET(name, part, key, value)                                                                \
  static void name (PhRig *rig)                                                                    \
  {                                                                                                \
    rigs_set (&rig->parts[part], key, value);                                                      \
  }
#define HANG(name, part, place)                                                                    \
  static void name (PhRig *rig)                                                                    \
  {                                                                                                \
    rigs_set_text (&rig->parts[part], "on", place);                                                \
  }
#define DO(name, statement)                                                                        \
  static void name (PhRig *rig)                                                                    \
  {                                                                                                \
    statement;                                                                                     \
  }

static void
example_and_odd_rig_are_sound (void)
{
  PhRig *example = rigs_example (), *odd = rigs_odd ();
  CHECK (rigs_sound (example, true));
  CHECK (rigs_sound (odd, true));
  ph_rig_free (example);
  ph_rig_free (odd);
}

SET (mass_below, BLOCK, "mass_g", -1)
SET (mass_above, BACK_BAR, "mass_g", 20000.001)
SET (angle_above, BACK_BAR, "swing_deg", 180.1)
SET (length_above, BACK_BAR, "length_mm", 3000.1)
SET (count_broken, BACK_STACK, "count", 1.5)
SET (count_above, BACK_STACK, "count", 1001)
SET (modulus_zero, FRONT_BAR, "modulus_gpa", 0)
SET (modulus_above, FRONT_BAR, "modulus_gpa", 1001)
SET (stack_heavy, BACK_STACK, "each_g", 4000.1)
SET (bore_wide, BACK_STACK, "bore_mm", 25.4)
SET (tube_solid, BACK_BAR, "inner_mm", 18)
SET (fitting_long, FRONT_BAR, "fitting_mm", 763)
SET (fittings_heavy, FRONT_BAR, "tip_fitting_g", 130.1)
SET (size_not_finite, BLOCK, "mass_g", INFINITY)
DO (at_far, rigs_set3 (&rig->parts[SIGHT], "at_mm", 0, 0, 3001))

static void
number_out_of_range_is_an_error (void)
{
  REFUSED (mass_below, "block", "mass_g", "from 0 to 20000 g");
  REFUSED (mass_above, "back-bar", "mass_g", "from 0 to 20000 g");
  REFUSED (angle_above, "back-bar", "swing_deg", "from -180 to 180°");
  REFUSED (length_above, "back-bar", "length_mm", "from 0 to 3000 mm");
  REFUSED (count_broken, "back-stack", "count", "a whole number");
  REFUSED (count_above, "back-stack", "count", "from 0 to 1000");
  REFUSED (modulus_zero, "front-bar", "modulus_gpa", "above 0");
  REFUSED (modulus_above, "front-bar", "modulus_gpa", "up to 1000 GPa");
  REFUSED (size_not_finite, "block", "mass_g", "finite");
  REFUSED (at_far, "sight", "at_mm", "number 3 of 3 is 3001 mm");
}

static void
numbers_that_contradict_each_other_are_errors (void)
{
  REFUSED (stack_heavy, "back-stack", "count", "count times each_g at most");
  REFUSED (bore_wide, "back-stack", "bore_mm", "less than diameter_mm, 25.4 mm");
  REFUSED (tube_solid, "back-bar", "inner_mm", "less than outer_mm, 18 mm");
  REFUSED (fitting_long, "front-bar", "fitting_mm", "at most length_mm, 762 mm");
  REFUSED (fittings_heavy, "front-bar", "root_fitting_g", "at most mass_g, 165 g");
}

static void
fittings_may_weigh_all_of_a_bar_in_rounding (void)
{
  PhRig *rig = rigs_example ();
  rigs_set (&rig->parts[FRONT_BAR], "mass_g", 0.3);
  rigs_set (&rig->parts[FRONT_BAR], "root_fitting_g", 0.1);
  rigs_set (&rig->parts[FRONT_BAR], "tip_fitting_g", 0.2); /* 0.1 + 0.2 > 0.3 in doubles */
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

static void
bar_shorter_than_the_default_fitting_is_no_error (void)
{
  PhRig *rig = rigs_example ();
  rigs_set (&rig->parts[BACK_BAR], "length_mm", 10);
  CHECK (rigs_sound (rig, true));
  rigs_set (&rig->parts[BACK_BAR], "fitting_mm", 15);
  CHECK (!rigs_sound (rig, false), "but written it must fit");
  ph_rig_free (rig);
}

static void
each_missing_key_without_a_default_is_an_error (void)
{
  PhRig *whole = rigs_odd ();
  ph_rig_append (whole, rigs_sight ("glass"));
  size_t n, tried = 0;
  const PhField *fields = ph_fields_of (PH_OBJECT_PART, &n);
  for (size_t i = 0; i < whole->n_parts; i++)
    for (size_t k = 0; k < n; k++)
      {
        if (!(fields[k].required & fields[k].kinds & 1u << whole->parts[i].kind)
            || fields[k].type == PH_FIELD_WORD)
          continue;
        PhRig *rig = ph_rig_copy (whole);
        rig->parts[i].given &= ~((uint64_t)1 << k);
        if (fields[k].type == PH_FIELD_TEXT)
          ph_field_set_text (&fields[k], &rig->parts[i], NULL);
        PhIssues issues = { 0 };
        CHECK (!ph_check_rig (rig, &issues), "%s of part %zu", fields[k].key, i);
        bool named = false;
        for (size_t j = 0; j < issues.n; j++)
          named |= issues.items[j].key && strcmp (issues.items[j].key, fields[k].key) == 0
                   && strstr (issues.items[j].text, "is missing");
        CHECK (named, "%s of part %zu", fields[k].key, i);
        ph_issues_clear (&issues);
        ph_rig_free (rig);
        tried++;
      }
  CHECK (tried > 50);
  ph_rig_free (whole);
}

DO (bow_without_mass, rig->bow.given &= ~ph_given_bit (PH_OBJECT_BOW, "mass_g"))
DO (check_without_com, rig->archer.checks[0].given &= ~ph_given_bit (PH_OBJECT_CHECK, "com_mm"))
DO (check_weightless, rig->archer.checks[0].mass_g = 0)
DO (check_lying, rig->archer.checks[0].bubble_deg = 60)
DO (draw_zero, rigs_set_archer (rig, "draw_length_mm", 0))
DO (body_heavy, rigs_set_archer (rig, "body_mass_g", 300001))
DO (stiffness_zero, rigs_set_archer (rig, "roll_stiffness_nm_per_rad", 0))
DO (bias_strong, rigs_set_archer (rig, "roll_bias_nm", -10.5))
DO (brace_long, rigs_set_reach (rig, 940, 660))
DO (brace_zero, rigs_set_reach (rig, 940, 0))
DO (axle_zero, rigs_set_reach (rig, 0, 178))

static void
bow_and_archer_are_checked_too (void)
{
  REFUSED (bow_without_mass, "", "mass_g", "is missing");
  REFUSED (check_without_com, "", "hand.bubble_tests[0].com_mm", "is missing");
  REFUSED (check_weightless, "", "hand.bubble_tests[0].mass_g", "above 0");
  REFUSED (check_lying, "", "hand.bubble_tests[0].bubble_deg", "below 60°");
  REFUSED (draw_zero, "", "draw_length_mm", "above 0");
  REFUSED (body_heavy, "", "body_mass_g", "up to 300000 g");
  REFUSED (stiffness_zero, "", "hand.roll_stiffness_nm_per_rad", "above 0");
  REFUSED (bias_strong, "", "hand.roll_bias_nm", "from -10 to 10");
  REFUSED (brace_long, "", "brace_height_mm", "less than the draw length, 660 mm");
  REFUSED (brace_zero, "", "brace_height_mm", "above 0");
  REFUSED (axle_zero, "", "axle_to_axle_mm", "above 0");
}

DO (id_twice, rigs_set_text (&rig->parts[BACK_STACK], "id", "front-stack"))
DO (id_empty, rigs_set_text (&rig->parts[BACK_STACK], "id", ""))
DO (id_colon, rigs_set_text (&rig->parts[BACK_STACK], "id", "a:b"))
DO (id_control, rigs_set_text (&rig->parts[BACK_STACK], "id", "a\tb"))
DO (id_c1_control, rigs_set_text (&rig->parts[BACK_STACK], "id", "a\xc2\x85z"))
DO (id_bow, rigs_set_text (&rig->parts[BACK_STACK], "id", "bow"))
DO (id_long, rigs_set_text (&rig->parts[BACK_STACK], "id",
                            "12345678901234567890123456789012345678901234567890123456789012345"))
DO (mount_twice, free (rig->bow.mounts[0].id); rig->bow.mounts[0].id = ph_text_dup ("rear"))
DO (mount_flat, rig->bow.mounts[0].axis[0] = 9e-7)
DO (socket_far, rig->parts[BLOCK].sockets[0].at_mm[1] = -3000.5)
DO (socket_twice, rigs_add_socket (&rig->parts[BLOCK].sockets, &rig->parts[BLOCK].n_sockets, "a",
                                   RIGS_3 (0, 0, 0), RIGS_3 (1, 0, 0)))

static void
ids_are_short_plain_and_used_once (void)
{
  REFUSED (id_twice, "front-stack", "id", "used by two parts, number 3 and number 6");
  REFUSED (id_empty, "#6", "id", "1 to 64 characters");
  REFUSED (id_long, "12345678901234567890123456789012345678901234567890123456789012345", "id",
           "1 to 64 characters");
  REFUSED (id_colon, "a:b", "id", "no colon");
  REFUSED (id_control, "a b", "id", "no control character");
  REFUSED (id_c1_control, "a z", "id", "control character");
  REFUSED (id_bow, "bow", "id", "the bow itself");
  REFUSED (mount_twice, "", "mounts[1].id", "used twice");
  REFUSED (socket_twice, "block", "sockets[1].id", "used twice");
  REFUSED (mount_flat, "", "mounts[0].axis", "at least 1e-6");
  REFUSED (socket_far, "block", "sockets[0].at_mm", "from -3000 to 3000 mm");
}

static void
id_of_64_letters_of_two_bytes_is_fine (void)
{
  PhRig *rig = rigs_example ();
  char id[2 * 64 + 1] = "";
  for (int i = 0; i < 64; i++)
    strcat (id, "é");
  rigs_set_text (&rig->parts[BACK_STACK], "id", id);
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

HANG (on_nothing, BACK_BAR, "blok:a")
HANG (on_no_mount, BACK_BAR, "bow:reer")
HANG (on_no_socket, BACK_BAR, "block:b")
HANG (on_socket_of_bar, BACK_STACK, "back-bar:a")
HANG (on_plain_bow, BACK_BAR, "bow")
HANG (on_bracket_end, BACK_BAR, "block")
HANG (on_accessory, BACK_BAR, "sight")
HANG (sight_on_mount, SIGHT, "bow:front")
HANG (sight_on_bar, SIGHT, "back-bar")
HANG (on_taken, BACK_STACK, "front-bar")
HANG (on_taken_mount, BACK_BAR, "bow:rear")
HANG (on_itself, BACK_BAR, "back-bar")
HANG (in_a_circle, BLOCK, "back-stack")
SET (along_far, BACK_STACK, "along_mm", 305.1)
DO (along_on_mount, rigs_set_text (&rig->parts[BLOCK], "on", "bow:front");
    rigs_set_text (&rig->parts[FRONT_BAR], "on", "bow:rear");
    rigs_set_text (&rig->parts[BACK_STACK], "on", "front-stack");
    rigs_set (&rig->parts[BACK_STACK], "along_mm", 3))

static void
place_that_is_not_there_is_an_error (void)
{
  REFUSED (on_nothing, "back-bar", "on", "there is no \"blok:a\"");
  REFUSED (on_no_mount, "back-bar", "on", "no mount \"reer\"; it should be one of: front, rear");
  REFUSED (on_no_socket, "back-bar", "on", "no socket \"b\"; it should be one of: a");
  REFUSED (on_socket_of_bar, "back-stack", "on", "it should be one of: none");
  REFUSED (on_plain_bow, "back-bar", "on", "only accessories");
  REFUSED (on_bracket_end, "back-bar", "on", "a bracket has no far end");
  REFUSED (on_accessory, "back-bar", "on", "nothing can hang on an accessory");
  REFUSED (sight_on_mount, "sight", "on", "it should be \"bow\"");
  REFUSED (sight_on_bar, "sight", "on", "it should be \"bow\"");
}

static void
tree_that_cannot_be_built_is_an_error (void)
{
  REFUSED (on_taken, "back-stack", "on", "already carries front-stack");
  REFUSED (on_taken_mount, "back-bar", "on", "already carries block");
  REFUSED (on_itself, "back-bar", "on", "in a circle");
  REFUSED (in_a_circle, "block", "on", "in a circle");
  REFUSED (in_a_circle, "back-stack", "on", "in a circle");
  REFUSED (along_far, "back-stack", "along_mm", "at most the bar's length, 305 mm");
  REFUSED (along_on_mount, "back-stack", "along_mm", "weights on a bar");
}

static void
part_that_is_off_takes_no_place (void)
{
  PhRig *rig = rigs_example ();
  ph_rig_append (rig, rigs_stack ("other", "front-bar", 2));
  CHECK (!rigs_sound (rig, false));
  rig->parts[6].off = true;
  CHECK (rigs_sound (rig, true));
  rig->parts[6].off = false;
  rigs_set (&rig->parts[6], "along_mm", 300);
  CHECK (rigs_sound (rig, true), "along the bar there is room");
  ph_rig_append (rig, rigs_stack ("third", "front-bar", 2));
  rigs_set (&rig->parts[7], "along_mm", 300);
  CHECK (rigs_sound (rig, true), "for any number");
  ph_rig_free (rig);
}

static PhRig *
row_of_bars (int n)
{
  PhRig *rig = rigs_example ();
  while (rig->n_parts)
    ph_rig_drop (rig, 0);
  for (int i = 0; i < n; i++)
    {
      char id[16], on[16];
      snprintf (id, sizeof id, "b%d", i);
      snprintf (on, sizeof on, "b%d", i - 1);
      ph_rig_append (rig, rigs_bar (id, i ? on : "bow:front", 0, 0, 20, 5));
    }
  return rig;
}

static void
sixteen_in_a_row_is_the_most (void)
{
  PhRig *rig = row_of_bars (16);
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
  rig = row_of_bars (17);
  PhIssues issues = { 0 };
  CHECK (!ph_check_rig (rig, &issues) && issues.n == 1);
  CHECK_TEXT (issues.items[0].part, "b16");
  CHECK (strstr (issues.items[0].text, "at most 16") != NULL);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
two_hundred_and_fifty_six_parts_are_the_most (void)
{
  PhRig *rig = rigs_example ();
  for (int i = 0; rig->n_parts < PH_RIG_PARTS_MOST; i++)
    {
      char id[16];
      snprintf (id, sizeof id, "k%d", i);
      ph_rig_append (rig, rigs_sight (id));
    }
  CHECK (rigs_sound (rig, true));
  ph_rig_append (rig, rigs_sight ("one-more"));
  PhIssues issues = { 0 };
  CHECK (!ph_check_rig (rig, &issues));
  CHECK_TEXT (issues.items[0].key, "parts");
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

/* What a hostile file could hold. How long it may take is held from outside, by tests/headless. */
static void
hostile_rigs_are_refused (void)
{
  PhRig *rig = row_of_bars (256);
  CHECK (!rigs_sound (rig, false));
  rigs_set_text (&rig->parts[0], "on", "b255");
  CHECK (!rigs_sound (rig, false), "a circle of 256");
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      rigs_set_text (&rig->parts[i], "id", "b");
      rigs_set_text (&rig->parts[i], "on", "b");
    }
  CHECK (!rigs_sound (rig, false), "256 of one id, each on itself");
  for (size_t i = 0; i < rig->n_parts; i++)
    rigs_set_text (&rig->parts[i], "on", i % 2 ? "" : ":");
  CHECK (!rigs_sound (rig, false));
  rig->bow.mounts = ph_realloc (rig->bow.mounts, 20000 * sizeof *rig->bow.mounts);
  while (rig->bow.n_mounts < 20000)
    {
      size_t i = rig->bow.n_mounts++;
      rig->bow.mounts[i] = (PhSocket){ .id = ph_text_dup (i % 2 ? "m" : "n") };
    }
  CHECK (!rigs_sound (rig, false));
  ph_rig_free (rig);
}

DO (weightless, rig->bow.mass_g = 0; for (size_t i = 0; i < 6; i++) rig->parts[i].off = true)
DO (name_long, rig->name = ph_realloc (rig->name, 1002); memset (rig->name, 'n', 1001);
    rig->name[1001] = '\0')
DO (limits_crossed, rig->parts[BACK_BAR].limit_swing = ((PhLimits){ true, 30, 10 }))
DO (limits_wide, rig->parts[BACK_BAR].limit_lift = ((PhLimits){ true, -181, 10 }))
DO (limits_endless, rig->parts[BACK_STACK].limit_count = ((PhLimits){ true, 0, (double)NAN }))
DO (key_long, char *key = ph_alloc (1002); memset (key, 'k', 1001); key[1001] = '\0';
    rig->bow.extras.items = ph_alloc (sizeof (PhExtra));
    rig->bow.extras.items[0] = ((PhExtra){ key, ph_text_dup ("1") }); rig->bow.extras.n = 1)

static void
the_rest_of_the_list_is_refused (void)
{
  REFUSED (weightless, "", "mass_g", "the whole rig weighs nothing");
  REFUSED (name_long, "", "name", "at most 1000");
  REFUSED (limits_crossed, "back-bar", "limits.swing_deg", "lower number first");
  REFUSED (limits_wide, "back-bar", "limits.lift_deg", "from -180 to 180°");
  REFUSED (limits_endless, "back-stack", "limits.count", "finite");
  PhRig *rig = rigs_example ();
  key_long (rig);
  CHECK (!rigs_sound (rig, false), "a key of 1001 letters");
  ph_rig_free (rig);
}

static void
give_sd (PhRig *rig, size_t part, const char *key, int n, double value)
{
  PhPart *p = &rig->parts[part];
  p->sds = ph_realloc (p->sds, (p->n_sds + 1) * sizeof *p->sds);
  p->sds[p->n_sds++] = (PhSd){ ph_text_dup (key), n, { value, value, value } };
}

DO (sd_below, give_sd (rig, BLOCK, "mass_g", 1, -0.1))
DO (sd_short, give_sd (rig, BLOCK, "com_mm", 1, 2))
DO (draw_wild, rig->archer.checks[0].draws_deg = ph_alloc (sizeof (double));
    rig->archer.checks[0].draws_deg[0] = INFINITY; rig->archer.checks[0].n_draws = 1)
DO (price_endless, rig->parts[BLOCK].price.given = true;
    rig->parts[BLOCK].price.amount = (double)NAN)

static void
lists_beside_the_numbers_are_checked_too (void)
{
  REFUSED (sd_below, "block", "sd.mass_g", "0 or more");
  REFUSED (sd_short, "block", "sd.com_mm", "should have 3");
  REFUSED (draw_wild, "", "hand.bubble_tests[0].draws_deg", "number 1");
  REFUSED (price_endless, "block", "price.amount", "finite");
  PhRig *rig = rigs_example ();
  give_sd (rig, BLOCK, "com_mm", 3, 2);
  give_sd (rig, BLOCK, "colour", 1, 2);
  PhIssues issues = { 0 };
  CHECK (ph_check_rig (rig, &issues) && issues.n == 1);
  CHECK_TEXT (issues.items[0].key, "sd.colour");
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

static void
weightless_bow_is_carried_by_a_fitted_part (void)
{
  PhRig *rig = rigs_example ();
  rig->bow.mass_g = 0;
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

static void
value_outside_its_limits_stretches_the_nearer_one (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[BACK_BAR].limit_swing = (PhLimits){ true, 25, 40 };
  rig->parts[BACK_BAR].limit_lift = (PhLimits){ true, -30, -20 };
  rig->parts[BACK_STACK].limit_count = (PhLimits){ true, 2, 5 };
  CHECK (rigs_sound (rig, true));
  CHECK (rig->parts[BACK_BAR].limit_swing.lo == 20 && rig->parts[BACK_BAR].limit_swing.hi == 40);
  CHECK (rig->parts[BACK_BAR].limit_lift.lo == -30 && rig->parts[BACK_BAR].limit_lift.hi == -12);
  CHECK (rig->parts[BACK_STACK].limit_count.lo == 2 && rig->parts[BACK_STACK].limit_count.hi == 5);
  ph_rig_free (rig);
}

static void
unknown_keys_and_odd_radii_are_notes (void)
{
  PhRig *rig = rigs_example ();
  rig->parts[BLOCK].sockets[0].extras.items = ph_alloc (sizeof (PhExtra));
  rig->parts[BLOCK].sockets[0].extras.items[0] =
      (PhExtra){ ph_text_dup ("thread"), ph_text_dup ("\"5/16\"") };
  rig->parts[BLOCK].sockets[0].extras.n = 1;
  rig->bow.gyration_mm[1] = 300; /* 300² > 290² + 60² */
  PhIssues issues = { 0 };
  CHECK (ph_check_rig (rig, &issues));
  CHECK (issues.n == 2 && ph_issues_errors (&issues) == 0);
  char *first = ph_issue_line (&issues.items[0]), *second = ph_issue_line (&issues.items[1]);
  CHECK (strstr (first, "part block: sockets.thread: ") != NULL, "%s", first);
  CHECK (strstr (second, "bow: gyration_mm: ") != NULL, "%s", second);
  free (first);
  free (second);
  ph_issues_clear (&issues);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (example_and_odd_rig_are_sound);
  CASE (number_out_of_range_is_an_error);
  CASE (numbers_that_contradict_each_other_are_errors);
  CASE (fittings_may_weigh_all_of_a_bar_in_rounding);
  CASE (bar_shorter_than_the_default_fitting_is_no_error);
  CASE (each_missing_key_without_a_default_is_an_error);
  CASE (bow_and_archer_are_checked_too);
  CASE (ids_are_short_plain_and_used_once);
  CASE (id_of_64_letters_of_two_bytes_is_fine);
  CASE (place_that_is_not_there_is_an_error);
  CASE (tree_that_cannot_be_built_is_an_error);
  CASE (part_that_is_off_takes_no_place);
  CASE (sixteen_in_a_row_is_the_most);
  CASE (two_hundred_and_fifty_six_parts_are_the_most);
  CASE (hostile_rigs_are_refused);
  CASE (the_rest_of_the_list_is_refused);
  CASE (lists_beside_the_numbers_are_checked_too);
  CASE (weightless_bow_is_carried_by_a_fitted_part);
  CASE (value_outside_its_limits_stretches_the_nearer_one);
  CASE (unknown_keys_and_odd_radii_are_notes);
  return check_end ();
}
