/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mirroring for the other bow hand: physics, section 2. A mirrored rig is a mirrored thing, so its
 * report is the first one's with y turned over. Of a branch alone: tests/property.
 */
#include "check.h"
#include "model/edit.h"
#include "model/mirror-own.h"
#include "model/report.h"
#include "rigs.h"

static PhRig *
rich_rig (void)
{
  PhRig *rig = rigs_odd ();
  rigs_add_check (rig, 3000, RIGS_3 (70, 1.5, -40), 660, 40, 1.25);
  rig->archer.checks[0].predicted_deg = 0.7;
  rig->archer.checks[0].given |= ph_given_bit (PH_OBJECT_CHECK, "predicted_deg");
  rig->archer.checks[0].draws_deg = ph_alloc (2 * sizeof (double));
  rig->archer.checks[0].n_draws = 2;
  rig->archer.checks[0].draws_deg[0] = 1;
  rig->archer.checks[0].draws_deg[1] = 1.5;
  ph_rig_append (rig, rigs_sight ("glass"));
  /* A swing on an axis across the bow, seen on the bracket itself. */
  rigs_set (&rig->parts[4], "swing_deg", 12);
  rig->parts[4].limit_swing = (PhLimits){ true, -5, 30 };
  return rig;
}

static void
mirrored_twice_is_the_very_same_rig (void)
{
  for (int which = 0; which < 3; which++)
    {
      PhRig *rig = which == 0 ? rigs_example () : which == 1 ? rigs_odd () : rich_rig ();
      PhRig *before = ph_rig_copy (rig);
      ph_edit_mirror (rig);
      CHECK (!ph_rig_equal (rig, before));
      CHECK (rig->archer.bow_hand == PH_BOW_HAND_RIGHT && rigs_sound (rig, true));
      ph_edit_mirror (rig);
      CHECK (ph_rig_equal (rig, before), "rig %d", which);
      ph_rig_free (rig);
      ph_rig_free (before);
    }
}

static void
hand_that_stands_in_the_file_stays_in_it (void)
{
  PhRig *rig = rigs_example ();
  rig->archer.given |= ph_given_bit (PH_OBJECT_ARCHER, "bow_hand");
  PhRig *before = ph_rig_copy (rig);
  ph_edit_mirror (rig);
  ph_edit_mirror (rig);
  CHECK (ph_rig_equal (rig, before));
  CHECK (rig->archer.given & ph_given_bit (PH_OBJECT_ARCHER, "bow_hand"));
  ph_rig_free (rig);
  ph_rig_free (before);
  rig = ph_rig_new ();
  ph_edit_mirror (rig);
  CHECK (rig->archer.present && rig->archer.given & ph_given_bit (PH_OBJECT_ARCHER, "bow_hand"),
         "the other hand must be written");
  ph_edit_mirror (rig);
  CHECK (!rig->archer.present && !rig->archer.given);
  ph_rig_free (rig);
}

static PhReport *
report_of (PhRig *rig)
{
  CHECK (rigs_sound (rig, true));
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  ph_compiled_free (compiled);
  return report;
}

/* The hand's fit ends where its own tolerance lets it, from either side. */
static void
check_mirrored (PhRig *rig, double fit)
{
  PhReport *a = report_of (rig);
  ph_edit_mirror (rig);
  PhReport *b = report_of (rig);
  CHECK (a->n_shares == b->n_shares);
  for (size_t i = 0; i < a->n_shares && i < b->n_shares; i++)
    {
      CHECK_NEAR (b->shares[i].com_m.x, a->shares[i].com_m.x, 1e-14);
      CHECK_NEAR (b->shares[i].com_m.y, -a->shares[i].com_m.y, 1e-14);
      CHECK_NEAR (b->shares[i].com_m.z, a->shares[i].com_m.z, 1e-14);
    }
  CHECK_NEAR (b->roll_moment_nm, -a->roll_moment_nm, 1e-13);
  CHECK_NEAR (b->pitch.moment_nm, a->pitch.moment_nm, 1e-13);
  CHECK_NEAR (b->mass.inertia_grip_kg_m2.xx, a->mass.inertia_grip_kg_m2.xx, 1e-14);
  CHECK_NEAR (b->mass.inertia_grip_kg_m2.xy, -a->mass.inertia_grip_kg_m2.xy, 1e-14);
  CHECK_NEAR (b->mass.inertia_grip_kg_m2.yz, -a->mass.inertia_grip_kg_m2.yz, 1e-14);
  CHECK_NEAR (b->mass.inertia_grip_kg_m2.xz, a->mass.inertia_grip_kg_m2.xz, 1e-14);
  CHECK_NEAR (b->hand.stiffness_nm_per_rad, a->hand.stiffness_nm_per_rad, fit);
  CHECK_NEAR (b->hand.bias_nm, -a->hand.bias_nm, fit);
  CHECK_NEAR (b->cant_rad, -a->cant_rad, fit);
  CHECK_NEAR (b->clearance_m, a->clearance_m, 1e-14);
  CHECK (ph_report_heavy_side (b) == -ph_report_heavy_side (a));
  ph_report_free (a);
  ph_report_free (b);
  ph_rig_free (rig);
}

