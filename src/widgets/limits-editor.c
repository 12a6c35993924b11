/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The three rows are made once; which of them show follows the part's kind.
 */
#include "widgets/limits-editor.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/document-hand.h"
#include "widgets/number-ref.h"
#include "widgets/quantity-entry.h"

#define ROWS 3

static const struct
{
  const char *key, *label;
  double usual; /* the program's own: ± for angles, 0 to this for counts */
  PhQuantity quantity;
  guint kinds;
} specs[ROWS] = {
  { "swing_deg", N_ ("Sideways, + to the left"), PH_LIMIT_SWING_DEG, PH_QUANTITY_ANGLE,
    1u << PH_PART_BAR | 1u << PH_PART_BRACKET },
  { "lift_deg", N_ ("Up and down, + up"), PH_LIMIT_LIFT_DEG, PH_QUANTITY_ANGLE, 1u << PH_PART_BAR },
  { "count", N_ ("Weights"), PH_LIMIT_COUNT, PH_QUANTITY_COUNT, 1u << PH_PART_WEIGHTS },
};

typedef struct
{
  GtkWidget *box, *from, *to, *usual;
} Row;

struct _PhLimitsEditor
{
  GtkWidget parent_instance;

  GtkWidget *expander; /* owned child */
  GtkSwitch *lock;
  GtkLabel *refusal, *hint;
  Row rows[ROWS];
  PhDocument *document; /* owned */
  gboolean of_end_stack;
  gboolean setting; /* the switch follows the document */
};

G_DEFINE_FINAL_TYPE (PhLimitsEditor, ph_limits_editor, GTK_TYPE_WIDGET)

static const PhPart *
part_of (PhLimitsEditor *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int i = ph_document_get_selected_part (self->document);
  if (i >= 0 && self->of_end_stack)
    i = rig->parts[i].kind == PH_PART_BAR ? ph_end_stack (rig, i) : -1;
  return i < 0 ? NULL : &rig->parts[i];
}

static const PhLimits *
limits_of (const PhPart *part, int row)
{
  const PhLimits *const limits[ROWS] = { &part->limit_swing, &part->limit_lift,
                                         &part->limit_count };
  return limits[row];
}

static double
usual_lo (int row)
{
  return specs[row].quantity == PH_QUANTITY_COUNT ? 0 : -specs[row].usual;
}

static void
tell (PhLimitsEditor *self, const char *text)
{
  gtk_label_set_text (self->refusal, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), text != NULL);
}

static void
show_row (PhLimitsEditor *self, const PhPart *part, int row)
{
  Row *r = &self->rows[row];
  gboolean has = (specs[row].kinds & 1u << part->kind) != 0;
  const PhLimits *limits = limits_of (part, row);
  gtk_widget_set_visible (r->box, has);
  if (!has)
    return;
  ph_quantity_entry_set_value (PH_QUANTITY_ENTRY (r->from),
                               limits->given ? limits->lo : usual_lo (row));
  ph_quantity_entry_set_value (PH_QUANTITY_ENTRY (r->to),
                               limits->given ? limits->hi : specs[row].usual);
  gtk_widget_set_sensitive (r->usual, limits->given);
}

static void
follow_cb (PhLimitsEditor *self)
{
  const PhPart *part = part_of (self);
  guint kinds = specs[0].kinds | specs[1].kinds | specs[2].kinds;
  gboolean has = part && (kinds & 1u << part->kind);
  gtk_widget_set_visible (GTK_WIDGET (self), has);
  if (!has)
    return;
  self->setting = TRUE;
  gtk_switch_set_active (self->lock, part->locked);
  self->setting = FALSE;
  for (int row = 0; row < ROWS; row++)
    show_row (self, part, row);
  gtk_widget_set_visible (GTK_WIDGET (self->hint), part->kind != PH_PART_WEIGHTS);
}

static void
selected_cb (PhLimitsEditor *self)
{
  tell (self, NULL);
  follow_cb (self);
}

static gboolean
lock_cb (PhLimitsEditor *self, gboolean on, GtkSwitch *widget)
{
  const PhPart *part = part_of (self);
  g_autoptr (GError) error = NULL;
  if (self->setting || !part)
    return FALSE;
  g_autofree char *id = g_strdup (part->id);
  ph_document_set_locked (self->document, id, on, &error);
  tell (self, error ? error->message : NULL);
  gtk_switch_set_state (widget, error ? !on : on);
  return TRUE;
}

static int
row_of (PhLimitsEditor *self, GtkWidget *widget)
{
  for (int row = 0; row < ROWS; row++)
    if (gtk_widget_is_ancestor (widget, self->rows[row].box))
      return row;
  return 0;
}

