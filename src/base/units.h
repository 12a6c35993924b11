/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exact conversions. SI inside the physics; the rig file keeps mm, g and degrees; screens show
 * what the archer chose. Sources: NIST SP 811 appendix B.8 (inch, pound-force, mile per hour),
 * NIST Handbook 44 appendix C (ounce, grain), CGPM 1901 (standard gravity).
 */
#pragma once

#define PH_PI 3.14159265358979323846

#define PH_GRAVITY 9.80665                    /* m/s², standard, exact */
#define PH_M_PER_INCH 0.0254                  /* exact */
#define PH_KG_PER_POUND 0.45359237            /* avoirdupois, exact */
#define PH_KG_PER_OUNCE 0.028349523125        /* avoirdupois, exact */
#define PH_KG_PER_GRAIN 0.00006479891         /* exact */
#define PH_N_PER_POUND_FORCE 4.4482216152605  /* exact */
#define PH_M_S_PER_MILE_H 0.44704             /* exact */

/** Degrees to radians. */
static inline double
ph_rad_from_deg (double deg)
{
  return deg * (PH_PI / 180.0);
}

/** Radians to degrees. */
static inline double
ph_deg_from_rad (double rad)
{
  return rad * (180.0 / PH_PI);
}

/** Millimetres (or grams, or N·mm) to metres (or kilograms, or N·m). A division, not a product
 * with 0.001: the quotient is the correctly rounded one. */
static inline double
ph_from_milli (double milli)
{
  return milli / 1000.0;
}

/** Metres to millimetres, kilograms to grams. */
static inline double
ph_to_milli (double whole)
{
  return whole * 1000.0;
}
