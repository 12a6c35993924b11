/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows stand in the report's order (the bow, then the fitted parts as in the file), so that none
 * jumps while a number is dragged. Rows are added and dropped singly at the end; a change costs
 * two strings a row.
 */
#include "widgets/why-panel.h"

#include <glib/gi18n.h>
#include <limits.h>
#include <math.h>

#include "model/moments.h"
#include "model/settle.h"
#include "widgets/lean-words.h"
#include "widgets/live-text.h"
#include "widgets/moment-words.h"
#include "widgets/say.h"
#include "widgets/why-row.h"

struct _PhWhyPanel
{
  GtkWidget parent_instance;

  /* template */
  PhLiveText *chain;
  GtkListBox *list;
  PhWhyRow *headings, *total;

  /* owned */
  PhDocument *document;

  gboolean stale;
  gboolean selecting; /* the list is following the document */
};

G_DEFINE_FINAL_TYPE (PhWhyPanel, ph_why_panel, GTK_TYPE_WIDGET)

static void
fit_rows (PhWhyPanel *self, int n)
{
  GtkListBoxRow *spare;
  while ((spare = gtk_list_box_get_row_at_index (self->list, n)))
    gtk_list_box_remove (self->list, GTK_WIDGET (spare));
  while (n > 0 && !gtk_list_box_get_row_at_index (self->list, n - 1))
    gtk_list_box_append (self->list, ph_why_row_new ());
}

static void
follow_selection (PhWhyPanel *self)
{
  const PhReport *report = ph_document_get_shown (self->document).report;
  int part = ph_share_selected (ph_document_get_shown (self->document).rig,
                                ph_document_get_selected (self->document));
  GtkListBoxRow *row = NULL;
  for (size_t i = 0; i < report->n_shares && part != INT_MIN; i++)
    if (report->shares[i].part == part)
      row = gtk_list_box_get_row_at_index (self->list, (int)i);
  self->selecting = TRUE;
  gtk_list_box_select_row (self->list, row);
  self->selecting = FALSE;
}

static void
update (PhWhyPanel *self)
{
  const PhRig *rig = ph_document_get_shown (self->document).rig;
  const PhReport *report = ph_document_get_shown (self->document).report;
  PhSettle settle = ph_settle_of (rig, report, NULL);
  double roll = fmax (ph_shares_largest (report, false), fabs (report->roll_moment_nm));
  double pitch = fmax (ph_shares_largest (report, true), fabs (report->pitch.moment_nm));
  fit_rows (self, (int)report->n_shares);
  for (size_t i = 0; i < report->n_shares; i++)
    {
      const PhShare *share = &report->shares[i];
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int)i);
      PhWhyRow *why = PH_WHY_ROW (gtk_list_box_row_get_child (row));
      ph_why_row_show (why, ph_share_name (rig, share->part), share->roll_moment_nm, roll,
                       share->pitch_moment_nm, pitch);
      ph_say (GTK_WIDGET (row), ph_said (GTK_WIDGET (why)));
    }
  ph_why_row_show (self->total, _ ("Together"), report->roll_moment_nm, roll,
                   report->pitch.moment_nm, pitch);
  ph_live_text_show (self->chain, ph_lean_chain (&settle));
  self->stale = FALSE;
}

static void
changed_cb (PhWhyPanel *self)
{
  self->stale = TRUE;
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  update (self);
  follow_selection (self);
}

static void
selected_cb (PhWhyPanel *self)
{
  if (!self->stale)
    follow_selection (self);
}

static void
row_selected_cb (PhWhyPanel *self, GtkListBoxRow *row)
{
  if (self->selecting || !row)
    return;
  const PhReport *report = ph_document_get_shown (self->document).report;
  int i = gtk_list_box_row_get_index (row);
  if (i < 0 || (size_t)i >= report->n_shares)
    return;
  g_autofree char *id =
      g_strdup (ph_share_id (ph_document_get_shown (self->document).rig, report->shares[i].part));
  ph_document_select (self->document, id);
}

static void
ph_why_panel_map (GtkWidget *widget)
{
  PhWhyPanel *self = PH_WHY_PANEL (widget);
  if (self->stale)
    {
      update (self);
      follow_selection (self);
    }
  GTK_WIDGET_CLASS (ph_why_panel_parent_class)->map (widget);
}

static void
ph_why_panel_dispose (GObject *object)
{
  PhWhyPanel *self = PH_WHY_PANEL (object);
  GtkWidget *child;
  self->selecting = TRUE;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_why_panel_parent_class)->dispose (object);
}

static void
ph_why_panel_class_init (PhWhyPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  g_type_ensure (PH_TYPE_WHY_ROW);
  g_type_ensure (PH_TYPE_LIVE_TEXT);
  G_OBJECT_CLASS (klass)->dispose = ph_why_panel_dispose;
  widget_class->map = ph_why_panel_map;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/why-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, PhWhyPanel, chain);
  gtk_widget_class_bind_template_child (widget_class, PhWhyPanel, list);
  gtk_widget_class_bind_template_child (widget_class, PhWhyPanel, total);
  gtk_widget_class_bind_template_child (widget_class, PhWhyPanel, headings);
  gtk_widget_class_bind_template_callback (widget_class, row_selected_cb);
}

static void
ph_why_panel_init (PhWhyPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ph_why_row_show_headings (self->headings);
  ph_why_row_set_strong (self->total);
}

GtkWidget *
ph_why_panel_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhWhyPanel *self = g_object_new (PH_TYPE_WHY_PANEL, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::flipped", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::selected", G_CALLBACK (selected_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
