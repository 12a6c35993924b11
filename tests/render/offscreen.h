/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An OpenGL context without a window (EGL, surfaceless) and a framebuffer to draw into.
 */
#pragma once

#include <stdbool.h>
#include <stdint.h>

typedef struct
{
  void *display, *context;
  unsigned framebuffer, colour, depth;
  int width, height;
} Offscreen;

/** GL 3.3 core, or ES 3.0. False where the machine has neither: `why` says what failed. */
bool offscreen_open (Offscreen *self, bool es, int width, int height, const char **why);
/** Reads the picture: premultiplied red, green, blue, alpha; top row first. */
void offscreen_read (const Offscreen *self, uint8_t *rgba);
void offscreen_close (Offscreen *self);
