/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Adding, removing, copying, pasting, duplicating and re-hanging; places; fresh ids and names.
 */
#include "check.h"
#include "model/edit.h"
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

static char *
joined_places (const PhRig *rig, PhPartKind kind, int moving)
{
  char **places = ph_edit_places (rig, kind, moving);
  char *all = ph_text_dup ("");
  for (char **place = places; *place; place++)
    {
      char *longer = ph_text_printf ("%s%s%s", all, *all ? " " : "", *place);
      free (all);
      all = longer;
    }
  ph_edit_places_free (places);
  return all;
}

static void
check_places (const PhRig *rig, PhPartKind kind, int moving, const char *wanted)
{
  char *all = joined_places (rig, kind, moving);
  CHECK_TEXT (all, wanted);
  free (all);
}

static void
places_are_free_mounts_sockets_and_ends (void)
{
  PhRig *rig = rigs_example ();
  check_places (rig, PH_PART_WEIGHTS, -1, "front-stack back-stack");
  check_places (rig, PH_PART_ACCESSORY, -1, "bow");
  /* The back bar may stay, but not hang on its own stack. */
  check_places (rig, PH_PART_BAR, BACK_BAR, "front-stack block:a");
  rig->parts[BACK_BAR].off = true;
  check_places (rig, PH_PART_BAR, -1, "front-stack block:a back-stack");
  ph_edit_remove (rig, FRONT_BAR);
  check_places (rig, PH_PART_BAR, -1, "bow:front block:a back-stack");
  ph_rig_free (rig);
}

static void
every_place_offered_takes_the_part (void)
{
  PhRig *rig = rigs_odd ();
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      char **places = ph_edit_places (rig, rig->parts[i].kind, (int)i);
      CHECK (places[0] != NULL);
      for (char **place = places; *place; place++)
        {
          PhRig *moved = ph_rig_copy (rig);
          CHECK (ph_edit_rehang (moved, i, *place, NULL), "part %zu on %s", i, *place);
          ph_rig_free (moved);
        }
      ph_edit_places_free (places);
    }
  ph_rig_free (rig);
}

static void
places_stop_where_the_row_would_be_too_long (void)
{
  PhRig *rig = rigs_example ();
  while (rig->n_parts)
    ph_rig_drop (rig, 0);
  for (int i = 0; i < 16; i++)
    {
      char id[16], on[16];
      snprintf (id, sizeof id, "b%d", i);
      snprintf (on, sizeof on, "b%d", i - 1);
      ph_rig_append (rig, rigs_bar (id, i ? on : "bow:front", 0, 0, 20, 5));
    }
  check_places (rig, PH_PART_BAR, -1, "bow:rear");
  ph_edit_remove (rig, 15);
  check_places (rig, PH_PART_BAR, -1, "bow:rear b14");
  /* b10 carries four more: five in a row fit on b9 at most. */
  ph_rig_append (rig, rigs_bar ("other", "bow:rear", 0, 0, 20, 5));
  check_places (rig, PH_PART_BAR, 10, "b9 other");
  ph_rig_free (rig);
}

static void
added_part_gets_a_readable_id (void)
{
  PhRig *rig = rigs_example ();
  PhPart item = ph_part_copy (&rig->parts[BACK_STACK]);
  rigs_set_text (&item, "id", NULL);
  rigs_set_text (&item, "name", "Ümlaut weights, 1 oz!");
  size_t index;
  CHECK (ph_edit_add (rig, &item, "front-stack", &index, NULL));
  CHECK (index == 6);
  CHECK_TEXT (rig->parts[6].id, "Ümlaut-weights-1-oz");
  CHECK_TEXT (rig->parts[6].on, "front-stack");
  CHECK (ph_edit_add (rig, &item, "back-stack", &index, NULL));
  CHECK_TEXT (rig->parts[7].id, "Ümlaut-weights-1-oz-2");
  CHECK_TEXT (rig->parts[7].name, "Ümlaut weights, 1 oz! 2");
  PhIssues issues = { 0 };
  CHECK (!ph_edit_add (rig, &item, "front-stack", &index, &issues) && rig->n_parts == 8);
  CHECK (!ph_edit_add (rig, &item, "nowhere", &index, &issues) && rig->n_parts == 8);
  CHECK (issues.n == 2);
  rigs_set_text (&item, "name", "Bow");
  rigs_set (&item, "along_mm", 50);
  CHECK (ph_edit_add (rig, &item, "back-bar", &index, NULL), "along there is room");
  CHECK_TEXT (rig->parts[8].id, "bow-2");
  CHECK (rig->parts[8].along_mm == 50);
  ph_issues_clear (&issues);
  ph_part_clear (&item);
  ph_rig_free (rig);
}

