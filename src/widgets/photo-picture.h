/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A photo that was opened: upright as the camera says it was held, at several sizes, so that a
 * thin string does not fall between the pixels of a small view.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _PhPhotoPicture PhPhotoPicture;

/** Reads a file in a thread of its own. */
void ph_photo_picture_load_async (GFile *file, GCancellable *cancellable,
                                  GAsyncReadyCallback callback, gpointer data);
/** Null with an error that says what to do instead. */
PhPhotoPicture *ph_photo_picture_load_finish (GAsyncResult *result, GError **error);
/** The same, turned by a quarter the way of the clock. */
PhPhotoPicture *ph_photo_picture_new_turned (const PhPhotoPicture *picture);
void ph_photo_picture_free (PhPhotoPicture *picture);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PhPhotoPicture, ph_photo_picture_free)

int ph_photo_picture_get_width (const PhPhotoPicture *picture);
int ph_photo_picture_get_height (const PhPhotoPicture *picture);
/** The texture to show at so many device pixels a pixel of the picture. Borrowed. */
GdkTexture *ph_photo_picture_get_texture (const PhPhotoPicture *picture, double scale);

G_END_DECLS
