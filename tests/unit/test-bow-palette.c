/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colours against WCAG 2.1's contrast ratio (w3.org/TR/WCAG21, relative luminance and contrast
 * ratio; known pairs from memory).
 */
#include "widgets/bow-palette.h"

#include "check.h"

static const PhShade black = { 0, 0, 0 }, white = { 1, 1, 1 };

static PhShade
shade (unsigned rgb)
{
  return (PhShade){ (rgb >> 16) / 255.0, (rgb >> 8 & 255) / 255.0, (rgb & 255) / 255.0 };
}

/* Grounds, inks and accents of the toolkit's own light and dark themes. */
static const struct
{
  unsigned ground, ink, accent;
} themes[] = { { 0xffffff, 0x000000, 0x3584e4 },
               { 0xffffff, 0x2e3436, 0x3584e4 },
               { 0x2d2d2d, 0xffffff, 0x15539e },
               { 0x1e1e1e, 0xeeeeec, 0x3584e4 },
               { 0x000000, 0xffffff, 0x0f3b71 } };

static PhPalette
palette_of (size_t i)
{
  return ph_palette_of (shade (themes[i].ground), shade (themes[i].ink), shade (themes[i].accent));
}

static void
contrast_is_that_of_the_standard (void)
{
  CHECK_NEAR (ph_shade_contrast (black, white), 21.0, 1e-9);
  CHECK_NEAR (ph_shade_contrast (white, white), 1.0, 1e-12);
  /* #767676 is the lightest grey that passes 4.5:1 on white: 4.54; #777777 gives 4.48. */
  CHECK_NEAR (ph_shade_contrast (shade (0x767676), white), 4.54, 0.005);
  CHECK_NEAR (ph_shade_contrast (white, shade (0x777777)), 4.48, 0.005);
}

static void
accent_can_be_read_on_every_ground (void)
{
  for (size_t i = 0; i < sizeof themes / sizeof themes[0]; i++)
    {
      PhPalette palette = palette_of (i);
      CHECK (ph_shade_contrast (palette.accent, palette.ground) >= PH_CONTRAST_TEXT - 1e-9,
             "theme %zu", i);
    }
}

static void
a_readable_accent_is_left_alone (void)
{
  PhShade accent = shade (0x1a5fb4);
  PhPalette palette = ph_palette_of (white, black, accent);
  CHECK (palette.accent.red == accent.red && palette.accent.blue == accent.blue);
}

static void
rods_stand_out_from_the_ground_in_every_theme (void)
{
  static const PhRole roles[] = { PH_ROLE_BAR,    PH_ROLE_GRIP,  PH_ROLE_LIMB,  PH_ROLE_SIGHT,
                                  PH_ROLE_DAMPER, PH_ROLE_RISER, PH_ROLE_STRING };
  for (size_t i = 0; i < sizeof themes / sizeof themes[0]; i++)
    {
      PhPalette palette = palette_of (i);
      for (size_t k = 0; k < sizeof roles / sizeof roles[0]; k++)
        {
          double contrast = ph_shade_contrast (palette.role[roles[k]], palette.ground);
          CHECK (contrast >= 1.5, "theme %zu, role %d: %g", i, (int)roles[k], contrast);
        }
    }
}

static void
light_goes_from_black_through_the_colour_toward_white (void)
{
  PhShade grey = { 0.4, 0.4, 0.4 };
  CHECK_NEAR (ph_shade_lit (grey, 0.0).red, 0.0, 1e-12);
  CHECK_NEAR (ph_shade_lit (grey, 0.5).red, 0.2, 1e-12);
  CHECK_NEAR (ph_shade_lit (grey, 1.0).red, 0.4, 1e-12);
  CHECK (ph_shade_lit (grey, 1.3).red > 0.4 && ph_shade_lit (grey, 9.0).red <= 1.0);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (contrast_is_that_of_the_standard);
  CASE (accent_can_be_read_on_every_ground);
  CASE (a_readable_accent_is_left_alone);
  CASE (rods_stand_out_from_the_ground_in_every_theme);
  CASE (light_goes_from_black_through_the_colour_toward_white);
  return check_end ();
}
