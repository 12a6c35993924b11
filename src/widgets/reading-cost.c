/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the lean costs: arrow drop × sine of the lean, against a sight set at the wanted lean. The
 * drop is that of free fall for the flight time distance/speed; air drag is not counted and the
 * text on demand says so. A ring is a twentieth of the face's diameter (ten equal zones).
 */
#include "widgets/reading-texts.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"

#define MISSING "–"

/* "4.2": centimetres or inches, without a sign. */
static char *
miss_number (double m, PhUnits units)
{
  return ph_format_number (fabs (m) / (units == PH_UNITS_TRADE ? PH_M_PER_INCH : 0.01), 1);
}

static gboolean
reads_as_nothing (double m, PhUnits units)
{
  g_autofree char *number = miss_number (m, units);
  return strpbrk (number, "123456789") == NULL;
}

static const char *
miss_unit (PhUnits units)
{
  return units == PH_UNITS_TRADE ? _ ("in") : _ ("cm");
}

/* One number or a range; of a range the nearer end first. */
static char *
miss_text (double a_m, double b_m, PhUnits units)
{
  double near = fabs (a_m) <= fabs (b_m) ? a_m : b_m, far = near == a_m ? b_m : a_m;
  g_autofree char *n = miss_number (near, units), *f = miss_number (far, units);
  const char *unit = miss_unit (units);
  if (reads_as_nothing (far, units))
    return g_strdup (_ ("nothing"));
  if (near * far < 0.0 && !reads_as_nothing (near, units))
    return far < 0.0 ? g_strdup_printf (_ ("%s %s right to %s %s left"), n, unit, f, unit)
                     : g_strdup_printf (_ ("%s %s left to %s %s right"), n, unit, f, unit);
  if (g_str_equal (n, f))
    return far < 0.0 ? g_strdup_printf (_ ("%s %s left"), f, unit)
                     : g_strdup_printf (_ ("%s %s right"), f, unit);
  return far < 0.0 ? g_strdup_printf (_ ("%s to %s %s left"), n, f, unit)
                   : g_strdup_printf (_ ("%s to %s %s right"), n, f, unit);
}

static char *
ring_text (double near_m, double far_m, double face_mm)
{
  double ring = ph_from_milli (face_mm) / 20.0;
  double a = fmin (fabs (near_m), fabs (far_m)) / ring;
  double b = fmax (fabs (near_m), fabs (far_m)) / ring;
  g_autofree char *most = ph_format_number (b, 1), *least = ph_format_number (a, 1);
  if (near_m == far_m || g_str_equal (most, least))
    return g_strdup_printf (_ ("%s rings of that face"), most);
  if (near_m * far_m < 0.0)
    return g_strdup_printf (_ ("up to %s rings of that face"), most);
  return g_strdup_printf (_ ("%s to %s rings of that face"), least, most);
}

static char *
drop_text (double m, PhUnits units)
{
  gboolean inches = units == PH_UNITS_TRADE;
  g_autofree char *number = ph_format_number (inches ? m / PH_M_PER_INCH : m, inches ? 0 : 2);
  return inches ? g_strdup_printf (_ ("arrow drop %s in, air drag not counted"), number)
                : g_strdup_printf (_ ("arrow drop %s m, air drag not counted"), number);
}

static PhReadingText
missing_cost (const char *why)
{
  return (PhReadingText){ .value = g_strdup (MISSING), .detail = g_strdup (why) };
}

PhReadingText
ph_reading_cost (const PhReadingSource *source, const PhShooting *shooting)
{
  if (!(shooting->speed_m_s > 0.0))
    return missing_cost (_ ("needs your arrow’s speed"));
  PhSettle settle = ph_settle_of (source->rig, source->report, NULL);
  if (isnan (settle.tilt_rad) || isnan (settle.band.lo_rad))
    return missing_cost (_ ("it tips over: no lean to count"));
  double wanted = ph_rad_from_deg (source->rig->archer.wanted_bubble_deg);
  double drop = ph_lean_drop (shooting->distance_m, shooting->speed_m_s);
  double lo = ph_lean_miss (drop, settle.tilt_rad, wanted), hi = lo;
  if (!settle.hand_known)
    {
      lo = ph_lean_miss (drop, settle.band.lo_rad, wanted);
      hi = ph_lean_miss (drop, settle.band.hi_rad, wanted);
    }
  g_autofree char *rings = ring_text (lo, hi, shooting->face_mm);
  PhReadingText text = {
    .value = miss_text (lo, hi, source->units),
    .detail = settle.hand_known ? g_steal_pointer (&rings)
                                : g_strdup_printf (_ ("%s, firm to loose hand"), rings),
    .more = drop_text (drop, source->units),
  };
  return text;
}
