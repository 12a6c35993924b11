/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is shown is the file's value times the sign of its direction, so that "Down 12°" and
 * "Up 12°" are both 12; the slider keeps the file's own sign. Trying one more step costs a copy and
 * a compilation of the rig, once a refresh.
 */
#include "widgets/form-row.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "document/format.h"
#include "widgets/guess.h"
#include "widgets/number-range.h"
#include "widgets/part-words.h"
#include "widgets/quantity-entry.h"
#include "widgets/slider.h"
#include "widgets/step-effect.h"

struct _PhFormRow
{
  GtkWidget parent_instance;

  /* Template widgets */
  GtkLabel *name, *advice, *message, *tape, *effect, *remark;
  GtkMenuButton *guess;
  GtkWidget *measured, *fewer, *more, *effect_room;
  PhQuantityEntry *entry;
  PhSlider *slider;

  /* Owned */
  PhDocument *document;
  PhNumberRef ref;
  char *label;

  gboolean own_gesture; /* a drag of the slider began one */
  double drag_from;     /* what stood then */
};

G_DEFINE_FINAL_TYPE (PhFormRow, ph_form_row, GTK_TYPE_WIDGET)

static void
show_text (GtkLabel *label, const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text ? text : "") != 0)
    gtk_label_set_text (label, text ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text && *text);
}

/* The number's direction and its words. */
static PhDirectionWords
words_now (PhFormRow *self, double value)
{
  PhWay way;
  if (ph_number_ref_way (&self->ref, ph_document_get_rig (self->document),
                         ph_document_get_compiled (self->document), &way))
    return ph_words_way (way, value);
  return (PhDirectionWords){ self->label, 1, FALSE };
}

static double
value_now (PhFormRow *self)
{
  return ph_number_ref_read (&self->ref, ph_document_get_rig (self->document));
}

/* Writes a value of the file. Null, or why it was refused. */
static char *
write_value (PhFormRow *self, double value)
{
  g_autoptr (GError) error = NULL;
  if (ph_number_ref_write (&self->ref, self->document, value, &error))
    return NULL;
  return g_strdup (error ? error->message : _ ("This cannot be."));
}

static char *
commit_cb (PhQuantityEntry *entry G_GNUC_UNUSED, double shown, gpointer data)
{
  PhFormRow *self = data;
  double now = value_now (self);
  if (isnan (now) && self->ref.of == PH_NUMBER_PART)
    return NULL; /* the part went away while its number was typed */
  return write_value (self, shown * words_now (self, now).sign);
}

static void
moved_cb (PhSlider *slider G_GNUC_UNUSED, double shown, PhFormRow *self)
{
  PhUnits units = ph_document_get_units (self->document);
  double value = ph_quantity_from_shown (ph_number_ref_quantity (&self->ref), units, shown);
  g_autofree char *why = write_value (self, value);
  if (!why)
    return;
  ph_form_row_refresh (self);
  ph_quantity_entry_say (self->entry, why);
}

static void
drag_begin_cb (PhSlider *slider G_GNUC_UNUSED, PhFormRow *self)
{
  self->own_gesture = !ph_document_in_gesture (self->document);
  self->drag_from = value_now (self);
  if (self->own_gesture)
    ph_document_begin_gesture (self->document);
}

static void
drag_end_cb (PhSlider *slider G_GNUC_UNUSED, PhFormRow *self)
{
  gboolean ours = self->own_gesture && ph_document_in_gesture (self->document);
  /* Out and back is no change, and weights that came on the way go again. */
  if (ours && value_now (self) == self->drag_from)
    ph_document_cancel_gesture (self->document);
  else if (ours)
    ph_document_end_gesture (self->document);
  self->own_gesture = FALSE;
}

static void
step_count (PhFormRow *self, int step)
{
  g_autofree char *why = write_value (self, value_now (self) + step);
  if (why)
    ph_quantity_entry_say (self->entry, why);
}

static void
fewer_cb (GtkButton *button G_GNUC_UNUSED, PhFormRow *self)
{
  step_count (self, -1);
}

static void
more_cb (GtkButton *button G_GNUC_UNUSED, PhFormRow *self)
{
  step_count (self, 1);
}

static void
measured_cb (GtkButton *button G_GNUC_UNUSED, PhFormRow *self)
{
  g_autoptr (GError) error = NULL;
  gtk_menu_button_popdown (self->guess);
  if (!ph_guess_set_measured (&self->ref, self->document, &error) && error)
    ph_quantity_entry_say (self->entry, error->message);
}

