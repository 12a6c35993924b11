/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Measuring the bow instead of guessing it: the method with its drawing and its safety, the typed
 * readings, what comes of them and what that changes, live, and "Use this" as one undo step. The
 * whole rig's bubble is no measurement of the bow: there the page says so and leads to a check.
 *
 * Signals: "check-wanted" (): the page asks for a bubble check.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_MEASURE_PAGE (ph_measure_page_get_type ())
G_DECLARE_FINAL_TYPE (PhMeasurePage, ph_measure_page, PH, MEASURE_PAGE, GtkWidget)

/** Opens with the method that would settle the guess that matters most, and the readings of it that
 * are kept with the rig. The document is kept alive. */
GtkWidget *ph_measure_page_new (PhDocument *document);

/** The page in a window of its own over `parent`; one for each parent, brought to the front where
 * it is open already. */
void ph_measure_page_present (GtkWindow *parent, PhDocument *document);

G_END_DECLS
