/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The two pendulums and their partial derivatives.
 */
#include "physics/swing.h"

#include <math.h>

#include "base/units.h"

static const PhSwingResult impossible = { PH_REFUSED_NOT_ABOVE_ZERO, NAN, NAN };

PhSwingResult
ph_swing_result (const PhSwing *swing)
{
  double m = swing->mass_kg, l = swing->distance_m;
  if (!(m > 0 && l > 0 && swing->swings > 0 && swing->seconds > 0))
    return impossible;
  double period = swing->seconds / swing->swings;
  double pivot = m * PH_GRAVITY * l * period * period / (4 * PH_PI * PH_PI);
  double centre = pivot - m * l * l;
  if (!(centre >= 0))
    return (PhSwingResult){ PH_REFUSED_INERTIA, NAN, NAN };
  double by_mass = centre / m * swing->mass_sd_kg;
  double by_distance = (pivot / l - 2 * m * l) * swing->distance_sd_m;
  double by_time = 2 * pivot / swing->seconds * swing->seconds_sd_s;
  return (PhSwingResult){ PH_NOT_REFUSED, centre, hypot (hypot (by_mass, by_distance), by_time) };
}

PhSwingResult
ph_two_string_result (const PhTwoString *strings)
{
  double m = strings->mass_kg, d = strings->spacing_m, h = strings->length_m;
  if (!(m > 0 && d > 0 && h > 0 && strings->swings > 0 && strings->seconds > 0))
    return impossible;
  double period = strings->seconds / strings->swings;
  double value = m * PH_GRAVITY * d * d * period * period / (16 * PH_PI * PH_PI * h);
  double part =
      hypot (hypot (strings->mass_sd_kg / m, 2 * strings->spacing_sd_m / d),
             hypot (2 * strings->seconds_sd_s / strings->seconds, strings->length_sd_m / h));
  return (PhSwingResult){ PH_NOT_REFUSED, value, value * part };
}
