/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the canvas' files share: photo-canvas.c holds the state, photo-canvas-input.c the pointer
 * and the keys, photo-canvas-paint.c the drawing.
 */
#pragma once

#include "widgets/photo-canvas.h"
#include "widgets/photo-place.h"

/** One step of the wheel or of a key. */
#define PH_PHOTO_ZOOM_STEP 1.25

struct _PhPhotoCanvas
{
  GtkWidget parent_instance;

  PhPhotoPicture *picture; /* owned; null: none */
  PhPhotoClicks ways[PH_PHOTO_WAYS];
  PhPhotoWay way;
  GtkWidget *marks[PH_PHOTO_CLICKS_MOST]; /* children, one a click */
  guint n_marks;
  PhPhotoPlace place;
  gboolean fitted; /* the whole picture, whatever the size of the canvas */

  gboolean loupe; /* is shown, over this point of the picture */
  double loupe_x, loupe_y;

  /* input */
  int held; /* mark under the pointer's button, or −1 */
  gboolean panning;
  double from_x, from_y; /* of the held point [px of the picture] */
  double panned_x, panned_y;
  double pointer_x, pointer_y;
  double pinch; /* factor so far */
};

/* State. */
PhPhotoClicks *ph_photo_canvas_clicks (PhPhotoCanvas *self);
PhPhotoFrame ph_photo_canvas_frame (PhPhotoCanvas *self);
void ph_photo_canvas_set_place (PhPhotoCanvas *self, PhPhotoPlace place);
/** After the clicks were changed: children, names, signal. */
void ph_photo_canvas_clicks_changed (PhPhotoCanvas *self);
void ph_photo_canvas_show_loupe (PhPhotoCanvas *self, double picture_x, double picture_y);
void ph_photo_canvas_hide_loupe (PhPhotoCanvas *self);
/** Screen pixels a pixel of the picture in the loupe. */
double ph_photo_canvas_loupe_scale (PhPhotoCanvas *self);

/** The mark that has the focus, or −1. */
int ph_photo_canvas_focused (PhPhotoCanvas *self);

void ph_photo_canvas_init_input (PhPhotoCanvas *self);

/* The picture with its lines; the loupe, above the marks. */
void ph_photo_canvas_paint (PhPhotoCanvas *self, GtkSnapshot *snapshot);
void ph_photo_canvas_paint_loupe (PhPhotoCanvas *self, GtkSnapshot *snapshot);
