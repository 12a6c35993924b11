/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paints a view's marks with cairo and Pango.
 */
#pragma once

#include <pango/pangocairo.h>

#include "widgets/bow-marks.h"
#include "widgets/bow-palette.h"

G_BEGIN_DECLS

/** Of the plates under texts. */
#define PH_MARK_PLATE_ALPHA 0.82

/** The balance mark alone. */
void ph_mark_paint_balance (cairo_t *cr, const PhPalette *palette, const PhMark *mark);

/** Those that lie under the bow, or those over it. */
void ph_marks_paint (cairo_t *cr, const PhPalette *palette, const PhMarks *marks, gboolean under);

G_END_DECLS
