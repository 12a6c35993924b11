/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where a picture lies in the frame that shows it: a scale and an origin, in logical pixels. No
 * toolkit here.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  double scale; /* screen pixels a pixel of the picture */
  double x, y;  /* the picture's upper left corner in the frame [px] */
} PhPhotoPlace;

/** A frame and the picture in it, all above 0. */
typedef struct
{
  double width, height;                 /* frame [px] */
  double picture_width, picture_height; /* picture [px of the picture] */
} PhPhotoFrame;

/** The largest scale that is offered. */
#define PH_PHOTO_SCALE_MOST 16.0

/** The whole picture, in the middle of the frame. */
PhPhotoPlace ph_photo_place_fit (const PhPhotoFrame *frame);
/** `factor` times larger about a point of the frame, no smaller than the whole picture and no
 * larger than PH_PHOTO_SCALE_MOST. */
PhPhotoPlace ph_photo_place_zoom (const PhPhotoPlace *place, const PhPhotoFrame *frame,
                                  double factor, double x, double y);
/** Moved by so many screen pixels, as far as the frame stays filled. */
PhPhotoPlace ph_photo_place_pan (const PhPhotoPlace *place, const PhPhotoFrame *frame, double dx,
                                 double dy);
/** Moved as little as needed until a point of the picture stands `margin` inside the frame. */
PhPhotoPlace ph_photo_place_show (const PhPhotoPlace *place, const PhPhotoFrame *frame, double x,
                                  double y, double margin);

/** From the frame to the picture and back. */
void ph_photo_place_to_picture (const PhPhotoPlace *place, double x, double y, double *px,
                                double *py);
void ph_photo_place_to_frame (const PhPhotoPlace *place, double px, double py, double *x,
                              double *y);

G_END_DECLS
