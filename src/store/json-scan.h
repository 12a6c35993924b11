/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The strict reading that comes before cJSON's lenient one: RFC 8259 and UTF-8 to the letter.
 * One pass without recursion, so that no nesting can exhaust the stack; linear in the size.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "model/issue.h"

/** Objects and arrays in one another; far below cJSON's own 1,000, far above any rig's 7. */
#define PH_JSON_DEPTH_MOST 200

/** One number as the file has it, in the order in which numbers stand there. */
typedef struct
{
  char *text;
  bool finite; /* false: too large for a double, or a word such as NaN (which is no JSON: the
                  caller refuses it, and can say which key it stands under) */
} PhJsonToken;

typedef struct
{
  char *text; /* the file's text with numbers as cJSON can take them; ends in a NUL */
  size_t size;
  PhJsonToken *tokens;
  size_t n_tokens;
  size_t n_not_finite;
} PhJsonScan;

/** False: not JSON, `issues` has one error with line and column, `*scan` is untouched. */
bool ph_json_scan (const char *bytes, size_t size, PhJsonScan *scan, PhIssues *issues);
void ph_json_scan_clear (PhJsonScan *scan);
