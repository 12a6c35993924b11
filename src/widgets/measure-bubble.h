/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The whole rig's bubble, on the page of measurements: what a reading of it can tell and what it
 * cannot, and the way to where it is recorded. It follows the document by itself while it is seen.
 *
 * Signals: "check-wanted" (): the button.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_MEASURE_BUBBLE (ph_measure_bubble_get_type ())
G_DECLARE_FINAL_TYPE (PhMeasureBubble, ph_measure_bubble, PH, MEASURE_BUBBLE, GtkWidget)

GtkWidget *ph_measure_bubble_new (PhDocument *document);

G_END_DECLS
