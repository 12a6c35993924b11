/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Clamped bars. Frequency roots: n = 1 printed in Mathematical Problems in Engineering 2017,
 * article 1568019, table 1; the other ratios recalled from Laura, Pombo and Susemihl, Journal of
 * Sound and Vibration 37 (1974) 161 (from memory) and computed to six digits on our reference page.
 */
#include "physics/beam.h"

#include "base/units.h"
#include "check.h"
#include "math/root.h"

static const PhBowBody bow = { 2, { 0, 0, 0 }, { 0.3, 0.3, 0.06 } };

/* The worked rod: 18/16 mm, 0.762 m, 120 GPa, 1600 kg/m³, level, no fittings. */
static PhPiece
worked_rod (void)
{
  double mass = 1600 * PH_PI / 4 * (0.018 * 0.018 - 0.016 * 0.016) * 0.762;
  return (PhPiece){ .kind = PH_PIECE_BAR,
                    .host = PH_HOST_BOW,
                    .seat = PH_SEAT_SOCKET,
                    .seat_axis = { 1, 0, 0 },
                    .length_m = 0.762,
                    .diameter_m = 0.018,
                    .inner_m = 0.016,
                    .tube_kg = mass,
                    .modulus_pa = 120e9,
                    .body = ph_piece_bar_body (mass, 0, 0, 0, 0.762, 0.018, 0.016) };
}

static PhPiece
weight (int host, double mass_kg)
{
  return (PhPiece){ .kind = PH_PIECE_WEIGHTS,
                    .host = host,
                    .seat = PH_SEAT_END,
                    .length_m = 0.02,
                    .diameter_m = 0.025,
                    .count = 1,
                    .body = ph_body_cylinder (mass_kg, 0, 0.02, 0.0125, 0) };
}

static PhBeam
beam_of (const PhPiece *pieces, int n)
{
  PhAssembly *assembly = ph_assembly_new (&bow, pieces, n);
  PhBeam beam = ph_beam_of (assembly, 0);
  ph_assembly_free (assembly);
  return beam;
}

static void
frequency_roots_are_the_published_ones (void)
{
  double lambda = ph_beam_lambda (1);
  CHECK_NEAR (lambda * lambda, 1.557298, 5e-7);  /* Math. Probl. Eng. 2017, 1568019 */
  CHECK_NEAR (ph_beam_lambda (0), 1.8751, 5e-5); /* strain-gauge user guide, equation list */
  static const double table[][2] = { { 0, 1.875104 },   { 0.05, 1.791171 }, { 0.1, 1.722742 },
                                     { 0.2, 1.616400 }, { 0.4, 1.472408 },  { 0.5, 1.419964 },
                                     { 0.8, 1.304087 }, { 1, 1.247917 },    { 2, 1.076196 },
                                     { 3, 0.981231 },   { 5, 0.870021 },    { 10, 0.735782 } };
  for (size_t i = 0; i < sizeof table / sizeof *table; i++)
    CHECK_NEAR (ph_beam_lambda (table[i][0]), table[i][1], 6e-7);
}

/* The equation as it is printed. */
static double
printed_equation (double x, void *data)
{
  double n = *(double *)data;
  return 1 + cos (x) * cosh (x) - n * x * (sin (x) * cosh (x) - cos (x) * sinh (x));
}

static void
root_solves_the_printed_equation (void)
{
  for (double n = 0; n < 40; n = n * 1.5 + 0.01)
    {
      double root = 0;
      CHECK (ph_root_bracketed (printed_equation, &n, 0.1, 2, &root) == PH_OK);
      /* The printed form loses digits as n grows: 2 of 40. */
      CHECK_REL (ph_beam_lambda (n), root, 2e-14);
    }
}

static void
heavy_tips_approach_the_massless_beam (void)
{
  /* k = 3EI/L³ and M + 33/140 m: λ⁴ = 3/(n + 33/140 …); the next term of the expansion of the
     series in 1/n is below 1e-3/n². */
  for (double n = 1e3; n < 2e15; n *= 10)
    {
      double lambda = ph_beam_lambda (n), fourth = pow (lambda, 4);
      CHECK_REL (fourth, 3 / (n + 33.0 / 140), 0.02 / (n * n) + 2e-15);
    }
}

static void
root_falls_smoothly_with_the_tip (void)
{
  double before = ph_beam_lambda (0);
  for (double n = 1e-6; n < 1e15; n *= 1.3)
    {
      double lambda = ph_beam_lambda (n);
      CHECK (lambda < before, "n %g", n);
      before = lambda;
    }
}

static void
worked_rod_droops_and_rings_as_the_reference_page_says (void)
{
  static const double rows[][3] = {
    { 0, 50.25, 0.152 }, { 0.05, 24.69, 0.463 }, { 0.17, 14.67, 1.210 }, { 0.28, 11.62, 1.895 }
  };
  for (int i = 0; i < 4; i++)
    {
      PhPiece pieces[2] = { worked_rod (), weight (0, rows[i][0]) };
      PhBeam beam = beam_of (pieces, i ? 2 : 1);
      CHECK_NEAR (beam.clamped_hz, rows[i][1], 0.005);
      CHECK_NEAR (beam.droop_m * 1000, rows[i][2], 0.0005);
    }
}

