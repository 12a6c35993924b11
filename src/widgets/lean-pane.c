/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The beam keeps itself up to date; the pane keeps the words around it.
 */
#include "widgets/lean-pane.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "model/moments.h"
#include "widgets/balance-beam.h"
#include "widgets/lean-words.h"
#include "widgets/live-text.h"

struct _PhLeanPane
{
  GtkWidget parent_instance;

  /* template */
  PhLiveText *sums, *chain;

  /* owned */
  PhDocument *document;

  gboolean stale;
};

G_DEFINE_FINAL_TYPE (PhLeanPane, ph_lean_pane, GTK_TYPE_WIDGET)

/* "0.23 left · 0.17 right · hand 0.04 N·m": also for a hand whose block is too narrow for its name.
 */
static void
update_sums (PhLeanPane *self, const PhReport *report)
{
  PhSides sides = ph_sides_of (report, 0.0, PH_BLOCK_REST);
  PhHolding holding = ph_holding_of (report);
  g_autofree char *left = ph_format_number (sides.left.total_nm, 2);
  g_autofree char *right = ph_format_number (sides.right.total_nm, 2);
  g_autofree char *hand = ph_format_number (fabs (holding.hand_nm), 2);
  g_autofree char *text = g_strdup_printf (_ ("%s left · %s right · hand %s N·m"), left, right,
                                           report->hand_fitted ? hand : "?");
  ph_sides_clear (&sides);
  ph_live_text_show (self->sums, text);
}

static void
update (PhLeanPane *self)
{
  const PhReport *report = ph_document_get_shown (self->document).report;
  PhSettle settle = ph_settle_of (ph_document_get_shown (self->document).rig, report, NULL);
  update_sums (self, report);
  ph_live_text_show (self->chain, ph_lean_chain (&settle));
  self->stale = FALSE;
}

static void
changed_cb (PhLeanPane *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
}

static void
ph_lean_pane_map (GtkWidget *widget)
{
  PhLeanPane *self = PH_LEAN_PANE (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_lean_pane_parent_class)->map (widget);
}

static void
ph_lean_pane_dispose (GObject *object)
{
  PhLeanPane *self = PH_LEAN_PANE (object);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_lean_pane_parent_class)->dispose (object);
}

static void
ph_lean_pane_class_init (PhLeanPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  g_type_ensure (PH_TYPE_LIVE_TEXT);
  G_OBJECT_CLASS (klass)->dispose = ph_lean_pane_dispose;
  widget_class->map = ph_lean_pane_map;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/lean-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, PhLeanPane, sums);
  gtk_widget_class_bind_template_child (widget_class, PhLeanPane, chain);
}

static void
ph_lean_pane_init (PhLeanPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
ph_lean_pane_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhLeanPane *self = g_object_new (PH_TYPE_LEAN_PANE, NULL);
  GtkWidget *beam = ph_balance_beam_new (document);
  self->document = g_object_ref (document);
  gtk_accessible_update_property (GTK_ACCESSIBLE (beam), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What pulls the bow to either side"), -1);
  gtk_widget_insert_before (beam, GTK_WIDGET (self), GTK_WIDGET (self->chain));
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::flipped", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
