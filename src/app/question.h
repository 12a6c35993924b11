/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A question that cannot wait, in a dialog over its window: what to do with unsaved work, whether
 * to overwrite. Escape and closing it always mean Cancel.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  PH_ANSWER_CANCEL,
  PH_ANSWER_LOSE, /* the choice that throws something away */
  PH_ANSWER_KEEP  /* the choice that keeps everything; the default */
} PhAnswer;

typedef void (*PhAnswered) (PhAnswer answer, gpointer data);

/** Asks and returns at once; `answered` is called exactly once. The labels may have a mnemonic. */
void ph_question_ask (GtkWindow *parent, const char *text, const char *secondary,
                      const char *lose_label, const char *keep_label, PhAnswered answered,
                      gpointer data);

G_END_DECLS
