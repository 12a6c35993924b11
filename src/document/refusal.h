/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why an edit was refused, as a sentence for a screen: no keys of the file, the person's units. The
 * model's own sentence serves where there is none for the key.
 */
#pragma once

#include <glib.h>

#include "model/fields.h"
#include "model/issue.h"

G_BEGIN_DECLS

/** "Must lie between 0 mm and 3000 mm."; null where the value is in the field's range. New string.
 */
char *ph_refusal_of_range (const PhField *field, double value, PhUnits units);

/** `rig` is as it was before the edit. New string. */
char *ph_refusal_of_issue (const PhRig *rig, const PhIssue *issue, PhUnits units);

G_END_DECLS
