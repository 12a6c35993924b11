/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers as a person sees them: the locale's decimal sign, a true minus sign (U+2212), as many
 * digits as they deserve, never "-0". Files never use these. All return new strings (g_free); a
 * NAN becomes "–", since a number that cannot be computed is shown as missing.
 */
#pragma once

#include <glib.h>

#include "base/quantity.h"

G_BEGIN_DECLS

/** "12.5 in", "140 g", "20.0°". */
char *ph_format_quantity (double file_value, PhQuantity quantity, PhUnits units);
/** The same with its sign always shown ("+4.2 g"): for differences. */
char *ph_format_quantity_change (double file_value, PhQuantity quantity, PhUnits units);
/** "0.23" with that many digits after the decimal sign. */
char *ph_format_number (double value, int digits);
/** "+0.23", "−0.23", "0.00" → "±0". */
char *ph_format_change (double value, int digits);
/** Without needless zeros: "12", "12.5". */
char *ph_format_short (double value, int digits);
/** "12 in", "1 oz", "20°". */
char *ph_format_quantity_short (double file_value, PhQuantity quantity, PhUnits units);
/** "660 → 670 mm", "20° → 26°", "8 → 9": with more digits where the usual ones show no change. */
char *ph_format_quantity_step (double from, double to, PhQuantity quantity, PhUnits units);

G_END_DECLS
