/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Options are read in the process that was started and handed to the one that runs already. Two
 * hidden ones make the program usable by scripts: --exit-after-startup ends after the first frame,
 * --screenshot writes a PNG and ends; both ask nothing, remember nothing and leave the recovery
 * files alone.
 */
#include "app/application.h"

#include <glib/gi18n.h>

#include "app/appearance.h"
#include "app/data-path.h"
#include "app/screenshot.h"
#include "app/settings.h"
#include "app/window.h"
#include "store/catalogue.h"
#include "widgets/style.h"

#define APPLICATION_ID "org.plumbhold.Plumbhold"
/* Until what is put off at start (the drawer, banners) is done. */
#define SETTLING_MS 900
/* Then until the views' fine pictures are there: looked for so often, given up after so long. */
#define STILL_MS 50
#define STILL_MOST_MS 20000
/* Until the window's frame is known, which --size leaves out. */
#define FRAMING_MS 200

struct _PhApplication
{
  GtkApplication parent_instance;

  /* owned */
  GSettings *settings; /* or null */
  PhCatalogue catalogue;
  char *catalogue_trouble; /* why there is none, or null */
  PhIssues catalogue_issues;
  char *screenshot; /* path, or null */
  char *place;      /* of the window, to show in the picture; or null */

  /* borrowed */
  PhWindow *window; /* null before it is made and after it closed */

  gboolean exit_after_startup;
  int waited_ms;
  int width, height; /* asked for; 0: as remembered */
  int exit_code;
};

G_DEFINE_FINAL_TYPE (PhApplication, ph_application, GTK_TYPE_APPLICATION)

static gboolean
is_unattended (PhApplication *self)
{
  return self->exit_after_startup || self->screenshot;
}

/* The window. */

static PhWindow *
get_window (PhApplication *self)
{
  if (self->window)
    return self->window;
  PhWindow *window = ph_window_new (GTK_APPLICATION (self), self->settings, &self->catalogue);
  g_set_weak_pointer (&self->window, window);
  if (self->width > 0)
    gtk_window_set_default_size (GTK_WINDOW (window), self->width, self->height);
  if (is_unattended (self))
    ph_window_set_unattended (window);
  return window;
}

static gboolean
end_unattended_cb (gpointer data)
{
  PhApplication *self = data;
  if (self->window)
    gtk_window_close (GTK_WINDOW (self->window));
  return G_SOURCE_REMOVE;
}

static void
after_paint_cb (GdkFrameClock *clock, PhApplication *self)
{
  g_autoptr (GError) error = NULL;
  g_signal_handlers_disconnect_by_data (clock, self);
  if (self->window && !ph_screenshot_write (GTK_WIDGET (self->window), self->screenshot, &error))
    {
      g_printerr ("%s\n", error->message);
      self->exit_code = 1;
    }
  g_idle_add (end_unattended_cb, self);
}

static gboolean
still_cb (gpointer data)
{
  PhApplication *self = data;
  self->waited_ms += STILL_MS;
  if (self->window && !ph_window_is_still (self->window) && self->waited_ms < STILL_MOST_MS)
    return G_SOURCE_CONTINUE;
  if (!self->window)
    return end_unattended_cb (self);
  /* The picture is made of what was just painted: between two frames there may be nothing. */
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (self->window));
  g_signal_connect (clock, "after-paint", G_CALLBACK (after_paint_cb), self);
  gtk_widget_queue_draw (GTK_WIDGET (self->window));
  return G_SOURCE_REMOVE;
}

static gboolean
settled_cb (gpointer data)
{
  PhApplication *self = data;
  if (!self->window || !self->screenshot)
    return end_unattended_cb (self);
  g_timeout_add (STILL_MS, still_cb, self);
  return G_SOURCE_REMOVE;
}

/* --size is the size of the picture: the toolkit's own frame comes on top. */
static gboolean
correct_size_cb (gpointer data)
{
  PhApplication *self = data;
  if (!self->window)
    return G_SOURCE_REMOVE;
  int over_width = self->width - gtk_widget_get_width (GTK_WIDGET (self->window));
  int over_height = self->height - gtk_widget_get_height (GTK_WIDGET (self->window));
  if (over_width > 0 || over_height > 0)
    gtk_window_set_default_size (GTK_WINDOW (self->window), self->width + MAX (over_width, 0),
                                 self->height + MAX (over_height, 0));
  return G_SOURCE_REMOVE;
}

/* Counted from the first frame: a busy machine may take seconds to it. */
static gboolean
first_frame_cb (GtkWidget *window, GdkFrameClock *clock, gpointer data)
{
  (void)window;
  (void)clock;
  PhApplication *self = data;
  if (self->width > 0)
    g_timeout_add (FRAMING_MS, correct_size_cb, self);
  g_timeout_add (SETTLING_MS, settled_cb, self);
  return G_SOURCE_REMOVE;
}

