/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The model does the work on the open rig or on a copy of it.
 */
#include "document/document-measure.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "base/units.h"
#include "document/document-private.h"
#include "document/refusal.h"
#include "store/kept-readings.h"

static PhStanding
standing_of (const PhRig *rig)
{
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  PhSure sure = ph_sure_of (rig);
  PhVec3 com = report->mass.com_m;
  PhStanding standing = {
    .com_mm = { ph_to_milli (com.x), ph_to_milli (com.y), ph_to_milli (com.z) },
    .settles = sure.settles,
    .bubble_deg = ph_deg_from_rad (report->bubble_rad),
    .bubble_sd_deg = ph_deg_from_rad (sure.bubble_sd_rad),
  };
  for (int c = 0; c < 3; c++)
    standing.com_sd_mm[c] = ph_to_milli (sure.com_sd_m[c]);
  ph_sure_clear (&sure);
  ph_report_free (report);
  ph_compiled_free (compiled);
  return standing;
}

PhMeasureAnswer
ph_document_measure (PhDocument *self, const PhReadings *readings)
{
  const PhRig *rig = ph_document_get_rig (self);
  PhMeasureAnswer answer = { .measured = ph_measure (rig, readings) };
  answer.before = answer.after = standing_of (rig);
  if (answer.measured.issue)
    answer.refusal = ph_refusal_of_issue (rig, answer.measured.issue, ph_document_get_units (self));
  if (answer.measured.refused)
    return answer;
  PhRig *after = ph_rig_copy (rig);
  ph_edit_use_measured (after, &answer.measured);
  answer.after = standing_of (after);
  ph_rig_free (after);
  return answer;
}

void
ph_measure_answer_clear (PhMeasureAnswer *answer)
{
  ph_measured_clear (&answer->measured);
  g_clear_pointer (&answer->refusal, g_free);
}

typedef struct
{
  const PhReadings *readings;
  const PhMeasured *measured;
} Use;

static bool
do_use (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const Use *use = data;
  ph_edit_use_measured (rig, use->measured);
  ph_kept_readings_put (rig, use->readings, use->measured);
  return true;
}

gboolean
ph_document_use_readings (PhDocument *self, const PhReadings *readings, GError **error)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && readings != NULL && !self->gesture, FALSE);
  PhMeasured measured = ph_measure (ph_document_get_rig (self), readings);
  gboolean done = FALSE;
  g_autofree char *refusal = measured.issue
                                 ? ph_refusal_of_issue (ph_document_get_rig (self), measured.issue,
                                                        ph_document_get_units (self))
                                 : NULL;
  if (refusal)
    g_set_error_literal (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED, refusal);
  else if (measured.refused)
    g_set_error_literal (error, PH_DOCUMENT_ERROR, PH_DOCUMENT_ERROR_REFUSED, _ (measured.refused));
  else
    {
      ph_document_begin_gesture (self);
      self->gesture->label = g_strdup (_ ("bow measured"));
      done = ph_document_edit (self, do_use, &(Use){ readings, &measured }, error);
      ph_document_end_gesture (self);
    }
  ph_measured_clear (&measured);
  return done;
}

/* Whether what would be taken out now is what was taken out then. */
static gboolean
same_parts (PhDocument *self, const PhKeptReadings *kept)
{
  PhMeasured now = ph_measure (ph_document_get_rig (self), &kept->readings);
  gboolean same = fabs (now.parts_mass_g - kept->parts_mass_g) <= PH_SAME_RIG_G;
  for (int c = 0; c < 3 && now.parts_mass_g > 0; c++)
    same = same && fabs (now.parts_com_mm[c] - kept->parts_com_mm[c]) <= PH_SAME_RIG_MM;
  ph_measured_clear (&now);
  return same;
}

gboolean
ph_document_dup_readings (PhDocument *self, PhMethod method, int axis, PhReadings *readings,
                          gboolean *parts_changed)
{
  size_t n;
  gboolean found = FALSE;
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && readings != NULL, FALSE);
  PhKeptReadings *kept = ph_kept_readings_of (ph_document_get_rig (self), &n);
  for (size_t i = n; i-- > 0 && !found;)
    if (kept[i].readings.method == method && (axis < 0 || kept[i].readings.axis == axis))
      {
        *readings = ph_readings_copy (&kept[i].readings);
        if (parts_changed)
          *parts_changed = !same_parts (self, &kept[i]);
        found = TRUE;
      }
  ph_kept_readings_free (kept, n);
  return found;
}

gboolean
ph_document_guess_that_matters (PhDocument *self, PhMatters *matters)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self) && matters != NULL, FALSE);
  PhSure sure = ph_sure_of (ph_document_get_rig (self));
  gboolean matter = ph_sure_matters_most (&sure, matters);
  ph_sure_clear (&sure);
  return matter;
}
