/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws rig files without a window: the three views at one scale, light and dark, as PNG files to
 * be looked at. Usage: draw-rigs FOLDER [--select ID] [--reference RIG] [--size WxH] [--factor N]
 * [--arrow] [--hand] [--units WORD] RIG...
 */
#include <glib.h>
#include <stdio.h>

#include "math/root.h"
#include "tests/render/sheet.h"

static char *select_id, *reference, *size, *units;
static double factor = 5.0;
static gboolean arrow, hand;

static const GOptionEntry entries[] = {
  { "select", 0, 0, G_OPTION_ARG_STRING, &select_id, "Select that part", "ID" },
  { "reference", 0, 0, G_OPTION_ARG_FILENAME, &reference, "Outline that rig", "RIG" },
  { "size", 0, 0, G_OPTION_ARG_STRING, &size, "Size of the sheet", "WxH" },
  { "units", 0, 0, G_OPTION_ARG_STRING, &units, "metric, trade or mixed", "WORD" },
  { "factor", 0, 0, G_OPTION_ARG_DOUBLE, &factor, "Times the lean", "N" },
  { "arrow", 0, 0, G_OPTION_ARG_NONE, &arrow, "With the arrow", NULL },
  { "hand", 0, 0, G_OPTION_ARG_NONE, &hand, "With the hand", NULL },
  { 0 }
};

/* Both themes of one rig. Returns how many pictures failed. */
static int
draw (const char *folder, const char *path)
{
  int failed = 0;
  g_autofree char *base = g_path_get_basename (path);
  base[strcspn (base, ".")] = '\0';
  for (int dark = 0; dark < 2; dark++)
    {
      PhSheet sheet = ph_sheet_default (path);
      sheet.reference = reference;
      sheet.select = select_id;
      sheet.factor = factor;
      sheet.dark = dark;
      sheet.arrow = arrow;
      sheet.hand = hand;
      if (units)
        ph_units_from_word (units, &sheet.units);
      if (size)
        sscanf (size, "%dx%d", &sheet.width, &sheet.height);
      cairo_surface_t *surface = ph_sheet_paint (&sheet);
      g_autofree char *name = g_strdup_printf ("%s-%s.png", base, dark ? "dark" : "light");
      g_autofree char *to = g_build_filename (folder, name, NULL);
      if (!surface || cairo_surface_write_to_png (surface, to) != CAIRO_STATUS_SUCCESS)
        failed++;
      else
        printf ("%s\n", to);
      if (surface)
        cairo_surface_destroy (surface);
    }
  return failed;
}

int
main (int argc, char **argv)
{
  g_autoptr (GOptionContext) context = g_option_context_new ("FOLDER RIG…");
  g_autoptr (GError) error = NULL;
  g_option_context_add_main_entries (context, entries, NULL);
  if (!g_option_context_parse (context, &argc, &argv, &error) || argc < 3)
    {
      fprintf (stderr, "draw-rigs: %s\n", error ? error->message : "name a folder and a rig");
      return 2;
    }
  ph_math_init ();
  int failed = 0;
  for (int i = 2; i < argc; i++)
    failed += draw (argv[1], argv[i]);
  return failed ? 1 : 0;
}
