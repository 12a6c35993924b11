/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A multisampled picture that is resolved into the framebuffer that was bound before it. Kept for
 * one size; needs a current OpenGL context.
 */
#pragma once

#include <stdbool.h>

typedef struct
{
  unsigned framebuffer, colour, depth; /* OpenGL's names */
  int width, height;
  int before; /* the framebuffer that was bound */
} PhMultisample;

/** Binds a picture of that size, four samples a pixel, made anew when the size differs. False: the
 * driver has none; nothing is bound. */
bool ph_multisample_begin (PhMultisample *self, int width, int height);
/** Resolves into the framebuffer that was bound and binds that again. */
void ph_multisample_end (PhMultisample *self);
void ph_multisample_free (PhMultisample *self);
