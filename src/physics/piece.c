/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bar weighed from its catalogue numbers.
 */
#include "physics/piece.h"

PhBody
ph_piece_bar_body (double tube_kg, double root_fitting_kg, double tip_fitting_kg, double fitting_m,
                   double length_m, double outer_m, double inner_m)
{
  double outer_radius = outer_m / 2;
  PhBody tube = ph_body_cylinder (tube_kg, 0, length_m, outer_radius, inner_m / 2);
  PhBody root = ph_body_cylinder (root_fitting_kg, 0, fitting_m, outer_radius, 0);
  PhBody tip = ph_body_cylinder (tip_fitting_kg, length_m - fitting_m, fitting_m, outer_radius, 0);
  return ph_body_join_on_axis (ph_body_join_on_axis (tube, root), tip);
}
