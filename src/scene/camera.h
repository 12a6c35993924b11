/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Where the eye stands. Three flat views (orthographic, so that lengths compare) and a free one in
 * perspective. Left and right are the archer's: from the side the target is on the right, from
 * behind the archer's left is on the left, from above it is up.
 *
 * The bow may be drawn leaning: turned about the line through nock and grip. Points are given in
 * the bow frame and lean with it; what stays plumb (the plumb line, the view's own axes) is asked
 * of the same camera without its lean. Pixels are a widget's logical ones, y down.
 */
#pragma once

#include <stdbool.h>

#include "scene/point.h"

typedef enum
{
  PH_VIEW_SIDE,
  PH_VIEW_BEHIND,
  PH_VIEW_ABOVE,
  PH_VIEW_FREE
} PhView;

typedef struct
{
  float x, y;
} PhPixel;

typedef struct
{
  PhView view;
  float width_px, height_px;
  float px_per_mm;     /* of all the picture; in perspective at the distance of `middle` */
  PhPoint middle;      /* the plumb point that stands in the picture's middle [mm] */
  float lean_rad;      /* as drawn; positive tips the top limb to the archer's right */
  float slope_rad;     /* β: the nock stands above the grip by tan β of the draw length */
  float azimuth_rad;   /* free view: 0 as from the side, a quarter turn as from behind */
  float elevation_rad; /* free view: positive from above */
  float distance_mm;   /* free view: from eye to `middle`, above 0 */

  /* Worked out by ph_camera_update: the picture's right, up and toward the eye, as directions of
   * the bow frame (leaning with it). */
  PhPoint right, up, toward;
} PhCamera;

/** A camera of that view, 1 px/mm, the grip in the middle of a picture of size 0. */
PhCamera ph_camera_default (PhView view);

/** Works out the directions: after every change of view, lean, slope, azimuth or elevation. */
void ph_camera_update (PhCamera *camera);

/** The same camera for what stays plumb. */
PhCamera ph_camera_plumb (const PhCamera *camera);

/** Pixel of a point; `*depth_mm`, where given, grows toward the eye. */
PhPixel ph_camera_project (const PhCamera *camera, PhPoint point, float *depth_mm);

/** The point under a pixel at that depth: undoes ph_camera_project. */
PhPoint ph_camera_unproject (const PhCamera *camera, PhPixel pixel, float depth_mm);

/** The ray of sight through a pixel: from a point in front of all that is drawn, unit `*way` away
 * from the eye; bow frame. */
void ph_camera_ray (const PhCamera *camera, PhPixel pixel, PhPoint *from, PhPoint *way);

/** Direction from a point of the bow to the eye (the same everywhere but in perspective). */
PhPoint ph_camera_toward (const PhCamera *camera, PhPoint point);

/** Moves what is under a pixel by so many pixels. */
void ph_camera_pan (PhCamera *camera, float dx_px, float dy_px);
/** Changes the scale; what is under `pixel` stays there. */
void ph_camera_zoom (PhCamera *camera, float factor, PhPixel pixel);

/** Free view: walks about the middle, as if what is shown were turned by the hand: positive
 * `dx_rad` turns its near side to the right, positive `dy_rad` down. Stops above and below. */
void ph_camera_orbit (PhCamera *camera, float dx_rad, float dy_rad);

/** For the renderer: bow frame in mm to clip coordinates, column-major, OpenGL's −1…1 depth, all of
 * a sphere of that radius about `middle` inside the depth range. */
void ph_camera_matrix (const PhCamera *camera, float radius_mm, float matrix[16]);

/** How much nearer to the eye in that matrix's clip space (over w) so many mm are; in perspective at
 * the picture's middle. */
float ph_camera_clip_depth (const PhCamera *camera, float radius_mm, float toward_mm);

/** A drawn lean ends here. */
#define PH_LEAN_DRAWN_MOST_RAD 0.5235987755982988f

/** The lean as drawn: factor times the cant, stopped at 30° either way; `*stopped`, where given,
 * says so. A cant that is NAN is drawn plumb. */
float ph_lean_drawn (double cant_rad, double factor, bool *stopped);
