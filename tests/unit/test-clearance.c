/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Distance to the string's sweep, for parts placed so that it can be read off.
 */
#include "physics/clearance.h"

#include "check.h"

static const PhDraw draw = {
  .draw_length_m = 0.7, .nock_height_m = 0.05, .brace_height_m = 0.2, .axle_to_axle_m = 0.9
};
static const PhBowBody bow = { 2, { 0, 0, 0 }, { 0.3, 0.3, 0.06 } };

static PhPiece
backward_bar (double y)
{
  return (PhPiece){ .kind = PH_PIECE_BAR,
                    .host = PH_HOST_BOW,
                    .seat = PH_SEAT_SOCKET,
                    .seat_at_m = { 0, y, 0 },
                    .seat_axis = { -1, 0, 0 },
                    .length_m = 0.4,
                    .diameter_m = 0.02,
                    .inner_m = 0.016 };
}

static double
clearance (const PhPiece *pieces, int n, int i, const PhDraw *with)
{
  PhAssembly *assembly = ph_assembly_new (&bow, pieces, n);
  double d = ph_clearance_of (assembly, i, with);
  ph_assembly_free (assembly);
  return d;
}

static void
bar_beside_the_string_is_clear_by_its_distance_less_its_radius (void)
{
  PhPiece bar = backward_bar (-0.08);
  CHECK_NEAR (clearance (&bar, 1, 0, &draw), 0.07, 1e-16);
}

static void
bar_in_the_plane_crosses_by_its_radius (void)
{
  PhPiece bar = backward_bar (0);
  CHECK_NEAR (clearance (&bar, 1, 0, &draw), -0.01, 0);
}

static void
bar_swung_in_comes_nearest_at_its_tip (void)
{
  PhPiece bar = backward_bar (0.2);
  bar.swing_rad = -0.3; /* to the right, toward the string */
  CHECK_NEAR (clearance (&bar, 1, 0, &draw), 0.2 - 0.4 * sin (0.3) - 0.01, 1e-15);
}

static void
front_bar_is_nearest_to_the_resting_string (void)
{
  PhPiece bar = backward_bar (0);
  bar.seat_axis = ph_vec3 (1, 0, 0);
  bar.seat_at_m = ph_vec3 (0.06, 0, -0.07);
  CHECK_NEAR (clearance (&bar, 1, 0, &draw), 0.25, 1e-15);
}

static void
piece_without_length_is_a_sphere (void)
{
  PhPiece bar = backward_bar (0.05);
  bar.length_m = 0;
  bar.seat_at_m.x = -0.3;
  CHECK_NEAR (clearance (&bar, 1, 0, &draw), 0.04, 1e-16);
}

static void
weight_along_a_bar_counts_with_its_own_length (void)
{
  PhPiece pieces[2] = { backward_bar (0.1) };
  pieces[0].seat_axis = ph_vec3 (0, 1, 0); /* away from the string */
  pieces[1] = (PhPiece){ .kind = PH_PIECE_WEIGHTS,
                         .host = 0,
                         .seat = PH_SEAT_ALONG,
                         .along_m = 0.05,
                         .length_m = 0.03,
                         .diameter_m = 0.04,
                         .count = 3 };
  pieces[0].seat_at_m.x = -0.3;
  CHECK_NEAR (clearance (pieces, 2, 1, &draw), 0.15 - 0.02, 1e-15);
  pieces[1].count = 0;
  CHECK (isnan (clearance (pieces, 2, 1, &draw)));
}

static void
what_does_not_count_or_is_not_known_is_missing (void)
{
  PhPiece bar = backward_bar (0.1), bracket = bar, sight = bar;
  bracket.kind = PH_PIECE_BRACKET;
  sight.kind = PH_PIECE_ACCESSORY;
  sight.seat = PH_SEAT_FREE;
  CHECK (isnan (clearance (&bracket, 1, 0, &draw)));
  CHECK (isnan (clearance (&sight, 1, 0, &draw)));
  PhDraw no_brace = draw, no_axles = draw;
  no_brace.brace_height_m = NAN;
  no_axles.axle_to_axle_m = NAN;
  CHECK (isnan (clearance (&bar, 1, 0, &no_brace)));
  CHECK (isnan (clearance (&bar, 1, 0, &no_axles)));
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (bar_beside_the_string_is_clear_by_its_distance_less_its_radius);
  CASE (bar_in_the_plane_crosses_by_its_radius);
  CASE (bar_swung_in_comes_nearest_at_its_tip);
  CASE (front_bar_is_nearest_to_the_resting_string);
  CASE (piece_without_length_is_a_sphere);
  CASE (weight_along_a_bar_counts_with_its_own_length);
  CASE (what_does_not_count_or_is_not_known_is_missing);
  return check_end ();
}
