/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A handful of rows, made anew when the checks change; while something else is dragged nothing is
 * done.
 */
#include "widgets/check-list.h"

#include <glib/gi18n.h>

#include "document/document-hand.h"
#include "widgets/check-row.h"
#include "widgets/reading-result.h"
#include "widgets/tilt-words.h"

/* So many of the newest are shown at first, and each time more are asked for. */
#define ROWS_AT_ONCE 25

struct _PhCheckList
{
  GtkWidget parent_instance;

  GtkWidget *box; /* owned child */
  GtkListBox *list;
  GtkLabel *held;
  GtkWidget *more;
  size_t first;         /* index of the first check that is shown */
  guint rows;           /* how many may be shown */
  PhDocument *document; /* owned */
  gboolean stale;
};

enum
{
  EDIT,
  REFUSED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhCheckList, ph_check_list, GTK_TYPE_WIDGET)

/* Of the check of a row; what comes before the first row is not shown. */
static guint
index_of (PhCheckList *self, gpointer row)
{
  return (guint)self->first + (guint)gtk_list_box_row_get_index (row);
}

static void
tell (PhCheckList *self, const GError *error)
{
  if (error)
    g_signal_emit (self, signals[REFUSED], 0, error->message);
}

static void
edit_cb (PhCheckList *self, GtkWidget *row)
{
  g_signal_emit (self, signals[EDIT], 0, index_of (self, row));
}

static void
aside_cb (PhCheckList *self, GtkWidget *row)
{
  g_autoptr (GError) error = NULL;
  guint i = index_of (self, row);
  const PhArcher *archer = &ph_document_get_rig (self->document)->archer;
  if (i < archer->n_checks)
    ph_document_set_check_aside (self->document, i, !archer->checks[i].aside, &error);
  tell (self, error);
}

static void
delete_cb (PhCheckList *self, GtkWidget *row)
{
  g_autoptr (GError) error = NULL;
  ph_document_delete_check (self->document, index_of (self, row), &error);
  tell (self, error);
}

static void
clear (PhCheckList *self)
{
  GtkListBoxRow *row;
  while ((row = gtk_list_box_get_row_at_index (self->list, 0)))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
}

static void
show_more (PhCheckList *self)
{
  g_autofree char *text =
      g_strdup_printf (ngettext ("Show %zu Earlier Check", "Show %zu Earlier Checks", self->first),
                       MIN (self->first, (size_t)ROWS_AT_ONCE));
  gtk_button_set_label (GTK_BUTTON (self->more), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->more), GTK_ACCESSIBLE_PROPERTY_LABEL, text,
                                  -1);
  gtk_widget_set_visible (self->more, self->first > 0);
}

static void
update (PhCheckList *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  gboolean level = ph_tilt_has_level (rig);
  PhCheckRecord *records = ph_check_records_of (rig);
  clear (self);
  size_t n = rig->archer.n_checks;
  self->first = n > self->rows ? n - self->rows : 0;
  for (size_t i = self->first; i < n; i++)
    {
      GtkWidget *row = ph_check_row_new (&rig->archer.checks[i], &records[i], level);
      g_signal_connect_swapped (row, "edit", G_CALLBACK (edit_cb), self);
      g_signal_connect_swapped (row, "aside", G_CALLBACK (aside_cb), self);
      g_signal_connect_swapped (row, "delete", G_CALLBACK (delete_cb), self);
      gtk_list_box_append (self->list, row);
    }
  show_more (self);
  g_autofree char *held = ph_check_held_words (records, n);
  gtk_label_set_text (self->held, held ? held : _ ("Nothing was foretold yet: from the next check on, each is."));
  free (records);
  self->stale = FALSE;
}

/* Rows are widgets with the focus in them: never take them away inside their own signal. */
static gboolean
update_cb (gpointer data)
{
  PhCheckList *self = data;
  if (self->document && self->stale && gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
  return G_SOURCE_REMOVE;
}

static void
more_cb (PhCheckList *self)
{
  self->rows += ROWS_AT_ONCE;
  update (self);
}

static void
changed_cb (PhCheckList *self)
{
  if (!self->stale)
    g_idle_add_full (G_PRIORITY_HIGH_IDLE, update_cb, g_object_ref (self), g_object_unref);
  self->stale = TRUE;
}

static void
ph_check_list_map (GtkWidget *widget)
{
  PhCheckList *self = PH_CHECK_LIST (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_check_list_parent_class)->map (widget);
}

static void
ph_check_list_dispose (GObject *object)
{
  PhCheckList *self = PH_CHECK_LIST (object);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_check_list_parent_class)->dispose (object);
}

static void
ph_check_list_class_init (PhCheckListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_check_list_dispose;
  widget_class->map = ph_check_list_map;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  signals[EDIT] = g_signal_new ("edit", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[REFUSED] = g_signal_new ("refused", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
ph_check_list_init (PhCheckList *self)
{
  GtkWidget *heading = gtk_label_new (_ ("The record"));
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->held = GTK_LABEL (gtk_label_new (NULL));
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_label_set_xalign (self->held, 0);
  gtk_label_set_wrap (self->held, TRUE);
  gtk_widget_add_css_class (heading, "hand-heading");
  gtk_widget_add_css_class (GTK_WIDGET (self->held), "hand-strong");
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_NONE);
  gtk_list_box_set_show_separators (self->list, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Bubble checks"), -1);
  self->rows = ROWS_AT_ONCE;
  self->more = gtk_button_new_with_label ("");
  gtk_widget_set_halign (self->more, GTK_ALIGN_START);
  gtk_widget_set_visible (self->more, FALSE);
  g_signal_connect_swapped (self->more, "clicked", G_CALLBACK (more_cb), self);
  GtkWidget *const children[] = { heading, GTK_WIDGET (self->held), self->more,
                                  GTK_WIDGET (self->list) };
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_box_append (GTK_BOX (self->box), children[i]);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}

GtkWidget *
ph_check_list_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhCheckList *self = g_object_new (PH_TYPE_CHECK_LIST, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
