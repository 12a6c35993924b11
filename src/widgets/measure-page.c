/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One draft a method, so that looking at another loses nothing. The answer is worked out anew after
 * each typed number and after each change of the rig, a few milliseconds each, while it is seen.
 */
#include "widgets/measure-page.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-measure.h"
#include "document/format.h"
#include "widgets/matters-line.h"
#include "widgets/measure-bubble.h"
#include "widgets/measure-picture.h"
#include "widgets/measure-rows.h"
#include "widgets/measure-words.h"

#define REST_MS 120

struct _PhMeasurePage
{
  GtkWidget parent_instance;

  /* template */
  GtkWidget *root;
  GtkToggleButton *scales, *hanging, *pendulum, *strings, *watch;
  GtkBox *matters_place, *picture_place, *rows_place, *axis_box;
  GtkScrolledWindow *scroller, *bubble_place;
  GtkLabel *gives, *safety, *how, *kept, *result, *status;
  GtkDropDown *axis;
  GtkGrid *changes;
  GtkButton *use;

  GtkWidget *picture, *rows; /* children */

  /* owned */
  PhDocument *document;
  PhMeasureDraft drafts[PH_METHODS];
  gboolean kept_changed[PH_METHODS]; /* its readings were taken with other parts on */
  PhMethod method;
  gint64 started; /* of the watch, µs; 0: it stands */
  guint rest;     /* source of a pending update, or 0 */
  gboolean setting;
};

enum
{
  CHECK_WANTED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhMeasurePage, ph_measure_page, GTK_TYPE_WIDGET)

static PhMeasureDraft *
draft_of (PhMeasurePage *self)
{
  return &self->drafts[self->method];
}

/* What it changes. */

static void
add_cell (PhMeasurePage *self, int column, int row, const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), column == 0 ? 0 : 1);
  if (css_class)
    gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (self->changes, label, column, row, 1, 1);
}

static void
add_change (PhMeasurePage *self, int row, const char *what, double before, double before_sd,
            double after, double after_sd, PhQuantity quantity)
{
  PhUnits units = ph_document_get_units (self->document);
  g_autofree char *was = ph_measure_plus_minus (before, before_sd, quantity, units);
  g_autofree char *is = ph_measure_plus_minus (after, after_sd, quantity, units);
  add_cell (self, 0, row, what, NULL);
  add_cell (self, 1, row, was, NULL);
  add_cell (self, 2, row, "→", NULL);
  add_cell (self, 3, row, is, NULL);
}

static void
show_changes (PhMeasurePage *self, const PhMeasureAnswer *answer)
{
  static const char *const places[] = { N_ ("Rig’s balance point ahead"), N_ ("to the left"),
                                        N_ ("up") };
  gboolean compound = ph_document_get_rig (self->document)->bow.kind == PH_BOW_COMPOUND;
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->changes))))
    gtk_grid_remove (self->changes, child);
  if (!answer || answer->measured.refused)
    return;
  add_cell (self, 1, 0, _ ("now"), "dim-label");
  add_cell (self, 3, 0, _ ("with this"), "dim-label");
  for (int c = 0; c < 3; c++)
    add_change (self, 1 + c, _ (places[c]), answer->before.com_mm[c], answer->before.com_sd_mm[c],
                answer->after.com_mm[c], answer->after.com_sd_mm[c], PH_QUANTITY_DIAMETER);
  add_change (self, 4,
              compound ? _ ("Bubble, + when the top tips right")
                       : _ ("Lean, + when the top tips right"),
              answer->before.bubble_deg, answer->before.bubble_sd_deg, answer->after.bubble_deg,
              answer->after.bubble_sd_deg, PH_QUANTITY_ANGLE);
}

static void
update (PhMeasurePage *self)
{
  PhReadings readings;
  const char *missing = ph_measure_draft_finish (draft_of (self), &readings);
  gboolean fine = FALSE;
  if (missing)
    {
      gtk_label_set_text (self->result, missing);
      show_changes (self, NULL);
    }
  else
    {
      PhMeasureAnswer answer = ph_document_measure (self->document, &readings);
      g_autofree char *words =
          ph_measure_result_words (&answer, ph_document_get_units (self->document));
      gtk_label_set_text (self->result, words);
      show_changes (self, &answer);
      fine = !answer.measured.refused;
      ph_measure_answer_clear (&answer);
      ph_readings_clear (&readings);
    }
  gtk_widget_set_sensitive (GTK_WIDGET (self->use), fine);
  gtk_widget_set_visible (GTK_WIDGET (self->kept), self->kept_changed[self->method]);
}

