/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The fuzz target as an ordinary program of the suite: fuzz-main SEEDS_FOLDER HOW_MANY. Runs every
 * seed (a "bad-" one must be refused, a "good-" one load), then that many mutations of them, the
 * same on every machine. With PH_FUZZ_LAST=PATH the input about to be tried is kept there first.
 */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "fuzz/fuzz-rig.h"
#include "fuzz/mutate.h"
#include "store/read-file.h"
#include "store/rig-file.h"

static bool failed;

static void
say (bool good, const char *what, const char *name)
{
  printf ("%s %s_%s\n", good ? "ok" : "FAILED", what, name);
  failed = failed || !good;
}

static int
compare (const void *a, const void *b)
{
  return strcmp (*(char *const *)a, *(char *const *)b);
}

/* The folder's file names in order of name. */
static size_t
list_folder (const char *folder, char **names, size_t most)
{
  size_t n = 0;
  DIR *dir = opendir (folder);
  for (struct dirent *entry = dir ? readdir (dir) : NULL; entry && n < most; entry = readdir (dir))
    if (entry->d_name[0] != '.')
      names[n++] = ph_text_dup (entry->d_name);
  if (dir)
    closedir (dir);
  qsort (names, n, sizeof *names, compare);
  return n;
}

static void
try_seed (const char *name, const PhSeed *seed)
{
  PhIssues issues = { 0 };
  PhRig *rig = NULL;
  char *label = ph_text_printf ("%.*s", (int)strcspn (name, "."), name);
  for (char *c = label; *c; c++)
    if (*c == '-')
      *c = '_';
  ph_rig_parse (seed->bytes, seed->size, &rig, &issues);
  say ((rig != NULL) == seed->good, seed->good ? "loads" : "refuses", label);
  LLVMFuzzerTestOneInput ((const uint8_t *)seed->bytes, seed->size);
  ph_rig_free (rig);
  ph_issues_clear (&issues);
  free (label);
}

static void
keep_last (const char *bytes, size_t size)
{
  const char *path = getenv ("PH_FUZZ_LAST");
  FILE *file = path ? fopen (path, "wb") : NULL;
  if (!file)
    return;
  fwrite (bytes, 1, size, file);
  fclose (file);
}

int
main (int argc, char **argv)
{
  static char *names[1000];
  static PhSeed seeds[1000];
  if (argc != 3)
    return 2;
  size_t n = list_folder (argv[1], names, 1000);
  for (size_t i = 0; i < n; i++)
    {
      char *path = ph_text_printf ("%s/%s", argv[1], names[i]), *why = NULL;
      if (ph_read_file (path, PH_RIG_FILE_MOST, &seeds[i].bytes, &seeds[i].size, &why) != PH_OK)
        return EXIT_FAILURE;
      seeds[i].good = strncmp (names[i], "good-", 5) == 0;
      try_seed (names[i], &seeds[i]);
      free (path);
    }
  long many = strtol (argv[2], NULL, 10);
  PhMutator *mutator = ph_mutator_new (seeds, n);
  for (long i = 0; i < many; i++)
    {
      size_t size;
      const char *bytes = ph_mutator_next (mutator, &size);
      keep_last (bytes, size);
      LLVMFuzzerTestOneInput ((const uint8_t *)bytes, size);
    }
  ph_mutator_free (mutator);
  char *count = ph_text_printf ("%ld_mutations", many);
  say (n > 50 && many > 0, "survives", count);
  free (count);
  for (size_t i = 0; i < n; i++)
    {
      free (seeds[i].bytes);
      free (names[i]);
    }
  return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
