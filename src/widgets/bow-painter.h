/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paints outlines with cairo: lit fills, thin dark edges, an accent about what is selected, dots
 * for what is off, hatching for what is too near the string. No window is needed: pictures for
 * tests and print come from the same code.
 */
#pragma once

#include <cairo.h>

#include "scene/outline.h"
#include "widgets/bow-palette.h"

/** `outlines` must be those of `list`. One unit of `cr` is one logical pixel. */
void ph_bow_paint (cairo_t *cr, const PhPalette *palette, const PhDrawList *list,
                   const PhOutlines *outlines);

/** A second rig as a dashed outline. Solids that fall on those of `shown` are left out. */
void ph_bow_paint_reference (cairo_t *cr, const PhPalette *palette, const PhDrawList *list,
                             const PhOutlines *outlines, const PhOutlines *shown);
