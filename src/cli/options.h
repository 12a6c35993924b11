/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The command line of one command: its files and its options, with --help made from the same
 * table.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>

#include "base/quantity.h"
#include "cli/command.h"

typedef enum
{
  PH_OPTION_FLAG,   /* bool */
  PH_OPTION_UNITS,  /* PhUnits */
  PH_OPTION_NUMBER, /* double: finite, with a decimal point */
  PH_OPTION_TEXT    /* const char *, borrowed from the command line */
} PhOptionType;

typedef struct
{
  const char *name; /* "--units" */
  PhOptionType type;
  void *value;          /* where it goes; what stands there is the default */
  const char *argument; /* what --help calls its value; null for a flag */
  const char *help;
} PhOption;

/** What ph_options_read answers when the command may go on. */
#define PH_OPTIONS_GO (-1)

/** Reads options (in any order, "--name value" or "--name=value") and exactly as many files as
 * `command->operands` names into `files`. Answers PH_OPTIONS_GO, or the exit code after --help or
 * after saying on standard error what is wrong. "--" ends the options. */
int ph_options_read (const PhCommand *command, char **arguments, const PhOption *options, size_t n,
                     const char **files);

/** Says on standard error what is wrong with the command line; answers PH_EXIT_USAGE. */
int ph_options_wrong (const PhCommand *command, const char *format, ...)
    __attribute__ ((format (printf, 2, 3)));
