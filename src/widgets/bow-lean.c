/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Left and right have sentences of their own, so that they can be translated; sides are decided
 * after rounding, so that nothing leans "left 0.0°".
 */
#include "widgets/bow-lean.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "document/format.h"
#include "scene/camera.h"

/* Shown to a tenth of a degree. */
#define LEAST_SHOWN_DEG 0.05

/* The bubble's tilt is asin (cos β sin φ): back to the roll φ about the grip–nock line. */
static double
cant_of (double tilt_rad, double slope_rad)
{
  double sine = sin (tilt_rad) / cos (slope_rad);
  return fabs (sine) < 1.0 ? asin (sine) : copysign (G_PI_2, sine);
}

PhLeanDrawn
ph_lean_drawn_of (const PhSettle *settle, double slope_rad, double factor)
{
  if (!settle->settles)
    return (PhLeanDrawn){ (float)settle->heavy_side * PH_LEAN_DRAWN_MOST_RAD, TRUE };
  bool stopped;
  float lean = ph_lean_drawn (cant_of (settle->tilt_rad, slope_rad), factor, &stopped);
  return (PhLeanDrawn){ lean, stopped };
}

PhLeanDrawn
ph_lean_drawn_reference (const PhSettle *settle, double slope_rad, double factor)
{
  if (!settle->has_reference || isnan (settle->reference_tilt_rad))
    return (PhLeanDrawn){ 0.0f, FALSE };
  bool stopped;
  float lean = ph_lean_drawn (cant_of (settle->reference_tilt_rad, slope_rad), factor, &stopped);
  return (PhLeanDrawn){ lean, stopped };
}

/* Size in degrees, to a tenth; `digits` for what is shown. */
static char *
tenths (double tilt_rad)
{
  return ph_format_number (fabs (ph_deg_from_rad (tilt_rad)), 1);
}

static gboolean
shows (double tilt_rad)
{
  return fabs (ph_deg_from_rad (tilt_rad)) >= LEAST_SHOWN_DEG;
}

static char *
toppling (int side)
{
  if (side == 0)
    return g_strdup (_ ("topples rather than settling"));
  return g_strdup (side < 0 ? _ ("topples to the left rather than settling")
                            : _ ("topples to the right rather than settling"));
}

/* Loose to firm hands: the firm one leans least. */
static char *
range_said (const PhLeanRange *band, gboolean left)
{
  double near = fmin (fabs (band->lo_rad), fabs (band->hi_rad));
  double far = fmax (fabs (band->lo_rad), fabs (band->hi_rad));
  g_autofree char *least = tenths (near), *most = tenths (far);
  if (band->some_topple)
    return left ? g_strdup_printf (_ ("leans left (firm hand: %s°; a loose one cannot hold it)"),
                                   least)
                : g_strdup_printf (_ ("leans right (firm hand: %s°; a loose one cannot hold it)"),
                                   least);
  return left ? g_strdup_printf (_ ("leans left (firm to loose hand: %s–%s°)"), least, most)
              : g_strdup_printf (_ ("leans right (firm to loose hand: %s–%s°)"), least, most);
}

char *
ph_lean_said (const PhSettle *settle)
{
  if (!settle->settles)
    return toppling (settle->heavy_side);
  gboolean left = settle->tilt_rad < 0.0;
  if (!settle->hand_known)
    {
      if (!shows (settle->band.lo_rad) && !shows (settle->band.hi_rad))
        return g_strdup (_ ("hangs plumb by its weight alone"));
      return range_said (&settle->band, left);
    }
  if (!shows (settle->tilt_rad))
    return g_strdup (_ ("stands plumb"));
  g_autofree char *size = tenths (settle->tilt_rad);
  return left ? g_strdup_printf (_ ("leans left %s°"), size)
              : g_strdup_printf (_ ("leans right %s°"), size);
}

char *
ph_lean_drawing_said (const PhSettle *settle, PhLeanDrawn drawn, double factor)
{
  g_autofree char *times = ph_format_short (factor, 1);
  GString *said = g_string_new (NULL);
  if (factor == 1.0)
    g_string_append (said, _ ("lean drawn as it is"));
  else
    g_string_append_printf (said, _ ("lean drawn %s times"), times);
  if (drawn.stopped)
    g_string_append (said, _ (", stopped at 30°"));
  if (!settle->hand_known)
    g_string_append (said, _ (", hand assumed"));
  return g_string_free (said, FALSE);
}
