/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bench: a bow of 1 kg with one mount, and a bar of the greatest length on another for stacks
 * that lie along one.
 */
#include "store/bench.h"

#include <stdlib.h>

#include "base/text.h"
#include "model/check.h"
#include "model/fields.h"

#define BAR_ID "plumbhold bench bar"
#define BAR_MM 3000

static PhPart
bench_bar (void)
{
  PhPart bar = ph_part_default (PH_PART_BAR);
  bar.id = ph_text_dup (BAR_ID);
  bar.on = ph_text_dup ("bow:bar");
  ph_part_set_number (&bar, "length_mm", 0, BAR_MM);
  ph_part_set_number (&bar, "outer_mm", 0, 1);
  ph_part_set_number (&bar, "inner_mm", 0, 0);
  ph_part_set_number (&bar, "mass_g", 0, 0);
  return bar;
}

static PhRig *
bench_rig (void)
{
  PhRig *rig = ph_rig_new ();
  PhSocket mounts[] = { { .id = ph_text_dup ("any"), .axis = { 1, 0, 0 } },
                        { .id = ph_text_dup ("bar"), .axis = { -1, 0, 0 } } };
  rig->bow.mass_g = 1000;
  rig->bow.mounts = ph_sockets_copy (mounts, 2);
  rig->bow.n_mounts = 2;
  rig->bow.given |= ph_given_bit (PH_OBJECT_BOW, "mass_g") | ph_given_bit (PH_OBJECT_BOW, "com_mm")
                    | ph_given_bit (PH_OBJECT_BOW, "gyration_mm");
  free (mounts[0].id);
  free (mounts[1].id);
  return rig;
}

bool
ph_bench_check (const PhPart *parts, size_t n, const char *label, PhIssues *issues)
{
  PhRig *rig = bench_rig ();
  for (size_t i = 0; i < n; i++)
    ph_rig_append (rig, ph_part_copy (&parts[i]));
  ph_rig_append (rig, bench_bar ());
  if (n)
    {
      PhPart *first = &rig->parts[0];
      free (first->on);
      first->on = ph_text_dup (first->kind == PH_PART_ACCESSORY ? "bow"
                               : ph_part_is_along (first)       ? BAR_ID
                                                                : "bow:any");
      if (!first->id)
        first->id = ph_text_dup (label);
    }
  bool sound = ph_check_rig (rig, issues);
  ph_rig_free (rig);
  return sound;
}
