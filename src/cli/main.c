/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * plumbhold-calc: the program without its window, for scripts, tests and other languages. The
 * locale stays "C": what it prints reads the same everywhere.
 */
#include <signal.h>
#include <stdio.h>
#include <string.h>

#include "cli/command.h"
#include "cli/files.h"

static const PhCommand *const commands[] = { &ph_command_report,  &ph_command_steps,
                                             &ph_command_level,   &ph_command_hand,
                                             &ph_command_measure, &ph_command_sure };
#define N_COMMANDS (sizeof commands / sizeof *commands)

static void
print_help (void)
{
  printf ("plumbhold-calc COMMAND …: what the stabiliser rig of a bow does, without a window\n\n"
          "Commands:\n");
  for (size_t i = 0; i < N_COMMANDS; i++)
    printf ("  %s %s\n      %s.\n", commands[i]->name, commands[i]->operands, commands[i]->summary);
  printf ("\nEach explains itself: plumbhold-calc COMMAND --help\n"
          "Also: --version, --help\n\n"
          "Exit codes: 0 fine, 1 a file has errors or cannot be read or written, "
          "2 wrong command line\n");
}

static int
wrong (const char *what, const char *name)
{
  fprintf (stderr, "plumbhold-calc: %s%s; see plumbhold-calc --help\n", what, name);
  return PH_EXIT_USAGE;
}

static int
run (char **arguments)
{
  const char *name = arguments[0];
  if (!name)
    return wrong ("a command is missing", "");
  if (strcmp (name, "--help") == 0 || strcmp (name, "-h") == 0)
    {
      print_help ();
      return PH_EXIT_FINE;
    }
  if (strcmp (name, "--version") == 0)
    {
      printf ("plumbhold-calc %s\n", PH_VERSION);
      return PH_EXIT_FINE;
    }
  for (size_t i = 0; i < N_COMMANDS; i++)
    if (strcmp (commands[i]->name, name) == 0)
      return commands[i]->run (commands[i], arguments + 1);
  return wrong ("there is no command ", name);
}

int
main (int argc, char **argv)
{
  /* Past a file size limit a write then fails and can be said, instead of ending the program. */
  signal (SIGXFSZ, SIG_IGN);
  int code = run (argc > 0 ? argv + 1 : argv);
  int written = ph_files_finish ();
  return code == PH_EXIT_FINE ? written : code;
}
