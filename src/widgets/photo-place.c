/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A picture smaller than its frame lies in the middle of it; a larger one leaves no gap.
 */
#include "widgets/photo-place.h"

static double
fit_scale (const PhPhotoFrame *frame)
{
  double scale = MIN (frame->width / frame->picture_width, frame->height / frame->picture_height);
  return MIN (scale, PH_PHOTO_SCALE_MOST);
}

static double
keep (double at, double shown, double room)
{
  return shown <= room ? (room - shown) / 2 : CLAMP (at, room - shown, 0);
}

static PhPhotoPlace
kept (PhPhotoPlace place, const PhPhotoFrame *frame)
{
  place.x = keep (place.x, place.scale * frame->picture_width, frame->width);
  place.y = keep (place.y, place.scale * frame->picture_height, frame->height);
  return place;
}

PhPhotoPlace
ph_photo_place_fit (const PhPhotoFrame *frame)
{
  return kept ((PhPhotoPlace){ fit_scale (frame), 0, 0 }, frame);
}

PhPhotoPlace
ph_photo_place_zoom (const PhPhotoPlace *place, const PhPhotoFrame *frame, double factor, double x,
                     double y)
{
  double scale = CLAMP (place->scale * factor, fit_scale (frame), PH_PHOTO_SCALE_MOST);
  double grown = scale / place->scale;
  return kept ((PhPhotoPlace){ scale, x - (x - place->x) * grown, y - (y - place->y) * grown },
               frame);
}

PhPhotoPlace
ph_photo_place_pan (const PhPhotoPlace *place, const PhPhotoFrame *frame, double dx, double dy)
{
  return kept ((PhPhotoPlace){ place->scale, place->x + dx, place->y + dy }, frame);
}

PhPhotoPlace
ph_photo_place_show (const PhPhotoPlace *place, const PhPhotoFrame *frame, double x, double y,
                     double margin)
{
  double fx, fy, mx = MIN (margin, frame->width / 2), my = MIN (margin, frame->height / 2);
  ph_photo_place_to_frame (place, x, y, &fx, &fy);
  return ph_photo_place_pan (place, frame, CLAMP (fx, mx, frame->width - mx) - fx,
                             CLAMP (fy, my, frame->height - my) - fy);
}

void
ph_photo_place_to_picture (const PhPhotoPlace *place, double x, double y, double *px, double *py)
{
  *px = (x - place->x) / place->scale;
  *py = (y - place->y) / place->scale;
}

void
ph_photo_place_to_frame (const PhPhotoPlace *place, double px, double py, double *x, double *y)
{
  *x = place->x + px * place->scale;
  *y = place->y + py * place->scale;
}
