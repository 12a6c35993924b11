/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A symmetric 3×3 matrix by value: inertia tensors with xy = −Σ m x y (the minus sign is in the
 * element). Unit and frame are the caller's.
 */
#pragma once

#include "math/vec3.h"

typedef struct
{
  double xx, yy, zz, xy, xz, yz;
} PhSym3;

static inline PhSym3
ph_sym3_add (PhSym3 a, PhSym3 b)
{
  return (PhSym3){ a.xx + b.xx, a.yy + b.yy, a.zz + b.zz, a.xy + b.xy, a.xz + b.xz, a.yz + b.yz };
}

/** Matrix times vector. */
static inline PhVec3
ph_sym3_apply (PhSym3 s, PhVec3 v)
{
  return (PhVec3){ s.xx * v.x + s.xy * v.y + s.xz * v.z, s.xy * v.x + s.yy * v.y + s.yz * v.z,
                   s.xz * v.x + s.yz * v.y + s.zz * v.z };
}

/** Eigenvalues ascending with unit eigenvectors, the largest component of each positive (of
 * equal ones the first). Cyclic Jacobi rotations until the off-diagonal part is lost in
 * rounding: G. H. Golub and C. F. Van Loan, Matrix Computations, section 8.5 (from memory). Our
 * own code because the whole recompute of a rig has about a microsecond; the tests hold it
 * against GSL's gsl_eigen_symmv. Elements must be finite. */
void ph_sym3_eigen (PhSym3 s, double values[3], PhVec3 vectors[3]);
