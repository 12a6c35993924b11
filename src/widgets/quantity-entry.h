/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An entry for one number with its unit. What is typed may carry another unit or a fraction;
 * Return and leaving commit; Escape restores; Up and Down step, with Shift five steps. A bad entry
 * keeps its text and says what would be right, and the last good value stays in force. Scrolling
 * over it never changes it.
 */
#pragma once

#include <gtk/gtk.h>

#include "base/quantity.h"

G_BEGIN_DECLS

#define PH_TYPE_QUANTITY_ENTRY (ph_quantity_entry_get_type ())
G_DECLARE_FINAL_TYPE (PhQuantityEntry, ph_quantity_entry, PH, QUANTITY_ENTRY, GtkWidget)

/** Takes a typed or stepped value, in the file's unit. Null: accepted. Else a new sentence that
 * says why not; the text then stays. */
typedef char *(*PhQuantityCommit) (PhQuantityEntry *self, double value, gpointer user_data);

/* Properties (read-only, notify): "message", string: why the text is not taken and what holds
 * instead; null while all is well.
 * Signals: "finished" (): Return, Escape or leaving, with a good value in the entry. */

GtkWidget *ph_quantity_entry_new (PhQuantity quantity);

void ph_quantity_entry_set_quantity (PhQuantityEntry *self, PhQuantity quantity);
void ph_quantity_entry_set_units (PhQuantityEntry *self, PhUnits units);
void ph_quantity_entry_set_commit (PhQuantityEntry *self, PhQuantityCommit commit,
                                   gpointer user_data);
/** Name and longer description for a screen reader. */
void ph_quantity_entry_set_label (PhQuantityEntry *self, const char *label);
void ph_quantity_entry_set_description (PhQuantityEntry *self, const char *description);
/** One press of Up, in the unit that is shown. Default 1. */
void ph_quantity_entry_set_step (PhQuantityEntry *self, double shown_step);
/** Shown after the number, not typed: "× 1 oz". */
void ph_quantity_entry_set_suffix (PhQuantityEntry *self, const char *suffix);
void ph_quantity_entry_set_width_chars (PhQuantityEntry *self, int chars);
/** FALSE: the message is shown by whoever binds to "message". Default TRUE. */
void ph_quantity_entry_set_message_below (PhQuantityEntry *self, gboolean below);

/** Shows a value of the file's unit; NAN shows as missing. A text that is being typed is left. */
void ph_quantity_entry_set_value (PhQuantityEntry *self, double value);
double ph_quantity_entry_get_value (PhQuantityEntry *self);

/** Says that a change by another way (a slider) was refused; cleared by the next good value. */
void ph_quantity_entry_say (PhQuantityEntry *self, const char *why);

/** Commits as Return does. FALSE: the text is not taken. */
gboolean ph_quantity_entry_commit (PhQuantityEntry *self);
/** Focus, with all of the text selected. */
void ph_quantity_entry_edit (PhQuantityEntry *self);

G_END_DECLS
