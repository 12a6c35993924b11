/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Names say sides, and a mirrored part is on the other one. Only whole words are exchanged, each
 * for the other in the same case, so that twice is the very same name: "Left back bar" and "Right
 * back bar", but never "leftover" or "left-hand thread". Ids are no words: they stay.
 */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "base/text.h"
#include "model/check-own.h"
#include "model/mirror-own.h"

static const char *const sides[][2] = {
  { "left", "right" },
  { "Left", "Right" },
  { "LEFT", "RIGHT" },
};
#define SIDES (sizeof sides / sizeof *sides)
#define GROWS_MOST 1 /* "left" to "right" [bytes] */

/* Letters beyond ASCII count as such. */
static bool
is_letter (char c)
{
  return (unsigned char)c >= 0x80 || isalnum ((unsigned char)c);
}

/* What stands for the word of `length` bytes at `word`; null: it stays. */
static const char *
other_side (const char *word, size_t length)
{
  const char *after = word + length;
  if (strncasecmp (after, "-hand", 5) == 0)
    return NULL;
  for (size_t i = 0; i < SIDES; i++)
    for (int k = 0; k < 2; k++)
      if (strlen (sides[i][k]) == length && strncmp (word, sides[i][k], length) == 0)
        return sides[i][1 - k];
  return NULL;
}

char *
ph_mirror_name (const char *name)
{
  size_t size = strlen (name);
  char *mirrored = ph_alloc (size * (1 + GROWS_MOST) + 1), *to = mirrored;
  for (const char *c = name; *c;)
    {
      size_t length = 0;
      while (is_letter (c[length]))
        length++;
      const char *other = length ? other_side (c, length) : NULL;
      size_t taken = length ? length : 1;
      const char *text = other ? other : c;
      size_t n = other ? strlen (other) : taken;
      memcpy (to, text, n);
      to += n;
      c += taken;
    }
  *to = '\0';
  if (ph_text_length (mirrored) <= PH_NAME_MOST)
    return mirrored;
  free (mirrored); /* a name must not grow past what a file may have */
  return ph_text_dup (name);
}