static void
mirrored_rig_has_the_mirrored_report (void)
{
  check_mirrored (rigs_odd (), 1e-13);
  check_mirrored (rigs_example (), 1e-9);
  check_mirrored (rich_rig (), 1e-9);
}

static void
signs_turn_as_the_page_says (void)
{
  PhRig *rig = rich_rig ();
  ph_edit_mirror (rig);
  CHECK (rig->bow.com_mm[1] == 2 && rig->bow.com_mm[0] == -25);
  CHECK (rig->bow.mounts[0].at_mm[1] == -0.5 && rig->bow.mounts[0].axis[1] == -0.3);
  CHECK (rig->archer.roll_bias_nm == -0.07 && rig->archer.wanted_bubble_deg == 1.5);
  CHECK (rig->archer.roll_stiffness_nm_per_rad == 1.3);
  CHECK (rig->archer.checks[0].bubble_deg == -1.25 && rig->archer.checks[0].com_mm[1] == -1.5);
  CHECK (rig->archer.checks[0].predicted_deg == -0.7);
  CHECK (rig->archer.checks[0].draws_deg[1] == -1.5);
  CHECK (rig->parts[10].at_mm[1] == 38 && rig->parts[10].aperture_mm[1] == 8);
  CHECK (rig->parts[6].swing_deg == 4 && rig->parts[6].lift_deg == 2);
  CHECK (rig->parts[8].swing_deg == 0 && !signbit (rig->parts[8].swing_deg), "0 is not -0");
  CHECK (rig->parts[7].swing_deg == -5, "a part that is off turns too");
  ph_rig_free (rig);
}

static void
limits_turn_over_with_the_swing (void)
{
  PhRig *rig = rigs_odd ();
  ph_edit_mirror (rig);
  CHECK (rig->parts[2].swing_deg == -35);
  CHECK (rig->parts[2].limit_swing.lo == -50 && rig->parts[2].limit_swing.hi == 10);
  ph_rig_free (rig);
}

static void
swing_and_own_y_keep_their_sign_across_the_bow (void)
{
  /* The bracket "cross" points along +y: its sockets and mass centre keep their own y. */
  PhRig *rig = rigs_odd ();
  ph_edit_mirror (rig);
  CHECK (rig->parts[4].com_mm[1] == 4 && rig->parts[4].sockets[1].at_mm[1] == -9);
  CHECK (rig->parts[4].sockets[1].axis[1] == 0.5 && rig->bow.mounts[1].axis[1] == -5);
  /* "short" sits on its socket a, which points along y as well: its swing stays. */
  CHECK (rig->parts[5].swing_deg == 25);
  ph_rig_free (rig);
  /* Turned by 12° it points along y no more, but its swing is still on an axis that does. */
  rig = rich_rig ();
  ph_edit_mirror (rig);
  CHECK (rig->parts[4].swing_deg == 12 && rig->parts[4].limit_swing.lo == -5);
  CHECK (rig->parts[4].com_mm[1] == -4 && rig->parts[4].sockets[1].at_mm[1] == 9);
  ph_rig_free (rig);
}

