/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Brent–Dekker with GSL. Costs one allocation and as many calls of f as the bracket needs.
 */
#include "math/root.h"

#include <assert.h>
#include <float.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_roots.h>
#include <math.h>

void
ph_math_init (void)
{
  gsl_set_error_handler_off ();
}

static PhStatus
iterate (gsl_root_fsolver *solver, double width, double *root)
{
  for (int step = 0; step < 200; step++)
    {
      if (gsl_root_fsolver_iterate (solver) != GSL_SUCCESS)
        return PH_ERR_NO_CONVERGENCE;
      double lo = gsl_root_fsolver_x_lower (solver), hi = gsl_root_fsolver_x_upper (solver);
      /* A root at 0 has no last bit of its own: there the bracket's width sets the scale. */
      if (gsl_root_test_interval (lo, hi, width * 1e-16, 2 * DBL_EPSILON) == GSL_SUCCESS)
        {
          *root = gsl_root_fsolver_root (solver);
          return PH_OK;
        }
    }
  return PH_ERR_NO_CONVERGENCE;
}

PhStatus
ph_root_bracketed (PhFunction f, void *data, double lo, double hi, double *root)
{
  double at_lo = f (lo, data), at_hi = f (hi, data);
  assert (at_lo == 0 || at_hi == 0 || (at_lo < 0) != (at_hi < 0));
  if (at_lo == 0 || at_hi == 0)
    {
      *root = at_lo == 0 ? lo : hi;
      return PH_OK;
    }
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  if (!solver)
    return PH_ERR_NO_MEMORY;
  gsl_function function = { .function = f, .params = data };
  PhStatus status = PH_ERR_NO_CONVERGENCE;
  if (gsl_root_fsolver_set (solver, &function, lo, hi) == GSL_SUCCESS)
    status = iterate (solver, fabs (hi - lo), root);
  gsl_root_fsolver_free (solver);
  return status;
}
