/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From plain structs back to a tree of JSON, by the same table of fields that reads them.
 */
#pragma once

#include <stdint.h>

#include "model/fields.h"
#include "store/json.h"

/** Adds every field that the kinds of `kinds` know and that stood in the file, has no default, or
 * differs from its default. */
void ph_write_fields (PhObject object, unsigned kinds, const void *owner, uint64_t given,
                      PhJsonNode *node);
/** Adds what was kept of unknown keys. */
void ph_write_extras (const PhExtras *extras, PhJsonNode *node);
