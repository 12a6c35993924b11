/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The words are those of the form and of the keys' steps.
 */
#include "widgets/drag-words.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"

char *
ph_drag_value_said (const PhNumberRef *ref, const PhRig *rig, const PhCompiled *compiled,
                    double value, gboolean fine)
{
  if (ph_number_ref_quantity (ref) == PH_QUANTITY_COUNT)
    return g_strdup_printf (ngettext ("%d weight", "%d weights", (gulong)value), (int)value);
  g_autofree char *size =
      fine ? ph_format_number (fabs (value), 1) : ph_format_short (fabs (value), 1);
  PhWay way;
  if (!ph_number_ref_way (ref, rig, compiled, &way))
    return g_strdup_printf (fine ? _ ("%s°, in tenths") : _ ("%s°"), size);
  const char *word = ph_way_word (way, value);
  /* Translators: "out 26.3°, in tenths" */
  return g_strdup_printf (fine ? _ ("%s %s°, in tenths") : _ ("%s %s°"), word, size);
}

const char *
ph_drag_hint (void)
{
  return _ ("Drag a bar’s end to turn it");
}

const char *
ph_drag_keys_hint (gboolean angle)
{
  return angle ? _ ("Shift: in tenths · Escape: as before") : _ ("Escape: as before");
}
