/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The hand as a plot: roll moment against bubble, the checks with their error bars, the fitted line
 * with its 90 % band, the open rig marked. Told by shape as well as by colour.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_HAND_PLOT (ph_hand_plot_get_type ())
G_DECLARE_FINAL_TYPE (PhHandPlot, ph_hand_plot, PH, HAND_PLOT, GtkWidget)

GtkWidget *ph_hand_plot_new (PhDocument *document);

G_END_DECLS
