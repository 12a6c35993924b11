/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One of Level's answers: what to change, where the bubble then settles, how sure that is, what it
 * costs, and a button that does it. Shows what it is told and knows no document.
 *
 * Signals: "apply" (): the button; "look" (boolean on): the pointer or the focus came or left.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/answer-words.h"

G_BEGIN_DECLS

#define PH_TYPE_ANSWER_ROW (ph_answer_row_get_type ())
G_DECLARE_FINAL_TYPE (PhAnswerRow, ph_answer_row, PH, ANSWER_ROW, GtkListBoxRow)

/** The words are copied. `obstacle`: why it cannot be done, shown instead of the button; null: it
 * can. */
GtkWidget *ph_answer_row_new (const PhAnswerWords *words, const char *obstacle);
gboolean ph_answer_row_can_apply (PhAnswerRow *self);

G_END_DECLS
