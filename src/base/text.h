/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain C strings for the floors that know no GLib. Whoever receives a `char *` owns it and
 * frees it with free (). Running out of memory ends the program: nothing this small can be
 * served without it.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

/** A copy of text; null stays null. */
char *ph_text_dup (const char *text);

/** printf into a new string. Never null. Numbers follow the current C locale. */
char *ph_text_printf (const char *format, ...) __attribute__ ((format (printf, 1, 2)));

/** Whether both are null, or both the same bytes. */
bool ph_text_equal (const char *a, const char *b);

/** Whether the `size` bytes are well-formed UTF-8 (RFC 3629: no surrogates, nothing overlong,
 * nothing over U+10FFFF). On false `*bad_at`, where given, is the offset of the first bad byte. */
bool ph_text_is_utf8 (const char *bytes, size_t size, size_t *bad_at);

/** Number of characters (code points) of a well-formed UTF-8 string. */
size_t ph_text_length (const char *text);

/** A copy of at most `most` characters; a longer text ends in "…" within that count. Control
 * characters become spaces, so that a message stays on its line. */
char *ph_text_cut (const char *text, size_t most);

/** malloc, calloc, realloc that end the program instead of returning null. */
void *ph_alloc (size_t size);
void *ph_alloc_zeroed (size_t count, size_t size);
void *ph_realloc (void *block, size_t size);
