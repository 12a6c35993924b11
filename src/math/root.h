/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One root of one function inside a bracket, by GSL's Brent–Dekker solver.
 */
#pragma once

#include "base/status.h"

typedef double (*PhFunction) (double x, void *data);

/** The root of f in [lo, hi], to the last bits of a double. f (lo) and f (hi) must differ in sign
 * or one of them be 0 (asserted). PH_ERR_NO_CONVERGENCE after 200 steps; `*root` then untouched. */
PhStatus ph_root_bracketed (PhFunction f, void *data, double lo, double hi, double *root);

/** Switches off GSL's aborting error handler. Call once at the start of every program. */
void ph_math_init (void);
