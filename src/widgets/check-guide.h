/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The way through one bubble check, a step at a time: which rig, the cautions, up to three draws,
 * and the record. The prediction is sealed before the first reading is asked and shown only after
 * the last.
 *
 * Signals: "closed" (boolean recorded).
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_CHECK_GUIDE (ph_check_guide_get_type ())
G_DECLARE_FINAL_TYPE (PhCheckGuide, ph_check_guide, PH, CHECK_GUIDE, GtkWidget)

GtkWidget *ph_check_guide_new (PhDocument *document);

/** From the beginning, for a new check. */
void ph_check_guide_start (PhCheckGuide *self);
/** The readings of check `i` again, to be put right; its rig and its prediction stay. */
void ph_check_guide_edit (PhCheckGuide *self, guint i);

G_END_DECLS
