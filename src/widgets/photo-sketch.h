/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a photo for reading the lean should show, as a drawing of our own in the colour of the text:
 * the bow from straight behind, a plumb edge beside it, and the angle between string and edge.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define PH_TYPE_PHOTO_SKETCH (ph_photo_sketch_get_type ())
G_DECLARE_FINAL_TYPE (PhPhotoSketch, ph_photo_sketch, PH, PHOTO_SKETCH, GtkWidget)

GtkWidget *ph_photo_sketch_new (void);

G_END_DECLS
