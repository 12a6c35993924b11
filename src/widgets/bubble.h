/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawn vial as a widget: shows what it is told and knows no document. The bubble eases to its
 * place in 120 ms unless told to jump or the user has animations off.
 */
#pragma once

#include <gtk/gtk.h>

#include "model/settle.h"

G_BEGIN_DECLS

#define PH_TYPE_BUBBLE (ph_bubble_get_type ())
G_DECLARE_FINAL_TYPE (PhBubble, ph_bubble, PH, BUBBLE, GtkWidget)

GtkWidget *ph_bubble_new (void);

/** `spoken` is what a screen reader says of it. */
void ph_bubble_show (PhBubble *self, const PhSettle *settle, double wanted_rad, gboolean ease,
                     const char *spoken);

G_END_DECLS
