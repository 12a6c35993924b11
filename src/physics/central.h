/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mass properties about the body's own mass centre. They join without the cancellation that a
 * tensor about P brings when a light or compact rig stands far from P, so the sums of an assembly
 * are kept this way; PhMass, which simply adds, is made from them. Inline: a rig has few
 * nanoseconds for each. Joining: T. F. Chan, G. H. Golub and R. J. LeVeque, The American
 * Statistician 37 (1983) 242 (from memory), for second moments.
 */
#pragma once

#include <stdbool.h>

#include "physics/mass.h"

typedef struct
{
  double mass_kg;
  PhVec3 moment_kg_m;       /* m c from P: added, so that mirrored parts cancel exactly */
  PhVec3 com_m;             /* from P, bow frame; some point of the body where mass is 0 */
  PhSym3 inertia_com_kg_m2; /* about com_m */
} PhCentral;

/** Adds m (|d|² E − d dᵀ): the tensor of a mass point at d, or what a shift by d adds. */
static inline PhSym3
ph_sym3_add_point (PhSym3 s, double mass_kg, PhVec3 d)
{
  PhVec3 md = ph_vec3_scale (d, mass_kg);
  double x = md.x * d.x, y = md.y * d.y, z = md.z * d.z;
  return (PhSym3){ s.xx + (y + z),    s.yy + (x + z),    s.zz + (x + y),
                   s.xy - md.x * d.y, s.xz - md.x * d.z, s.yz - md.y * d.z };
}

/** k e eᵀ added. */
static inline PhSym3
ph_sym3_add_axis (PhSym3 s, double k, PhVec3 e)
{
  PhVec3 d = ph_vec3_scale (e, k);
  return (PhSym3){ s.xx + d.x * e.x, s.yy + d.y * e.y, s.zz + d.z * e.z,
                   s.xy + d.x * e.y, s.xz + d.x * e.z, s.yz + d.y * e.z };
}

/** Σ Iᵢ eᵢ eᵢᵀ over the three directions of a frame. */
static inline PhSym3
ph_sym3_of_moments (PhVec3 moments, const PhFrame *f)
{
  PhSym3 s = { 0, 0, 0, 0, 0, 0 };
  s = ph_sym3_add_axis (s, moments.x, f->a);
  s = ph_sym3_add_axis (s, moments.y, f->l);
  return ph_sym3_add_axis (s, moments.z, f->t);
}

/** The same for a round body: across (E − a aᵀ) + axial a aᵀ, the diagonal without a difference. */
static inline PhSym3
ph_sym3_of_round (double axial, double across, PhVec3 a)
{
  double xx = a.x * a.x, yy = a.y * a.y, zz = a.z * a.z, k = axial - across;
  return (PhSym3){ across * (yy + zz) + axial * xx,
                   across * (xx + zz) + axial * yy,
                   across * (xx + yy) + axial * zz,
                   k * a.x * a.y,
                   k * a.x * a.z,
                   k * a.y * a.z };
}

static inline void
ph_central_of_body (const PhBody *body, PhVec3 root_m, const PhFrame *frame, PhCentral *central)
{
  PhVec3 com = body->com_m, inertia = body->inertia_kg_m2;
  bool round = inertia.y == inertia.z && com.y == 0 && com.z == 0;
  central->mass_kg = body->mass_kg;
  central->com_m = round ? ph_vec3_add_scaled (root_m, frame->a, com.x)
                         : ph_vec3_add (root_m, ph_frame_apply (frame, com));
  central->moment_kg_m = ph_vec3_scale (central->com_m, body->mass_kg);
  central->inertia_com_kg_m2 = round ? ph_sym3_of_round (inertia.x, inertia.y, frame->a)
                                     : ph_sym3_of_moments (inertia, frame);
}

static inline PhCentral
ph_central_join (const PhCentral *a, const PhCentral *b)
{
  PhCentral sum = { .mass_kg = a->mass_kg + b->mass_kg,
                    .moment_kg_m = ph_vec3_add (a->moment_kg_m, b->moment_kg_m),
                    .com_m = a->com_m,
                    .inertia_com_kg_m2 = ph_sym3_add (a->inertia_com_kg_m2, b->inertia_com_kg_m2) };
  if (!(sum.mass_kg > 0))
    return sum;
  double inverse = 1 / sum.mass_kg;
  sum.com_m = ph_vec3_scale (sum.moment_kg_m, inverse);
  sum.inertia_com_kg_m2 = ph_sym3_add_point (
      sum.inertia_com_kg_m2, a->mass_kg * (b->mass_kg * inverse), ph_vec3_sub (b->com_m, a->com_m));
  return sum;
}

/** The record about P. */
static inline PhMass
ph_central_record (const PhCentral *central)
{
  return (
      PhMass){ central->mass_kg, central->moment_kg_m,
               ph_sym3_add_point (central->inertia_com_kg_m2, central->mass_kg, central->com_m) };
}

/** Everything that follows; mass_kg must be above 0 (asserted). */
PhMassProperties ph_central_properties (const PhCentral *central);
