/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rig of data/ or a starter's, compiled, reported and drawn: for tests of the scene. DATA_DIR is
 * given by the build.
 */
#pragma once

#include <stdio.h>
#include <stdlib.h>

#include "math/root.h"
#include "model/edit.h"
#include "model/starter.h"
#include "scene/drawlist.h"
#include "store/rig-file.h"

typedef struct
{
  PhRig *rig;
  PhCompiled *compiled;
  PhReport *report;
  PhDrawList *list;
} DrawnRig;

static const char *const drawn_files[] = { "demo",        "barebow", "heavy-front",
                                           "left-handed", "recurve", "v-bars" };
#define DRAWN_FILES (sizeof drawn_files / sizeof drawn_files[0])

/* Compiles and draws anew, after an edit of the rig. */
static inline void
drawn_rig_update (DrawnRig *drawn, const PhDrawOptions *options)
{
  PhDrawOptions plain = ph_draw_options_default ();
  ph_draw_list_free (drawn->list);
  ph_report_free (drawn->report);
  ph_compiled_free (drawn->compiled);
  drawn->compiled = ph_compile_rig (drawn->rig);
  drawn->report = ph_report_new (drawn->rig, drawn->compiled);
  drawn->list =
      ph_draw_list_new (drawn->rig, drawn->compiled, drawn->report, options ? options : &plain);
}

/* Takes the rig over. */
static inline DrawnRig
drawn_rig_of (PhRig *rig)
{
  DrawnRig drawn = { .rig = rig };
  drawn_rig_update (&drawn, NULL);
  return drawn;
}

static inline PhRig *
drawn_rig_load (const char *name)
{
  char path[512];
  PhRig *rig = NULL;
  PhIssues issues = { 0 };
  snprintf (path, sizeof path, "%s/%s.rig.json", DATA_DIR, name);
  if (ph_rig_load (path, &rig, &issues) != PH_OK)
    {
      fprintf (stderr, "%s does not load\n", path);
      exit (EXIT_FAILURE);
    }
  ph_issues_clear (&issues);
  return rig;
}

static inline PhRig *
drawn_rig_starter (PhBowKind kind, PhBowHand hand)
{
  PhStarter starter = { .kind = kind, .hand = hand, .stated_draw_mm = 711.2, .stature_mm = NAN };
  return ph_starter_rig (&starter, "starter");
}

static inline void
drawn_rig_clear (DrawnRig *drawn)
{
  ph_draw_list_free (drawn->list);
  ph_report_free (drawn->report);
  ph_compiled_free (drawn->compiled);
  ph_rig_free (drawn->rig);
  *drawn = (DrawnRig){ 0 };
}
