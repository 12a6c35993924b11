/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From a tree of JSON to plain structs by the table of fields, with every complaint naming where
 * it arose and what would be right. Nothing stops at the first error. A value that cannot be read
 * leaves the struct as it was.
 */
#pragma once

#include <stdint.h>

#include "model/fields.h"
#include "model/issue.h"
#include "store/json.h"

/** Longest key, in characters. */
#define PH_KEY_MOST 1000

/** Where in a file a value stands. */
typedef struct
{
  const PhJson *json;
  PhIssues *issues;
  PhWhere where;
  const char *part;   /* PH_WHERE_PART: its id or "#N" */
  const char *inside; /* what stands before the key: "hand.bubble_tests[0]."; null: nothing */
} PhPlace;

/** Adds an error about a key of this place; a null key means the place itself. */
void ph_place_error (const PhPlace *place, const char *key, const char *format, ...)
    __attribute__ ((format (printf, 3, 4)));

/** The place of what stands inside a key: `index` counts from 0, −1: the key is no list.
 * `*inside` is a new string that the answer borrows. */
PhPlace ph_place_inside (const PhPlace *place, const char *key, int index, char **inside);

/** The value of a key, the first where it stands twice; null where it is absent. */
PhJsonNode *ph_read_key (const PhJsonNode *object, const char *key);
/** The entries of an array or object in order. */
PhJsonNode *ph_read_first (const PhJsonNode *node);
PhJsonNode *ph_read_next (const PhJsonNode *node);
size_t ph_read_count (const PhJsonNode *node);
/** The key of an object's entry. Borrowed. */
const char *ph_read_name (const PhJsonNode *node);
/** Whether it is an array; no error where it is not. */
bool ph_read_looks_like_array (const PhJsonNode *node);

/** Whether a value is an object or an array, else an error about `key`. An object's repeated keys
 * are errors, but it is read all the same. */
bool ph_read_is_object (const PhPlace *place, const char *key, const PhJsonNode *node);
bool ph_read_is_array (const PhPlace *place, const char *key, const PhJsonNode *node);

/** Single values; false after adding an error. A text is borrowed. */
bool ph_read_number (const PhPlace *place, const char *key, const PhJsonNode *node, double *value);
bool ph_read_text (const PhPlace *place, const char *key, const PhJsonNode *node,
                   const char **text);
/** An array of exactly `n` numbers. */
bool ph_read_numbers (const PhPlace *place, const char *key, const PhJsonNode *node, double *values,
                      size_t n);

/** One field of the object `node` into a struct. False: not there, or not readable; the second is
 * an error, the first only where the field is a word and `required` by any kind. */
bool ph_read_field (const PhPlace *place, const PhField *field, const PhJsonNode *node,
                    void *target);

/** All fields of the object that the kinds of `kinds` know (PH_OBJECT_PART; else pass ~0u) into a
 * struct, and their bits into `*given`. What is missing and what is out of its range is left to
 * ph_check_rig, but for a missing word (an enum has no value for "none"). */
void ph_read_fields (const PhPlace *place, PhObject object, unsigned kinds, const PhJsonNode *node,
                     void *target, uint64_t *given);

/** A new copy of a text if the key stands there; null where it does not. */
char *ph_read_optional_text (const PhPlace *place, const PhJsonNode *object, const char *key);

/** Keeps what neither the fields of `object` for `kinds` nor the null-terminated list `also`
 * know. `fields` false: only the list counts. The notes about them, and keys of theirs that are
 * too long, are ph_check_rig's. Takes the numbers out of these values: read them no more. */
void ph_read_extras (const PhPlace *place, PhJsonNode *node, bool fields, PhObject object,
                     unsigned kinds, const char *const *also, PhExtras *extras);
