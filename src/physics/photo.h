/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tilt of a bow read from a photo: either the string against a plumb edge (a door frame, a
 * plumb line), or the bubble against its vial's lines. Points are pixels of the picture, x to the
 * right, y down. Tilts are the file's: positive when the top limb tips to the archer's right, the
 * bubble then runs left.
 *
 * What a camera straight behind and level sees is the bubble's tilt itself: at roll φ about the
 * grip–nock line the bow's plumb direction leans there by atan (cosβ sinφ / (cosφ + sin²β (1 −
 * cosφ))), which differs from asin (cosβ sinφ) by about β²φ⁵/8.
 *
 * Each point has a standard deviation of its own; they are independent, alike in both directions,
 * and carried to the result to first order. That says nothing of perspective or of the lens: hence
 * the least that is claimed.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "physics/refused.h"

/** How well a click hits what it means, on the screen [px]: an assumption of ours. On the picture
 * it is that over the scale of the picture on the screen; see ph_photo_click_sd. */
#define PH_PHOTO_CLICK_SD_PX 1.5
/** No edge of a photo is known better than this [px of the picture]: an assumption of ours. */
#define PH_PHOTO_EDGE_SD_PX 0.5
/** The least standard deviation of a tilt from a photo [rad]: 0.1°, for a lens that bends lines
 * and an edge that is not quite plumb. An assumption of ours. */
#define PH_PHOTO_SD_LEAST_RAD 0.0017453292519943296
/** The least way from the first to the last point of a line [px of the picture]. */
#define PH_PHOTO_LINE_LEAST_PX 40.0
/** Closer than this two points are one [px of the picture]. */
#define PH_PHOTO_APART_PX 1.0
/** The least way between the vial's two lines [px of the picture]. */
#define PH_PHOTO_VIAL_LEAST_PX 8.0
/** A bubble's middle farther from the vial's than this is in no vial [marks]. */
#define PH_PHOTO_MARKS_MOST 3.0
/** A line whose points scatter by more than so many of their own standard deviations is none. */
#define PH_PHOTO_CROOKED_SD 4.0

typedef struct
{
  double x, y;
  double sd_px; /* of each coordinate, above 0 */
} PhPhotoPoint;

/** How well a point is known that was set while the picture was shown at `scale` screen pixels a
 * pixel of the picture (above 0) [px of the picture]. */
double ph_photo_click_sd (double scale);

/** Two or more points of one line. */
typedef struct
{
  const PhPhotoPoint *points;
  size_t n;
} PhPhotoLine;

/** A line through its points: weighted least squares of the distances from it. */
typedef struct
{
  PhRefused refused; /* then the rest is NAN */
  double x, y;       /* a point of it: the points' weighted mean */
  double dx, dy;     /* its direction, of length 1; which of the two ends is not said */
  double sd_rad;     /* of the direction; where the points scatter more than they should, by that */
} PhPhotoFit;

PhPhotoFit ph_photo_fit (const PhPhotoLine *line);

typedef struct
{
  PhRefused refused; /* then tilt and its deviation are NAN */
  double tilt_rad, tilt_sd_rad;
  /* Vial only, else NAN: how far the bubble's middle stands from the vial's, positive when it runs
   * to the archer's left. */
  double marks, marks_sd;
} PhPhotoReading;

/** The string against a plumb edge. The angle is that from the edge to the string the way of the
 * clock, from behind; how the camera was held does not matter, since both turn with it.
 * `mirrored`: taken from the front, or the picture is a mirror's. */
PhPhotoReading ph_photo_read_lines (const PhPhotoLine *string, const PhPhotoLine *edge,
                                    bool mirrored);

/** The bubble in its vial. */
typedef struct
{
  PhPhotoPoint marks[2];  /* on the two lines beside the vial's middle, which are one mark apart */
  PhPhotoPoint bubble[2]; /* the bubble's ends; of both pairs either may come first */
  double rad_per_mark;    /* what a mark is worth; NAN: not known, and then the tilt is NAN */
  double rad_per_mark_sd; /* how well that is known; NAN: not stated, taken as exact */
} PhPhotoVial;

/** `mirrored` as above. */
PhPhotoReading ph_photo_read_vial (const PhPhotoVial *vial, bool mirrored);
