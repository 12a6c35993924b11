/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * GtkRecentManager keeps the list for the whole desktop; ours are those that this program
 * registered. The list is asked anew each time: it has some hundred entries at most.
 */
#include "app/recent.h"

#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <unistd.h>

#define MENU_MOST 8
#define MIME_TYPE "application/x-plumbhold-rig+json"

void
ph_recent_add (GFile *file)
{
  /* The manager warns on standard error where it cannot write: a person without such a folder has
   * no list, and that is all. */
  if (g_mkdir_with_parents (g_get_user_data_dir (), 0700) != 0
      || g_access (g_get_user_data_dir (), W_OK) != 0)
    return;
  g_autofree char *uri = g_file_get_uri (file);
  GtkRecentData data = { .mime_type = (char *)MIME_TYPE,
                         .app_name = (char *)g_get_prgname (),
                         .app_exec = (char *)"plumbhold %f" };
  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  GDateTime *of_a = gtk_recent_info_get_modified ((GtkRecentInfo *)a);
  GDateTime *of_b = gtk_recent_info_get_modified ((GtkRecentInfo *)b);
  return g_date_time_compare (of_b, of_a);
}

/* Ours that still exist, newest first. */
static GList *
our_items (void)
{
  GList *ours = NULL;
  GList *all = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  for (GList *item = all; item; item = item->next)
    if (gtk_recent_info_has_application (item->data, g_get_prgname ())
        && gtk_recent_info_exists (item->data))
      ours = g_list_prepend (ours, item->data);
    else
      gtk_recent_info_unref (item->data);
  g_list_free (all);
  return g_list_sort (ours, newest_first);
}

static void
free_items (GList *items)
{
  g_list_free_full (items, (GDestroyNotify)gtk_recent_info_unref);
}

GFile *
ph_recent_last (void)
{
  GList *items = our_items ();
  GFile *file = items ? g_file_new_for_uri (gtk_recent_info_get_uri (items->data)) : NULL;
  free_items (items);
  return file;
}

/* In a menu a single underscore would underline the next letter. */
static char *
without_mnemonic (const char *name)
{
  g_auto (GStrv) pieces = g_strsplit (name, "_", -1);
  return g_strjoinv ("__", pieces);
}

void
ph_recent_fill_menu (GMenu *menu)
{
  g_menu_remove_all (menu);
  GList *items = our_items ();
  int n = 0;
  for (GList *item = items; item && n < MENU_MOST; item = item->next, n++)
    {
      g_autofree char *name = gtk_recent_info_get_short_name (item->data);
      g_autofree char *label = without_mnemonic (name);
      g_autoptr (GMenuItem) entry = g_menu_item_new (label, NULL);
      g_menu_item_set_action_and_target (entry, "win.open-recent", "s",
                                         gtk_recent_info_get_uri (item->data));
      g_menu_append_item (menu, entry);
    }
  if (n == 0)
    g_menu_append (menu, _ ("No rig opened yet"), "win.nothing");
  free_items (items);
}
