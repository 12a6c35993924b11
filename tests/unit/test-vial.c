/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things stand on the drawn vial, and how readings fall into columns: arithmetic that needs
 * no display.
 */
#include "widgets/columns-layout.h"
#include "widgets/vial.h"

#include "base/units.h"
#include "check.h"

static void
bubble_runs_to_the_high_side (void)
{
  double middle = ph_vial_place (0.0, TRUE, 400.0);
  CHECK (middle == 200.0);
  /* Top limb to the right: the bubble to the left; the lean itself to the right. */
  CHECK (ph_vial_place (ph_rad_from_deg (1.0), TRUE, 400.0) < middle);
  CHECK (ph_vial_place (ph_rad_from_deg (1.0), FALSE, 400.0) > middle);
}

static void
scale_is_even_and_ends_at_three_degrees (void)
{
  double one = ph_vial_place (ph_rad_from_deg (-1.0), TRUE, 400.0) - 200.0;
  double three = ph_vial_place (ph_rad_from_deg (-3.0), TRUE, 400.0) - 200.0;
  CHECK_NEAR (three, 3.0 * one, 1e-9);
  CHECK (ph_vial_place (ph_rad_from_deg (-8.0), TRUE, 400.0) == 200.0 + three);
  /* The bubble at the end of the range is inside the vial. */
  CHECK (three < 200.0 && three > 100.0);
}

static void
columns_are_as_many_as_fit_and_rows_are_even (void)
{
  CHECK (ph_columns_layout_columns (8, 200, 16, 2000) == 8);
  /* Seven would fit: two even rows of four. */
  CHECK (ph_columns_layout_columns (8, 200, 16, 1600) == 4);
  CHECK (ph_columns_layout_columns (8, 200, 16, 848) == 4);
  CHECK (ph_columns_layout_columns (8, 200, 16, 847) == 3);
  CHECK (ph_columns_layout_columns (8, 200, 16, 100) == 1);
  CHECK (ph_columns_layout_columns (0, 200, 16, 100) == 0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (bubble_runs_to_the_high_side);
  CASE (scale_is_even_and_ends_at_three_degrees);
  CASE (columns_are_as_many_as_fit_and_rows_are_even);
  return check_end ();
}
