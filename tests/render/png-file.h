/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pictures of three bytes a pixel as PNG files, through cairo.
 */
#pragma once

#include <stdbool.h>
#include <stdint.h>

bool png_file_write (const char *path, const uint8_t *rgb, int width, int height);
/** False where there is none of that size. */
bool png_file_read (const char *path, uint8_t *rgb, int width, int height);
