/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inertia about the grip in the archer's words, slow to roll, to nod and to swing: kg·m² to three
 * figures and the change in per cent.
 */
#include "widgets/reading-texts.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"

#define FIGURES 3

void
ph_turn_text_clear (PhTurnText *text)
{
  g_free (text->value);
  g_free (text->more);
  *text = (PhTurnText){ 0 };
}

static double
inertia_of (const PhReport *report, PhTurn turn)
{
  const PhSym3 *inertia = &report->mass.inertia_grip_kg_m2;
  switch (turn)
    {
    case PH_TURN_NOD:
      return inertia->yy;
    case PH_TURN_SWING:
      return inertia->zz;
    case PH_TURN_ROLL:
    default:
      return inertia->xx;
    }
}

/* Three figures: 0.412, 0.0123, 1.23. */
static char *
figures (double value)
{
  int digits = value == 0.0 ? 3 : FIGURES - 1 - (int)floor (log10 (fabs (value)));
  return ph_format_number (value, CLAMP (digits, 0, 6));
}

static char *
inertia_text (double kg_m2)
{
  g_autofree char *number = figures (kg_m2);
  return g_strdup_printf (_ ("%s kg·m²"), number);
}

PhTurnText
ph_reading_turn (const PhReadingSource *source, PhTurn turn)
{
  double now = inertia_of (source->report, turn);
  double before = source->reference ? inertia_of (source->reference, turn) : 0.0;
  PhTurnText text = { .mark = before > 0.0 };
  if (!text.mark)
    {
      double greatest = 0.0;
      for (int i = 0; i < PH_TURNS; i++)
        greatest = fmax (greatest, inertia_of (source->report, (PhTurn)i));
      text.value = figures (now);
      text.fill = greatest > 0.0 ? now / greatest : 0.0;
      return text;
    }
  double percent = 100.0 * (now / before - 1.0);
  g_autofree char *change = ph_format_change (percent, fabs (percent) < 10.0 ? 1 : 0);
  text.value = g_strdup_printf (_ ("%s %%"), change);
  text.more = inertia_text (now);
  text.fill = fmin (now / before / 2.0, 1.0);
  return text;
}

char *
ph_reading_tensor (const PhReport *report)
{
  const PhSym3 *i = &report->mass.inertia_grip_kg_m2;
  const double *p = report->mass.principal_kg_m2;
  g_autofree char *xx = figures (i->xx), *yy = figures (i->yy), *zz = figures (i->zz);
  g_autofree char *xy = figures (i->xy), *xz = figures (i->xz), *yz = figures (i->yz);
  g_autofree char *p0 = figures (p[0]), *p1 = figures (p[1]), *p2 = figures (p[2]);
  g_autofree char *coupling = ph_format_number (report->cross_coupling, 3);
  return g_strdup_printf (_ ("Inertia about the grip, kg·m²: roll %s, nod %s, swing %s; products "
                             "xy %s, xz %s, yz %s.\nPrincipal moments about the balance point: %s, "
                             "%s, %s. Swing that turns into roll: %s."),
                          xx, yy, zz, xy, xz, yz, p0, p1, p2, coupling);
}
