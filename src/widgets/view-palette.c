/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Asks the style context, which is how GTK 4.8 names a theme's colours.
 */
#include "widgets/view-palette.h"

static PhShade
shade_of (const GdkRGBA *colour)
{
  return (PhShade){ (double)colour->red, (double)colour->green, (double)colour->blue };
}

static PhShade
shade_named (GtkStyleContext *style, const char *name, GdkRGBA fallback)
{
  GdkRGBA colour;
  if (!gtk_style_context_lookup_color (style, name, &colour))
    colour = fallback;
  return shade_of (&colour);
}

PhPalette
ph_palette_of_widget (GtkWidget *widget)
{
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  GdkRGBA ink, white = { 1, 1, 1, 1 }, blue = { 0.2f, 0.5f, 0.9f, 1 };
  gtk_style_context_get_color (style, &ink);
  return ph_palette_of (shade_named (style, "theme_base_color", white), shade_of (&ink),
                        shade_named (style, "theme_selected_bg_color", blue));
}
