/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long the physics takes, beside its targets; prints and never fails. Each figure is the best
 * of many batches: what the code costs, not what else the machine was doing.
 */
#include <stdio.h>
#include <time.h>

#include "base/units.h"
#include "ode-sum.h"
#include "physics/cant.h"
#include "physics/hand.h"
#include "random-rig.h"

static double sink; /* keeps results alive */

static double
now (void)
{
  struct timespec t;
  clock_gettime (CLOCK_MONOTONIC, &t);
  return (double)t.tv_sec + 1e-9 * (double)t.tv_nsec;
}

/* Best time of one call in seconds. */
static double
best_of (void (*run) (void), int calls, int batches)
{
  double best = INFINITY;
  for (int i = 0; i < batches; i++)
    {
      double start = now ();
      for (int k = 0; k < calls; k++)
        run ();
      best = fmin (best, (now () - start) / calls);
    }
  return best;
}

static void
print_time (const char *what, double seconds, double target)
{
  printf ("%-58s %9.3f µs   target %7.2f   %s\n", what, seconds * 1e6, target * 1e6,
          seconds <= target ? "met" : "MISSED");
}

static void
print_ratio (const char *what, double ratio, double target)
{
  printf ("%-58s %9.3f      target %7.2f   %s\n", what, ratio, target,
          ratio <= target ? "met" : "MISSED");
}

static RandomRig rig;
static RigPlace places[RANDOM_RIG_MOST];
static PhAssembly *assembly;
static PhPiece changed;
static int changed_index;
static const PhDraw draw = { 0.66, 0.042, 62, 1.72, 68, 0.178, 0.94 };

static void
add (PhPiece piece, int n_solids, const RigSolid solids[])
{
  RigPart *part = &rig.parts[rig.n];
  part->piece = piece;
  part->n_solids = n_solids;
  memcpy (part->solids, solids, (size_t)n_solids * sizeof *solids);
  rig.pieces[rig.n++] = piece;
}

static void
add_bar (int host, PhSeat seat, PhVec3 at, double axis_x, double swing, double lift, double length,
         double tube, double root, double tip)
{
  PhPiece p = { .kind = PH_PIECE_BAR,
                .host = host,
                .seat = seat,
                .seat_at_m = at,
                .seat_axis = { axis_x, 0, 0 },
                .swing_rad = ph_rad_from_deg (swing),
                .lift_rad = ph_rad_from_deg (lift),
                .length_m = length,
                .diameter_m = 0.018,
                .inner_m = 0.016,
                .tube_kg = tube,
                .tip_fitting_kg = tip,
                .body = ph_piece_bar_body (tube, root, tip, 0.015, length, 0.018, 0.016) };
  RigSolid solids[3] = { rig_cylinder (tube, 0, length, 0.009, 0.008),
                         rig_cylinder (root, 0, 0.015, 0.009, 0),
                         rig_cylinder (tip, length - 0.015, 0.015, 0.009, 0) };
  add (p, root > 0 ? 3 : 1, solids);
}

static void
add_stack (int host, int count)
{
  double mass = count * 0.02835, length = count * 0.0072;
  PhPiece p = { .kind = PH_PIECE_WEIGHTS,
                .host = host,
                .seat = PH_SEAT_END,
                .length_m = length,
                .diameter_m = 0.0254,
                .count = count,
                .body = ph_body_cylinder (mass, 0, length, 0.0127, 0) };
  RigSolid solid = rig_cylinder (mass, 0, length, 0.0127, 0);
  add (p, 1, &solid);
}

static void
add_box (PhPieceKind kind, PhSeat seat, PhVec3 at, double mass, PhVec3 com, PhVec3 size)
{
  PhPiece p = { .kind = kind,
                .host = PH_HOST_BOW,
                .seat = seat,
                .seat_at_m = at,
                .seat_axis = { -1, 0, 0 },
                .size_m = size,
                .body = ph_body_box (mass, com, size) };
  RigSolid solid = rig_box (mass, com, size);
  add (p, 1, &solid);
}

/* The example of the rig file's page: nine solids with the bow. */
static void
make_example (void)
{
  memset (&rig, 0, sizeof rig);
  rig.bow = (PhBowBody){ 1.95, { -0.018, -0.003, 0.012 }, { 0.29, 0.295, 0.06 } };
  add_box (PH_PIECE_ACCESSORY, PH_SEAT_FREE, ph_vec3 (0, 0, 0), 0.31, ph_vec3 (0.15, -0.038, 0.095),
           ph_vec3 (0.26, 0.03, 0.06));
  add_bar (PH_HOST_BOW, PH_SEAT_SOCKET, ph_vec3 (0.062, 0, -0.072), 1, 0, -8, 0.762, 0.105, 0.035,
           0.025);
  add_stack (1, 8);
  add_box (PH_PIECE_BRACKET, PH_SEAT_SOCKET, ph_vec3 (-0.028, 0, -0.15), 0.085,
           ph_vec3 (0.012, 0.004, 0), ph_vec3 (0.03, 0.04, 0.02));
  add_bar (3, PH_SEAT_SOCKET, ph_vec3 (0.02, 0.014, 0), 1, 20, -12, 0.305, 0.095, 0, 0);
  add_stack (4, 5);
}

/* 64 times what hands build on one mount: a block, a bar at its own angles, a stack on its end and
   one around it. */
