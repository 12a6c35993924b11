/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A point set on a photo: what the focus walks and a screen reader names. The canvas that shows it
 * places and moves it. Round for the string and the vial's lines, square for the edge and the
 * bubble.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/photo-clicks.h"

G_BEGIN_DECLS

/** Width and height of a mark, its point in the middle [px]. */
#define PH_PHOTO_MARK_PX 30

#define PH_TYPE_PHOTO_MARK (ph_photo_mark_get_type ())
G_DECLARE_FINAL_TYPE (PhPhotoMark, ph_photo_mark, PH, PHOTO_MARK, GtkWidget)

GtkWidget *ph_photo_mark_new (PhPhotoTarget on);

G_END_DECLS
