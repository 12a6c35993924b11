/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cameras as three directions and a scale: a few multiplications a point. Perspective is the same
 * with the scale growing toward the eye, so that both agree at the middle of the picture.
 */
#include "scene/camera.h"

#include <assert.h>
#include <cglm/cglm.h>
#include <string.h>

/* Nothing is drawn nearer to the eye of the free view than this share of its distance. */
#define NEAREST_SHARE 0.05f
/* A ray starts this far in front of the middle: beyond any part (positions lie within 3 m, and at
 * most 16 bars of 3 m hang on one another). */
#define RAY_START_MM 60000.0f
/* From straight above or below one would not know which way is up. */
#define ELEVATION_MOST_RAD 1.5f

PhCamera
ph_camera_default (PhView view)
{
  PhCamera camera = { .view = view, .px_per_mm = 1.0f, .distance_mm = 3000.0f };
  ph_camera_update (&camera);
  return camera;
}

static void
plumb_directions (const PhCamera *camera, PhPoint *right, PhPoint *up, PhPoint *toward)
{
  switch (camera->view)
    {
    case PH_VIEW_SIDE:
      *right = ph_point (1.0f, 0.0f, 0.0f);
      *up = ph_point (0.0f, 0.0f, 1.0f);
      break;
    case PH_VIEW_BEHIND:
      *right = ph_point (0.0f, -1.0f, 0.0f);
      *up = ph_point (0.0f, 0.0f, 1.0f);
      break;
    case PH_VIEW_ABOVE:
      *right = ph_point (1.0f, 0.0f, 0.0f);
      *up = ph_point (0.0f, 1.0f, 0.0f);
      break;
    case PH_VIEW_FREE:
      {
        float ca = cosf (camera->azimuth_rad), sa = sinf (camera->azimuth_rad);
        float ce = cosf (camera->elevation_rad), se = sinf (camera->elevation_rad);
        /* From the side the eye stands at −y; going to the left (seen by the archer's own eye from
         * there) it walks toward −x, behind the bow. */
        *right = ph_point (ca, -sa, 0.0f);
        *up = ph_point (sa * se, ca * se, ce);
        break;
      }
    }
  *toward = ph_point_cross (*right, *up);
}

/* Turns a plumb direction back into the frame of the leaning bow: by −lean about the line from nock
 * to grip, (cos β, 0, −sin β). Rodrigues' formula, as cglm has it. */
static PhPoint
into_bow (const PhCamera *camera, PhPoint plumb)
{
  if (camera->lean_rad == 0.0f)
    return plumb;
  vec3 v = { plumb.x, plumb.y, plumb.z };
  vec3 axis = { cosf (camera->slope_rad), 0.0f, -sinf (camera->slope_rad) };
  glm_vec3_rotate (v, -camera->lean_rad, axis);
  return ph_point (v[0], v[1], v[2]);
}

void
ph_camera_update (PhCamera *camera)
{
  PhPoint right, up, toward;
  plumb_directions (camera, &right, &up, &toward);
  camera->right = into_bow (camera, right);
  camera->up = into_bow (camera, up);
  camera->toward = into_bow (camera, toward);
}

PhCamera
ph_camera_plumb (const PhCamera *camera)
{
  PhCamera plumb = *camera;
  plumb.lean_rad = 0.0f;
  ph_camera_update (&plumb);
  return plumb;
}

/* `middle` is plumb; here in the directions that lean with the bow. */
static PhPoint
middle_in_picture (const PhCamera *camera)
{
  PhPoint right, up, toward;
  plumb_directions (camera, &right, &up, &toward);
  return ph_point (ph_point_dot (camera->middle, right), ph_point_dot (camera->middle, up),
                   ph_point_dot (camera->middle, toward));
}

/* Pixels per mm at that height above the picture's middle plane. */
static float
scale_at (const PhCamera *camera, float height_mm)
{
  if (camera->view != PH_VIEW_FREE)
    return camera->px_per_mm;
  float far = fmaxf (camera->distance_mm - height_mm, NEAREST_SHARE * camera->distance_mm);
  return camera->px_per_mm * camera->distance_mm / far;
}

PhPixel
ph_camera_project (const PhCamera *camera, PhPoint point, float *depth_mm)
{
  PhPoint middle = middle_in_picture (camera);
  float x = ph_point_dot (point, camera->right) - middle.x;
  float y = ph_point_dot (point, camera->up) - middle.y;
  float height = ph_point_dot (point, camera->toward) - middle.z;
  float scale = scale_at (camera, height);
  if (depth_mm)
    *depth_mm = height;
  return (PhPixel){ camera->width_px / 2.0f + scale * x, camera->height_px / 2.0f - scale * y };
}

PhPoint
ph_camera_unproject (const PhCamera *camera, PhPixel pixel, float depth_mm)
{
  PhPoint middle = middle_in_picture (camera);
  float scale = scale_at (camera, depth_mm);
  float x = (pixel.x - camera->width_px / 2.0f) / scale + middle.x;
  float y = (camera->height_px / 2.0f - pixel.y) / scale + middle.y;
  PhPoint point = ph_point_scale (camera->right, x);
  point = ph_point_add_scaled (point, camera->up, y);
  return ph_point_add_scaled (point, camera->toward, depth_mm + middle.z);
}

