/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A view's marks for the renderer: its lines and its wedge. Texts and the balance mark stay the
 * widget's.
 */
#pragma once

#include "render/renderer.h"
#include "widgets/bow-marks.h"
#include "widgets/bow-palette.h"

G_BEGIN_DECLS

/** Appends to an array of PhFlat; their pixels stay the marks' own. */
void ph_marks_add_flats (const PhMarks *marks, const PhPalette *palette, GArray *flats);

/** Red, green, blue, 0 … 255. */
void ph_shade_bytes (PhShade shade, uint8_t bytes[3]);

/** The palette as the renderer reads it. */
PhRenderColours ph_render_colours_of (const PhPalette *palette);

G_END_DECLS
