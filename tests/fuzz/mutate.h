/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Small damage to good and bad files, the same sequence on every machine.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

typedef struct
{
  char *bytes;
  size_t size;
  bool good; /* loads as it is: taken more often, since only such mutations get far */
} PhSeed;

typedef struct PhMutator PhMutator;

/** `seeds` are borrowed and must outlive it. */
PhMutator *ph_mutator_new (const PhSeed *seeds, size_t n);
void ph_mutator_free (PhMutator *mutator);
/** The next damaged file, borrowed until the next call. */
const char *ph_mutator_next (PhMutator *mutator, size_t *size);
