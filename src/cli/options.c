/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading a command line by a table. getopt_long would do, but for numbers such as -1.5 after an
 * option, for wording, and for --help from the same table.
 */
#include "cli/options.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "base/number.h"
#include "cli/table.h"

int
ph_options_wrong (const PhCommand *command, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  fprintf (stderr, "plumbhold-calc %s: ", command->name);
  vfprintf (stderr, format, arguments);
  va_end (arguments);
  fprintf (stderr, "; see plumbhold-calc %s --help\n", command->name);
  return PH_EXIT_USAGE;
}

static void
print_help (const PhCommand *command, const PhOption *options, size_t n)
{
  printf ("plumbhold-calc %s %s%s\n\n%s.\n\nOptions:\n", command->name, command->operands,
          n ? " [OPTION…]" : "", command->summary);
  PhTable *table = ph_table_new (2, NULL);
  for (size_t i = 0; i < n; i++)
    {
      const char *argument = options[i].argument;
      ph_table_add (table, "%s%s%s", options[i].name, argument ? " " : "",
                    argument ? argument : "");
      ph_table_add (table, "%s", options[i].help);
    }
  ph_table_add (table, "--help");
  ph_table_add (table, "this text");
  ph_table_print (table, 2);
}

static size_t
count_operands (const char *operands)
{
  size_t n = *operands ? 1 : 0;
  for (const char *c = operands; *c; c++)
    n += *c == ' ';
  return n;
}

/* The option of an argument, "--name" or "--name=value"; `*value` is what follows the "=". */
static const PhOption *
find_option (const char *argument, const PhOption *options, size_t n, const char **value)
{
  size_t length = strcspn (argument, "=");
  *value = argument[length] ? argument + length + 1 : NULL;
  for (size_t i = 0; i < n; i++)
    if (strlen (options[i].name) == length && strncmp (options[i].name, argument, length) == 0)
      return &options[i];
  return NULL;
}

static bool
set_value (const PhOption *option, const char *text)
{
  switch (option->type)
    {
    case PH_OPTION_UNITS:
      return ph_units_from_word (text, option->value);
    case PH_OPTION_NUMBER:
      return ph_number_parse (text, option->value);
    case PH_OPTION_TEXT:
      *(const char **)option->value = text;
      return true;
    case PH_OPTION_FLAG:
    default:
      *(bool *)option->value = true;
      return true;
    }
}

/* One option and, where it takes one, its value. `*at` moves on to the last argument used. */
static int
read_option (const PhCommand *command, char ***at, const PhOption *options, size_t n)
{
  const char *value;
  const PhOption *option = find_option (**at, options, n, &value);
  if (!option)
    return ph_options_wrong (command, "unknown option %s", **at);
  if (option->type == PH_OPTION_FLAG)
    {
      set_value (option, NULL);
      return value ? ph_options_wrong (command, "%s takes no value", option->name) : PH_OPTIONS_GO;
    }
  if (!value)
    value = *++*at;
  if (!value)
    {
      --*at;
      return ph_options_wrong (command, "%s needs a value: %s", option->name, option->argument);
    }
  if (set_value (option, value))
    return PH_OPTIONS_GO;
  return ph_options_wrong (command, "%s cannot be “%s”: it takes %s", option->name, value,
                           option->type == PH_OPTION_NUMBER ? "a number" : option->argument);
}

static bool
asks_for_help (char **arguments)
{
  for (; *arguments && strcmp (*arguments, "--") != 0; arguments++)
    if (strcmp (*arguments, "--help") == 0 || strcmp (*arguments, "-h") == 0)
      return true;
  return false;
}

int
ph_options_read (const PhCommand *command, char **arguments, const PhOption *options, size_t n,
                 const char **files)
{
  size_t wanted = count_operands (command->operands), found = 0;
  bool only_files = false;
  if (asks_for_help (arguments))
    {
      print_help (command, options, n);
      return PH_EXIT_FINE;
    }
  for (char **at = arguments; *at; at++)
    {
      if (!only_files && strcmp (*at, "--") == 0)
        only_files = true;
      else if (!only_files && (*at)[0] == '-' && (*at)[1])
        {
          int code = read_option (command, &at, options, n);
          if (code != PH_OPTIONS_GO)
            return code;
        }
      else if (found == wanted)
        return ph_options_wrong (command, "“%s” is one file too many", *at);
      else
        files[found++] = *at;
    }
  if (found < wanted)
    return ph_options_wrong (command, "%s is missing", command->operands);
  return PH_OPTIONS_GO;
}
