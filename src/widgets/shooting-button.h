/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Asks what the archer shoots: arrow speed, distance and face, in a small popover. They are the
 * archer's, not the rig's, so they are kept with the program's settings.
 *
 * Properties (all notify): "speed" (double, m/s, 0: not stated), "distance" (double, m), "face"
 * (int, cm).
 */
#pragma once

#include <gtk/gtk.h>

#include "base/quantity.h"
#include "widgets/reading-texts.h"

G_BEGIN_DECLS

#define PH_TYPE_SHOOTING_BUTTON (ph_shooting_button_get_type ())
G_DECLARE_FINAL_TYPE (PhShootingButton, ph_shooting_button, PH, SHOOTING_BUTTON, GtkWidget)

GtkWidget *ph_shooting_button_new (void);
PhShooting ph_shooting_button_get (PhShootingButton *self);
/** Feet a second and yards where all is in inches and pounds, else m/s and m. */
void ph_shooting_button_set_units (PhShootingButton *self, PhUnits units);
/** Keeps the three under "arrow-speed", "target-distance" and "target-face". Null, or settings
 * without those keys: kept for this run only. */
void ph_shooting_button_bind (PhShootingButton *self, GSettings *settings);

G_END_DECLS
