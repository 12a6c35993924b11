/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The program with the window.
 */
#include <glib/gi18n.h>
#include <locale.h>

#include "app/application.h"
#include "app/data-path.h"

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, ph_locale_dir ());
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_prgname ("plumbhold");
  g_set_application_name (_ ("Plumbhold"));
  g_autoptr (PhApplication) application = ph_application_new ();
  int status = g_application_run (G_APPLICATION (application), argc, argv);
  return status != 0 ? status : ph_application_get_exit_code (application);
}
