/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Neutrals: each kind of thing is a step between the darker and the lighter of ground and ink.
 */
#include "widgets/bow-palette.h"

#include <math.h>

typedef struct
{
  double on_light, on_dark; /* 0 the darker of the two, 1 the lighter */
} Tone;

static const Tone tones[PH_ROLES] = {
  [PH_ROLE_RISER] = { 0.46, 0.56 },   [PH_ROLE_LIMB] = { 0.24, 0.50 },
  [PH_ROLE_CAM] = { 0.66, 0.70 },     [PH_ROLE_STRING] = { 0.16, 0.86 },
  [PH_ROLE_CABLE] = { 0.36, 0.66 },   [PH_ROLE_GRIP] = { 0.15, 0.30 },
  [PH_ROLE_BAR] = { 0.13, 0.44 },     [PH_ROLE_FITTING] = { 0.68, 0.74 },
  [PH_ROLE_WEIGHT] = { 0.80, 0.84 },  [PH_ROLE_DAMPER] = { 0.20, 0.47 },
  [PH_ROLE_BRACKET] = { 0.54, 0.62 }, [PH_ROLE_SIGHT] = { 0.27, 0.50 },
  [PH_ROLE_BOSS] = { 0.44, 0.54 },    [PH_ROLE_ARROW] = { 0.40, 0.62 },
  [PH_ROLE_HAND] = { 0.88, 0.20 },
};

PhShade
ph_shade_mix (PhShade a, PhShade b, double t)
{
  return (PhShade){ a.red + (b.red - a.red) * t, a.green + (b.green - a.green) * t,
                    a.blue + (b.blue - a.blue) * t };
}

double
ph_shade_brightness (PhShade shade)
{
  return 0.2126 * shade.red + 0.7152 * shade.green + 0.0722 * shade.blue;
}

/* WCAG 2.1, definition of relative luminance. */
static double
linear (double channel)
{
  return channel <= 0.04045 ? channel / 12.92 : pow ((channel + 0.055) / 1.055, 2.4);
}

double
ph_shade_contrast (PhShade a, PhShade b)
{
  PhShade la = { linear (a.red), linear (a.green), linear (a.blue) };
  PhShade lb = { linear (b.red), linear (b.green), linear (b.blue) };
  double x = ph_shade_brightness (la), y = ph_shade_brightness (lb);
  return (fmax (x, y) + 0.05) / (fmin (x, y) + 0.05);
}

static PhShade
readable (PhShade accent, PhShade ground, PhShade ink)
{
  PhShade shade = accent;
  for (int i = 1; i <= 20 && ph_shade_contrast (shade, ground) < PH_CONTRAST_TEXT; i++)
    shade = ph_shade_mix (accent, ink, i / 20.0);
  return shade;
}

PhShade
ph_shade_lit (PhShade shade, double light)
{
  static const PhShade black = { 0, 0, 0 }, white = { 1, 1, 1 };
  if (light <= 1.0)
    return ph_shade_mix (black, shade, fmax (light, 0.0));
  /* Most of what is over goes toward white: a highlight, never a burnt patch. */
  return ph_shade_mix (shade, white, fmin (1.0, 0.75 * (light - 1.0)));
}

PhPalette
ph_palette_of (PhShade ground, PhShade ink, PhShade accent)
{
  static const PhShade black = { 0, 0, 0 };
  bool dark = ph_shade_brightness (ground) < ph_shade_brightness (ink);
  PhShade low = dark ? ground : ink, high = dark ? ink : ground;
  PhPalette palette = { .ground = ground, .ink = ink };
  palette.accent = readable (accent, ground, ink);
  palette.edge = ph_shade_mix (low, black, dark ? 0.75 : 0.35);
  for (int i = 0; i < PH_ROLES; i++)
    palette.role[i] = ph_shade_mix (low, high, dark ? tones[i].on_dark : tones[i].on_light);
  return palette;
}
