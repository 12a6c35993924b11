/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A front door to the store for tests that no command of plumbhold-calc opens yet: loads a rig and
 * saves it. rig-rewrite [--share] IN OUT; exit 0 saved, 1 not loaded (errors as plumbhold-calc
 * prints them), 3 not saved (OUT: why). rig-rewrite --catalogue FILE checks a catalogue;
 * rig-rewrite --check FILE… checks many rigs at once.
 */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cli/files.h"
#include "store/catalogue.h"
#include "store/rig-file.h"

static int
check_catalogue (const char *path)
{
  PhCatalogue catalogue = { 0 };
  PhIssues issues = { 0 };
  PhStatus status = ph_catalogue_load (path, &catalogue, &issues);
  ph_files_print_errors (path, &issues);
  ph_issues_clear (&issues);
  ph_catalogue_clear (&catalogue);
  return status == PH_OK ? 0 : 1;
}

static int
check_rigs (char **paths)
{
  int code = 0;
  for (; *paths; paths++)
    {
      PhRig *rig = ph_files_load_rig (*paths);
      code = rig ? code : 1;
      ph_rig_free (rig);
    }
  return code;
}

static int
rewrite (const char *in, const char *out, bool share)
{
  char *why = NULL;
  PhRig *rig = ph_files_load_rig (in);
  if (!rig)
    return 1;
  if (share)
    {
      PhRig *shared = ph_rig_without_archer (rig);
      ph_rig_free (rig);
      rig = shared;
    }
  PhStatus status = ph_rig_save (rig, out, &why);
  ph_rig_free (rig);
  if (status == PH_OK)
    return 0;
  fprintf (stderr, "%s: %s\n", out, why);
  free (why);
  return 3;
}

int
main (int argc, char **argv)
{
  signal (SIGXFSZ, SIG_IGN); /* as plumbhold-calc does */
  if (argc == 3 && strcmp (argv[1], "--catalogue") == 0)
    return check_catalogue (argv[2]);
  if (argc > 1 && strcmp (argv[1], "--check") == 0)
    return check_rigs (argv + 2);
  bool share = argc == 4 && strcmp (argv[1], "--share") == 0;
  if (argc != 3 && !share)
    return 2;
  return rewrite (argv[argc - 2], argv[argc - 1], share);
}
