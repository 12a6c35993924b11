/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The views' colours out of the theme in force.
 */
#pragma once

#include <gtk/gtk.h>

#include "widgets/bow-palette.h"

G_BEGIN_DECLS

/** Ground and accent by the theme's own names, ink from the widget's style. Cheap; ask for it when
 * drawing, so that a change of theme shows at once. */
PhPalette ph_palette_of_widget (GtkWidget *widget);

G_END_DECLS
