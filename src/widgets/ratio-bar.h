/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Thin bars: one that is filled from its start, with or without a mark in its middle, and one that
 * grows from its middle to either side. Decoration for numbers that stand beside them in words.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_RATIO_BAR (ph_ratio_bar_get_type ())
G_DECLARE_FINAL_TYPE (PhRatioBar, ph_ratio_bar, PH, RATIO_BAR, GtkWidget)

GtkWidget *ph_ratio_bar_new (void);

/** Filled from the start to `fill` (0 to 1); `mark`: a line in the middle. */
void ph_ratio_bar_show_fill (PhRatioBar *self, double fill, gboolean mark);

/** From the middle to `side` (−1 the left end, +1 the right end, whatever the text direction: left
 * and right are the archer's). */
void ph_ratio_bar_show_side (PhRatioBar *self, double side);

G_END_DECLS