static gboolean
rest_cb (gpointer data)
{
  PhMeasurePage *self = data;
  if (ph_document_in_gesture (self->document))
    return G_SOURCE_CONTINUE;
  self->rest = 0;
  update (self);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (PhMeasurePage *self)
{
  if (!self->rest)
    self->rest = g_timeout_add (REST_MS, rest_cb, self);
}

static void
units_cb (PhMeasurePage *self)
{
  ph_measure_rows_set_units (PH_MEASURE_ROWS (self->rows), ph_document_get_units (self->document));
  changed_cb (self);
}

static void
typed_cb (PhMeasurePage *self)
{
  gtk_label_set_text (self->status, "");
  update (self);
}

/* Methods and axes. */

static void
load_kept (PhMeasurePage *self, PhMethod method, int axis)
{
  PhReadings readings;
  gboolean changed = FALSE;
  self->kept_changed[method] = FALSE;
  if (!ph_document_dup_readings (self->document, method, axis, &readings, &changed))
    return;
  self->drafts[method] = ph_measure_draft_of (&readings);
  self->kept_changed[method] = changed;
  ph_readings_clear (&readings);
}

static void
show_method (PhMeasurePage *self)
{
  gboolean turns = self->method == PH_METHOD_SWING || self->method == PH_METHOD_TWO_STRING;
  gtk_label_set_text (self->gives, ph_measure_gives (self->method));
  gtk_label_set_text (self->how, ph_measure_how (self->method));
  gtk_label_set_text (self->status, "");
  ph_measure_picture_set_method (PH_MEASURE_PICTURE (self->picture), self->method);
  self->setting = TRUE;
  gtk_drop_down_set_selected (self->axis, (guint)draft_of (self)->readings.axis);
  self->setting = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (self->axis_box), turns);
  gtk_widget_set_visible (GTK_WIDGET (self->watch), turns);
  gtk_toggle_button_set_active (self->watch, FALSE);
  ph_measure_rows_set_draft (PH_MEASURE_ROWS (self->rows), draft_of (self),
                             ph_document_get_units (self->document));
  update (self);
}

static void
method_cb (PhMeasurePage *self)
{
  GtkToggleButton *const buttons[PH_METHODS] = { self->scales, self->hanging, self->pendulum,
                                                 self->strings };
  for (int m = 0; m < PH_METHODS; m++)
    if (gtk_toggle_button_get_active (buttons[m]) && self->method != (PhMethod)m)
      {
        self->method = (PhMethod)m;
        show_method (self);
      }
}

/* Kept readings of the other axis take the place of what stands; without any, what stands is for
   the new axis. */
static void
axis_cb (PhMeasurePage *self)
{
  guint axis = gtk_drop_down_get_selected (self->axis);
  if (self->setting || axis > 2 || (int)axis == draft_of (self)->readings.axis)
    return;
  load_kept (self, self->method, (int)axis);
  draft_of (self)->readings.axis = (int)axis;
  show_method (self);
}

static void
watch_cb (PhMeasurePage *self)
{
  gboolean runs = gtk_toggle_button_get_active (self->watch);
  gint64 now = g_get_monotonic_time ();
  gtk_button_set_label (GTK_BUTTON (self->watch),
                        runs ? _ ("Stop the watch") : _ ("Start the watch"));
  if (!runs && self->started)
    ph_measure_rows_set_seconds (PH_MEASURE_ROWS (self->rows),
                                 round ((double)(now - self->started) / 1e4) / 100);
  self->started = runs ? now : 0;
}

static void
use_cb (PhMeasurePage *self)
{
  PhReadings readings;
  g_autoptr (GError) error = NULL;
  if (ph_measure_draft_finish (draft_of (self), &readings))
    return;
  gboolean used = ph_document_use_readings (self->document, &readings, &error);
  ph_readings_clear (&readings);
  if (used)
    self->kept_changed[self->method] = FALSE;
  gtk_label_set_text (self->status,
                      used ? _ ("Used: the bow is measured now, and the readings are kept with the "
                                "rig. Undo takes it back.")
                           : error->message);
  changed_cb (self);
}

static void
start (PhMeasurePage *self)
{
  PhMatters matters;
  for (int m = 0; m < PH_METHODS; m++)
    {
      self->drafts[m] = ph_measure_draft_empty ((PhMethod)m);
      load_kept (self, (PhMethod)m, -1);
    }
  gboolean matter = ph_document_guess_that_matters (self->document, &matters);
  gboolean mass = matter && matters.part < 0 && g_str_equal (matters.key, "mass_g");
  self->method = mass ? PH_METHOD_SCALES : PH_METHOD_HANGING;
  gtk_toggle_button_set_active (mass ? self->scales : self->hanging, TRUE);
  show_method (self);
}

static void
check_wanted_cb (PhMeasurePage *self)
{
  g_signal_emit (self, signals[CHECK_WANTED], 0);
}

