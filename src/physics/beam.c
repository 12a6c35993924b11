/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bars as clamped beams. The frequency equation is solved as a power series in λ⁴: the products
 * of circular and hyperbolic functions cancel for a heavy tip, the series does not.
 */
#include "physics/beam.h"

#include <assert.h>
#include <math.h>

#include "base/units.h"

bool
ph_beam_bends (const PhAssembly *assembly, int i)
{
  const PhPiece *piece = ph_assembly_piece (assembly, i);
  return piece->kind == PH_PIECE_BAR && piece->modulus_pa > 0 && piece->length_m > 0
         && piece->tube_kg > 0;
}

/* 1 + cosλ coshλ = 2 + Σ (−4u)^k/(4k)! and (sinλ coshλ − cosλ sinhλ)/λ³ = Σ 4 (−4u)^k/(4k+3)!,
   k from 1 and from 0, u = λ⁴; their derivatives by u. With u up to 12.4 nine terms leave less
   than 1e-19. */
static void
series (double u, double *bending, double *bending_slope, double *tip, double *tip_slope)
{
  double bend = 1, tipped = 4.0 / 6; /* terms of k = 0 */
  *bending = 2;
  *tip = tipped;
  *bending_slope = *tip_slope = 0;
  for (int k = 1; k <= 10; k++)
    {
      double j = 4.0 * k;
      double bend_by_u = bend * -4 / ((j - 3) * (j - 2) * (j - 1) * j);
      double tipped_by_u = tipped * -4 / (j * (j + 1) * (j + 2) * (j + 3));
      *bending_slope += k * bend_by_u;
      *tip_slope += k * tipped_by_u;
      bend = bend_by_u * u;
      tipped = tipped_by_u * u;
      *bending += bend;
      *tip += tipped;
    }
}

double
ph_beam_lambda (double n)
{
  assert (n >= 0 && isfinite (n));
  /* Rayleigh's mass makes the first guess, from above; u n D(u) = C(u) from there by Newton. */
  double u = 3 / (n + 33.0 / 140);
  for (int step = 0; step < 40; step++)
    {
      double c, c_slope, d, d_slope;
      series (u, &c, &c_slope, &d, &d_slope);
      double change = (c - n * u * d) / (c_slope - n * (d + u * d_slope));
      u -= change;
      if (fabs (change) <= 1e-15 * u)
        break;
    }
  return sqrt (sqrt (u));
}

/* What bends the bar: force P over mass, stations from the root. */
typedef struct
{
  double length, stiffness; /* L, E I */
  double pull;              /* g times the cosine of the elevation */
  double tip_kg;            /* for the frequency: what rides at the tip, the rest by ψ² */
  PhBeam beam;
} Load;

static void
add_weight (Load *load, double mass_kg, double s)
{
  double length = load->length, force = mass_kg * load->pull;
  double shape = s * s * (3 * length - s) / 2; /* ψ(s) L³ */
  load->beam.droop_m += force * shape / (3 * load->stiffness);
  load->beam.slope_rad += force * s * s / (2 * load->stiffness);
  double psi = shape / (length * length * length);
  load->tip_kg += mass_kg * psi * psi;
}

static void
add_guests (Load *load, const PhAssembly *assembly, int bar)
{
  for (int i = ph_assembly_first_guest (assembly, bar); i >= 0;
       i = ph_assembly_next_guest (assembly, i))
    {
      const PhPiece *guest = ph_assembly_piece (assembly, i);
      double s = load->length;
      if (guest->seat == PH_SEAT_ALONG)
        s = fmin (guest->along_m + guest->length_m / 2, load->length);
      add_weight (load, ph_assembly_subtree_mass (assembly, i).mass_kg, s);
    }
}

static double
tube_second_moment (double outer_m, double inner_m)
{
  /* outer⁴ − inner⁴ as a product: a thin wall keeps its digits. */
  return PH_PI / 64 * (outer_m - inner_m) * (outer_m + inner_m)
         * (outer_m * outer_m + inner_m * inner_m);
}

PhBeam
ph_beam_of (const PhAssembly *assembly, int i)
{
  assert (ph_beam_bends (assembly, i));
  const PhPiece *bar = ph_assembly_piece (assembly, i);
  PhVec3 d = ph_assembly_place (assembly, i)->frame.a;
  double length = bar->length_m;
  Load load = { .length = length,
                .stiffness = bar->modulus_pa * tube_second_moment (bar->diameter_m, bar->inner_m),
                .pull = PH_GRAVITY * sqrt (d.x * d.x + d.y * d.y) };
  double square = length * length, weight = bar->tube_kg * load.pull;
  load.beam.droop_m = weight * square * length / (8 * load.stiffness);
  load.beam.slope_rad = weight * square / (6 * load.stiffness);
  add_weight (&load, bar->tip_fitting_kg, length);
  add_guests (&load, assembly, i);
  double lambda = ph_beam_lambda (load.tip_kg / bar->tube_kg);
  load.beam.clamped_hz =
      lambda * lambda / (2 * PH_PI) * sqrt (load.stiffness / (bar->tube_kg * square * length));
  return load.beam;
}
