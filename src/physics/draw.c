/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The line from nock to grip.
 */
#include "physics/draw.h"

PhVec3
ph_draw_nock (const PhDraw *draw)
{
  return ph_vec3 (-draw->draw_length_m, 0, draw->nock_height_m);
}

double
ph_draw_cos_beta (const PhDraw *draw)
{
  return draw->draw_length_m / hypot (draw->draw_length_m, draw->nock_height_m);
}

double
ph_draw_height_above_line (const PhDraw *draw, PhVec3 point_m)
{
  double length = hypot (draw->draw_length_m, draw->nock_height_m);
  return (point_m.x * draw->nock_height_m + point_m.z * draw->draw_length_m) / length;
}
