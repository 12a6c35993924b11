/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the rig file's keys are called in a sentence.
 */
#pragma once

#include <glib.h>

#include "model/fields.h"

G_BEGIN_DECLS

/** "length", "draw length", "mass of one": translated, as inside a sentence; null for a key that
 * is said by direction alone (angles, positions) or not at all. */
const char *ph_field_word_of (PhObject object, const char *key);

G_END_DECLS