/* The end that was typed; the other as it stands. */
static char *
commit_cb (PhQuantityEntry *entry, double value, gpointer data)
{
  PhLimitsEditor *self = data;
  const PhPart *part = part_of (self);
  g_autoptr (GError) error = NULL;
  if (!part)
    return NULL;
  int row = row_of (self, GTK_WIDGET (entry));
  const PhLimits *limits = limits_of (part, row);
  double lo = limits->given ? limits->lo : usual_lo (row);
  double hi = limits->given ? limits->hi : specs[row].usual;
  *(GTK_WIDGET (entry) == self->rows[row].from ? &lo : &hi) = value;
  if (lo > hi)
    return g_strdup (_ ("From must not lie above to."));
  g_autofree char *id = g_strdup (part->id);
  if (ph_document_set_limits (self->document, id, specs[row].key, lo, hi, &error))
    return NULL;
  return g_strdup (error->message);
}

static void
usual_cb (PhLimitsEditor *self, GtkWidget *button)
{
  const PhPart *part = part_of (self);
  g_autoptr (GError) error = NULL;
  if (!part)
    return;
  g_autofree char *id = g_strdup (part->id);
  ph_document_clear_limits (self->document, id, specs[row_of (self, button)].key, &error);
  tell (self, error ? error->message : NULL);
}

static void
ph_limits_editor_dispose (GObject *object)
{
  PhLimitsEditor *self = PH_LIMITS_EDITOR (object);
  if (self->document)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_pointer (&self->expander, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_limits_editor_parent_class)->dispose (object);
}

static void
ph_limits_editor_class_init (PhLimitsEditorClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_limits_editor_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
new_label (const char *text)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  return label;
}

static GtkWidget *
new_entry (PhLimitsEditor *self, int row, const char *end)
{
  GtkWidget *entry = ph_quantity_entry_new (specs[row].quantity);
  g_autofree char *name = g_strdup_printf ("%s: %s", _ (specs[row].label), end);
  ph_quantity_entry_set_label (PH_QUANTITY_ENTRY (entry), name);
  ph_quantity_entry_set_width_chars (PH_QUANTITY_ENTRY (entry), 6);
  ph_quantity_entry_set_commit (PH_QUANTITY_ENTRY (entry), commit_cb, self);
  return entry;
}

static void
add_row (PhLimitsEditor *self, GtkWidget *box, int row)
{
  Row *r = &self->rows[row];
  GtkWidget *ends = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *name = g_strdup_printf (_ ("%s: usual limits"), _ (specs[row].label));
  r->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  r->from = new_entry (self, row, _ ("from"));
  r->to = new_entry (self, row, _ ("to"));
  r->usual = gtk_button_new_with_label (_ ("Usual"));
  /* Said outright: a button that is not shown yet has no name of its own. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (r->usual), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Usual"), -1);
  gtk_widget_set_valign (r->usual, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (r->usual), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  -1);
  g_signal_connect_swapped (r->usual, "clicked", G_CALLBACK (usual_cb), self);
  GtkWidget *const children[] = { r->from, new_label ("–"), r->to, r->usual };
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_box_append (GTK_BOX (ends), children[i]);
  gtk_box_append (GTK_BOX (r->box), new_label (_ (specs[row].label)));
  gtk_box_append (GTK_BOX (r->box), ends);
  gtk_box_append (GTK_BOX (box), r->box);
}

static GtkWidget *
new_lock (PhLimitsEditor *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *label = new_label (_ ("Keep as it is"));
  self->lock = GTK_SWITCH (gtk_switch_new ());
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (GTK_WIDGET (self->lock), GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->lock), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Keep as it is"), -1);
  g_signal_connect_swapped (self->lock, "state-set", G_CALLBACK (lock_cb), self);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->lock));
  return row;
}

static void
ph_limits_editor_init (PhLimitsEditor *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  self->expander = gtk_expander_new (_ ("What may change"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What may change"), -1);
  self->refusal = GTK_LABEL (new_label (NULL));
  self->hint = GTK_LABEL (new_label (_ ("A bar or mount that points forward has no joint: it turns "
                                        "only where limits are typed here.")));
  gtk_widget_add_css_class (GTK_WIDGET (self->refusal), "error-text");
  gtk_widget_add_css_class (GTK_WIDGET (self->hint), "quiet");
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), FALSE);
  gtk_widget_add_css_class (self->expander, "form-more");
  gtk_widget_add_css_class (box, "limits");
  gtk_box_append (GTK_BOX (box), new_lock (self));
  for (int row = 0; row < ROWS; row++)
    add_row (self, box, row);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->refusal));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->hint));
  gtk_expander_set_child (GTK_EXPANDER (self->expander), box);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
}

/* The same words as in the bar's own would be two things of one name. */
static void
name_for_end_stack (PhLimitsEditor *self)
{
  gtk_expander_set_label (GTK_EXPANDER (self->expander), _ ("What may change of its weights"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("What may change of its weights"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->lock), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Keep its weights as they are"), -1);
}

GtkWidget *
ph_limits_editor_new (PhDocument *document, gboolean of_end_stack)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhLimitsEditor *self = g_object_new (PH_TYPE_LIMITS_EDITOR, NULL);
  self->of_end_stack = of_end_stack;
  if (of_end_stack)
    name_for_end_stack (self);
  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (follow_cb), self);
  g_signal_connect_swapped (document, "notify::selected", G_CALLBACK (selected_cb), self);
  follow_cb (self);
  return GTK_WIDGET (self);
}
