/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The light of every view: a soft key from the upper left behind the eye, a fill from the right, a
 * little everywhere, and a narrow highlight that lets black rods be read. Directions are the
 * picture's own (right, up, toward the eye). A painter on paper and the renderer share these.
 */
#pragma once

#include "scene/camera.h"

/** Unit directions to the lights, and the half-way direction of the key's highlight. */
#define PH_LIGHT_KEY                                                                               \
  {                                                                                                \
    -0.4472f, 0.6455f, 0.6190f                                                                     \
  }
#define PH_LIGHT_FILL                                                                              \
  {                                                                                                \
    0.7001f, -0.1000f, 0.7071f                                                                     \
  }
#define PH_LIGHT_SHINE                                                                             \
  {                                                                                                \
    -0.2485f, 0.3587f, 0.8998f                                                                     \
  }
#define PH_LIGHT_AMBIENT 0.34f
#define PH_LIGHT_KEY_SHARE 0.62f
#define PH_LIGHT_FILL_SHARE 0.16f
#define PH_LIGHT_SHINE_SHARE 0.42f
#define PH_LIGHT_SHINE_POWER 20.0f

/** How brightly a surface of that unit normal (bow frame) is seen: 1 shows its own colour, less is
 * darker, more (up to about 1.5) toward white. */
float ph_light_on (const PhCamera *camera, PhPoint normal);
