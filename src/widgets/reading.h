/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One reading: title, big value, what it means, its change against the reference, and moments on
 * demand. Shows what it is told and knows no document.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/reading-texts.h"

G_BEGIN_DECLS

#define PH_TYPE_READING (ph_reading_get_type ())
G_DECLARE_FINAL_TYPE (PhReading, ph_reading, PH, READING, GtkWidget)

GtkWidget *ph_reading_new (const char *title);

/** Only labels whose text differs are touched. The texts are copied. */
void ph_reading_show (PhReading *self, const PhReadingText *text);

/** Puts a widget beside the title (the mark of a guess) / below the value. */
void ph_reading_add_mark (PhReading *self, GtkWidget *mark);
void ph_reading_add_extra (PhReading *self, GtkWidget *extra);

/** Whether moments and loads are shown. */
void ph_reading_set_more (PhReading *self, gboolean more);

G_END_DECLS
