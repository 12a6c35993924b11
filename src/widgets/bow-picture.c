/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order of painting, no more. The ground is the caller's: a widget's own background, or paper.
 */
#include "widgets/bow-picture.h"

#include "widgets/bow-painter.h"
#include "widgets/marks-painter.h"

void
ph_bow_picture_paint (cairo_t *cr, const PhPalette *palette, const PhBowPicture *picture)
{
  ph_marks_paint (cr, palette, picture->marks, TRUE);
  ph_bow_paint (cr, palette, picture->list, picture->outlines);
  if (picture->reference)
    ph_bow_paint_reference (cr, palette, picture->reference, picture->reference_outlines,
                            picture->outlines);
  ph_marks_paint (cr, palette, picture->marks, FALSE);
}
