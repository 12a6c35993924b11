/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row a number that can be marked: how to measure it, and how well it is known then (deciding
 * section 6; brace height and axle to axle with a tape: our own figure).
 */
#include "widgets/guess.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "model/fields.h"

typedef struct
{
  PhNumberOf of;
  const char *key;
  const char *advice;
  double sd, sd_share; /* in the value's unit; as a share of the value */
} Measurable;

static const Measurable measurables[] = {
  { PH_NUMBER_BOW, "mass_g",
    N_ ("A guess from common practice. Take every part off, put the bow on a kitchen scale and "
        "type "
        "what it reads."),
    3, 0 },
  { PH_NUMBER_BOW, "com_mm",
    N_ ("A guess from common practice. Hang the bare bow from two points, let it come to rest, and "
        "mark the plumb lines: where they cross is the balance point. Measure it from the deepest "
        "point of the grip."),
    2, 0 },
  { PH_NUMBER_BOW, "gyration_mm",
    N_ ("A guess from common practice. Let the bare bow swing from a point, time twenty swings, "
        "and "
        "work the radius out from them."),
    0, 0.03 },
  { PH_NUMBER_BOW, "brace_height_mm",
    N_ ("A guess from common practice. With the bow undrawn, measure with a tape from the deepest "
        "point of the grip to the string."),
    3, 0 },
  { PH_NUMBER_BOW, "axle_to_axle_mm",
    N_ ("A guess from common practice. Measure with a tape from axle to axle; on a recurve from "
        "tip "
        "to tip, strung."),
    3, 0 },
  { PH_NUMBER_PART, "mass_g",
    N_ ("A guess. Put the part alone on a kitchen scale and type what it reads."), 0, 0.005 },
  { PH_NUMBER_PART, "each_g",
    N_ ("A guess. Put ten of these weights on a kitchen scale and type a tenth of what it reads."),
    0, 0.005 },
  { PH_NUMBER_PART, "com_mm",
    N_ ("A guess. Balance the part on an edge and measure from where it is screwed on."), 1, 0 },
  { PH_NUMBER_PART, "at_mm",
    N_ ("A guess. Measure with a tape from the deepest point of the grip to the middle of the "
        "part."),
    1, 0 },
};

static const Measurable *
find (const PhNumberRef *ref)
{
  for (gsize i = 0; ref->key && i < G_N_ELEMENTS (measurables); i++)
    if (measurables[i].of == ref->of && strcmp (measurables[i].key, ref->key) == 0)
      return &measurables[i];
  return NULL;
}

static gboolean
has_sd (const PhSd *sds, size_t n, const char *key)
{
  for (size_t i = 0; i < n; i++)
    if (strcmp (sds[i].key, key) == 0)
      return TRUE;
  return FALSE;
}

gboolean
ph_guess_is (const PhNumberRef *ref, const PhRig *rig)
{
  if (!find (ref))
    return FALSE;
  if (ref->of == PH_NUMBER_BOW)
    return rig->bow.source == PH_SOURCE_GUESSED && !has_sd (rig->bow.sds, rig->bow.n_sds, ref->key);
  int i = ph_rig_find (rig, ref->part);
  return i >= 0 && rig->parts[i].source == PH_SOURCE_GUESSED
         && !has_sd (rig->parts[i].sds, rig->parts[i].n_sds, ref->key);
}

const char *
ph_guess_advice (const PhNumberRef *ref)
{
  const Measurable *measurable = find (ref);
  return measurable ? _ (measurable->advice) : NULL;
}

static void
add_sd (PhSd **sds, size_t *n, const PhNumberRef *ref, const PhField *field, const void *object)
{
  const Measurable *how = find (ref);
  int numbers = ph_field_components (field);
  double sd[3] = { 0 };
  for (int i = 0; i < numbers; i++)
    sd[i] = how->sd + how->sd_share * fabs (ph_field_number (field, object, i));
  ph_sds_put (sds, n, ref->key, numbers, sd);
}

static bool
measured (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const PhNumberRef *ref = data;
  int i = ref->of == PH_NUMBER_PART ? ph_rig_find (rig, ref->part) : -1;
  PhBow *bow = &rig->bow;
  if (ref->of == PH_NUMBER_BOW)
    add_sd (&bow->sds, &bow->n_sds, ref, ph_field_find (PH_OBJECT_BOW, ref->key, NULL), bow);
  else if (i >= 0)
    add_sd (&rig->parts[i].sds, &rig->parts[i].n_sds, ref,
            ph_field_find (PH_OBJECT_PART, ref->key, NULL), &rig->parts[i]);
  return true;
}

gboolean
ph_guess_set_measured (const PhNumberRef *ref, PhDocument *document, GError **error)
{
  g_return_val_if_fail (ph_guess_is (ref, ph_document_get_rig (document)), FALSE);
  return ph_document_edit (document, measured, (gpointer)ref, error);
}
