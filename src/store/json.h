/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * JSON for every file of the program and for plumbhold-calc: strict reading through json-scan.h
 * and cJSON, building a tree by hand, and printing it so that every number reads back as the
 * very same double. Callers outside this floor see trees as opaque.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "model/issue.h"

/** A value of a tree: an object, an array or something in one. cJSON's own node. */
typedef struct cJSON PhJsonNode;

/** A parsed document. */
typedef struct PhJson PhJson;

/** Null where the bytes are not strict JSON: `issues` then has one error with line and column.
 * Keys given twice are not looked for here: ph_json_repeated_keys. */
PhJson *ph_json_parse (const char *bytes, size_t size, PhIssues *issues);
void ph_json_free (PhJson *json);
/** Borrowed. */
PhJsonNode *ph_json_root (const PhJson *json);
/** How many numbers of the document are not finite: too large, or the word NaN or Infinity. */
size_t ph_json_not_finite (const PhJson *json);
/** A number as the file has it. Borrowed; `node` must be a number of `json` (asserted). */
const char *ph_json_token (const PhJson *json, const PhJsonNode *node);

/** The keys that stand more than once in this one object (not deeper), each once: their number.
 * `*keys` is a new array of borrowed texts, null where there are none. */
size_t ph_json_repeated_keys (const PhJsonNode *object, const char ***keys);

/** Compact text of a value, its numbers as the file has them. New string. Takes the numbers out
 * of the tree's reach: read them no more. */
char *ph_json_keep (const PhJson *json, PhJsonNode *node);
/** The tree of a text that ph_json_keep made; null where it is not JSON. The caller owns it. */
PhJsonNode *ph_json_kept (const char *text);

/* Building. A node that is added belongs to what it was added to. Numbers that are not finite
 * become null: a report says so for what cannot be computed, and a checked rig has none. */
PhJsonNode *ph_json_new_object (void);
PhJsonNode *ph_json_new_array (void);
PhJsonNode *ph_json_new_numbers (const double *values, size_t n);
void ph_json_node_free (PhJsonNode *node);
void ph_json_add (PhJsonNode *object, const char *key, PhJsonNode *value);
void ph_json_append (PhJsonNode *array, PhJsonNode *value);
PhJsonNode *ph_json_add_object (PhJsonNode *object, const char *key);
PhJsonNode *ph_json_add_array (PhJsonNode *object, const char *key);
void ph_json_add_number (PhJsonNode *object, const char *key, double value);
void ph_json_add_numbers (PhJsonNode *object, const char *key, const double *values, size_t n);
void ph_json_add_flag (PhJsonNode *object, const char *key, bool value);
/** A null text becomes null. */
void ph_json_add_text (PhJsonNode *object, const char *key, const char *text);
void ph_json_append_text (PhJsonNode *array, const char *text);

/** The text of a tree, two blanks a level, what fits into 100 columns on one line, a newline at
 * its end. New string, `*size` (may be null) its length. */
char *ph_json_print (const PhJsonNode *root, size_t *size);