static void
branch_off_the_plane_gets_a_socket_and_leaves_none_behind (void)
{
  PhRig *rig = rigs_example (), *before = ph_rig_copy (rig);
  PhPart *block = &rig->parts[3];
  CHECK (ph_edit_mirror_makes_seat (rig, 4) && !ph_edit_mirror_makes_seat (rig, 3));
  CHECK (ph_edit_mirror_part (rig, 4, NULL));
  CHECK (!ph_edit_mirror_makes_seat (rig, 4));
  block = &rig->parts[3];
  CHECK (block->n_sockets == 2);
  CHECK_TEXT (block->sockets[1].id, "a-mirrored");
  CHECK (block->sockets[1].at_mm[1] == -14 && block->sockets[0].at_mm[1] == 14);
  CHECK_TEXT (rig->parts[4].on, "block:a-mirrored");
  CHECK (rig->parts[4].swing_deg == -20 && rig->parts[4].lift_deg == -12);
  CHECK (ph_edit_mirror_part (rig, 4, NULL));
  CHECK (ph_rig_equal (rig, before));
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
socket_that_is_there_is_used_and_kept (void)
{
  PhRig *rig = rigs_example ();
  PhPart *block = &rig->parts[3];
  rigs_add_socket (&block->sockets, &block->n_sockets, "b", RIGS_3 (20, -14, 0), RIGS_3 (3, 0, 0));
  PhRig *before = ph_rig_copy (rig);
  CHECK (ph_edit_mirror_part (rig, 4, NULL));
  CHECK_TEXT (rig->parts[4].on, "block:b");
  CHECK (rig->parts[3].n_sockets == 2);
  CHECK (ph_edit_mirror_part (rig, 4, NULL));
  CHECK (ph_rig_equal (rig, before));
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
check_refused (PhRig *rig, size_t i, const char *words)
{
  PhRig *before = ph_rig_copy (rig);
  PhIssues issues = { 0 };
  CHECK (!ph_edit_mirror_part (rig, i, &issues));
  CHECK (issues.n == 1 && strstr (issues.items[0].text, words), "%s",
         issues.n ? issues.items[0].text : "no issue");
  CHECK (ph_rig_equal (rig, before));
  ph_issues_clear (&issues);
  ph_rig_free (before);
  ph_rig_free (rig);
}

static void
branch_with_no_place_on_the_other_side_is_refused (void)
{
  PhRig *rig = rigs_example ();
  PhPart *block = &rig->parts[3];
  rigs_add_socket (&block->sockets, &block->n_sockets, "b", RIGS_3 (20, -14, 0), RIGS_3 (1, 0, 0));
  ph_rig_append (rig, rigs_bar ("second", "block:b", -20, 0, 200, 80));
  CHECK (rigs_sound (rig, true));
  check_refused (rig, 4, "second sits at the place on the other side");
  rig = rigs_example ();
  ph_rig_drop (rig, 5);
  ph_rig_append (rig, rigs_bar ("tail", "back-bar", 0, 0, 100, 40));
  CHECK (rigs_sound (rig, true));
  check_refused (rig, 5, "tail hangs on the end of back-bar");
}

static void
check_name (const char *name, const char *mirrored)
{
  char *once = ph_mirror_name (name), *twice = ph_mirror_name (once);
  CHECK_TEXT (once, mirrored);
  CHECK_TEXT (twice, name);
  free (once);
  free (twice);
}

static void
names_change_sides_and_come_back (void)
{
  check_name ("Left back weights", "Right back weights");
  check_name ("RIGHT rod, the left one", "LEFT rod, the right one");
  check_name ("right", "left");
  check_name ("V bracket: left/right", "V bracket: right/left");
  check_name ("Left-side rod", "Right-side rod");
  check_name ("", "");
  /* No side is meant, or the word is another. */
  check_name ("Leftover from 2025, brightest", "Leftover from 2025, brightest");
  check_name ("Weight, left-hand thread", "Weight, left-hand thread");
  check_name ("lEFT rod", "lEFT rod");
  check_name ("l\xc3\xa9"
              "left",
              "l\xc3\xa9"
              "left");
}

static void
a_name_at_its_longest_stays_as_it_is (void)
{
  char name[1001];
  memset (name, 'x', 1000);
  name[1000] = '\0';
  memcpy (name, "left ", 5);
  check_name (name, name); /* "right" would be the 1,001st character */
  memcpy (name, "right ", 6);
  char shorter[1001];
  memcpy (shorter, "left", 4);
  strcpy (shorter + 4, name + 5);
  check_name (name, shorter);
}

static void
mirrored_parts_are_called_after_the_side_they_are_on (void)
{
  PhRig *rig = rigs_example ();
  CHECK (ph_edit_set_name (rig, 4, "Left back bar", NULL));
  CHECK (ph_edit_set_name (rig, 5, "Left weights", NULL));
  PhRig *named = ph_rig_copy (rig);
  ph_edit_mirror (rig);
  CHECK_TEXT (rig->parts[4].name, "Right back bar");
  CHECK_TEXT (rig->parts[4].id, "back-bar");
  ph_edit_mirror (rig);
  CHECK (ph_rig_equal (rig, named));
  CHECK (ph_edit_mirror_part (rig, 4, NULL));
  CHECK_TEXT (rig->parts[5].name, "Right weights");
  CHECK (ph_edit_mirror_part (rig, 4, NULL));
  CHECK (ph_rig_equal (rig, named), "of a branch too");
  ph_rig_free (named);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (mirrored_twice_is_the_very_same_rig);
  CASE (hand_that_stands_in_the_file_stays_in_it);
  CASE (mirrored_rig_has_the_mirrored_report);
  CASE (signs_turn_as_the_page_says);
  CASE (limits_turn_over_with_the_swing);
  CASE (swing_and_own_y_keep_their_sign_across_the_bow);
  CASE (branch_off_the_plane_gets_a_socket_and_leaves_none_behind);
  CASE (socket_that_is_there_is_used_and_kept);
  CASE (branch_with_no_place_on_the_other_side_is_refused);
  CASE (names_change_sides_and_come_back);
  CASE (a_name_at_its_longest_stays_as_it_is);
  CASE (mirrored_parts_are_called_after_the_side_they_are_on);
  return check_end ();
}
