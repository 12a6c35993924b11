/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The three steps of a bubble check as a drawing of our own: draw with eyes closed, settle, and the
 * helper reads. For the page that has no check yet.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"

G_BEGIN_DECLS

#define PH_TYPE_CHECK_PICTURE (ph_check_picture_get_type ())
G_DECLARE_FINAL_TYPE (PhCheckPicture, ph_check_picture, PH, CHECK_PICTURE, GtkWidget)

/** Step 1 to 3. Shows the bow in the hand that holds it, and in step 3 what is read: the level, or a
 * picture of the string where the sight has none. */
GtkWidget *ph_check_picture_new (PhDocument *document, int step);

G_END_DECLS
