/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rig from data/ drawn by the OpenGL renderer without a window: one view, a fixed camera.
 */
#pragma once

#include "render/renderer.h"
#include "tests/render/offscreen.h"
#include "widgets/bow-palette.h"

#define GL_SHEET_WIDTH 480
#define GL_SHEET_HEIGHT 360

typedef struct
{
  PhRig *rig;
  PhCompiled *compiled;
  PhReport *report;
  PhDrawList *list;
} GlRig;

/** Exits with a message where the file cannot be read. */
GlRig gl_rig_load (const char *name);
void gl_rig_free (GlRig *rig);

/** All of the rig seen in that view, fitted. */
PhCamera gl_sheet_camera (const GlRig *rig, PhView view);
PhPalette gl_sheet_palette (bool dark);
PhRenderColours gl_sheet_colours (bool dark);

/** Draws into the bound framebuffer and reads it: red, green, blue over the palette's ground. */
void gl_sheet_draw (const Offscreen *screen, PhRenderer *renderer, const PhRenderView *view,
                    bool dark, bool still, uint8_t *rgb);

/** Solids alone, coarse, in the light theme; `pixel` device pixels to one of the view. */
void gl_sheet_draw_bare (const Offscreen *screen, PhRenderer *renderer, const PhRenderView *view,
                         float pixel, uint8_t *rgb);
