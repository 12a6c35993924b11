/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lambert's law with two lamps and Blinn's highlight: J. F. Blinn, Models of light reflection for
 * computer synthesized pictures (1977), from memory. The eye is taken far away.
 */
#include "scene/light.h"

float
ph_light_on (const PhCamera *camera, PhPoint normal)
{
  static const PhPoint key = PH_LIGHT_KEY, fill = PH_LIGHT_FILL, shine = PH_LIGHT_SHINE;
  PhPoint seen = ph_point (ph_point_dot (normal, camera->right), ph_point_dot (normal, camera->up),
                           ph_point_dot (normal, camera->toward));
  float light = PH_LIGHT_AMBIENT;
  light += PH_LIGHT_KEY_SHARE * fmaxf (0.0f, ph_point_dot (seen, key));
  light += PH_LIGHT_FILL_SHARE * fmaxf (0.0f, ph_point_dot (seen, fill));
  float glance = fmaxf (0.0f, ph_point_dot (seen, shine));
  return light + PH_LIGHT_SHINE_SHARE * powf (glance, PH_LIGHT_SHINE_POWER);
}
