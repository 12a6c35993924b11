/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A photo on which points are set: by a click, or by Return in the middle of what is seen; dragged,
 * or moved by the arrow keys, a pixel of the picture at a time (Shift: ten). A loupe shows what is
 * under the pointer or the moved point. The wheel, a pinch, + − 0 zoom; a drag beside the points
 * and Ctrl with the arrows move the picture. Backspace, Delete and Escape take the last point back.
 *
 * Signals: "changed" (): a point was set, moved or taken back.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/photo-clicks.h"
#include "widgets/photo-picture.h"

G_BEGIN_DECLS

#define PH_TYPE_PHOTO_CANVAS (ph_photo_canvas_get_type ())
G_DECLARE_FINAL_TYPE (PhPhotoCanvas, ph_photo_canvas, PH, PHOTO_CANVAS, GtkWidget)

/** Shows a picture, which it then owns (null: none); the points set on the one before are gone. */
void ph_photo_canvas_take_picture (PhPhotoCanvas *self, PhPhotoPicture *picture);
const PhPhotoPicture *ph_photo_canvas_get_picture (PhPhotoCanvas *self);

/** Each way keeps its own points. */
void ph_photo_canvas_set_way (PhPhotoCanvas *self, PhPhotoWay way);
const PhPhotoClicks *ph_photo_canvas_get_clicks (PhPhotoCanvas *self);
/** One more point of a line is wanted next. */
void ph_photo_canvas_ask (PhPhotoCanvas *self, PhPhotoTarget on);
/** FALSE: there was none. */
gboolean ph_photo_canvas_undo (PhPhotoCanvas *self);

/** About the middle of what is seen; 0: all of the picture. */
void ph_photo_canvas_zoom (PhPhotoCanvas *self, double factor);

G_END_DECLS
