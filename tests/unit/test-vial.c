/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where things stand on the drawn vial, and how readings fall into columns: arithmetic that needs
 * no display.
 */
#include "widgets/columns-layout.h"
#include "widgets/vial-scale.h"
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

/* The deviation against the spread of a thousand calibrations with errors drawn from it. */
static void
mark_is_worth_the_tilt_over_the_marks_and_no_surer_than_both (void)
{
  double each, sd, sum = 0, squares = 0, one, own;
  ph_vial_calibrate (2, -2.5, &each, &sd);
  CHECK_NEAR (each, 0.8, 1e-15);
  srand (7);
  for (int i = 0; i < 4000; i++)
    {
      double tilt = 2, marks = 2.5;
      for (int k = 0; k < 12; k++) /* twelve uniforms: variance 1 */
        {
          tilt += PH_VIAL_TILT_SD_DEG * (rand () / (RAND_MAX + 1.0) - 0.5);
          marks += PH_VIAL_EYE_SD_MARKS * (rand () / (RAND_MAX + 1.0) - 0.5);
        }
      ph_vial_calibrate (tilt, marks, &one, &own);
      sum += one;
      squares += one * one;
    }
  double spread = sqrt (squares / 4000 - sum * sum / 4000 / 4000);
  CHECK_REL (sd, spread, 0.05); /* of 4,000: two per cent */
  ph_vial_calibrate (2, 0, &each, &sd);
  CHECK (isnan (each) && isnan (sd));
  ph_vial_calibrate (NAN, 1, &each, &sd);
  CHECK (isnan (each) && isnan (sd));
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
  CASE (mark_is_worth_the_tilt_over_the_marks_and_no_surer_than_both);
  CASE (columns_are_as_many_as_fit_and_rows_are_even);
  return check_end ();
}
