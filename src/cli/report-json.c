/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The report as JSON, keys in the order of the headless contract.
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "base/units.h"
#include "cli/report-print.h"
#include "store/json.h"

static void
add_tensor (PhJsonNode *node, const char *key, const PhSym3 *s)
{
  ph_json_add_numbers (node, key, (double[]){ s->xx, s->yy, s->zz, s->xy, s->xz, s->yz }, 6);
}

/* Null as a whole where there is none. */
static void
add_point_mm (PhJsonNode *node, const char *key, PhVec3 m)
{
  if (isnan (m.x))
    ph_json_add_text (node, key, NULL);
  else
    ph_json_add_numbers (node, key,
                         (double[]){ ph_to_milli (m.x), ph_to_milli (m.y), ph_to_milli (m.z) }, 3);
}

static const char *
id_of (const PhRig *rig, int part)
{
  return part < 0 ? "bow" : rig->parts[part].id;
}

static void
add_parts (PhJsonNode *root, const PhRig *rig, const PhReport *report)
{
  PhJsonNode *list = ph_json_add_array (root, "parts");
  for (size_t i = 0; i < report->n_shares; i++)
    {
      const PhShare *share = &report->shares[i];
      PhJsonNode *node = ph_json_new_object ();
      ph_json_add_text (node, "id", id_of (rig, share->part));
      ph_json_add_number (node, "mass_g", ph_to_milli (share->mass_kg));
      add_point_mm (node, "com_mm", share->com_m);
      ph_json_add_number (node, "roll_moment_nm", share->roll_moment_nm);
      ph_json_add_number (node, "pitch_moment_nm", share->pitch_moment_nm);
      ph_json_append (list, node);
    }
}

static void
add_roll (PhJsonNode *root, const PhReport *report)
{
  PhJsonNode *node = ph_json_add_object (root, "roll");
  ph_json_add_number (node, "moment_nm", report->roll_moment_nm);
  ph_json_add_number (node, "below_axis_mm", 0 - ph_to_milli (report->above_line_m));
  ph_json_add_number (node, "gravity_stiffness_nm_per_rad", report->gravity_stiffness_nm_per_rad);
  ph_json_add_number (node, "hand_stiffness_nm_per_rad", report->hand.stiffness_nm_per_rad);
  ph_json_add_number (node, "hand_bias_nm", report->hand.bias_nm);
  ph_json_add_text (node, "hand_is", report->hand_fitted ? "fitted" : "assumed");
  ph_json_add_number (node, "cant_deg", ph_deg_from_rad (report->cant_rad));
  ph_json_add_number (node, "bubble_deg", ph_deg_from_rad (report->bubble_rad));
  if (isnan (report->cant_90_rad[0]))
    ph_json_add_text (node, "cant_90_deg", NULL);
  else
    ph_json_add_numbers (node, "cant_90_deg",
                         (double[]){ ph_deg_from_rad (report->cant_90_rad[0]),
                                     ph_deg_from_rad (report->cant_90_rad[1]) },
                         2);
  ph_json_add_flag (node, "stable", report->stable);
  if (report->reason)
    ph_json_add_text (node, "reason", report->reason);
}

static void
add_loads (PhJsonNode *root, const PhReport *report)
{
  const PhPitch *pitch = &report->pitch;
  PhJsonNode *node = ph_json_add_object (root, "pitch");
  ph_json_add_number (node, "moment_nm", pitch->moment_nm);
  ph_json_add_number (node, "nock_load_n", pitch->nock_load_n);
  ph_json_add_number (node, "bow_arm_load_n", pitch->bow_arm_load_n);
  ph_json_add_number (node, "shoulder_moment_nm", pitch->shoulder_moment_nm);
  ph_json_add_number (node, "release_pitch_rad_s2", pitch->release_pitch_rad_s2);
  node = ph_json_add_object (root, "hold");
  add_tensor (node, "inertia_nock_kg_m2", &report->inertia_nock_kg_m2);
  ph_json_add_number (node, "cross_coupling", report->cross_coupling);
}

static void
add_clearance (PhJsonNode *root, const PhRig *rig, const PhReport *report)
{
  PhJsonNode *node = ph_json_add_object (root, "clearance");
  bool defined = !isnan (report->clearance_m);
  ph_json_add_number (node, "mm", ph_to_milli (report->clearance_m));
  ph_json_add_text (node, "part", defined ? id_of (rig, report->clearance_part) : NULL);
}

static void
add_axes (PhJsonNode *root, const PhMassProperties *mass)
{
  PhJsonNode *list = ph_json_add_array (root, "principal_axes");
  for (int i = 0; i < 3; i++)
    {
      const PhVec3 *a = &mass->principal_axes[i];
      ph_json_append (list, ph_json_new_numbers ((double[]){ a->x, a->y, a->z }, 3));
    }
}

static void
add_bars (PhJsonNode *root, const PhRig *rig, const PhReport *report)
{
  PhJsonNode *list = ph_json_add_array (root, "bars");
  for (size_t i = 0; i < report->n_bars; i++)
    {
      const PhBarBend *bar = &report->bars[i];
      PhJsonNode *node = ph_json_new_object ();
      ph_json_add_text (node, "id", id_of (rig, bar->part));
      ph_json_add_number (node, "droop_mm", ph_to_milli (bar->beam.droop_m));
      ph_json_add_number (node, "slope_deg", ph_deg_from_rad (bar->beam.slope_rad));
      ph_json_add_number (node, "clamped_hz", bar->beam.clamped_hz);
      ph_json_append (list, node);
    }
}

static void
add_notes (PhJsonNode *root, const PhReport *report)
{
  PhJsonNode *list = ph_json_add_array (root, "notes");
  for (size_t i = 0; i < report->notes.n; i++)
    {
      char *line = ph_issue_line (&report->notes.items[i]);
      ph_json_append_text (list, line);
      free (line);
    }
}

void
ph_report_print_json (const PhRig *rig, const PhReport *report, const char *name)
{
  const PhMassProperties *mass = &report->mass;
  PhJsonNode *root = ph_json_new_object ();
  ph_json_add_text (root, "name", name);
  ph_json_add_number (root, "mass_g", ph_to_milli (mass->mass_kg));
  add_point_mm (root, "com_mm", mass->com_m);
  add_tensor (root, "inertia_com_kg_m2", &mass->inertia_com_kg_m2);
  add_tensor (root, "inertia_grip_kg_m2", &mass->inertia_grip_kg_m2);
  ph_json_add_numbers (root, "principal_kg_m2", mass->principal_kg_m2, 3);
  add_parts (root, rig, report);
  add_roll (root, report);
  add_loads (root, report);
  add_clearance (root, rig, report);
  add_axes (root, mass);
  add_bars (root, rig, report);
  add_notes (root, report);
  char *text = ph_json_print (root, NULL);
  fputs (text, stdout);
  free (text);
  ph_json_node_free (root);
}
