/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Questions about what hangs on what, and whether two rigs are the same file.
 */
#include "check.h"
#include "rigs.h"

static void
host_and_socket_are_read_from_on (void)
{
  PhRig *rig = rigs_example ();
  const char *socket;
  CHECK (ph_rig_host (rig, 0, &socket) == -1 && !socket);
  CHECK (ph_rig_host (rig, 1, &socket) == -1);
  CHECK_TEXT (socket, "front");
  CHECK (ph_rig_host (rig, 2, &socket) == 1 && !socket);
  CHECK (ph_rig_host (rig, 4, &socket) == 3);
  CHECK_TEXT (socket, "a");
  CHECK (ph_rig_find (rig, "back-bar") == 4 && ph_rig_find (rig, "back") == -1);
  int *hosts = ph_rig_hosts (rig);
  for (size_t i = 0; i < rig->n_parts; i++)
    CHECK (hosts[i] == ph_rig_host (rig, i, NULL));
  free (hosts);
  ph_rig_free (rig);
}

static void
what_hangs_on_a_part_that_is_off_is_off_too (void)
{
  PhRig *rig = rigs_odd ();
  CHECK (!ph_rig_is_fitted (rig, 7) && !ph_rig_is_fitted (rig, 8));
  CHECK (!rig->parts[8].off);
  rig->parts[4].off = true;
  int *hosts = ph_rig_hosts (rig);
  bool *fitted = ph_rig_fitted (rig, hosts);
  for (size_t i = 0; i < rig->n_parts; i++)
    {
      CHECK (fitted[i] == ph_rig_is_fitted (rig, i));
      CHECK (fitted[i] == (i == 6 || i == 9), "part %zu", i);
    }
  free (fitted);
  free (hosts);
  ph_rig_free (rig);
}

static void
nesting_counts_from_the_bow (void)
{
  PhRig *rig = rigs_odd ();
  /* cross on the bow, side-bar on it, rubber on that, far-stack on that. */
  CHECK (ph_rig_nesting (rig, 4) == 1 && ph_rig_nesting (rig, 2) == 2);
  CHECK (ph_rig_nesting (rig, 1) == 3 && ph_rig_nesting (rig, 0) == 4);
  CHECK (ph_rig_hangs_on (rig, 0, 4) && ph_rig_hangs_on (rig, 0, 0));
  CHECK (!ph_rig_hangs_on (rig, 4, 0) && !ph_rig_hangs_on (rig, 6, 4));
  ph_rig_free (rig);
}

static void
cycle_has_no_nesting_and_is_not_fitted (void)
{
  PhRig *rig = rigs_odd ();
  rigs_set_text (&rig->parts[4], "on", "far-stack");
  CHECK (ph_rig_nesting (rig, 4) == 0 && ph_rig_nesting (rig, 0) == 0);
  CHECK (!ph_rig_is_fitted (rig, 0) && ph_rig_is_fitted (rig, 6));
  CHECK (!ph_rig_hangs_on (rig, 0, 6));
  ph_rig_free (rig);
}

static void
dropped_part_leaves_the_others_in_order (void)
{
  PhRig *rig = rigs_example ();
  ph_rig_drop (rig, 1);
  CHECK (rig->n_parts == 5);
  CHECK_TEXT (rig->parts[0].id, "sight");
  CHECK_TEXT (rig->parts[1].id, "front-stack");
  ph_rig_drop (rig, 4);
  CHECK_TEXT (rig->parts[3].id, "back-bar");
  ph_rig_free (rig);
}

static void
holding_weight_follows_the_bow_until_it_is_written (void)
{
  PhRig *rig = ph_rig_new ();
  CHECK (ph_rig_holding_weight_n (rig) == 65);
  rig->bow.kind = PH_BOW_RECURVE;
  CHECK (ph_rig_holding_weight_n (rig) == 160);
  rig->bow.kind = PH_BOW_BAREBOW;
  CHECK (ph_rig_holding_weight_n (rig) == 160);
  rigs_set_archer (rig, "holding_weight_n", 0);
  CHECK (ph_rig_holding_weight_n (rig) == 0);
  ph_rig_free (rig);
}

static void
new_rig_has_the_page_s_archer (void)
{
  PhRig *rig = ph_rig_new ();
  const PhArcher *archer = &rig->archer;
  CHECK (archer->draw_length_mm == 680 && archer->nock_height_mm == 40);
  CHECK (archer->stature_mm == 1750 && archer->body_mass_g == 72000);
  CHECK (archer->wanted_bubble_deg == 0 && archer->bow_hand == PH_BOW_HAND_LEFT);
  CHECK (archer->roll_stiffness_nm_per_rad == 2 && archer->roll_bias_nm == 0);
  CHECK (ph_check_default ().sd_deg == 0.3);
  CHECK (isnan (rig->bow.brace_height_mm) && isnan (rig->bow.axle_to_axle_mm));
  ph_rig_free (rig);
}

/* Every number that stands in the file, moved by its last bit, makes another file. */
static void
count_unnoticed (PhRig *rig, const PhRig *same, PhObject object, void *owner, uint64_t given,
                 size_t *tried)
{
  size_t n;
  const PhField *fields = ph_fields_of (object, &n);
  for (size_t i = 0; i < n; i++)
    for (int c = 0; given >> i & 1 && c < ph_field_components (&fields[i]); c++)
      {
        double before = ph_field_number (&fields[i], owner, c);
        ph_field_set_number (&fields[i], owner, c, nextafter (before, 1e9));
        CHECK (!ph_rig_equal (rig, same), "%s[%d]", fields[i].key, c);
        ph_field_set_number (&fields[i], owner, c, before);
        (*tried)++;
      }
}

static void
rigs_differ_by_any_last_bit (void)
{
  PhRig *rig = rigs_odd (), *same = rigs_odd ();
  CHECK (ph_rig_equal (rig, same));
  size_t tried = 0;
  for (size_t i = 0; i < rig->n_parts; i++)
    count_unnoticed (rig, same, PH_OBJECT_PART, &rig->parts[i], rig->parts[i].given, &tried);
  count_unnoticed (rig, same, PH_OBJECT_BOW, &rig->bow, rig->bow.given, &tried);
  count_unnoticed (rig, same, PH_OBJECT_ARCHER, &rig->archer, rig->archer.given, &tried);
  count_unnoticed (rig, same, PH_OBJECT_HAND, &rig->archer, rig->archer.hand_given, &tried);
  CHECK (tried > 60, "only %zu numbers", tried);
  CHECK (ph_rig_equal (rig, same));
  rig->bow.mounts[1].axis[2] = -0.0;
  CHECK (!ph_rig_equal (rig, same), "0 and -0 are written differently");
  rig->bow.mounts[1].axis[2] = 0;
  rig->parts[2].limit_swing.hi = 49;
  CHECK (!ph_rig_equal (rig, same));
  rig->parts[2].limit_swing.hi = 50;
  rig->parts[9].given |= ph_given_bit (PH_OBJECT_PART, "bore_mm");
  CHECK (!ph_rig_equal (rig, same), "a default written out is another file");
  ph_rig_free (rig);
  ph_rig_free (same);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (host_and_socket_are_read_from_on);
  CASE (what_hangs_on_a_part_that_is_off_is_off_too);
  CASE (nesting_counts_from_the_bow);
  CASE (cycle_has_no_nesting_and_is_not_fitted);
  CASE (dropped_part_leaves_the_others_in_order);
  CASE (holding_weight_follows_the_bow_until_it_is_written);
  CASE (new_rig_has_the_page_s_archer);
  CASE (rigs_differ_by_any_last_bit);
  return check_end ();
}
