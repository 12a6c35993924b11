/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain C strings and memory that never fails.
 */
#include "base/text.h"

#include <assert.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void *
given (void *block)
{
  if (!block)
    {
      fputs ("out of memory\n", stderr);
      abort ();
    }
  return block;
}

void *
ph_alloc (size_t size)
{
  return given (malloc (size ? size : 1));
}

void *
ph_alloc_zeroed (size_t count, size_t size)
{
  return given (calloc (count ? count : 1, size ? size : 1));
}

void *
ph_realloc (void *block, size_t size)
{
  return given (realloc (block, size ? size : 1));
}

char *
ph_text_dup (const char *text)
{
  if (!text)
    return NULL;
  size_t size = strlen (text) + 1;
  return memcpy (ph_alloc (size), text, size);
}

char *
ph_text_printf (const char *format, ...)
{
  assert (format);
  va_list arguments, again;
  va_start (arguments, format);
  va_copy (again, arguments);
  int length = vsnprintf (NULL, 0, format, arguments);
  va_end (arguments);
  assert (length >= 0);
  size_t size = (size_t)length + 1;
  char *text = ph_alloc (size);
  vsnprintf (text, size, format, again);
  va_end (again);
  return text;
}

bool
ph_text_equal (const char *a, const char *b)
{
  return a == b || (a && b && strcmp (a, b) == 0);
}

/* Length of the well-formed sequence at the start of `size` > 0 bytes, 0 where there is none.
   The narrowed range of the second byte shuts out overlong forms, surrogates and what lies over
   U+10FFFF (The Unicode Standard, table 3-7). */
static size_t
sequence_length (const unsigned char *bytes, size_t size)
{
  unsigned char first = bytes[0], least = 0x80, most = 0xbf;
  size_t length;
  if (first < 0x80)
    return 1;
  if (first >= 0xc2 && first <= 0xdf)
    length = 2;
  else if (first >= 0xe0 && first <= 0xef)
    length = 3;
  else if (first >= 0xf0 && first <= 0xf4)
    length = 4;
  else
    return 0;
  if (first == 0xe0)
    least = 0xa0;
  else if (first == 0xed)
    most = 0x9f;
  else if (first == 0xf0)
    least = 0x90;
  else if (first == 0xf4)
    most = 0x8f;
  if (size < length || bytes[1] < least || bytes[1] > most)
    return 0;
  for (size_t i = 2; i < length; i++)
    if (bytes[i] < 0x80 || bytes[i] > 0xbf)
      return 0;
  return length;
}

bool
ph_text_is_utf8 (const char *bytes, size_t size, size_t *bad_at)
{
  const unsigned char *u = (const unsigned char *)bytes;
  for (size_t at = 0; at < size;)
    {
      size_t length = sequence_length (u + at, size - at);
      if (!length)
        {
          if (bad_at)
            *bad_at = at;
          return false;
        }
      at += length;
    }
  return true;
}

static bool
starts_character (char byte)
{
  return ((unsigned char)byte & 0xc0) != 0x80;
}

size_t
ph_text_length (const char *text)
{
  size_t count = 0;
  for (; *text; text++)
    count += starts_character (*text);
  return count;
}

/* Turns control characters into spaces: C0, DEL, and C1 (U+0080 to U+009F, two bytes). */
static void
flatten (char *text)
{
  for (unsigned char *u = (unsigned char *)text; *u; u++)
    {
      if (*u < 0x20 || *u == 0x7f)
        *u = ' ';
      else if (u[0] == 0xc2 && u[1] >= 0x80 && u[1] <= 0x9f)
        {
          u[0] = ' ';
          memmove (u + 1, u + 2, strlen ((char *)u + 2) + 1);
        }
    }
}

char *
ph_text_cut (const char *text, size_t most)
{
  static const char ellipsis[] = "…";
  char *cut;
  if (ph_text_length (text) <= most)
    cut = ph_text_dup (text);
  else if (most == 0)
    cut = ph_text_dup ("");
  else
    {
      const char *end = text;
      for (size_t kept = 0; kept < most - 1; kept++)
        do
          end++;
        while (!starts_character (*end));
      size_t size = (size_t)(end - text);
      cut = ph_alloc (size + sizeof ellipsis);
      memcpy (cut, text, size);
      memcpy (cut + size, ellipsis, sizeof ellipsis);
    }
  flatten (cut);
  return cut;
}