static PhPoint
eye_of (const PhCamera *camera)
{
  PhPixel centre = { camera->width_px / 2.0f, camera->height_px / 2.0f };
  PhPoint middle = ph_camera_unproject (camera, centre, 0.0f);
  return ph_point_add_scaled (middle, camera->toward, camera->distance_mm);
}

void
ph_camera_ray (const PhCamera *camera, PhPixel pixel, PhPoint *from, PhPoint *way)
{
  if (camera->view == PH_VIEW_FREE)
    {
      *from = eye_of (camera);
      *way = ph_point_unit (ph_point_sub (ph_camera_unproject (camera, pixel, 0.0f), *from));
      return;
    }
  *from = ph_camera_unproject (camera, pixel, RAY_START_MM);
  *way = ph_point_scale (camera->toward, -1.0f);
}

PhPoint
ph_camera_toward (const PhCamera *camera, PhPoint point)
{
  if (camera->view != PH_VIEW_FREE)
    return camera->toward;
  return ph_point_unit (ph_point_sub (eye_of (camera), point));
}

void
ph_camera_pan (PhCamera *camera, float dx_px, float dy_px)
{
  PhCamera plumb = ph_camera_plumb (camera);
  camera->middle = ph_point_add_scaled (camera->middle, plumb.right, -dx_px / camera->px_per_mm);
  camera->middle = ph_point_add_scaled (camera->middle, plumb.up, dy_px / camera->px_per_mm);
}

void
ph_camera_zoom (PhCamera *camera, float factor, PhPixel pixel)
{
  assert (factor > 0.0f);
  float x = pixel.x - camera->width_px / 2.0f, y = pixel.y - camera->height_px / 2.0f;
  camera->px_per_mm *= factor;
  ph_camera_pan (camera, x * (1.0f - factor), y * (1.0f - factor));
}

void
ph_camera_orbit (PhCamera *camera, float dx_rad, float dy_rad)
{
  assert (camera->view == PH_VIEW_FREE);
  float elevation = camera->elevation_rad + dy_rad;
  camera->elevation_rad = fmaxf (-ELEVATION_MOST_RAD, fminf (elevation, ELEVATION_MOST_RAD));
  camera->azimuth_rad = remainderf (camera->azimuth_rad + dx_rad, 2.0f * (float)GLM_PI);
  ph_camera_update (camera);
}

/* Free view: the nearest that is seen. */
static float
near_mm (const PhCamera *camera, float radius_mm)
{
  return fmaxf (camera->distance_mm - radius_mm, NEAREST_SHARE * camera->distance_mm);
}

float
ph_camera_clip_depth (const PhCamera *camera, float radius_mm, float toward_mm)
{
  if (camera->view != PH_VIEW_FREE)
    return toward_mm / radius_mm;
  float near = near_mm (camera, radius_mm), far = camera->distance_mm + radius_mm;
  float square = camera->distance_mm * camera->distance_mm;
  return toward_mm * 2.0f * far * near / ((far - near) * square);
}

void
ph_camera_matrix (const PhCamera *camera, float radius_mm, float matrix[16])
{
  PhPoint middle = middle_in_picture (camera);
  mat4 view = GLM_MAT4_IDENTITY_INIT, projection, all;
  const PhPoint rows[3] = { camera->right, camera->up, camera->toward };
  const float away[3] = { middle.x, middle.y, middle.z };
  bool free_view = camera->view == PH_VIEW_FREE;
  for (int i = 0; i < 3; i++)
    {
      view[0][i] = rows[i].x;
      view[1][i] = rows[i].y;
      view[2][i] = rows[i].z;
      view[3][i] = -away[i] - (free_view && i == 2 ? camera->distance_mm : 0.0f);
    }
  float half_w = camera->width_px / 2.0f / camera->px_per_mm;
  float half_h = camera->height_px / 2.0f / camera->px_per_mm;
  if (free_view)
    {
      float near = near_mm (camera, radius_mm);
      float k = near / camera->distance_mm;
      glm_frustum_rh_no (-half_w * k, half_w * k, -half_h * k, half_h * k, near,
                         camera->distance_mm + radius_mm, projection);
    }
  else
    glm_ortho_rh_no (-half_w, half_w, -half_h, half_h, -radius_mm, radius_mm, projection);
  glm_mat4_mul (projection, view, all);
  memcpy (matrix, all, sizeof all);
}

float
ph_lean_drawn (double cant_rad, double factor, bool *stopped)
{
  double lean = isnan (cant_rad) ? 0.0 : cant_rad * factor;
  bool over = fabs (lean) > (double)PH_LEAN_DRAWN_MOST_RAD;
  if (stopped)
    *stopped = over;
  if (over)
    return lean > 0 ? PH_LEAN_DRAWN_MOST_RAD : -PH_LEAN_DRAWN_MOST_RAD;
  return (float)lean;
}
