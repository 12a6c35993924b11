/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/moment-words.h"

#include <glib/gi18n.h>
#include <limits.h>
#include <math.h>
#include <string.h>

#include "base/quantity.h"
#include "document/format.h"

const char *
ph_share_name (const PhRig *rig, int part)
{
  return part < 0 ? _ ("Bow") : ph_part_name (&rig->parts[part]);
}

const char *
ph_share_id (const PhRig *rig, int part)
{
  return part < 0 ? "bow" : rig->parts[part].id;
}

int
ph_share_selected (const PhRig *rig, const char *selected)
{
  int part;
  if (!selected)
    return INT_MIN;
  if (g_str_equal (selected, "bow"))
    return -1;
  part = ph_rig_find (rig, selected);
  return part < 0 ? INT_MIN : part;
}

/* The size with the digits of a moment; `*nothing` where it rounds to nothing. */
static char *
size_text (double moment_nm, gboolean *nothing)
{
  int digits = ph_quantity_digits (PH_QUANTITY_MOMENT, PH_UNITS_METRIC);
  char *text = ph_format_number (fabs (moment_nm), digits);
  *nothing = strpbrk (text, "123456789") == NULL;
  return text;
}

char *
ph_roll_share_text (double moment_nm)
{
  gboolean nothing;
  g_autofree char *size = size_text (moment_nm, &nothing);
  if (nothing)
    return g_steal_pointer (&size);
  return moment_nm < 0.0 ? g_strdup_printf (_ ("%s left"), size)
                         : g_strdup_printf (_ ("%s right"), size);
}

char *
ph_pitch_share_text (double moment_nm)
{
  gboolean nothing;
  g_autofree char *size = size_text (moment_nm, &nothing);
  if (nothing)
    return g_steal_pointer (&size);
  return moment_nm < 0.0 ? g_strdup_printf (_ ("%s up"), size)
                         : g_strdup_printf (_ ("%s down"), size);
}
