/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Answers take some ten milliseconds, so they are asked for once a change has come to rest, and
 * only while the panel is seen. A look at one is the document's preview: the open rig is never
 * touched by it.
 */
#include "widgets/level-panel.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-hand.h"
#include "widgets/answer-row.h"
#include "widgets/quantity-entry.h"
#include "widgets/tilt-entry.h"
#include "widgets/tilt-words.h"

#define REST_MS 150
/* A longer list helps nobody. */
#define ROWS_MOST 10

struct _PhLevelPanel
{
  GtkWidget parent_instance;

  /* template */
  GtkLabel *title, *say, *wanted_label;
  GtkToggleButton *kind_all, *kind_lighter, *kind_other;
  GtkBox *wanted_box, *within_box;
  GtkListBox *list;
  GtkWidget *check_first;

  GtkWidget *wanted, *within; /* a tilt, a quantity entry */

  /* owned */
  PhDocument *document;
  PhPartAnswers answers;
  double tolerance_deg;
  guint rest; /* source of a pending update, or 0 */
  gboolean stale;
};

enum
{
  REFUSED,
  CHECK_WANTED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhLevelPanel, ph_level_panel, GTK_TYPE_WIDGET)

static PhLevelKind
kind_now (PhLevelPanel *self)
{
  if (gtk_toggle_button_get_active (self->kind_lighter))
    return PH_LEVEL_LIGHTER;
  return gtk_toggle_button_get_active (self->kind_other) ? PH_LEVEL_OTHER_SIDE : PH_LEVEL_ALL;
}

static const PhPartAnswer *
answer_of (PhLevelPanel *self, PhAnswerRow *row)
{
  int i = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row));
  return i >= 0 && (size_t)i < self->answers.n ? &self->answers.answers[i] : NULL;
}

static void
apply (PhLevelPanel *self, PhAnswerRow *row)
{
  const PhPartAnswer *answer = answer_of (self, row);
  g_autoptr (GError) error = NULL;
  if (!answer || self->answers.n == 0)
    return;
  PhPartAnswer copy = *answer; /* the list may go while it is done */
  ph_document_preview_answer (self->document, NULL);
  if (!ph_document_apply_answer (self->document, &copy, &error))
    g_signal_emit (self, signals[REFUSED], 0, error->message);
}

static void
apply_cb (PhLevelPanel *self, PhAnswerRow *row)
{
  apply (self, row);
}

static void
row_activated_cb (PhLevelPanel *self, GtkListBoxRow *row)
{
  if (ph_answer_row_can_apply (PH_ANSWER_ROW (row)))
    apply (self, PH_ANSWER_ROW (row));
}

static void
look_cb (PhLevelPanel *self, gboolean on, PhAnswerRow *row)
{
  ph_document_preview_answer (self->document, on ? answer_of (self, row) : NULL);
}

/* What the list shows. */

static void
clear_list (PhLevelPanel *self)
{
  GtkListBoxRow *row;
  while ((row = gtk_list_box_get_row_at_index (self->list, 0)))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
}

static void
add_row (PhLevelPanel *self, const PhPartAnswer *answer)
{
  g_autofree char *obstacle = ph_document_answer_obstacle (self->document, answer);
  PhAnswerWords words = ph_answer_words_of (
      ph_document_get_rig (self->document), ph_document_get_compiled (self->document),
      &self->answers, answer, ph_document_get_units (self->document));
  GtkWidget *row = ph_answer_row_new (&words, obstacle);
  ph_answer_words_clear (&words);
  g_signal_connect_swapped (row, "apply", G_CALLBACK (apply_cb), self);
  g_signal_connect_swapped (row, "look", G_CALLBACK (look_cb), self);
  gtk_list_box_append (self->list, row);
}

/* The model's reasons are plain sentences in small letters. */
static char *
sentence (const char *text)
{
  g_autofree char *first = g_utf8_strup (text, (gssize)(g_utf8_next_char (text) - text));
  const char *rest = g_utf8_next_char (text);
  return g_strconcat (first, rest, g_str_has_suffix (text, ".") ? "" : ".", NULL);
}

static void
say_what_stands (PhLevelPanel *self)
{
  const char *first = self->answers.hand_fitted
                          ? NULL
                          : _ ("Do one check first: until then the size of these changes is a "
                               "guess, and only their direction can be trusted.");
  g_autofree char *reason = self->answers.reason ? sentence (self->answers.reason) : NULL;
  g_autofree char *note = self->answers.note ? sentence (self->answers.note) : NULL;
  const char *parts[] = { reason, first, note };
  g_autoptr (GString) text = g_string_new (NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i])
      g_string_append_printf (text, "%s%s", text->len ? "\n" : "", parts[i]);
  gtk_label_set_text (self->say, text->str);
  gtk_widget_set_visible (GTK_WIDGET (self->say), text->len > 0);
  gtk_widget_set_visible (self->check_first, !self->answers.hand_fitted);
}

