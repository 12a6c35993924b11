/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a screen reader hears of a view: its name says what is selected or what a step just did, its
 * description the lean and the balance point. GTK 4.8 has no announcements: a changed name of the
 * focused widget is what is read.
 */
#include "widgets/bow-view-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/part-words.h"

static void
add_angle (GString *said, PhWay way, double value)
{
  g_autofree char *size =
      ph_format_quantity_short (fabs (value), PH_QUANTITY_ANGLE, PH_UNITS_METRIC);
  g_string_append_printf (said, ", %s %s", ph_way_word (way, value), size);
}

/* "Back bar, out 20°, down 12°"; "Back stack, 5 weights". */
static char *
part_said (PhBowView *self, int index)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  const PhCompiled *compiled = ph_document_get_compiled (self->document);
  const PhPart *part = &rig->parts[index];
  GString *said = g_string_new (ph_part_name (part));
  if (!ph_rig_is_fitted (rig, (gsize)index))
    g_string_append_printf (said, ", %s", _ ("off"));
  if (part->kind == PH_PART_BAR || part->kind == PH_PART_BRACKET)
    {
      add_angle (said, ph_way_of_swing (compiled, (gsize)index), part->swing_deg);
      add_angle (said, ph_way_of_lift (compiled, (gsize)index), part->lift_deg);
    }
  if (part->kind == PH_PART_WEIGHTS)
    {
      g_string_append (said, ", ");
      g_string_append_printf (said, ngettext ("%d weight", "%d weights", (gulong)part->count),
                              (int)part->count);
    }
  return g_string_free (said, FALSE);
}

void
ph_bow_view_tell (PhBowView *self, const char *event)
{
  const PhReport *report = ph_document_get_report (self->document);
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = ph_document_get_selected_part (self->document);
  g_autofree char *selected = NULL;
  if (event)
    selected = g_strdup (event);
  else if (part >= 0)
    selected = part_said (self, part);
  else
    selected =
        g_strdup (ph_document_get_selected (self->document) ? _ ("bow") : _ ("nothing selected"));
  g_autofree char *name = g_strdup_printf ("%s: %s", ph_view_title (self->view), selected);
  PhSettle settle = ph_settle_of (rig, report, NULL);
  g_autofree char *lean = ph_lean_said (&settle);
  g_autofree char *balance = ph_balance_said (report, ph_document_get_units (self->document));
  /* Translators: the bow leans left 1.4°, its balance point is 68 mm ahead of the grip throat */
  g_autofree char *description =
      g_strdup_printf (_ ("The bow %s; its balance point is %s."), lean, balance);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
}
