/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Eigenvalues of inertia tensors, held against GSL's gsl_eigen_symmv.
 */
#include "math/sym3.h"

#include <gsl/gsl_eigen.h>
#include <gsl/gsl_math.h>

#include "check.h"

static unsigned long long random_state = 7;

static double
random_within (double lo, double hi)
{
  /* Knuth's MMIX linear congruence (from memory); the high bits. */
  random_state = random_state * 6364136223846793005ull + 1442695040888963407ull;
  return lo + (hi - lo) * (double)(random_state >> 11) / 9007199254740992.0;
}

static double
norm (PhSym3 s)
{
  return fabs (s.xx) + fabs (s.yy) + fabs (s.zz) + fabs (s.xy) + fabs (s.xz) + fabs (s.yz);
}

static void
gsl_values (PhSym3 s, double values[3])
{
  double data[9] = { s.xx, s.xy, s.xz, s.xy, s.yy, s.yz, s.xz, s.yz, s.zz };
  gsl_matrix_view m = gsl_matrix_view_array (data, 3, 3);
  gsl_vector_view v = gsl_vector_view_array (values, 3);
  gsl_matrix *vectors = gsl_matrix_alloc (3, 3);
  gsl_eigen_symmv_workspace *work = gsl_eigen_symmv_alloc (3);
  CHECK (gsl_eigen_symmv (&m.matrix, &v.vector, vectors, work) == GSL_SUCCESS);
  gsl_eigen_symmv_sort (&v.vector, vectors, GSL_EIGEN_SORT_VAL_ASC);
  gsl_eigen_symmv_free (work);
  gsl_matrix_free (vectors);
}

/* 40 ε of the tensor's size: some twenty rotations, each rounding a few times. */
static void
check_against_gsl (PhSym3 s)
{
  double values[3], other[3], most = 40 * 2.3e-16 * norm (s);
  PhVec3 v[3];
  ph_sym3_eigen (s, values, v);
  gsl_values (s, other);
  CHECK (values[0] <= values[1] && values[1] <= values[2]);
  for (int i = 0; i < 3; i++)
    {
      CHECK_NEAR (values[i], other[i], most);
      PhVec3 off = ph_vec3_add_scaled (ph_sym3_apply (s, v[i]), v[i], -values[i]);
      CHECK_NEAR (ph_vec3_length (off), 0, most);
      for (int j = 0; j <= i; j++)
        CHECK_NEAR (ph_vec3_dot (v[i], v[j]), i == j ? 1.0 : 0.0, 4e-15);
      double largest = fmax (fmax (v[i].x, v[i].y), v[i].z);
      double least = fmin (fmin (v[i].x, v[i].y), v[i].z);
      CHECK (largest >= -least * (1 - 1e-11), "the largest component is negative");
    }
}

static void
random_tensors_agree_with_gsl (void)
{
  for (int i = 0; i < 20000; i++)
    {
      double scale = pow (10, random_within (-12, 3)), off = pow (10, random_within (-14, 0));
      check_against_gsl (
          (PhSym3){ scale * random_within (0, 1), scale * random_within (0, 1),
                    scale * random_within (0, 1), scale * off * random_within (-1, 1),
                    scale * off * random_within (-1, 1), scale * off * random_within (-1, 1) });
    }
}

static void
degenerate_tensors_agree_with_gsl (void)
{
  static const PhSym3 tensors[] = { { 0, 0, 0, 0, 0, 0 },
                                    { 2, 2, 2, 0, 0, 0 },
                                    { 1, 1, 1, 1, 1, 1 },
                                    { 2, 2, 2, -1, -1, -1 },
                                    { 1, 1, 1 + 1e-15, 1e-16, 0, 1e-16 },
                                    { 1e-300, 2e-300, 3e-300, 1e-301, 0, 0 },
                                    { 1, 2, 3, 1e-170, 1e-170, 1e-170 },
                                    { 0, 0, 0, 1, 0, 0 } };
  for (size_t i = 0; i < sizeof tensors / sizeof *tensors; i++)
    check_against_gsl (tensors[i]);
}

static void
diagonal_tensor_keeps_its_own_axes (void)
{
  double values[3];
  PhVec3 v[3];
  ph_sym3_eigen ((PhSym3){ 3, 1, 2, 0, 0, 0 }, values, v);
  CHECK_NEAR (values[0], 1, 0);
  CHECK_NEAR (values[1], 2, 0);
  CHECK_NEAR (values[2], 3, 0);
  CHECK_NEAR (v[0].y, 1, 0);
  CHECK_NEAR (v[1].z, 1, 0);
  CHECK_NEAR (v[2].x, 1, 0);
}

static void
equal_components_take_their_sign_from_the_first (void)
{
  /* Eigenvectors (1, ±1, 0)/√2: rounding must not choose the sign. */
  double values[3];
  PhVec3 v[3];
  ph_sym3_eigen ((PhSym3){ 1, 1, 5, 0.3, 0, 0 }, values, v);
  CHECK_NEAR (v[0].x, sqrt (0.5), 1e-15);
  CHECK_NEAR (v[0].y, -sqrt (0.5), 1e-15);
  CHECK_NEAR (v[1].x, sqrt (0.5), 1e-15);
  CHECK_NEAR (v[1].y, sqrt (0.5), 1e-15);
}

static void
adding_is_elementwise_and_apply_is_the_matrix_product (void)
{
  PhSym3 s = ph_sym3_add ((PhSym3){ 1, 2, 3, 4, 5, 6 }, (PhSym3){ 10, 20, 30, 40, 50, 60 });
  PhVec3 v = ph_sym3_apply (s, ph_vec3 (1, -1, 2));
  CHECK_NEAR (v.x, 11 - 44 + 110, 0);
  CHECK_NEAR (v.y, 44 - 22 + 132, 0);
  CHECK_NEAR (v.z, 55 - 66 + 66, 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (random_tensors_agree_with_gsl);
  CASE (degenerate_tensors_agree_with_gsl);
  CASE (diagonal_tensor_keeps_its_own_axes);
  CASE (equal_components_take_their_sign_from_the_first);
  CASE (adding_is_elementwise_and_apply_is_the_matrix_product);
  return check_end ();
}