static void
ph_measure_page_dispose (GObject *object)
{
  PhMeasurePage *self = PH_MEASURE_PAGE (object);
  g_clear_handle_id (&self->rest, g_source_remove);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->rows)
    g_signal_handlers_disconnect_by_data (self->rows, self);
  self->rows = NULL;
  g_clear_pointer (&self->root, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_measure_page_parent_class)->dispose (object);
}

static void
ph_measure_page_class_init (PhMeasurePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_measure_page_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/measure-page.ui");
  signals[CHECK_WANTED] = g_signal_new ("check-wanted", G_TYPE_FROM_CLASS (klass),
                                        G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhMeasurePage, child)
  BIND (root);
  BIND (scales);
  BIND (hanging);
  BIND (pendulum);
  BIND (strings);
  BIND (watch);
  BIND (matters_place);
  BIND (picture_place);
  BIND (rows_place);
  BIND (axis_box);
  BIND (scroller);
  BIND (bubble_place);
  BIND (gives);
  BIND (safety);
  BIND (how);
  BIND (kept);
  BIND (result);
  BIND (status);
  BIND (axis);
  BIND (changes);
  BIND (use);
#undef BIND
}

static void
ph_measure_page_init (PhMeasurePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_label_set_text (self->safety, ph_measure_safety ());
  gtk_label_set_text (self->kept,
                      _ ("These readings were taken with other parts on. They hold for the rig as "
                         "it was then: read again, or put those parts back."));
  self->picture = ph_measure_picture_new ();
  gtk_box_append (self->picture_place, self->picture);
  self->rows = ph_measure_rows_new ();
  gtk_box_append (self->rows_place, self->rows);
  g_signal_connect_swapped (self->rows, "typed", G_CALLBACK (typed_cb), self);
}

GtkWidget *
ph_measure_page_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhMeasurePage *self = g_object_new (PH_TYPE_MEASURE_PAGE, NULL);
  self->document = g_object_ref (document);
  GtkWidget *matters = ph_matters_line_new (document, FALSE);
  gtk_widget_set_hexpand (matters, TRUE);
  gtk_box_append (self->matters_place, matters);
  GtkWidget *bubble = ph_measure_bubble_new (document);
  gtk_scrolled_window_set_child (self->bubble_place, bubble);
  g_signal_connect_swapped (bubble, "check-wanted", G_CALLBACK (check_wanted_cb), self);
  start (self);
  GtkToggleButton *const buttons[PH_METHODS] = { self->scales, self->hanging, self->pendulum,
                                                 self->strings };
  for (int m = 0; m < PH_METHODS; m++)
    g_signal_connect_swapped (buttons[m], "toggled", G_CALLBACK (method_cb), self);
  g_signal_connect_swapped (self->watch, "toggled", G_CALLBACK (watch_cb), self);
  g_signal_connect_swapped (self->axis, "notify::selected", G_CALLBACK (axis_cb), self);
  g_signal_connect_swapped (self->use, "clicked", G_CALLBACK (use_cb), self);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (document, "replaced", G_CALLBACK (start), self);
  g_signal_connect_swapped (document, "notify::units", G_CALLBACK (units_cb), self);
  return GTK_WIDGET (self);
}

#define WINDOW_KEY "ph-measure-window"

static void
closed_cb (gpointer parent, GObject *window)
{
  (void)window;
  g_object_set_data (parent, WINDOW_KEY, NULL);
}

static void
go_to_check_cb (GtkWidget *page)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (page));
  GtkWindow *parent = gtk_window_get_transient_for (window);
  gtk_window_close (window);
  gtk_widget_activate_action (GTK_WIDGET (parent), "win.add-check", NULL);
}

void
ph_measure_page_present (GtkWindow *parent, PhDocument *document)
{
  g_return_if_fail (GTK_IS_WINDOW (parent) && PH_IS_DOCUMENT (document));
  GtkWindow *window = g_object_get_data (G_OBJECT (parent), WINDOW_KEY);
  if (!window)
    {
      window = g_object_new (GTK_TYPE_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE,
                             "title", _ ("Measure the bow"), "default-width", 760, "default-height",
                             780, NULL);
      GtkEventController *keys = gtk_shortcut_controller_new ();
      gtk_shortcut_controller_add_shortcut (
          GTK_SHORTCUT_CONTROLLER (keys),
          gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                            gtk_named_action_new ("window.close")));
      gtk_widget_add_controller (GTK_WIDGET (window), keys);
      GtkWidget *page = ph_measure_page_new (document);
      g_signal_connect (page, "check-wanted", G_CALLBACK (go_to_check_cb), NULL);
      gtk_window_set_child (window, page);
      g_object_set_data (G_OBJECT (parent), WINDOW_KEY, window);
      g_object_weak_ref (G_OBJECT (window), closed_cb, parent);
    }
  gtk_window_present (window);
}
