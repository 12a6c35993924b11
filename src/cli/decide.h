/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the commands that propose changes share: a change as JSON and in words, values in cells.
 */
#pragma once

#include "base/quantity.h"
#include "model/answer.h"
#include "store/json.h"

#define PH_CELL 64

/** {"part", "key", "from", "to"} appended to `list`. */
void ph_decide_append_change (PhJsonNode *list, const PhRig *rig, const PhPartChange *change);

/** "Back bar sideways 20° → 26°", "Back stack weights 5 → 6", "Side mount to the other side". New
 * string. */
char *ph_decide_change_words (const PhRig *rig, const PhPartChange *change);
/** What a key is called: "sideways", "up and down", "weights". */
const char *ph_decide_key_words (const char *key);

/** A value in the file's unit as text, "–" where there is none. Returns `cell`, or that. */
const char *ph_decide_show (PhQuantity quantity, PhUnits units, double file_value,
                            char cell[PH_CELL]);
/** The same with a sign before it, for a difference, and with one digit more than usual. */
const char *ph_decide_show_change (PhQuantity quantity, PhUnits units, double file_value,
                                   char cell[PH_CELL]);

/** "+1.2" or "-0.5" with so many digits; never "-0.0". Returns `cell`. */
const char *ph_decide_show_signed (double value, int digits, char cell[PH_CELL]);

/** Prints the tree as JSON and frees it. */
void ph_decide_print_json (PhJsonNode *root);
