/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cairo's RGB24 keeps a pixel as a native 32-bit word.
 */
#include "tests/render/png-file.h"

#include <cairo.h>
#include <string.h>

bool
png_file_write (const char *path, const uint8_t *rgb, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  unsigned char *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        const uint8_t *from = rgb + 3 * ((size_t)y * (size_t)width + (size_t)x);
        uint32_t word = (uint32_t)from[0] << 16 | (uint32_t)from[1] << 8 | from[2];
        memcpy (data + (size_t)y * (size_t)stride + 4 * (size_t)x, &word, sizeof word);
      }
  cairo_surface_mark_dirty (surface);
  bool good = cairo_surface_write_to_png (surface, path) == CAIRO_STATUS_SUCCESS;
  cairo_surface_destroy (surface);
  return good;
}

bool
png_file_read (const char *path, uint8_t *rgb, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create_from_png (path);
  bool good = cairo_surface_status (surface) == CAIRO_STATUS_SUCCESS
              && cairo_image_surface_get_width (surface) == width
              && cairo_image_surface_get_height (surface) == height;
  const unsigned char *data = good ? cairo_image_surface_get_data (surface) : NULL;
  int stride = good ? cairo_image_surface_get_stride (surface) : 0;
  for (int y = 0; good && y < height; y++)
    for (int x = 0; x < width; x++)
      {
        uint32_t word;
        uint8_t *to = rgb + 3 * ((size_t)y * (size_t)width + (size_t)x);
        memcpy (&word, data + (size_t)y * (size_t)stride + 4 * (size_t)x, sizeof word);
        to[0] = (uint8_t)(word >> 16);
        to[1] = (uint8_t)(word >> 8);
        to[2] = (uint8_t)word;
      }
  cairo_surface_destroy (surface);
  return good;
}
