/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Front pull as weight at the tip: a lever, so it is held against the law of the lever.
 */
#include "model/front-tip.h"

#include "base/units.h"
#include "check.h"

static PhPiece
rod (int host, PhSeat seat, double axis_x, double length_m, double mass_kg)
{
  return (PhPiece){
    .kind = PH_PIECE_BAR,
    .host = host,
    .seat = seat,
    .seat_at_m = { axis_x * 0.06, 0.0, -0.07 },
    .seat_axis = { axis_x, 0.0, 0.0 },
    .length_m = length_m,
    .diameter_m = 0.018,
    .body = ph_body_cylinder (mass_kg, 0.0, length_m, 0.009, 0.008),
  };
}

static PhPiece
stack (int host, double length_m, double mass_kg)
{
  return (PhPiece){
    .kind = PH_PIECE_WEIGHTS,
    .host = host,
    .seat = PH_SEAT_END,
    .length_m = length_m,
    .diameter_m = 0.025,
    .count = 4,
    .body = ph_body_cylinder (mass_kg, 0.0, length_m, 0.0125, 0.0),
  };
}

static PhFrontTip
tip_of (const PhPiece *pieces, int n, double moment_nm)
{
  static int part_of_piece[] = { 0, 1, 2, 3 }, piece_of_part[] = { 0, 1, 2, 3 };
  PhBowBody bow = { 2.0, { -0.02, 0.0, 0.0 }, { 0.3, 0.3, 0.05 } };
  PhCompiled compiled = {
    .assembly = ph_assembly_new (&bow, pieces, n),
    .part_of_piece = part_of_piece,
    .piece_of_part = piece_of_part,
    .n_pieces = (size_t)n,
    .n_parts = (size_t)n,
  };
  PhReport report = { .pitch = { .moment_nm = moment_nm } };
  PhFrontTip tip = ph_front_tip (&compiled, &report);
  ph_assembly_free (compiled.assembly);
  return tip;
}

static void
tip_is_the_far_end_of_the_stack_on_the_front_bar (void)
{
  PhPiece pieces[] = { rod (PH_HOST_BOW, PH_SEAT_SOCKET, -1.0, 0.3, 0.1), stack (0, 0.04, 0.14),
                       rod (PH_HOST_BOW, PH_SEAT_SOCKET, 1.0, 0.75, 0.16), stack (2, 0.05, 0.2) };
  PhFrontTip tip = tip_of (pieces, 4, 2.0);
  CHECK (tip.bar == 2);
  /* 60 mm mount, 750 mm bar, 50 mm stack. */
  CHECK_NEAR (tip.ahead_m, 0.86, 1e-12);
  /* Law of the lever: this mass hung at 0.86 m pulls 2 N·m. */
  CHECK_NEAR (tip.weight_kg * PH_GRAVITY * 0.86, 2.0, 1e-12);
}

static void
back_heavy_rig_counts_as_less_than_nothing_at_the_tip (void)
{
  PhPiece bar = rod (PH_HOST_BOW, PH_SEAT_SOCKET, 1.0, 0.75, 0.16);
  CHECK (tip_of (&bar, 1, -0.5).weight_kg < 0.0);
}

static void
rig_without_a_front_bar_has_no_tip (void)
{
  PhPiece bar = rod (PH_HOST_BOW, PH_SEAT_SOCKET, -1.0, 0.3, 0.1);
  PhFrontTip tip = tip_of (&bar, 1, 1.0);
  CHECK (tip.bar == -1 && isnan (tip.ahead_m) && isnan (tip.weight_kg));
  tip = tip_of (NULL, 0, 1.0);
  CHECK (tip.bar == -1);
}

static void
bar_that_points_ahead_from_far_behind_has_no_lever (void)
{
  PhPiece bar = rod (PH_HOST_BOW, PH_SEAT_SOCKET, 1.0, 0.2, 0.1);
  bar.seat_at_m.x = -0.5;
  PhFrontTip tip = tip_of (&bar, 1, 1.0);
  CHECK (tip.bar == 0 && tip.ahead_m < 0.0 && isnan (tip.weight_kg));
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (tip_is_the_far_end_of_the_stack_on_the_front_bar);
  CASE (back_heavy_rig_counts_as_less_than_nothing_at_the_tip);
  CASE (rig_without_a_front_bar_has_no_tip);
  CASE (bar_that_points_ahead_from_far_behind_has_no_lever);
  return check_end ();
}
