/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/vial-scale.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/quantity-entry.h"
#include "widgets/tilt-words.h"
#include "widgets/vial-picker.h"

#define KEY "vial_deg_per_mark"

struct _PhVialScale
{
  GtkWidget parent_instance;

  GtkWidget *expander; /* owned child */
  GtkWidget *tilt, *picker, *keep;
  GtkEntry *marks;
  GtkLabel *say, *worth;
  PhDocument *document; /* owned */
};

G_DEFINE_FINAL_TYPE (PhVialScale, ph_vial_scale, GTK_TYPE_WIDGET)

int
ph_vial_sight (const PhRig *rig)
{
  if (!ph_tilt_has_level (rig))
    return -1;
  for (size_t i = 0; i < rig->n_parts; i++)
    if (rig->parts[i].kind == PH_PART_ACCESSORY && !isnan (rig->parts[i].aperture_mm[0])
        && ph_rig_is_fitted (rig, i))
      return (int)i;
  return -1;
}

double
ph_vial_deg_per_mark (const PhRig *rig)
{
  int sight = ph_vial_sight (rig);
  return sight < 0 ? (double)NAN : rig->parts[sight].vial_deg_per_mark;
}

double
ph_vial_deg_per_mark_sd (const PhRig *rig)
{
  int sight = ph_vial_sight (rig);
  const PhPart *part = sight < 0 ? NULL : &rig->parts[sight];
  for (size_t i = 0; part && i < part->n_sds; i++)
    if (g_str_equal (part->sds[i].key, KEY))
      return part->sds[i].v[0];
  return NAN;
}

void
ph_vial_calibrate (double tilt_deg, double marks, double *deg_per_mark, double *sd)
{
  double tilt = fabs (tilt_deg), moved = fabs (marks);
  *deg_per_mark = *sd = NAN;
  if (!(tilt > 0 && moved > 0))
    return;
  *deg_per_mark = tilt / moved;
  *sd = *deg_per_mark * hypot (PH_VIAL_TILT_SD_DEG / tilt, PH_VIAL_EYE_SD_MARKS / moved);
}

/* "0.53° ± 0.04°", or the first alone where the second is not known. (transfer full) */
static char *
worth_words (double each, double sd)
{
  g_autofree char *number = ph_format_number (each, 2), *within = ph_format_number (sd, 2);
  return isnan (sd) ? g_strdup_printf ("%s°", number)
                    : g_strdup_printf ("%s° ± %s°", number, within);
}

static void
changed_cb (PhVialScale *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  double each = ph_vial_deg_per_mark (rig);
  g_autofree char *worth = worth_words (each, ph_vial_deg_per_mark_sd (rig));
  g_autofree char *text = isnan (each)
                              ? g_strdup (_ ("What is a mark of your vial worth?"))
                              : g_strdup_printf (_ ("A mark of your vial is worth %s"), worth);
  gtk_expander_set_label (GTK_EXPANDER (self->expander), text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text, -1);
}

static void
tell (PhVialScale *self, const char *text)
{
  gtk_label_set_text (self->say, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->say), text != NULL);
}

/* A bare number, as any screen number is read; marks have no quantity of their own. NAN: none. */
static double
marks_typed (PhVialScale *self)
{
  double marks;
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->marks));
  return ph_quantity_parse (text, PH_QUANTITY_FORCE, PH_UNITS_METRIC, &marks) == PH_TYPED_OK
             ? marks
             : (double)NAN;
}

/* What comes of what stands in the entries. */
static void
show_worth (PhVialScale *self)
{
  double each, sd;
  ph_vial_calibrate (ph_quantity_entry_get_value (PH_QUANTITY_ENTRY (self->tilt)),
                     marks_typed (self), &each, &sd);
  g_autofree char *worth = worth_words (each, sd);
  g_autofree char *text = g_strdup_printf (_ ("A mark is worth %s"), worth);
  gtk_label_set_text (self->worth, isnan (each) ? "" : text);
  tell (self, NULL);
}

static void
picked_cb (PhVialScale *self, double marks)
{
  g_autofree char *text = ph_format_short (fabs (marks), 1);
  gtk_editable_set_text (GTK_EDITABLE (self->marks), text);
}

/* The drawn bubble follows what is typed, on the side where it stands. */
static void
marks_cb (PhVialScale *self)
{
  double marks = marks_typed (self);
  double side = ph_vial_picker_get_marks (PH_VIAL_PICKER (self->picker)) < 0 ? -1 : 1;
  ph_vial_picker_set_marks (PH_VIAL_PICKER (self->picker), side * fabs (marks));
  g_autofree char *number = ph_format_short (fabs (marks), 1);
  g_autofree char *text = isnan (marks) ? g_strdup (_ ("not read yet"))
                                        : g_strdup_printf (_ ("%s marks off the middle"), number);
  ph_vial_picker_set_text (PH_VIAL_PICKER (self->picker), text);
  show_worth (self);
}

static char *
tilt_cb (PhQuantityEntry *entry, double value, gpointer data)
{
  (void)entry;
  if (!(fabs (value) > 0 && fabs (value) < 90))
    return g_strdup (_ ("Tilt the bow by some degrees, and type how many."));
  show_worth (data);
  return NULL;
}

typedef struct
{
  int sight;
  double each, sd;
} Worth;

