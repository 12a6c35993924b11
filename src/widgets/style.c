/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Finds the style sheets among the compiled-in files rather than listing them twice. A sheet that
 * does not parse is our own mistake and shows as the toolkit's warning. Costs one provider a sheet.
 */
#include "widgets/style.h"

#include <stdlib.h>
#include <string.h>

#define FOLDER "/org/plumbhold/Plumbhold/ui/"

static int
by_name (const void *a, const void *b)
{
  return strcmp (*(const char *const *)a, *(const char *const *)b);
}

void
ph_style_load (GdkDisplay *display)
{
  g_auto (GStrv) names = g_resources_enumerate_children (FOLDER, 0, NULL);
  g_return_if_fail (GDK_IS_DISPLAY (display) && names != NULL);
  qsort (names, g_strv_length (names), sizeof *names, by_name);
  for (char **name = names; *name; name++)
    if (g_str_has_suffix (*name, ".css"))
      {
        g_autofree char *path = g_strconcat (FOLDER, *name, NULL);
        g_autoptr (GtkCssProvider) provider = gtk_css_provider_new ();
        gtk_css_provider_load_from_resource (provider, path);
        gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider),
                                                    GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
      }
}
