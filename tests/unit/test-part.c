/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts and rigs as values: defaults, copies, what hangs on what, equality. The defaults are those
 * of the rig file's page.
 */
#include "check.h"
#include "rigs.h"

static void
part_starts_with_the_page_s_defaults (void)
{
  PhPart bar = ph_part_default (PH_PART_BAR);
  CHECK (bar.swing_deg == 0 && bar.lift_deg == 0 && bar.root_fitting_g == 0);
  CHECK (bar.fitting_mm == 15 && bar.modulus_gpa == 0 && bar.bore_mm == 0);
  CHECK (isnan (bar.along_mm) && isnan (bar.aperture_mm[2]));
  CHECK (!bar.id && !bar.off && !bar.locked && bar.source == PH_SOURCE_UNSTATED);
}

static void
kind_words_read_back (void)
{
  for (int k = 0; k < PH_PART_KINDS; k++)
    {
      PhPartKind back;
      CHECK (ph_part_kind_from_word (ph_part_kind_word ((PhPartKind)k), &back));
      CHECK (back == (PhPartKind)k);
    }
  PhPartKind kind = PH_PART_DAMPER;
  CHECK (!ph_part_kind_from_word ("Bar", &kind) && !ph_part_kind_from_word ("", &kind));
  CHECK (kind == PH_PART_DAMPER, "an unknown word must change nothing");
  CHECK_TEXT (ph_part_kind_word (PH_PART_WEIGHTS), "weights");
}

static void
stack_weighs_and_measures_count_times_each (void)
{
  PhPart stack = rigs_stack ("s", "bow:front", 5);
  CHECK_NEAR (ph_part_mass_g (&stack), 141.75, 1e-12);
  CHECK_NEAR (ph_part_length_mm (&stack), 36, 1e-12);
  ph_part_clear (&stack);
  PhPart block = rigs_bracket ("b", "bow:front", 0, 0);
  CHECK (ph_part_mass_g (&block) == 85 && ph_part_length_mm (&block) == 0);
  ph_part_clear (&block);
}

static void
fitting_not_written_shrinks_with_a_short_bar (void)
{
  PhPart bar = rigs_bar ("b", "bow:front", 0, 0, 12, 20);
  CHECK (ph_part_fitting_mm (&bar) == 12);
  rigs_set (&bar, "length_mm", 100);
  CHECK (ph_part_fitting_mm (&bar) == 15);
  rigs_set (&bar, "fitting_mm", 30);
  CHECK (ph_part_fitting_mm (&bar) == 30);
  ph_part_clear (&bar);
}

static void
part_is_called_by_its_id_without_a_name (void)
{
  PhPart bar = rigs_bar ("rod", "bow:front", 0, 0, 12, 20);
  CHECK_TEXT (ph_part_name (&bar), "rod");
  rigs_set_text (&bar, "name", "Long rod");
  CHECK_TEXT (ph_part_name (&bar), "Long rod");
  ph_part_clear (&bar);
}

/* The sanitizer's run of this test shows that nothing is shared and nothing is lost. */
static void
copy_shares_nothing_with_its_original (void)
{
  PhRig *rig = rigs_odd ();
  rig->parts[4].sds = ph_alloc (sizeof (PhSd));
  rig->parts[4].sds[0] = (PhSd){ ph_text_dup ("mass_g"), 1, { 2.5 } };
  rig->parts[4].n_sds = 1;
  rig->extras.items = ph_alloc (sizeof (PhExtra));
  rig->extras.items[0] = (PhExtra){ ph_text_dup ("club"), ph_text_dup ("\"invented\"") };
  rig->extras.n = 1;
  rigs_add_check (rig, 3000, RIGS_3 (70, 1, -40), 660, 40, 1);
  rig->archer.checks[0].draws_deg = ph_alloc (2 * sizeof (double));
  rig->archer.checks[0].n_draws = 2;
  rig->archer.checks[0].draws_deg[0] = rig->archer.checks[0].draws_deg[1] = 1;
  PhRig *copy = ph_rig_copy (rig);
  CHECK (ph_rig_equal (rig, copy));
  copy->parts[4].sockets[0].id[0] = 'z';
  copy->parts[4].sds[0].key[0] = 'z';
  copy->extras.items[0].json[1] = 'I';
  copy->archer.checks[0].draws_deg[1] = 2;
  copy->bow.mounts[0].id[0] = 'F';
  CHECK_TEXT (rig->parts[4].sockets[0].id, "a");
  CHECK_TEXT (rig->parts[4].sds[0].key, "mass_g");
  CHECK_TEXT (rig->extras.items[0].json, "\"invented\"");
  CHECK (rig->archer.checks[0].draws_deg[1] == 1);
  CHECK_TEXT (rig->bow.mounts[0].id, "front");
  ph_rig_free (rig);
  CHECK_TEXT (copy->parts[2].on, "cross:out");
  ph_rig_free (copy);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (part_starts_with_the_page_s_defaults);
  CASE (kind_words_read_back);
  CASE (stack_weighs_and_measures_count_times_each);
  CASE (fitting_not_written_shrinks_with_a_short_bar);
  CASE (part_is_called_by_its_id_without_a_name);
  CASE (copy_shares_nothing_with_its_original);
  return check_end ();
}
