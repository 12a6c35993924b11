/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The typed readings of one method as rows of a grid: what is read, and beside it how sure that is.
 * What is typed goes straight into the draft that they were made for.
 */
#pragma once

#include <gtk/gtk.h>

#include "base/quantity.h"
#include "widgets/measure-draft.h"

G_BEGIN_DECLS

#define PH_TYPE_MEASURE_ROWS (ph_measure_rows_get_type ())
G_DECLARE_FINAL_TYPE (PhMeasureRows, ph_measure_rows, PH, MEASURE_ROWS, GtkWidget)

/* Signals: "typed" (): a number of the draft changed. */

/** `draft` is borrowed and must outlive the rows, or be replaced first. */
GtkWidget *ph_measure_rows_new (void);
/** Builds the rows of the draft's method and shows its numbers. */
void ph_measure_rows_set_draft (PhMeasureRows *self, PhMeasureDraft *draft, PhUnits units);
/** Puts the time of so many seconds into the row of the watch (a pendulum's or two strings'). */
void ph_measure_rows_set_seconds (PhMeasureRows *self, double seconds);
void ph_measure_rows_set_units (PhMeasureRows *self, PhUnits units);

G_END_DECLS
