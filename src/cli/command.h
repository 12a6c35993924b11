/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A command of plumbhold-calc is one file that defines a PhCommand; main.c lists them. A new one
 * needs its file, its line below and its line there.
 */
#pragma once

/** How plumbhold-calc ends. */
enum
{
  PH_EXIT_FINE = 0,
  PH_EXIT_ERRORS = 1, /* a file has errors, or cannot be read or written: said on standard error */
  PH_EXIT_USAGE = 2   /* the command line is wrong */
};

typedef struct PhCommand
{
  const char *name;     /* "report" */
  const char *operands; /* "FILE": what must follow, blanks between */
  const char *summary;  /* one line for --help */
  /** `arguments` are those after the command's name, null-terminated. Returns the exit code. */
  int (*run) (const struct PhCommand *self, char **arguments);
} PhCommand;

extern const PhCommand ph_command_report;
extern const PhCommand ph_command_steps;
extern const PhCommand ph_command_level;
extern const PhCommand ph_command_hand;
extern const PhCommand ph_command_measure;
extern const PhCommand ph_command_sure;