static void
name_without_a_letter_makes_an_id_of_the_kind (void)
{
  PhRig *rig = rigs_example ();
  PhPart item = rigs_sight ("x");
  rigs_set_text (&item, "name", " -- ");
  size_t index;
  CHECK (ph_edit_add (rig, &item, "bow", &index, NULL));
  CHECK_TEXT (rig->parts[index].id, "accessory");
  ph_part_clear (&item);
  ph_rig_free (rig);
}

static void
very_long_name_still_makes_an_id (void)
{
  char name[1001];
  memset (name, 'n', 1000);
  name[1000] = '\0';
  PhRig *rig = rigs_example ();
  PhPart item = rigs_sight ("x");
  rigs_set_text (&item, "name", name);
  size_t index;
  for (int i = 0; i < 12; i++)
    CHECK (ph_edit_add (rig, &item, "bow", &index, NULL));
  CHECK (rigs_sound (rig, true));
  ph_part_clear (&item);
  ph_rig_free (rig);
}

static void
removing_takes_what_hangs_on_the_part (void)
{
  PhRig *rig = rigs_odd ();
  CHECK (ph_edit_remove (rig, 4) == 6, "cross, side-bar, rubber, far-stack, ring, short");
  CHECK (rig->n_parts == 4);
  CHECK_TEXT (rig->parts[0].id, "tail");
  CHECK_TEXT (rig->parts[3].id, "knob");
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

static void
cut_and_pasted_branch_is_the_same_branch (void)
{
  PhRig *rig = rigs_example (), *before = rigs_example ();
  PhFragment fragment = ph_edit_copy (rig, BLOCK);
  CHECK (fragment.n == 3);
  CHECK (ph_edit_remove (rig, BLOCK) == 3);
  size_t index;
  CHECK (ph_edit_paste (rig, &fragment, "bow:rear", &index, NULL) && index == 3);
  CHECK (ph_rig_equal (rig, before));
  ph_fragment_clear (&fragment);
  ph_rig_free (rig);
  ph_rig_free (before);
}

static void
pasted_branch_hangs_together_under_new_ids (void)
{
  PhRig *rig = rigs_odd ();
  PhFragment fragment = ph_edit_copy (rig, 2);
  CHECK (fragment.n == 4);
  CHECK_TEXT (fragment.parts[0].id, "side-bar");
  size_t index;
  CHECK (ph_edit_paste (rig, &fragment, "knob", &index, NULL));
  CHECK (index == 10 && rig->n_parts == 14);
  CHECK_TEXT (rig->parts[10].id, "side-bar-2");
  CHECK_TEXT (rig->parts[10].on, "knob");
  CHECK_TEXT (rig->parts[11].id, "far-stack-2");
  CHECK_TEXT (rig->parts[11].on, "rubber-2");
  CHECK_TEXT (rig->parts[13].id, "ring-2");
  CHECK_TEXT (rig->parts[13].on, "side-bar-2");
  CHECK (rig->parts[13].along_mm == 77.7);
  CHECK (rigs_sound (rig, true));
  ph_fragment_clear (&fragment);
  ph_rig_free (rig);
}

static void
duplicate_goes_to_a_place_like_its_own (void)
{
  PhRig *rig = rigs_example ();
  rigs_add_socket (&rig->parts[BLOCK].sockets, &rig->parts[BLOCK].n_sockets, "b",
                   RIGS_3 (20, -14, 0), RIGS_3 (1, 0, 0));
  rigs_set_text (&rig->parts[BACK_BAR], "name", "Back bar");
  size_t index;
  CHECK (ph_edit_duplicate (rig, BACK_BAR, &index, NULL));
  CHECK (rig->n_parts == 8 && index == 6);
  CHECK_TEXT (rig->parts[6].on, "block:b");
  CHECK_TEXT (rig->parts[6].name, "Back bar 2");
  CHECK_TEXT (rig->parts[6].id, "back-bar-2");
  CHECK_TEXT (rig->parts[7].on, "back-bar-2");
  CHECK (!rig->parts[6].off);
  CHECK (ph_edit_duplicate (rig, 6, &index, NULL), "no third socket");
  CHECK_TEXT (rig->parts[8].on, "block:b");
  CHECK_TEXT (rig->parts[8].name, "Back bar 3");
  CHECK (rig->parts[8].off && rigs_sound (rig, true));
  ph_rig_free (rig);
}

static void
duplicate_along_a_bar_or_on_the_bow_stays_there (void)
{
  PhRig *rig = rigs_odd ();
  size_t index;
  CHECK (ph_edit_duplicate (rig, 3, &index, NULL));
  CHECK_TEXT (rig->parts[index].on, "side-bar");
  CHECK (rig->parts[index].along_mm == 77.7 && !rig->parts[index].off);
  ph_rig_append (rig, rigs_sight ("glass"));
  CHECK (ph_edit_duplicate (rig, rig->n_parts - 1, &index, NULL));
  CHECK_TEXT (rig->parts[index].on, "bow");
  CHECK_TEXT (rig->parts[index].id, "glass-2");
  ph_rig_free (rig);
}

static void
rehung_part_takes_its_branch_and_its_angles (void)
{
  PhRig *rig = rigs_example ();
  CHECK (ph_edit_rehang (rig, BACK_BAR, "front-stack", NULL));
  CHECK_TEXT (rig->parts[BACK_BAR].on, "front-stack");
  CHECK_TEXT (rig->parts[BACK_STACK].on, "back-bar");
  CHECK (rig->parts[BACK_BAR].swing_deg == 20);
  PhRig *before = ph_rig_copy (rig);
  PhIssues issues = { 0 };
  CHECK (!ph_edit_rehang (rig, BACK_BAR, "back-stack", &issues), "on its own branch");
  CHECK (!ph_edit_rehang (rig, BACK_BAR, "bow:rear", &issues), "taken");
  CHECK (!ph_edit_rehang (rig, BACK_BAR, "bow", &issues));
  CHECK (issues.n >= 3 && ph_rig_equal (rig, before));
  ph_issues_clear (&issues);
  ph_rig_free (before);
  ph_rig_free (rig);
}

static void
rehung_stack_stays_along_only_on_a_bar (void)
{
  PhRig *rig = rigs_odd ();
  CHECK (ph_edit_rehang (rig, 3, "short", NULL));
  CHECK (rig->parts[3].along_mm == 12, "at most at its end");
  CHECK (ph_edit_rehang (rig, 3, "far-stack", NULL));
  CHECK (isnan (rig->parts[3].along_mm));
  CHECK (rigs_sound (rig, true));
  ph_rig_free (rig);
}

static void
a_part_put_between_carries_what_hung_there (void)
{
  PhRig *rig = rigs_example (), *before = ph_rig_copy (rig);
  PhPart block = ph_part_copy (&rig->parts[BLOCK]);
  size_t index;
  CHECK (ph_edit_insert (rig, &block, FRONT_BAR, "a", &index, NULL));
  CHECK (index == before->n_parts && strcmp (rig->parts[index].id, "block") != 0);
  CHECK_TEXT (rig->parts[index].on, "bow:front");
  char *on = ph_text_printf ("%s:a", rig->parts[index].id);
  CHECK_TEXT (rig->parts[FRONT_BAR].on, on);
  CHECK_TEXT (rig->parts[FRONT_STACK].on, "front-bar");
  CHECK (rig->parts[FRONT_BAR].lift_deg == before->parts[FRONT_BAR].lift_deg);
  CHECK (rigs_sound (rig, true));
  free (on);
  PhIssues issues = { 0 };
  PhRig *now = ph_rig_copy (rig);
  CHECK (!ph_edit_insert (rig, &block, BACK_BAR, "none", &index, &issues), "no such socket");
  CHECK (!ph_edit_insert (rig, &block, BACK_BAR, NULL, &index, &issues), "a bracket has no end");
  CHECK (issues.n >= 2 && ph_rig_equal (rig, now), "what is refused changes nothing");
  ph_issues_clear (&issues);
  ph_part_clear (&block);
  ph_rig_free (now);
  ph_rig_free (before);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (places_are_free_mounts_sockets_and_ends);
  CASE (every_place_offered_takes_the_part);
  CASE (places_stop_where_the_row_would_be_too_long);
  CASE (added_part_gets_a_readable_id);
  CASE (name_without_a_letter_makes_an_id_of_the_kind);
  CASE (very_long_name_still_makes_an_id);
  CASE (removing_takes_what_hangs_on_the_part);
  CASE (cut_and_pasted_branch_is_the_same_branch);
  CASE (pasted_branch_hangs_together_under_new_ids);
  CASE (duplicate_goes_to_a_place_like_its_own);
  CASE (duplicate_along_a_bar_or_on_the_bow_stays_there);
  CASE (rehung_part_takes_its_branch_and_its_angles);
  CASE (a_part_put_between_carries_what_hung_there);
  CASE (rehung_stack_stays_along_only_on_a_bar);
  return check_end ();
}