static void
present (PhApplication *self)
{
  gboolean first = !gtk_widget_get_visible (GTK_WIDGET (self->window));
  if (self->place && !ph_window_show_place (self->window, self->place))
    g_printerr ("--place wants hand, free, why or level, not “%s”\n", self->place);
  gtk_window_present (GTK_WINDOW (self->window));
  if (first && self->catalogue_trouble)
    ph_window_tell_trouble (self->window, self->catalogue_trouble, &self->catalogue_issues);
  if (first && is_unattended (self))
    gtk_widget_add_tick_callback (GTK_WIDGET (self->window), first_frame_cb, self, NULL);
}

/* A start without a file: what was left behind first, then the last rig, then the example. */
static void
ph_application_activate (GApplication *application)
{
  PhApplication *self = PH_APPLICATION (application);
  if (!self->window)
    {
      PhWindow *window = get_window (self);
      if (is_unattended (self))
        ph_window_open_demo (window);
      else
        {
          ph_window_open_first (window);
          ph_window_offer_recovered (window);
        }
    }
  present (self);
}

static void
open_file (PhApplication *self, GFile *file)
{
  gboolean fresh = !self->window;
  PhWindow *window = get_window (self);
  /* Under a file that fails stands the example rather than nothing. */
  if (fresh)
    ph_window_open_demo (window);
  ph_window_open (window, file);
  if (fresh && !is_unattended (self))
    ph_window_offer_recovered (window);
  present (self);
}

static void
ph_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  (void)hint;
  /* One rig is open: of several, the first. */
  if (n_files > 0)
    open_file (PH_APPLICATION (application), files[0]);
}

/* Options. */

static const GOptionEntry options[] = {
  { "demo", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Open the example rig"), NULL },
  { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Print the version and exit"), NULL },
  { "exit-after-startup", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_NONE, NULL, NULL, NULL },
  { "screenshot", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_FILENAME, NULL, NULL, NULL },
  { "size", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, NULL, NULL, NULL },
  { "place", 0, G_OPTION_FLAG_HIDDEN, G_OPTION_ARG_STRING, NULL, NULL, NULL },
  { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, NULL, NULL, N_ ("[FILE]") },
  { 0 },
};

static int
ph_application_handle_local_options (GApplication *application, GVariantDict *given)
{
  PhApplication *self = PH_APPLICATION (application);
  g_autofree char *size = NULL;
  if (g_variant_dict_contains (given, "version"))
    {
      g_print ("%s %s\n", g_get_prgname (), PH_VERSION);
      return 0;
    }
  self->exit_after_startup = g_variant_dict_contains (given, "exit-after-startup");
  g_variant_dict_lookup (given, "screenshot", "^ay", &self->screenshot);
  g_variant_dict_lookup (given, "place", "s", &self->place);
  if (g_variant_dict_lookup (given, "size", "s", &size)
      && (sscanf (size, "%dx%d", &self->width, &self->height) != 2 || self->width < 1
          || self->height < 1))
    {
      g_printerr (_ ("--size wants WIDTHxHEIGHT, like 1280x800, not “%s”\n"), size);
      return 2;
    }
  if (is_unattended (self))
    g_application_set_flags (application,
                             g_application_get_flags (application) | G_APPLICATION_NON_UNIQUE);
  return -1;
}

static int
ph_application_command_line (GApplication *application, GApplicationCommandLine *line)
{
  PhApplication *self = PH_APPLICATION (application);
  GVariantDict *given = g_application_command_line_get_options_dict (line);
  g_autofree const char **paths = NULL;
  if (g_variant_dict_lookup (given, G_OPTION_REMAINING, "^a&ay", &paths) && paths[0])
    {
      g_autoptr (GFile) file = g_application_command_line_create_file_for_arg (line, paths[0]);
      open_file (self, file);
    }
  else if (g_variant_dict_contains (given, "demo"))
    {
      ph_window_open_demo (get_window (self));
      present (self);
    }
  else
    g_application_activate (application);
  return 0;
}

/* Actions of the program. */

static void
appearance_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  PhApplication *self = data;
  PhAppearance appearance;
  if (!ph_appearance_from_word (g_variant_get_string (parameter, NULL), &appearance))
    return;
  ph_appearance_apply (appearance);
  ph_settings_set_appearance (self->settings, appearance);
  g_simple_action_set_state (action, parameter);
}

static void
about_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void)action;
  (void)parameter;
  PhApplication *self = data;
  gtk_show_about_dialog (GTK_WINDOW (self->window), "program-name", g_get_application_name (),
                         "version", PH_VERSION, "logo-icon-name", APPLICATION_ID, "license-type",
                         GTK_LICENSE_GPL_3_0, "comments",
                         _ ("Lay out a bow’s stabiliser rig and see how it will hold"), "copyright",
                         _ ("© The Plumbhold authors"), NULL);
}

