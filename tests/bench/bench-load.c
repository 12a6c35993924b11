/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long a rig file takes from the disk to a checked rig and back: the example, and the largest
 * that the format allows. Prints the median of 101 runs in processor time; never fails.
 */
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "base/text.h"
#include "store/rig-file.h"

#define RUNS 101

static double
processor_ms (void)
{
  struct timespec t;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &t);
  return (double)t.tv_sec * 1e3 + (double)t.tv_nsec / 1e6;
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static PhRig *
load (const char *path)
{
  PhRig *rig = NULL;
  PhIssues issues = { 0 };
  PhStatus status = ph_rig_load (path, &rig, &issues);
  if (status != PH_OK)
    {
      char *line = issues.n ? ph_issue_line (&issues.items[0]) : ph_text_dup ("no reason");
      fprintf (stderr, "%s: %s: %s\n", path, ph_status_text (status), line);
      exit (1);
    }
  ph_issues_clear (&issues);
  return rig;
}

static void
time_load (const char *what, const char *path, const char *target)
{
  double each[RUNS];
  for (int i = 0; i < RUNS; i++)
    {
      double start = processor_ms ();
      PhRig *rig = load (path);
      each[i] = processor_ms () - start;
      ph_rig_free (rig);
    }
  qsort (each, RUNS, sizeof *each, compare);
  printf ("load of %-12s %.3f ms%s\n", what, each[RUNS / 2], target);
}

/* The example with its sight again and again until no part more is allowed. */
static void
fill (PhRig *rig)
{
  for (size_t i = 0; rig->n_parts < PH_RIG_PARTS_MOST; i++)
    {
      PhPart part = ph_part_copy (&rig->parts[0]);
      free (part.id);
      part.id = ph_text_printf ("sight-%zu", i);
      ph_rig_append (rig, part);
    }
}

int
main (void)
{
  const char *example = DATA_DIR "/demo.rig.json", *largest = "bench-largest.rig.json";
  PhRig *rig = load (example);
  fill (rig);
  char *why = NULL;
  if (ph_rig_save (rig, largest, &why) != PH_OK)
    {
      fprintf (stderr, "%s\n", why);
      return 1;
    }
  ph_rig_free (rig);
  time_load ("the example", example, "");
  time_load ("256 parts", largest, "   (target 2 ms)");
  remove (largest);
  return 0;
}
