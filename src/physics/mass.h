/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mass properties as plain values: one solid in its own frame, one record in the bow frame.
 * SI throughout (kg, m, kg·m²). Pure functions, no allocation. Formulas: physics of rigid
 * bodies as in any handbook (Beer & Johnston, inertia figure; Meriam & Kraige table D/4, from
 * memory); the off-diagonal elements carry the minus sign, xy = −Σ m x y.
 */
#pragma once

#include "math/sym3.h"
#include "math/vec3.h"
#include "physics/frame.h"

/** A body in its own frame (d, l', t'), its root the origin. */
typedef struct
{
  double mass_kg;
  PhVec3 com_m;         /* mass centre, own components, from the root */
  PhVec3 inertia_kg_m2; /* about the mass centre, about the axes d, l', t'; no products */
} PhBody;

/** Ten numbers that add: a body's mass properties about the grip pivot P in the bow frame. */
typedef struct
{
  double mass_kg;
  PhVec3 moment_kg_m;   /* m c, c the mass centre from P */
  PhSym3 inertia_kg_m2; /* about P */
} PhMass;

/** Hollow cylinder along d from `start_m` to `start_m + length_m`; radii, not diameters; inner 0
 * is a solid one. Axial m(R²+r²)/2, transverse m[3(R²+r²)+L²]/12. */
PhBody ph_body_cylinder (double mass_kg, double start_m, double length_m, double outer_radius_m,
                         double inner_radius_m);

/** Box of full sides `size_m` along d, l', t' about its mass centre `com_m`. */
PhBody ph_body_box (double mass_kg, PhVec3 com_m, PhVec3 size_m);

/** Sum of two bodies whose mass centres both lie on the axis d. Mass 0 adds nothing. */
PhBody ph_body_join_on_axis (PhBody a, PhBody b);

/** The record of a body whose root stands at `root_m` with the directions of `frame`. */
PhMass ph_mass_of_body (const PhBody *body, PhVec3 root_m, const PhFrame *frame);

/** Sum of two records. */
PhMass ph_mass_add (PhMass a, PhMass b);

/** a − b: what is left when b is taken off. */
PhMass ph_mass_subtract (PhMass a, PhMass b);

/** Everything that follows from a record alone. */
typedef struct
{
  double mass_kg;
  PhVec3 com_m;              /* mass centre from P, bow frame */
  PhSym3 inertia_com_kg_m2;  /* about the mass centre */
  PhSym3 inertia_grip_kg_m2; /* about P */
  double principal_kg_m2[3]; /* about the mass centre, ascending */
  PhVec3 principal_axes[3];  /* unit, same order, largest component positive */
} PhMassProperties;

/** mass_kg must be above 0 (asserted: a checked rig always is). */
PhMassProperties ph_mass_properties (const PhMass *mass);

/** Tensor about the point `at_m` (bow frame) of a body with the given mass, mass centre and
 * tensor about that centre. */
PhSym3 ph_inertia_about (double mass_kg, PhVec3 com_m, PhSym3 inertia_com_kg_m2, PhVec3 at_m);
