/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Rows are made from form-specs.c. What decides whether they must be made anew is kept as a short
 * text, the shape: which part, and which of its numbers apply. A change of numbers refreshes the
 * rows and costs one trial of a step for each slider.
 */
#include "widgets/part-form.h"

#include <glib/gi18n.h>
#include <string.h>

#include "widgets/form-row.h"
#include "widgets/form-specs.h"
#include "widgets/limits-editor.h"
#include "widgets/matters-line.h"
#include "widgets/part-words.h"

struct _PhPartForm
{
  GtkWidget parent_instance;

  /* Template widgets */
  GtkScrolledWindow *scroller;
  GtkLabel *title, *source, *refusal, *nothing;
  GtkWidget *fitted_box;
  GtkSwitch *fitted;
  GtkBox *main, *more_box;
  GtkExpander *more;

  /* Owned */
  PhDocument *document;
  GPtrArray *rows;  /* borrowed PhFormRow, children of the boxes */
  char *shape;      /* null: nothing is built */
  gboolean setting; /* the switch follows the document */
};

G_DEFINE_FINAL_TYPE (PhPartForm, ph_part_form, GTK_TYPE_WIDGET)

/* −2: nothing is selected; −1: the bow. */
static int
selected (PhPartForm *self)
{
  return ph_document_get_selected (self->document) ? ph_document_get_selected_part (self->document)
                                                   : -2;
}

/* Which part, which numbers. */
static char *
shape_now (PhPartForm *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = selected (self);
  if (part < -1)
    return NULL;
  GString *shape = g_string_new (part < 0 ? "bow" : rig->parts[part].id);
  gsize n;
  const PhFormSpec *specs = ph_form_specs (part, &n);
  for (gsize i = 0; i < n; i++)
    g_string_append_c (shape, ph_form_spec_applies (&specs[i], rig, part) ? '+' : '-');
  size_t sockets = part < 0 ? rig->bow.n_mounts : rig->parts[part].n_sockets;
  const PhSocket *socket = part < 0 ? rig->bow.mounts : rig->parts[part].sockets;
  for (size_t i = 0; i < sockets; i++)
    g_string_append_printf (shape, ":%s", socket[i].id);
  return g_string_free (shape, FALSE);
}

static void
add_heading (GtkBox *box, const char *text)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "form-heading");
  gtk_box_append (box, label);
}

static PhFormRow *
add_row (PhPartForm *self, GtkBox *box, PhNumberRef *ref, const char *label)
{
  GtkWidget *row = ph_form_row_new (self->document, ref, label);
  ph_number_ref_clear (ref);
  gtk_box_append (box, row);
  g_ptr_array_add (self->rows, row);
  return PH_FORM_ROW (row);
}

static void
add_spec (PhPartForm *self, const PhFormSpec *spec, const char *part_id)
{
  GtkBox *box = spec->more ? self->more_box : self->main;
  if (spec->heading)
    add_heading (box, _ (spec->heading));
  PhNumberRef ref = ph_number_ref (spec->of, part_id, spec->key, spec->component);
  g_autofree char *label = ph_form_spec_label (spec);
  PhFormRow *row = add_row (self, box, &ref, label);
  if (spec->remark)
    ph_form_row_set_remark (row, _ (spec->remark));
}

/* Where mounts of the bow, or sockets of a bracket, are. */
static void
add_sockets (PhPartForm *self, const char *part_id, const PhSocket *sockets, size_t n)
{
  const char *own[] = { _ ("Along"), _ ("Across, + to the left"), _ ("Upward") };
  for (size_t i = 0; i < n; i++)
    {
      g_autofree char *heading =
          g_strdup_printf (part_id ? _ ("Socket %s") : _ ("Mount %s"), sockets[i].id);
      add_heading (self->more_box, heading);
      for (int c = 0; c < 3; c++)
        {
          PhNumberRef ref = ph_number_ref_socket (part_id, sockets[i].id, c);
          add_row (self, self->more_box, &ref, own[c]);
        }
    }
}