static void
show_wanted (PhLevelPanel *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  gboolean level = ph_tilt_has_level (rig);
  gtk_label_set_text (self->title, level ? _ ("Centre the bubble") : _ ("Set the lean"));
  gtk_label_set_text (self->wanted_label, level ? _ ("Wanted bubble") : _ ("Wanted lean"));
  ph_tilt_entry_set_value (PH_TILT_ENTRY (self->wanted), rig->archer.wanted_bubble_deg, level);
  ph_quantity_entry_set_value (PH_QUANTITY_ENTRY (self->within), self->tolerance_deg);
}

static void
update (PhLevelPanel *self)
{
  PhLevelQuestion question = { kind_now (self), NAN, self->tolerance_deg };
  self->stale = FALSE;
  ph_document_preview_answer (self->document, NULL);
  ph_part_answers_clear (&self->answers);
  self->answers = ph_document_level (self->document, &question);
  show_wanted (self);
  clear_list (self);
  for (size_t i = 0; i < MIN (self->answers.n, ROWS_MOST); i++)
    add_row (self, &self->answers.answers[i]);
  gtk_widget_set_visible (GTK_WIDGET (self->list), self->answers.n > 0);
  say_what_stands (self);
}

static gboolean
rest_cb (gpointer data)
{
  PhLevelPanel *self = data;
  if (ph_document_in_gesture (self->document))
    return G_SOURCE_CONTINUE;
  self->rest = 0;
  if (self->stale && gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (PhLevelPanel *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)) && !self->rest)
    self->rest = g_timeout_add (REST_MS, rest_cb, self);
}

static void
kind_cb (PhLevelPanel *self, GtkToggleButton *button)
{
  if (self->document && gtk_toggle_button_get_active (button))
    update (self);
}

static void
check_first_cb (PhLevelPanel *self)
{
  g_signal_emit (self, signals[CHECK_WANTED], 0);
}

/* What is typed. */

static char *
commit_wanted (PhTiltEntry *entry, double value, gpointer data)
{
  PhLevelPanel *self = data;
  g_autoptr (GError) error = NULL;
  (void)entry;
  if (ph_document_set_wanted_bubble (self->document, value, &error))
    return NULL;
  return g_strdup (error->message);
}

static char *
commit_within (PhQuantityEntry *entry, double value, gpointer data)
{
  PhLevelPanel *self = data;
  (void)entry;
  if (!(value > 0) || value > 10)
    return g_strdup (_ ("Must lie above 0° and at most at 10°."));
  self->tolerance_deg = value;
  changed_cb (self);
  return NULL;
}

static GtkWidget *
within_new (PhLevelPanel *self)
{
  GtkWidget *entry = ph_quantity_entry_new (PH_QUANTITY_ANGLE);
  ph_quantity_entry_set_label (PH_QUANTITY_ENTRY (entry), _ ("Near enough"));
  ph_quantity_entry_set_commit (PH_QUANTITY_ENTRY (entry), commit_within, self);
  ph_quantity_entry_set_step (PH_QUANTITY_ENTRY (entry), 0.1);
  ph_quantity_entry_set_width_chars (PH_QUANTITY_ENTRY (entry), 6);
  return entry;
}

/* The object. */

static void
ph_level_panel_map (GtkWidget *widget)
{
  PhLevelPanel *self = PH_LEVEL_PANEL (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_level_panel_parent_class)->map (widget);
}

static void
ph_level_panel_unmap (GtkWidget *widget)
{
  PhLevelPanel *self = PH_LEVEL_PANEL (widget);
  GTK_WIDGET_CLASS (ph_level_panel_parent_class)->unmap (widget);
  if (self->document)
    ph_document_preview_answer (self->document, NULL);
}

static void
ph_level_panel_dispose (GObject *object)
{
  PhLevelPanel *self = PH_LEVEL_PANEL (object);
  GtkWidget *child;
  g_clear_handle_id (&self->rest, g_source_remove);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  ph_part_answers_clear (&self->answers);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_level_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
#define BIND(child) gtk_widget_class_bind_template_child (widget_class, PhLevelPanel, child)
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/level-panel.ui");
  BIND (title);
  BIND (say);
  BIND (wanted_label);
  BIND (kind_all);
  BIND (kind_lighter);
  BIND (kind_other);
  BIND (wanted_box);
  BIND (within_box);
  BIND (list);
  BIND (check_first);
#undef BIND
  gtk_widget_class_bind_template_callback (widget_class, kind_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_bind_template_callback (widget_class, check_first_cb);
}

static void
ph_level_panel_class_init (PhLevelPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_level_panel_dispose;
  widget_class->map = ph_level_panel_map;
  widget_class->unmap = ph_level_panel_unmap;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  bind_children (widget_class);
  signals[REFUSED] = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[CHECK_WANTED] = g_signal_new ("check-wanted", G_TYPE_FROM_CLASS (klass),
                                        G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
ph_level_panel_init (PhLevelPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->tolerance_deg = PH_LEVEL_TOLERANCE_DEG;
  self->wanted = ph_tilt_entry_new (_ ("Wanted bubble"), commit_wanted, self);
  self->within = within_new (self);
  gtk_box_append (self->wanted_box, self->wanted);
  gtk_box_append (self->within_box, self->within);
}

GtkWidget *
ph_level_panel_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhLevelPanel *self = g_object_new (PH_TYPE_LEVEL_PANEL, NULL);
  self->document = g_object_ref (document);
  self->stale = TRUE;
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::units", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