static void
make_large (void)
{
  unsigned long long state = 256;
  memset (&rig, 0, sizeof rig);
  rig.bow = (PhBowBody){ 1.95, { -0.018, -0.003, 0.012 }, { 0.29, 0.295, 0.06 } };
  while (rig.n < RANDOM_RIG_MOST)
    {
      int first = rig.n;
      add_box (PH_PIECE_BRACKET, PH_SEAT_SOCKET, rig_random_vec (&state, 0.3), 0.085,
               ph_vec3 (0.012, 0.004, 0), ph_vec3 (0.03, 0.04, 0.02));
      add_bar (first, PH_SEAT_SOCKET, ph_vec3 (0.02, 0.014, 0), 1, rig_random (&state, -60, 60),
               rig_random (&state, -45, 45), 0.305, 0.095, 0.02, 0.02);
      add_stack (first + 1, 5);
      add_stack (first + 1, 3);
      rig.pieces[rig.n - 1].seat = PH_SEAT_ALONG;
      rig.pieces[rig.n - 1].along_m = 0.15;
    }
}

static void
settle (void)
{
  PhMassProperties p = ph_assembly_properties (assembly);
  PhRoll roll = ph_roll_of (p.mass_kg, p.com_m, &draw);
  double cant = 0;
  sink += ph_cant_predict (&roll, 2, 0, &cant) == PH_OK ? cant : 1;
  sink += p.principal_axes[0].x + p.principal_kg_m2[2];
}

static void
full (void)
{
  ph_assembly_recompute (assembly);
  double cos_beta = ph_draw_cos_beta (&draw);
  for (int i = PH_HOST_BOW; i < rig.n; i++)
    {
      PhVec3 moment = ph_assembly_mass (assembly, i)->moment_kg_m;
      sink += PH_GRAVITY * moment.x - PH_GRAVITY * cos_beta * moment.y;
    }
  settle ();
}

static void
change (void)
{
  changed.lift_rad = -changed.lift_rad;
  ph_assembly_set_piece (assembly, changed_index, &changed);
  settle ();
}

static void
by_ode (void)
{
  sink += ode_sum_plain (&rig, places);
}

static void
bench_rig (const char *name, double target, double ratio_target, int index, double change_target)
{
  char what[80];
  assembly = ph_assembly_new (&rig.bow, rig.pieces, rig.n);
  changed_index = index;
  changed = rig.pieces[index];
  changed.lift_rad = 0.1;
  for (int i = 0; i < rig.n; i++)
    rig_place (&rig, places, i);
  int calls = 20000 / (rig.n + 1);
  double ours = best_of (full, calls, 200), ode = best_of (by_ode, calls, 100);
  snprintf (what, sizeof what, "full recompute, %s", name);
  print_time (what, ours, target);
  snprintf (what, sizeof what, "… over ODE's dMass calls alone (%.2f µs)", ode * 1e6);
  print_ratio (what, ours / ode, ratio_target);
  snprintf (what, sizeof what, "one part changed, %s", name);
  print_time (what, best_of (change, 2000, 200), change_target);
  ph_assembly_free (assembly);
}

static PhRoll rolls[1024];
static int turn;

static void
one_cant (void)
{
  double cant = 0;
  sink += ph_cant_predict (&rolls[turn++ % 1024], 2, 0.1, &cant) == PH_OK ? cant : 1;
}

static void
bench_cant (const char *what, double side, double top)
{
  unsigned long long state = 5;
  for (int i = 0; i < 1024; i++)
    rolls[i] = (PhRoll){ rig_random (&state, -side, side), rig_random (&state, -top, top), 0.998 };
  print_time (what, best_of (one_cant, 1024, 500), 0.2e-6);
}

static PhBubbleCheck checks[50];
static size_t n_checks;

static void
one_fit (void)
{
  PhHand hand;
  sink += ph_hand_fit (checks, n_checks, &hand) == PH_OK ? hand.bias_nm : 1;
}

/* Bubble checks of rigs that stand at most `top` N·m/rad above the line, in a hand of K 2.6. */
static void
bench_hand (const char *what, size_t n, double top, double target)
{
  unsigned long long state = 6;
  n_checks = n;
  for (size_t i = 0; i < n; i++)
    {
      PhBubbleCheck *c = &checks[i];
      *c = (PhBubbleCheck){ .roll = { rig_random (&state, -0.4, 0.4), rig_random (&state, -2, top),
                                      0.998 },
                            .sd_rad = ph_rad_from_deg (0.3) };
      c->bubble_rad = ph_check_predict (c, 2.6, 0.1) + c->sd_rad * rig_random (&state, -1.7, 1.7);
    }
  print_time (what, best_of (one_fit, 1, 50), target);
}

int
main (void)
{
  make_example ();
  bench_rig ("example (9 solids)", 1.2e-6, 0.2, 4, 0.75e-6);
  make_large ();
  bench_rig ("256 parts", 20e-6, 0.1, RANDOM_RIG_MOST / 2 + 1, 2e-6);
  bench_cant ("cant, rigs that settle at once", 0.4, 1.2);
  bench_cant ("cant, rigs that may topple", 2, 4);
  bench_hand ("hand from 5 checks", 5, 0.6, 1e-3);
  bench_hand ("hand from 50 checks", 50, 0.6, 1e-3);
  bench_hand ("hand from 50 checks, some rigs near toppling", 50, 2.5, 1e-3);
  return sink == 0.123;
}