/* What would be best to measure, and the way there. */
static void
add_measuring (PhPartForm *self)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Measure the bow…"));
  /* Said outright: a button that is not shown yet has no name of its own. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Measure the bow…"), -1);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), "win.measure");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_box_append (self->main, ph_matters_line_new (self->document, FALSE));
  gtk_box_append (self->main, button);
}

static void
clear_box (GtkBox *box)
{
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))))
    gtk_box_remove (box, child);
}

static void
build (PhPartForm *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = selected (self);
  gsize n;
  const PhFormSpec *specs = ph_form_specs (part, &n);
  g_autofree char *id = part < 0 ? NULL : g_strdup (rig->parts[part].id);
  if (part < 0)
    add_measuring (self);
  for (gsize i = 0; i < n; i++)
    if (ph_form_spec_applies (&specs[i], rig, part))
      add_spec (self, &specs[i], id);
  if (part < 0)
    add_sockets (self, NULL, rig->bow.mounts, rig->bow.n_mounts);
  else
    add_sockets (self, id, rig->parts[part].sockets, rig->parts[part].n_sockets);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

static void
show_head (PhPartForm *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = selected (self);
  const char *name = part < 0 ? _ ("Bow") : ph_part_name (&rig->parts[part]);
  g_autofree char *source =
      part < 0 ? ph_words_bow_source (rig)
               : ph_words_source (&rig->parts[part], ph_document_get_units (self->document));
  gtk_label_set_text (self->title, name);
  gtk_label_set_text (self->source, source);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_visible (self->fitted_box, part >= 0);
  self->setting = TRUE;
  gtk_switch_set_active (self->fitted, part >= 0 && !rig->parts[part].off);
  self->setting = FALSE;
}

static void
show_nothing (PhPartForm *self, gboolean nothing)
{
  gtk_widget_set_visible (GTK_WIDGET (self->scroller), !nothing);
  gtk_widget_set_visible (GTK_WIDGET (self->nothing), nothing);
}

/* The document changed: other rows where another part is shown, else other values. */
static void
follow_cb (PhPartForm *self)
{
  g_autofree char *shape = shape_now (self);
  gboolean same = g_strcmp0 (shape, self->shape) == 0;
  if (!same)
    {
      g_free (self->shape);
      self->shape = g_steal_pointer (&shape);
      g_ptr_array_set_size (self->rows, 0);
      clear_box (self->main);
      clear_box (self->more_box);
      gtk_widget_hide (GTK_WIDGET (self->refusal));
    }
  show_nothing (self, !self->shape);
  if (!self->shape)
    return;
  show_head (self);
  if (!same)
    build (self);
  for (guint i = 0; same && i < self->rows->len; i++)
    ph_form_row_refresh (g_ptr_array_index (self->rows, i));
}

static gboolean
fitted_cb (GtkSwitch *widget, gboolean on, PhPartForm *self)
{
  int part = selected (self);
  if (self->setting || part < 0)
    return FALSE;
  g_autoptr (GError) error = NULL;
  g_autofree char *id = g_strdup (ph_document_get_rig (self->document)->parts[part].id);
  gboolean done = ph_document_set_off (self->document, id, !on, &error);
  gtk_label_set_text (self->refusal, error ? error->message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), !done);
  gtk_switch_set_state (widget, done ? on : !on);
  if (!done)
    show_head (self);
  return TRUE;
}

static void
ph_part_form_dispose (GObject *object)
{
  PhPartForm *self = PH_PART_FORM (object);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_ptr_array_set_size (self->rows, 0);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_part_form_parent_class)->dispose (object);
}

static void
ph_part_form_finalize (GObject *object)
{
  PhPartForm *self = PH_PART_FORM (object);
  g_ptr_array_unref (self->rows);
  g_free (self->shape);
  G_OBJECT_CLASS (ph_part_form_parent_class)->finalize (object);
}

static void
ph_part_form_class_init (PhPartFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_part_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = ph_part_form_finalize;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/part-form.ui");
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, scroller);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, title);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, source);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, refusal);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, nothing);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, fitted_box);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, fitted);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, main);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, more);
  gtk_widget_class_bind_template_child (widget_class, PhPartForm, more_box);
  gtk_widget_class_bind_template_callback (widget_class, fitted_cb);
}

static void
ph_part_form_init (PhPartForm *self)
{
  self->rows = g_ptr_array_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->more), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("More numbers"), -1);
}

GtkWidget *
ph_part_form_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhPartForm *self = g_object_new (PH_TYPE_PART_FORM, NULL);
  self->document = g_object_ref (document);
  GtkWidget *content = gtk_widget_get_parent (GTK_WIDGET (self->main));
  gtk_box_append (GTK_BOX (content), ph_limits_editor_new (document, FALSE));
  gtk_box_append (GTK_BOX (content), ph_limits_editor_new (document, TRUE));
  static const char *const watched[] = { "changed", "notify::selected", "notify::units" };
  for (gsize i = 0; i < G_N_ELEMENTS (watched); i++)
    g_signal_connect_swapped (document, watched[i], G_CALLBACK (follow_cb), self);
  follow_cb (self);
  return GTK_WIDGET (self);
}

void
ph_part_form_edit (PhPartForm *self)
{
  g_return_if_fail (PH_IS_PART_FORM (self));
  if (self->rows->len)
    ph_form_row_edit (g_ptr_array_index (self->rows, 0));
}
