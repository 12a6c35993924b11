/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A page of check macros: a test program is a list of CASE (function) in main. Each case prints
 * one line, "ok NAME" or "FAILED NAME" with where and what; tests/run.sh counts these lines.
 * PH_RESIDUALS=1 prints what each tolerance really needed. A word on the command line runs only the
 * cases whose name contains it.
 */
#pragma once

#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int check_failures, check_failed_cases, check_cases;
static const char *check_filter;

#define CHECK(condition, ...)                                                                      \
  do                                                                                               \
    {                                                                                              \
      if (!(condition))                                                                            \
        {                                                                                          \
          check_failures++;                                                                        \
          printf ("# %s:%d: %s:", __FILE__, __LINE__, #condition);                                 \
          printf (" " __VA_ARGS__);                                                                \
          printf ("\n");                                                                           \
        }                                                                                          \
    }                                                                                              \
  while (0)

static inline void
check_within (double got, double want, double allowed, const char *what, const char *file, int line)
{
  double off = fabs (got - want);
  if (getenv ("PH_RESIDUALS"))
    printf ("# residual %s: %.3g of %.3g\n", what, off, allowed);
  if (off <= allowed || (isnan (got) && isnan (want)))
    return;
  check_failures++;
  printf ("# %s:%d: %s: got %.17g, want %.17g, off by %.3g, allowed %.3g\n", file, line, what, got,
          want, off, allowed);
}

/** |got − want| ≤ tolerance. Say the reason of the tolerance beside the call. */
#define CHECK_NEAR(got, want, tolerance)                                                           \
  check_within ((got), (want), (tolerance), #got, __FILE__, __LINE__)
/** |got − want| ≤ relative·|want|. */
#define CHECK_REL(got, want, relative)                                                             \
  check_within ((got), (want), (relative)*fabs ((double)(want)), #got, __FILE__, __LINE__)
#define CHECK_TEXT(got, want) check_text ((got), (want), #got, __FILE__, __LINE__)

static inline void
check_text (const char *got, const char *want, const char *what, const char *file, int line)
{
  if (got && strcmp (got, want) == 0)
    return;
  check_failures++;
  printf ("# %s:%d: %s: got «%s», want «%s»\n", file, line, what, got ? got : "(null)", want);
}

static inline void
check_case (const char *name, void (*run) (void))
{
  if (check_filter && !strstr (name, check_filter))
    return;
  check_failures = 0;
  check_cases++;
  run ();
  if (check_failures)
    check_failed_cases++;
  printf ("%s %s\n", check_failures ? "FAILED" : "ok", name);
  fflush (stdout);
}
#define CASE(function) check_case (#function, function)

/** Call first in main. */
static inline void
check_start (int argc, char **argv)
{
  check_filter = argc > 1 ? argv[1] : NULL;
}

/** Return this from main: fails too when no case ran. */
static inline int
check_end (void)
{
  return check_failed_cases || !check_cases ? EXIT_FAILURE : EXIT_SUCCESS;
}