static bool
do_keep (PhRig *rig, gpointer data, PhIssues *issues)
{
  const Worth *worth = data;
  if (!ph_edit_set_number (rig, (size_t)worth->sight, KEY, 0, worth->each, issues))
    return false;
  PhPart *part = &rig->parts[worth->sight]; /* only now: the edit may have moved the parts */
  ph_sds_put (&part->sds, &part->n_sds, KEY, 1, &worth->sd);
  return true;
}

static void
keep_cb (PhVialScale *self)
{
  Worth worth = { .sight = ph_vial_sight (ph_document_get_rig (self->document)) };
  g_autoptr (GError) error = NULL;
  if (!ph_quantity_entry_commit (PH_QUANTITY_ENTRY (self->tilt)))
    return;
  ph_vial_calibrate (ph_quantity_entry_get_value (PH_QUANTITY_ENTRY (self->tilt)),
                     marks_typed (self), &worth.each, &worth.sd);
  if (isnan (worth.each) || worth.sight < 0)
    {
      tell (self, _ ("Type the tilt in degrees, and by how many marks the bubble moved."));
      return;
    }
  if (ph_document_edit (self->document, do_keep, &worth, &error))
    gtk_expander_set_expanded (GTK_EXPANDER (self->expander), FALSE);
  tell (self, error ? error->message : NULL);
}

static void
ph_vial_scale_dispose (GObject *object)
{
  PhVialScale *self = PH_VIAL_SCALE (object);
  g_clear_pointer (&self->expander, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_vial_scale_parent_class)->dispose (object);
}

static void
ph_vial_scale_class_init (PhVialScaleClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = ph_vial_scale_dispose;
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
new_row (GtkWidget *const *children, gsize n)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  for (gsize i = 0; i < n; i++)
    {
      if (GTK_IS_LABEL (children[i])) /* a word or two beside an entry */
        gtk_label_set_wrap (GTK_LABEL (children[i]), FALSE);
      gtk_widget_set_valign (children[i], GTK_ALIGN_CENTER);
      gtk_box_append (GTK_BOX (row), children[i]);
    }
  return row;
}

static GtkWidget *
new_tilt (PhVialScale *self)
{
  self->tilt = ph_quantity_entry_new (PH_QUANTITY_ANGLE);
  ph_quantity_entry_set_label (PH_QUANTITY_ENTRY (self->tilt), _ ("Tilt on the other level"));
  ph_quantity_entry_set_step (PH_QUANTITY_ENTRY (self->tilt), 0.1);
  ph_quantity_entry_set_value (PH_QUANTITY_ENTRY (self->tilt), NAN);
  ph_quantity_entry_set_commit (PH_QUANTITY_ENTRY (self->tilt), tilt_cb, self);
  GtkWidget *const children[] = { new_label (_ ("Tilted by")), self->tilt };
  return new_row (children, G_N_ELEMENTS (children));
}

static GtkWidget *
new_marks (PhVialScale *self)
{
  self->marks = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->marks), 6);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->marks), 6);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->marks), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Marks the bubble moved"), -1);
  g_signal_connect_swapped (self->marks, "changed", G_CALLBACK (marks_cb), self);
  g_signal_connect_swapped (self->marks, "activate", G_CALLBACK (keep_cb), self);
  GtkWidget *const children[] = { new_label (_ ("It stands")), GTK_WIDGET (self->marks),
                                  new_label (_ ("marks off the middle")) };
  return new_row (children, G_N_ELEMENTS (children));
}

static GtkWidget *
new_keep (PhVialScale *self)
{
  self->worth = GTK_LABEL (new_label (NULL));
  gtk_widget_set_hexpand (GTK_WIDGET (self->worth), TRUE);
  self->keep = gtk_button_new_with_label (_ ("Keep"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->keep), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Keep what a mark is worth"), -1);
  g_signal_connect_swapped (self->keep, "clicked", G_CALLBACK (keep_cb), self);
  GtkWidget *const children[] = { GTK_WIDGET (self->worth), self->keep };
  return new_row (children, G_N_ELEMENTS (children));
}

static void
ph_vial_scale_init (PhVialScale *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  self->expander = gtk_expander_new (NULL);
  self->picker = ph_vial_picker_new (_ ("Where the bubble stands when tilted"));
  g_signal_connect_swapped (self->picker, "picked", G_CALLBACK (picked_cb), self);
  self->say = GTK_LABEL (new_label (NULL));
  gtk_widget_add_css_class (GTK_WIDGET (self->say), "error-text");
  gtk_widget_set_visible (GTK_WIDGET (self->say), FALSE);
  GtkWidget *const children[] = {
    new_label (_ ("Rest the bow plumb, the bubble in the middle. Lay a phone or a digital level on "
                  "the sight’s bar, tilt by two or three degrees, and read the tilt. Then show on "
                  "the drawn vial where the bubble went. A mark is the way from one line to the "
                  "next.")),
    new_tilt (self),
    self->picker,
    new_marks (self),
    new_keep (self),
    GTK_WIDGET (self->say)
  };
  for (gsize i = 0; i < G_N_ELEMENTS (children); i++)
    gtk_box_append (GTK_BOX (box), children[i]);
  gtk_expander_set_child (GTK_EXPANDER (self->expander), box);
  gtk_widget_set_parent (self->expander, GTK_WIDGET (self));
  marks_cb (self);
}

GtkWidget *
ph_vial_scale_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhVialScale *self = g_object_new (PH_TYPE_VIAL_SCALE, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