/* Droop and slope by integrating M(x)/(EI) twice, 20,000 midpoints. */
static void
integrate (const PhPiece *bar, double load_kg, double at, double *droop, double *slope)
{
  double inertia = PH_PI / 64 * (pow (bar->diameter_m, 4) - pow (bar->inner_m, 4));
  double stiffness = bar->modulus_pa * inertia, length = bar->length_m;
  int steps = 20000;
  double dx = length / steps;
  *droop = *slope = 0;
  for (int i = 0; i < steps; i++)
    {
      double x = (i + 0.5) * dx, beyond = length - x;
      double moment = bar->tube_kg / length * PH_GRAVITY * beyond * beyond / 2
                      + load_kg * PH_GRAVITY * fmax (at - x, 0);
      *slope += moment / stiffness * dx;
      *droop += moment / stiffness * beyond * dx;
    }
}

static void
droop_and_slope_agree_with_an_integration_of_the_moment (void)
{
  for (double at = 0.1; at < 0.8; at += 0.2)
    {
      PhPiece pieces[2] = { worked_rod (), weight (0, 0.2) };
      pieces[1].seat = PH_SEAT_ALONG;
      pieces[1].along_m = at - 0.01;
      double droop, slope;
      integrate (&pieces[0], 0.2, at, &droop, &slope);
      PhBeam beam = beam_of (pieces, 2);
      CHECK_REL (beam.droop_m, droop, 1e-7);
      CHECK_REL (beam.slope_rad, slope, 1e-7);
    }
}

static void
weight_slid_to_the_tip_acts_like_one_on_the_tip (void)
{
  PhPiece along[2] = { worked_rod (), weight (0, 0.2) },
          tip[2] = { worked_rod (), weight (0, 0.2) };
  along[1].seat = PH_SEAT_ALONG;
  along[1].along_m = 0.762; /* its middle would be beyond the tip: held at L */
  PhBeam a = beam_of (along, 2), b = beam_of (tip, 2);
  CHECK_REL (a.droop_m, b.droop_m, 1e-15);
  CHECK_REL (a.clamped_hz, b.clamped_hz, 1e-15);
}

static void
all_that_hangs_beyond_the_tip_rides_on_it (void)
{
  PhPiece chain[4] = { worked_rod (), weight (0, 0.05), weight (1, 0.07), weight (2, 0.05) };
  PhPiece single[2] = { worked_rod (), weight (0, 0.17) };
  CHECK_REL (beam_of (chain, 4).clamped_hz, beam_of (single, 2).clamped_hz, 1e-15);
  CHECK_REL (beam_of (chain, 4).droop_m, beam_of (single, 2).droop_m, 1e-15);
}

static void
tip_fitting_loads_the_tip_and_root_fitting_nothing (void)
{
  PhPiece plain[2] = { worked_rod (), weight (0, 0.03) }, fitted = worked_rod ();
  fitted.tip_fitting_kg = 0.03;
  CHECK_REL (beam_of (&fitted, 1).clamped_hz, beam_of (plain, 2).clamped_hz, 1e-15);
}

static void
raised_bar_droops_by_the_cosine_and_rings_the_same (void)
{
  PhPiece level = worked_rod (), raised = level, upright = level;
  raised.lift_rad = PH_PI / 3;
  upright.seat_axis = ph_vec3 (0, 0, 1);
  PhBeam a = beam_of (&level, 1), b = beam_of (&raised, 1);
  CHECK_REL (b.droop_m, a.droop_m / 2, 1e-15);
  CHECK_REL (b.slope_rad, a.slope_rad / 2, 1e-15);
  CHECK_REL (b.clamped_hz, a.clamped_hz, 1e-15);
  CHECK_NEAR (beam_of (&upright, 1).droop_m, 0, 0);
}

static void
only_a_bar_with_modulus_length_and_tube_bends (void)
{
  PhPiece pieces[5] = { worked_rod (), worked_rod (), worked_rod (), worked_rod (),
                        weight (0, 0.1) };
  pieces[1].modulus_pa = 0;
  pieces[2].length_m = 0;
  pieces[3].tube_kg = 0;
  PhAssembly *assembly = ph_assembly_new (&bow, pieces, 5);
  for (int i = 0; i < 5; i++)
    CHECK (ph_beam_bends (assembly, i) == (i == 0), "piece %d", i);
  ph_assembly_free (assembly);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (frequency_roots_are_the_published_ones);
  CASE (root_solves_the_printed_equation);
  CASE (heavy_tips_approach_the_massless_beam);
  CASE (root_falls_smoothly_with_the_tip);
  CASE (worked_rod_droops_and_rings_as_the_reference_page_says);
  CASE (droop_and_slope_agree_with_an_integration_of_the_moment);
  CASE (weight_slid_to_the_tip_acts_like_one_on_the_tip);
  CASE (all_that_hangs_beyond_the_tip_rides_on_it);
  CASE (tip_fitting_loads_the_tip_and_root_fitting_nothing);
  CASE (raised_bar_droops_by_the_cosine_and_rings_the_same);
  CASE (only_a_bar_with_modulus_length_and_tube_bends);
  return check_end ();
}