static void
message_cb (PhQuantityEntry *entry, GParamSpec *pspec G_GNUC_UNUSED, PhFormRow *self)
{
  g_autofree char *message = NULL;
  g_object_get (entry, "message", &message, NULL);
  show_text (self->message, message);
}

/* "× 1 oz" behind a count of discs. */
static void
refresh_suffix (PhFormRow *self, const PhRig *rig, PhUnits units)
{
  int stack = -1, part = self->ref.part ? ph_rig_find (rig, self->ref.part) : -1;
  if (part >= 0 && self->ref.of == PH_NUMBER_END_COUNT)
    stack = ph_end_stack (rig, part);
  else if (part >= 0)
    stack = part;
  if (stack < 0)
    {
      ph_quantity_entry_set_suffix (self->entry, NULL);
      return;
    }
  g_autofree char *each =
      ph_format_quantity_short (rig->parts[stack].each_g, PH_QUANTITY_MASS, units);
  g_autofree char *suffix = g_strdup_printf ("× %s", each);
  ph_quantity_entry_set_suffix (self->entry, suffix);
}

static void
refresh_slider (PhFormRow *self, const PhRig *rig, PhUnits units, double value,
                const PhDirectionWords *words)
{
  PhQuantity quantity = ph_number_ref_quantity (&self->ref);
  PhNumberRange range = ph_number_range (&self->ref, rig, units);
  ph_quantity_entry_set_step (self->entry, range.step);
  gtk_widget_set_visible (GTK_WIDGET (self->slider), range.slider && !isnan (value));
  if (!range.slider || isnan (value))
    return;
  gtk_range_set_inverted (GTK_RANGE (self->slider), words->sideways);
  ph_slider_set_range (self->slider, ph_quantity_to_shown (quantity, units, range.lo),
                       ph_quantity_to_shown (quantity, units, range.hi), range.step, range.fine);
  ph_slider_set_value (self->slider, ph_quantity_to_shown (quantity, units, value));
  ph_slider_set_label (self->slider, words->label);
  g_autofree char *text = ph_format_quantity (words->sign * value, quantity, units);
  g_autofree char *said = g_strdup_printf ("%s %s", words->label, text);
  ph_slider_set_value_text (self->slider, said);
}

/* What a tape reads beside an angle. */
static char *
tape_text (PhFormRow *self, const PhRig *rig, PhUnits units)
{
  int part = self->ref.of == PH_NUMBER_PART ? ph_rig_find (rig, self->ref.part) : -1;
  const PhCompiled *compiled = ph_document_get_compiled (self->document);
  if (part < 0 || rig->parts[part].kind == PH_PART_BRACKET)
    return NULL;
  if (g_strcmp0 (self->ref.key, "swing_deg") == 0)
    return ph_words_tape_side (compiled, (size_t)part, units);
  if (g_strcmp0 (self->ref.key, "lift_deg") == 0)
    return ph_words_tape_height (compiled, (size_t)part, units);
  return NULL;
}

static gboolean
is_in_force (PhFormRow *self, const PhRig *rig)
{
  int part = self->ref.part ? ph_rig_find (rig, self->ref.part) : -1;
  return !self->ref.part || (part >= 0 && ph_rig_is_fitted (rig, (size_t)part));
}

static char *
effect_text (PhFormRow *self, const PhRig *rig, PhUnits units, double value, int sign)
{
  PhNumberRange range = ph_number_range (&self->ref, rig, units);
  PhStepEffect effect;
  PhWay way;
  if (!range.slider || isnan (value) || !is_in_force (self, rig))
    return NULL;
  double one = ph_quantity_from_shown (ph_number_ref_quantity (&self->ref), units, range.step);
  const PhCompiled *compiled = ph_document_get_compiled (self->document);
  if (!ph_step_effect_try (rig, ph_document_get_report (self->document), compiled, &self->ref,
                           value + sign * one, &effect))
    return NULL;
  const char *word = NULL;
  if (ph_number_ref_way (&self->ref, rig, compiled, &way)
      && (fabs (value) < 0.05 || ph_number_ref_quantity (&self->ref) != PH_QUANTITY_ANGLE))
    word = ph_way_word (way, sign);
  g_autofree char *step = ph_step_words (&self->ref, units, word);
  return ph_step_effect_text (&effect, step, units);
}

