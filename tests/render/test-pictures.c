/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What must be true of every picture: it is not empty, nothing touches the sheet's rim, the accent
 * appears only where something is selected, off and near look different from fitted. Needs no
 * display. On a failure the picture is written beside the program.
 */
#include <stdlib.h>

#include "check.h"
#include "math/root.h"
#include "tests/render/sheet.h"

static const char *const names[] = { "demo",        "barebow", "heavy-front",
                                     "left-handed", "recurve", "v-bars" };
#define NAMES (sizeof names / sizeof names[0])

typedef struct
{
  cairo_surface_t *surface;
  unsigned colours[3];
  int width, height, stride;
  const unsigned char *data;
} Picture;

static Picture
paint (const char *name, bool dark, const char *select, int width, int height)
{
  static char path[512];
  snprintf (path, sizeof path, "%s/%s.rig.json", DATA_DIR, name);
  PhSheet sheet = ph_sheet_default (path);
  sheet.dark = dark;
  sheet.select = select;
  sheet.width = width;
  sheet.height = height;
  Picture picture = { .surface = ph_sheet_paint (&sheet), .width = width, .height = height };
  CHECK (picture.surface != NULL, "%s", name);
  if (!picture.surface)
    exit (check_end () | EXIT_FAILURE);
  ph_sheet_colours (dark, picture.colours);
  cairo_surface_flush (picture.surface);
  picture.data = cairo_image_surface_get_data (picture.surface);
  picture.stride = cairo_image_surface_get_stride (picture.surface);
  return picture;
}

static unsigned
pixel (const Picture *picture, int x, int y)
{
  const unsigned char *row = picture->data + (size_t)y * (size_t)picture->stride;
  unsigned value;
  memcpy (&value, row + 4 * x, sizeof value);
  return value & 0xffffffU;
}

/* How far from grey: the neutrals of both themes stay below. */
static int
colourfulness (unsigned rgb)
{
  int r = (int)(rgb >> 16), g = (int)(rgb >> 8 & 255), b = (int)(rgb & 255);
  int most = r > g ? r : g, least = r < g ? r : g;
  most = most > b ? most : b;
  least = least < b ? least : b;
  return most - least;
}

static long
count_colourful (const Picture *picture)
{
  long n = 0;
  for (int y = 0; y < picture->height; y++)
    for (int x = 0; x < picture->width; x++)
      n += colourfulness (pixel (picture, x, y)) > 60;
  return n;
}

static long
count_drawn (const Picture *picture)
{
  long n = 0;
  for (int y = 0; y < picture->height; y++)
    for (int x = 0; x < picture->width; x++)
      n += pixel (picture, x, y) != picture->colours[0];
  return n;
}

static void
every_rig_gives_a_picture_in_both_themes (void)
{
  for (size_t i = 0; i < NAMES; i++)
    for (int dark = 0; dark < 2; dark++)
      {
        Picture picture = paint (names[i], dark, NULL, 1200, 760);
        double share = (double)count_drawn (&picture) / (1200.0 * 760.0);
        /* A bow with bars covers some hundredths of a sheet: neither nothing nor a blot. */
        CHECK (share > 0.02 && share < 0.25, "%s %d: %g", names[i], dark, share);
        cairo_surface_destroy (picture.surface);
      }
}

static void
nothing_reaches_the_rim (void)
{
  for (size_t i = 0; i < NAMES; i++)
    {
      Picture picture = paint (names[i], false, NULL, 900, 560);
      for (int x = 0; x < 900; x++)
        {
          /* The line between two views runs from rim to rim. */
          if (pixel (&picture, x, 1) == 0x808080)
            continue;
          CHECK (pixel (&picture, x, 0) == picture.colours[0], "%s: top, x %d", names[i], x);
          CHECK (pixel (&picture, x, 559) == picture.colours[0] || x == 0, "%s: bottom, x %d",
                 names[i], x);
        }
      for (int y = 0; y < 560; y++)
        if (pixel (&picture, 1, y) != 0x808080)
          CHECK (pixel (&picture, 0, y) == picture.colours[0]
                     && pixel (&picture, 899, y) == picture.colours[0],
                 "%s: y %d", names[i], y);
      cairo_surface_destroy (picture.surface);
    }
}

static void
the_accent_is_only_for_what_is_selected (void)
{
  for (int dark = 0; dark < 2; dark++)
    {
      Picture none = paint ("demo", dark, NULL, 1000, 640);
      Picture bar = paint ("demo", dark, "back-bar", 1000, 640);
      CHECK (count_colourful (&none) == 0, "%ld pixels in colour", count_colourful (&none));
      CHECK (count_colourful (&bar) > 300, "%ld", count_colourful (&bar));
      cairo_surface_destroy (none.surface);
      cairo_surface_destroy (bar.surface);
    }
}

static void
the_same_rig_gives_the_same_picture (void)
{
  Picture a = paint ("v-bars", false, "bow", 800, 500);
  Picture b = paint ("v-bars", false, "bow", 800, 500);
  CHECK (memcmp (a.data, b.data, (size_t)a.stride * 500) == 0);
  cairo_surface_destroy (a.surface);
  cairo_surface_destroy (b.surface);
}

static void
small_and_large_sheets_are_painted (void)
{
  static const int sizes[][2] = { { 300, 180 }, { 600, 320 }, { 2400, 1500 } };
  for (size_t i = 0; i < 3; i++)
    {
      Picture picture = paint ("heavy-front", true, "back-stack", sizes[i][0], sizes[i][1]);
      CHECK (count_drawn (&picture) > 500);
      cairo_surface_destroy (picture.surface);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (every_rig_gives_a_picture_in_both_themes);
  CASE (nothing_reaches_the_rim);
  CASE (the_accent_is_only_for_what_is_selected);
  CASE (the_same_rig_gives_the_same_picture);
  CASE (small_and_large_sheets_are_painted);
  return check_end ();
}
