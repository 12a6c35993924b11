/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tilt of the bow read from a photo: a window that opens a picture, asks for its points one
 * after the other and says what they give. The picture is looked at and forgotten.
 *
 * Signals: "used" (double tilt_deg, double sd_deg): the reading was taken, in the file's sign; the
 * window then closes.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_PHOTO_DIALOG (ph_photo_dialog_get_type ())
G_DECLARE_FINAL_TYPE (PhPhotoDialog, ph_photo_dialog, PH, PHOTO_DIALOG, GtkWindow)

/** `folder`, where the last photo was found, may be null. */
GtkWidget *ph_photo_dialog_new (GtkWindow *parent, PhDocument *document, GFile *folder);
/** Where the photo was found, or null. Borrowed. */
GFile *ph_photo_dialog_get_folder (PhPhotoDialog *self);

G_END_DECLS