static void
refresh_name (PhFormRow *self, const PhDirectionWords *words, const char *effect)
{
  show_text (self->name, words->label);
  ph_quantity_entry_set_label (self->entry, words->label);
  ph_quantity_entry_set_description (self->entry, effect);
}

void
ph_form_row_refresh (PhFormRow *self)
{
  g_return_if_fail (PH_IS_FORM_ROW (self));
  const PhRig *rig = ph_document_get_rig (self->document);
  PhUnits units = ph_document_get_units (self->document);
  double value = value_now (self);
  PhDirectionWords words = words_now (self, value);
  gboolean counts = ph_number_ref_quantity (&self->ref) == PH_QUANTITY_COUNT;

  ph_quantity_entry_set_units (self->entry, units);
  if (counts)
    refresh_suffix (self, rig, units);
  ph_quantity_entry_set_value (self->entry, words.sign * value);
  refresh_slider (self, rig, units, value, &words);
  gtk_widget_set_sensitive (self->fewer, value > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->guess), ph_guess_is (&self->ref, rig));

  g_autofree char *tape = tape_text (self, rig, units);
  show_text (self->tape, tape);
  g_autofree char *effect = effect_text (self, rig, units, value, words.sign);
  show_text (self->effect, effect);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->effect), effect);
  gtk_widget_set_visible (self->effect_room, gtk_widget_get_visible (GTK_WIDGET (self->slider)));
  refresh_name (self, &words, effect);
}

static void
ph_form_row_dispose (GObject *object)
{
  PhFormRow *self = PH_FORM_ROW (object);
  if (self->document)
    drag_end_cb (self->slider, self);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_form_row_parent_class)->dispose (object);
}

static void
ph_form_row_finalize (GObject *object)
{
  PhFormRow *self = PH_FORM_ROW (object);
  ph_number_ref_clear (&self->ref);
  g_free (self->label);
  G_OBJECT_CLASS (ph_form_row_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, name);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, guess);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, advice);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, measured);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, fewer);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, entry);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, more);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, message);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, slider);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, tape);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, effect);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, effect_room);
  gtk_widget_class_bind_template_child (widget_class, PhFormRow, remark);
}

static void
ph_form_row_class_init (PhFormRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_form_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = ph_form_row_finalize;

  g_type_ensure (PH_TYPE_QUANTITY_ENTRY);
  g_type_ensure (PH_TYPE_SLIDER);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/form-row.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, fewer_cb);
  gtk_widget_class_bind_template_callback (widget_class, more_cb);
  gtk_widget_class_bind_template_callback (widget_class, measured_cb);
  gtk_widget_class_bind_template_callback (widget_class, moved_cb);
  gtk_widget_class_bind_template_callback (widget_class, drag_begin_cb);
  gtk_widget_class_bind_template_callback (widget_class, drag_end_cb);
}

static void
ph_form_row_init (PhFormRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  ph_quantity_entry_set_message_below (self->entry, FALSE);
  ph_quantity_entry_set_commit (self->entry, commit_cb, self);
  g_signal_connect (self->entry, "notify::message", G_CALLBACK (message_cb), self);
}

GtkWidget *
ph_form_row_new (PhDocument *document, const PhNumberRef *ref, const char *label)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document) && ref, NULL);
  PhFormRow *self = g_object_new (PH_TYPE_FORM_ROW, NULL);
  self->document = g_object_ref (document);
  self->ref = ph_number_ref_copy (ref);
  self->label = g_strdup (label);
  PhQuantity quantity = ph_number_ref_quantity (ref);
  ph_quantity_entry_set_quantity (self->entry, quantity);
  gtk_widget_set_visible (self->fewer, quantity == PH_QUANTITY_COUNT);
  gtk_widget_set_visible (self->more, quantity == PH_QUANTITY_COUNT);
  if (quantity == PH_QUANTITY_COUNT)
    ph_quantity_entry_set_width_chars (self->entry, 7);
  const char *advice = ph_guess_advice (ref);
  gtk_label_set_text (self->advice, advice ? advice : "");
  ph_form_row_refresh (self);
  return GTK_WIDGET (self);
}

void
ph_form_row_set_remark (PhFormRow *self, const char *remark)
{
  g_return_if_fail (PH_IS_FORM_ROW (self));
  show_text (self->remark, remark);
}

void
ph_form_row_edit (PhFormRow *self)
{
  g_return_if_fail (PH_IS_FORM_ROW (self));
  ph_quantity_entry_edit (self->entry);
}
