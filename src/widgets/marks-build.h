/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks from their builders' side. Only for the bow view's own sources.
 */
#pragma once

#include "widgets/bow-marks.h"

G_BEGIN_DECLS

struct PhMarks
{
  GArray *marks; /* of PhMark */
  PhLabelPlaces places;
  const PhMarkFacts *facts;
  const PhCamera *camera;
  PangoContext *context;
};

void ph_marks_add_line (PhMarks *marks, PhPixel a, PhPixel b, PhDash dash, double alpha,
                        gboolean accent, gboolean under);
void ph_marks_add_fill (PhMarks *marks, const PhPixel *at, size_t n, double alpha);

typedef struct
{
  gboolean bold, accent;
  double scale;    /* of the widget's font */
  double wrap_px;  /* wrapped at this width; 0: one line */
  double reach_px; /* how far it may be moved from where it is wanted */
  double least_px; /* kept free at least as wide; the text stands at the right of it */
  double below_px; /* kept free below the text too */
  PhLabelCare care;
} PhTextStyle;

/** A wanted place: where that point of the text shall be. */
typedef struct
{
  double x, y;
  double align_x, align_y; /* 0: x is the left edge, 0.5 the middle, 1 the right edge; y alike */
} PhTextPlace;

/** Lays out a text at the first of the wanted places that is free (label-place.h). Returns whether
 * it found room; `*box`, where given, is where it stands. */
gboolean ph_marks_add_text (PhMarks *marks, const char *text, const PhTextStyle *style,
                            const PhTextPlace *wanted, size_t n, PhLabelBox *box);

void ph_marks_title (PhMarks *marks);
void ph_marks_scale_bar (PhMarks *marks);
void ph_marks_balance (PhMarks *marks);
void ph_marks_turn_line (PhMarks *marks);
void ph_marks_lean (PhMarks *marks);
void ph_marks_lever (PhMarks *marks);
void ph_marks_near_string (PhMarks *marks);
void ph_marks_hand (PhMarks *marks); /* view-handles.c */

G_END_DECLS
