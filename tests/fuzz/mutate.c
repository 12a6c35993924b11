/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One to four edits of a seed: a byte changed, a stretch cut out, doubled or brought over from
 * another seed, a number or a text replaced by one that hurts. Random numbers: splitmix64
 * (S. Vigna, public domain; from memory).
 */
#include "fuzz/mutate.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

#define SIZE_MOST 20000 /* larger seeds are run as they are: edits of them teach nothing more */
#define ROOM (SIZE_MOST + 4096)

struct PhMutator
{
  const PhSeed **seeds; /* the small ones */
  size_t n;
  uint64_t state;
  char bytes[ROOM + 1];
  size_t size;
};

static const char *const tokens[] = { "0",
                                      "-0",
                                      "-1",
                                      "1e999",
                                      "NaN",
                                      "-Infinity",
                                      "5e-324",
                                      "1.7e308",
                                      "3000",
                                      "3000.1",
                                      "7",
                                      "12.5",
                                      "0.001",
                                      "[1,0,0]",
                                      "[0,-1,0]",
                                      "false",
                                      "\"measured\"",
                                      "180",
                                      "1e-6",
                                      "20000",
                                      "true",
                                      "null",
                                      "{}",
                                      "[]",
                                      "[1,2,3]",
                                      "[0,0,0]",
                                      "\"\"",
                                      "\"a\"",
                                      "\"bow\"",
                                      "\"bow:front\"",
                                      "\"weights\"",
                                      "\"bar\"",
                                      "\"accessory\"",
                                      "\"bracket\"",
                                      "\"b\"",
                                      "\"\\u0000\"",
                                      "\"\\ud800\"",
                                      "\xff",
                                      "\xc3\xa9",
                                      "{\"a\":1,\"a\":2}",
                                      "01",
                                      "+1" };
#define N_TOKENS (sizeof tokens / sizeof *tokens)

static size_t
draw (PhMutator *m, size_t below)
{
  uint64_t z = (m->state += UINT64_C (0x9e3779b97f4a7c15));
  z = (z ^ (z >> 30)) * UINT64_C (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C (0x94d049bb133111eb);
  return below ? (size_t)((z ^ (z >> 31)) % below) : 0;
}

/* Replaces `cut` bytes at `at` by others. */
static void
splice (PhMutator *m, size_t at, size_t cut, const char *bytes, size_t size)
{
  if (m->size - cut + size > ROOM)
    return;
  char *copy = ph_alloc (size + 1);
  memcpy (copy, bytes, size);
  memmove (m->bytes + at + size, m->bytes + at + cut, m->size - at - cut);
  memcpy (m->bytes + at, copy, size);
  m->size = m->size - cut + size;
  free (copy);
}

/* A value after a colon or comma, wherever the draw falls: its place and length. */
static size_t
find_value (PhMutator *m, size_t *length)
{
  size_t at = draw (m, m->size);
  while (at < m->size && m->bytes[at] != ':' && m->bytes[at] != ',' && m->bytes[at] != '[')
    at++;
  while (at < m->size && strchr (":,[ \n", m->bytes[at]))
    at++;
  size_t end = at;
  while (end < m->size && !strchr (",]}\n", m->bytes[end]))
    end++;
  *length = end - at;
  return at;
}

static void
edit_once (PhMutator *m)
{
  size_t length, at = draw (m, m->size), n = 1 + draw (m, 40);
  n = at + n > m->size ? m->size - at : n;
  const PhSeed *other = m->seeds[draw (m, m->n)];
  const char *token = tokens[draw (m, N_TOKENS)];
  switch (draw (m, 20))
    {
    case 0:
      if (m->size)
        m->bytes[at] = (char)draw (m, 256);
      return;
    case 1:
      splice (m, at, n, "", 0);
      return;
    case 2:
      splice (m, at, 0, m->bytes + at, n);
      return;
    case 3:
      at = draw (m, m->size + 1);
      length = draw (m, other->size + 1);
      splice (m, at, 0, other->bytes + draw (m, other->size - length + 1),
              length > 60 ? 60 : length);
      return;
    case 4:
      splice (m, at, 0, token, strlen (token));
      return;
    default:
      at = find_value (m, &length);
      splice (m, at, length, token, strlen (token));
      return;
    }
}

PhMutator *
ph_mutator_new (const PhSeed *seeds, size_t n)
{
  PhMutator *m = ph_alloc_zeroed (1, sizeof *m);
  m->seeds = ph_alloc ((n + 1) * sizeof *m->seeds);
  for (size_t i = 0; i < n; i++)
    if (seeds[i].size <= SIZE_MOST)
      m->seeds[m->n++] = &seeds[i];
  return m;
}

void
ph_mutator_free (PhMutator *mutator)
{
  free (mutator->seeds);
  free (mutator);
}

const char *
ph_mutator_next (PhMutator *m, size_t *size)
{
  const PhSeed *seed = m->seeds[draw (m, m->n)];
  for (int i = 0; i < 3 && !seed->good; i++)
    seed = m->seeds[draw (m, m->n)];
  memcpy (m->bytes, seed->bytes, seed->size);
  m->size = seed->size;
  for (size_t i = 1 + draw (m, 2) * draw (m, 4); i > 0; i--)
    edit_once (m);
  m->bytes[m->size] = '\0';
  *size = m->size;
  return m->bytes;
}
