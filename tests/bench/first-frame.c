/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preloaded into any GTK program: prints on standard error how long after FIRST_FRAME_START (the
 * monotonic clock in microseconds, taken just before the program was started) its first frame was
 * painted, without any change to the program.
 */
#include <gtk/gtk.h>

static gboolean
painted_cb (GSignalInvocationHint *hint, guint n, const GValue *values, gpointer data)
{
  (void)hint, (void)n, (void)values, (void)data;
  static gboolean told;
  if (!told)
    g_printerr ("FIRST-FRAME %.1f ms\n",
                (double)(g_get_monotonic_time ()
                         - g_ascii_strtoll (g_getenv ("FIRST_FRAME_START"), NULL, 10))
                    / 1e3);
  told = TRUE;
  return TRUE;
}

static gboolean
arm_cb (gpointer data)
{
  (void)data;
  g_type_class_ref (GDK_TYPE_FRAME_CLOCK);
  g_signal_add_emission_hook (g_signal_lookup ("after-paint", GDK_TYPE_FRAME_CLOCK), 0, painted_cb,
                              NULL, NULL);
  return G_SOURCE_REMOVE;
}

__attribute__ ((constructor)) static void
begin (void)
{
  if (g_getenv ("FIRST_FRAME_START"))
    g_idle_add_full (-1000, arm_cb, NULL, NULL);
}