static void
quit_cb (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  (void)action;
  (void)parameter;
  PhApplication *self = data;
  if (self->window)
    gtk_window_close (GTK_WINDOW (self->window));
  else
    g_application_quit (G_APPLICATION (self));
}

static void
add_actions (PhApplication *self)
{
  static const GActionEntry entries[] = {
    { .name = "appearance", .activate = appearance_cb, .parameter_type = "s", .state = "'system'" },
    { .name = "about", .activate = about_cb },
    { .name = "quit", .activate = quit_cb },
  };
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  PhAppearance appearance = ph_settings_get_appearance (self->settings);
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "appearance");
  g_simple_action_set_state (G_SIMPLE_ACTION (action),
                             g_variant_new_string (ph_appearance_word (appearance)));
  ph_appearance_apply (appearance);
}

static void
add_keys (GtkApplication *application)
{
  /* Only keys that no text field wants: these come before whatever has the focus. The others are
   * in window-actions.c. */
  static const struct
  {
    const char *action, *keys[3];
  } accels[] = {
    { "app.quit", { "<Control>q" } },
    { "win.open", { "<Control>o" } },
    { "win.new", { "<Control>n" } },
    { "win.save", { "<Control>s" } },
    { "win.save-as", { "<Control><Shift>s" } },
    { "win.share", { "<Control>e" } },
    { "win.add", { "<Control>plus", "<Control>KP_Add" } },
    { "win.duplicate", { "<Control>d" } },
    { "win.toggle-fitted", { "<Control>t" } },
    { "win.mirror", { "<Control>m" } },
    { "win.reference-take", { "<Control>r" } },
    { "win.reference-load", { "<Control><Shift>o" } },
    { "win.reference-swap", { "<Control><Shift>r" } },
    { "win.side-pane", { "F9" } },
    { "window.close", { "<Control>w" } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (application, accels[i].action,
                                           (const char *const *)accels[i].keys);
}

/* Start and end. */

static void
load_catalogue (PhApplication *self)
{
  g_autofree char *path = ph_data_path ("catalogue.json");
  PhStatus status = ph_catalogue_load (path, &self->catalogue, &self->catalogue_issues);
  if (status != PH_OK)
    self->catalogue_trouble =
        g_strdup_printf (_ ("The parts catalogue “%s” was not read, so Add has nothing to offer: "
                            "%s. Installing the program again brings it back."),
                         path, ph_status_text (status));
}

static void
ph_application_startup (GApplication *application)
{
  PhApplication *self = PH_APPLICATION (application);
  G_APPLICATION_CLASS (ph_application_parent_class)->startup (application);
  gtk_window_set_default_icon_name (APPLICATION_ID);
  ph_style_load (gdk_display_get_default ());
  self->settings = ph_settings_new ();
  load_catalogue (self);
  add_actions (self);
  add_keys (GTK_APPLICATION (self));
}

static void
ph_application_finalize (GObject *object)
{
  PhApplication *self = PH_APPLICATION (object);
  g_clear_weak_pointer (&self->window);
  g_clear_object (&self->settings);
  ph_catalogue_clear (&self->catalogue);
  ph_issues_clear (&self->catalogue_issues);
  g_free (self->catalogue_trouble);
  g_free (self->screenshot);
  g_free (self->place);
  G_OBJECT_CLASS (ph_application_parent_class)->finalize (object);
}

static void
ph_application_class_init (PhApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);
  G_OBJECT_CLASS (klass)->finalize = ph_application_finalize;
  application_class->startup = ph_application_startup;
  application_class->activate = ph_application_activate;
  application_class->open = ph_application_open;
  application_class->handle_local_options = ph_application_handle_local_options;
  application_class->command_line = ph_application_command_line;
}

static void
ph_application_init (PhApplication *self)
{
  GApplication *application = G_APPLICATION (self);
  g_application_add_main_option_entries (application, options);
  g_application_set_option_context_summary (
      application, _ ("Lay out a bow’s stabiliser rig and see how it will hold"));
}

PhApplication *
ph_application_new (void)
{
  return g_object_new (PH_TYPE_APPLICATION, "application-id", APPLICATION_ID, "flags",
                       G_APPLICATION_HANDLES_OPEN | G_APPLICATION_HANDLES_COMMAND_LINE,
                       "resource-base-path", "/org/plumbhold/Plumbhold", NULL);
}

int
ph_application_get_exit_code (PhApplication *self)
{
  g_return_val_if_fail (PH_IS_APPLICATION (self), 1);
  return self->exit_code;
}
