/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers that tell solids apart by their geometry alone: FNV-1a (Fowler, Noll, Vo; its constants
 * from memory) over the floats.
 */
#pragma once

#include <stdint.h>

#include "scene/drawlist.h"

#define PH_PRINT_START 14695981039346656037ULL

uint64_t ph_print_bytes (uint64_t print, const void *bytes, size_t n);

/** Of a solid's kind and geometry, to the bit. */
uint64_t ph_solid_print (const PhDrawList *list, const PhItem *item);

/** Whether `other` holds a solid of the same geometry at about the place `near`. */
bool ph_solid_is_in (const PhDrawList *list, const PhItem *item, const PhDrawList *other,
                     size_t near);
