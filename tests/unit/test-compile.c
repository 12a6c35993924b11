/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a checked rig to pieces: units, order, seats, the hand. Numbers are the rig file's divided
 * by a thousand, or worked out beside the check.
 */
#include "model/compile.h"

#include "base/units.h"
#include "check.h"
#include "rigs.h"

static const PhPiece *
piece_of (const PhCompiled *compiled, size_t part)
{
  return ph_assembly_piece (compiled->assembly, compiled->piece_of_part[part]);
}

static void
hosts_come_before_their_guests_else_file_order (void)
{
  /* far-stack hangs on rubber, that on side-bar, that on cross. */
  static const int order[] = { 4, 2, 1, 0, 3, 5, 6, 9 };
  PhRig *rig = rigs_odd ();
  PhCompiled *compiled = ph_compile_rig (rig);
  CHECK (compiled->n_pieces == 8 && compiled->n_parts == 10);
  for (size_t k = 0; k < compiled->n_pieces && k < 8; k++)
    {
      CHECK (compiled->part_of_piece[k] == order[k], "piece %zu is part %d", k,
             compiled->part_of_piece[k]);
      CHECK (compiled->piece_of_part[compiled->part_of_piece[k]] == (int)k);
      CHECK (ph_assembly_piece (compiled->assembly, (int)k)->host < (int)k);
    }
  CHECK (compiled->piece_of_part[7] == -1 && compiled->piece_of_part[8] == -1, "off");
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
each_seat_is_the_one_the_file_means (void)
{
  PhRig *rig = rigs_odd ();
  ph_rig_append (rig, rigs_sight ("glass"));
  PhCompiled *compiled = ph_compile_rig (rig);
  CHECK (piece_of (compiled, 0)->seat == PH_SEAT_END);
  CHECK (piece_of (compiled, 1)->seat == PH_SEAT_END);
  CHECK (piece_of (compiled, 2)->seat == PH_SEAT_SOCKET);
  CHECK (piece_of (compiled, 3)->seat == PH_SEAT_ALONG);
  CHECK (piece_of (compiled, 4)->seat == PH_SEAT_SOCKET);
  CHECK (piece_of (compiled, 4)->host == PH_HOST_BOW);
  CHECK (piece_of (compiled, 10)->seat == PH_SEAT_FREE);
  CHECK (piece_of (compiled, 3)->along_m == 0.0777);
  CHECK (piece_of (compiled, 2)->seat_at_m.y == -0.009);
  /* (−0.4, 0.5, 0.1)/√0.42 */
  CHECK_REL (piece_of (compiled, 2)->seat_axis.x, -0.4 / sqrt (0.42), 1e-15);
  CHECK_REL (piece_of (compiled, 2)->seat_axis.z, 0.1 / sqrt (0.42), 1e-15);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
numbers_become_si (void)
{
  PhRig *rig = rigs_example ();
  PhPiece bar = ph_compile_piece (rig, 1, PH_HOST_BOW);
  CHECK (bar.length_m == 0.762 && bar.diameter_m == 0.018 && bar.inner_m == 0.016);
  CHECK_REL (bar.tube_kg, 0.105, 1e-15);
  CHECK (bar.tip_fitting_kg == 0.025 && bar.modulus_pa == 100e9);
  CHECK_REL (bar.lift_rad, -8 * PH_PI / 180, 1e-15);
  CHECK_REL (bar.body.mass_kg, 0.165, 1e-15);
  /* Σ m x/Σ m: tube at 381 mm, root fitting at 7.5 mm, tip fitting at 754.5 mm. */
  CHECK_REL (bar.body.com_m.x, (105 * 381 + 35 * 7.5 + 25 * 754.5) / 165 / 1000, 1e-14);
  PhPiece stack = ph_compile_piece (rig, 2, 1);
  CHECK (stack.count == 8);
  CHECK_REL (stack.length_m, 8 * 0.0072, 1e-15);
  CHECK_REL (stack.body.mass_kg, 8 * 0.02835, 1e-15);
  PhPiece sight = ph_compile_piece (rig, 0, PH_HOST_BOW);
  CHECK (sight.body.com_m.x == 0.15 && sight.body.com_m.y == -0.038 && sight.size_m.x == 0.26);
  /* Box: m (b² + c²)/12 about x. */
  CHECK_REL (sight.body.inertia_kg_m2.x, 0.31 * (0.03 * 0.03 + 0.06 * 0.06) / 12, 1e-14);
  PhDraw draw = ph_compile_draw (rig);
  CHECK (draw.draw_length_m == 0.66 && draw.nock_height_m == 0.042);
  CHECK (draw.holding_weight_n == 62 && draw.stature_m == 1.72 && draw.body_mass_kg == 68);
  CHECK (draw.brace_height_m == 0.178 && draw.axle_to_axle_m == 0.94);
  ph_rig_free (rig);
}

static void
axis_of_any_length_is_a_direction (void)
{
  static const double lengths[] = { 1.1e-6, 1, 3e200, 1.7e308 };
  PhRig *rig = rigs_example ();
  for (size_t k = 0; k < sizeof lengths / sizeof *lengths; k++)
    {
      double part = lengths[k] / 3;
      double axis[3] = { part, -2 * part, 2 * part };
      memcpy (rig->bow.mounts[0].axis, axis, sizeof axis);
      CHECK (rigs_sound (rig, true));
      PhVec3 unit = ph_compile_piece (rig, 1, PH_HOST_BOW).seat_axis;
      CHECK_REL (unit.x, 1 / 3., 1e-14);
      CHECK_REL (unit.y, -2 / 3., 1e-14);
      CHECK_REL (unit.z, 2 / 3., 1e-14);
    }
  ph_rig_free (rig);
}

static void
updated_part_gives_bit_for_bit_the_new_rig (void)
{
  static const struct
  {
    size_t part;
    const char *key;
    double value;
  } edits[] = { { 2, "swing_deg", -41.3 }, { 4, "lift_deg", 17 },    { 2, "length_mm", 301 },
                { 3, "along_mm", 12 },     { 3, "count", 5 },        { 1, "mass_g", 80 },
                { 5, "fitting_mm", 3 },    { 6, "modulus_gpa", 90 }, { 9, "count", 7 },
                { 8, "count", 1 } };
  PhRig *rig = rigs_odd ();
  PhCompiled *compiled = ph_compile_rig (rig);
  for (size_t k = 0; k < sizeof edits / sizeof *edits; k++)
    {
      rigs_set (&rig->parts[edits[k].part], edits[k].key, edits[k].value);
      ph_compiled_update_part (compiled, rig, edits[k].part);
      PhCompiled *anew = ph_compile_rig (rig);
      CHECK (memcmp (ph_assembly_total (compiled->assembly), ph_assembly_total (anew->assembly),
                     sizeof (PhMass))
                 == 0,
             "%s", edits[k].key);
      ph_compiled_free (anew);
    }
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

static void
hand_is_the_file_s_with_the_prior_s_covariance_until_a_check_is_in_use (void)
{
  PhRig *rig = rigs_odd ();
  PhHand hand;
  bool fitted = true;
  CHECK (ph_compile_hand (rig, &hand, &fitted) == PH_OK && !fitted);
  CHECK (hand.stiffness_nm_per_rad == 1.3 && hand.bias_nm == 0.07);
  CHECK_REL (hand.kk, 2.25, 1e-15); /* 1.5², 0.3²: physics, section 4 */
  CHECK_REL (hand.bb, 0.09, 1e-15);
  CHECK (hand.kb == 0);
  rigs_add_check (rig, 3000, RIGS_3 (70, 1, -40), 660, 40, 1);
  rig->archer.checks[0].aside = true;
  CHECK (ph_compile_hand (rig, &hand, &fitted) == PH_OK && !fitted, "a check set aside");
  rig->archer.checks[0].aside = false;
  CHECK (ph_compile_hand (rig, &hand, &fitted) == PH_OK && fitted);
  CHECK (hand.stiffness_nm_per_rad != 1.3, "the file's hand is not used any more");
  ph_rig_free (rig);
}

static void
checks_in_use_keep_their_place_in_the_file (void)
{
  PhRig *rig = rigs_example ();
  rigs_add_check (rig, 3000, RIGS_3 (70, 1, -40), 700, 40, -0.5);
  rigs_add_check (rig, 2800, RIGS_3 (60, 2, -30), 660, 42, 0.7);
  rig->archer.checks[0].aside = true;
  size_t n, *index_of;
  PhBubbleCheck *checks = ph_compile_checks (rig, &n, &index_of);
  CHECK (n == 2 && index_of[0] == 1 && index_of[1] == 2);
  CHECK_REL (checks[0].bubble_rad, -0.5 * PH_PI / 180, 1e-15);
  CHECK_REL (checks[0].sd_rad, 0.3 * PH_PI / 180, 1e-15);
  /* side = M g cosβ y with the check's own draw geometry. */
  CHECK_REL (checks[0].roll.side_nm, 3 * PH_GRAVITY * 0.001 * 700 / hypot (700, 40), 1e-14);
  free (checks);
  free (index_of);
  ph_rig_free (rig);
}

static void
bow_alone_compiles (void)
{
  PhRig *rig = rigs_example ();
  while (rig->n_parts)
    ph_rig_drop (rig, 0);
  PhCompiled *compiled = ph_compile_rig (rig);
  CHECK (compiled->n_pieces == 0);
  CHECK_REL (ph_assembly_total (compiled->assembly)->mass_kg, 1.95, 1e-15);
  ph_compiled_free (compiled);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (hosts_come_before_their_guests_else_file_order);
  CASE (each_seat_is_the_one_the_file_means);
  CASE (numbers_become_si);
  CASE (axis_of_any_length_is_a_direction);
  CASE (updated_part_gives_bit_for_bit_the_new_rig);
  CASE (hand_is_the_file_s_with_the_prior_s_covariance_until_a_check_is_in_use);
  CASE (checks_in_use_keep_their_place_in_the_file);
  CASE (bow_alone_compiles);
  return check_end ();
}
