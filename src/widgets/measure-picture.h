/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The set-up of a measurement as a drawing of our own, in the colour of the text. The letters are
 * those of the instructions (d, l, D, h).
 */
#pragma once

#include <gtk/gtk.h>

#include "model/measure.h"

G_BEGIN_DECLS

#define PH_TYPE_MEASURE_PICTURE (ph_measure_picture_get_type ())
G_DECLARE_FINAL_TYPE (PhMeasurePicture, ph_measure_picture, PH, MEASURE_PICTURE, GtkWidget)

GtkWidget *ph_measure_picture_new (void);
void ph_measure_picture_set_method (PhMeasurePicture *self, PhMethod method);

G_END_DECLS
