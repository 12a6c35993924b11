/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The document as an object: its properties, what can be read from it, selection and units. Edits,
 * steps, files and recovery have files of their own. A number edit costs the moved subtree and one
 * report; anything else one compilation besides, well under a frame at 256 parts.
 */
#include <glib/gi18n-lib.h>

#include "document/document-private.h"

G_DEFINE_QUARK (ph - document - error - quark, ph_document_error)
G_DEFINE_FINAL_TYPE (PhDocument, ph_document, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  SIGNAL_STRUCTURE_CHANGED,
  SIGNAL_REPLACED,
  SIGNAL_REMOVED,
  N_SIGNALS
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

/* Computing. */

static void
computed_clear (PhComputed *computed)
{
  g_clear_pointer (&computed->report, ph_report_free);
  g_clear_pointer (&computed->compiled, ph_compiled_free);
  g_clear_pointer (&computed->rig, ph_rig_free);
}

void
ph_computed_report (PhComputed *computed)
{
  g_clear_pointer (&computed->report, ph_report_free);
  computed->report = ph_report_new (computed->rig, computed->compiled);
}

void
ph_computed_take (PhComputed *computed, PhRig *rig)
{
  if (computed->rig != rig)
    computed_clear (computed);
  computed->rig = rig;
  g_clear_pointer (&computed->compiled, ph_compiled_free);
  if (rig == NULL)
    return;
  computed->compiled = ph_compile_rig (rig);
  ph_computed_report (computed);
}

/* Telling. */

void
ph_document_notify (PhDocument *self, int prop)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[prop]);
}

void
ph_document_tell (PhDocument *self, PhTouched touched)
{
  ph_computed_take (&self->preview, NULL); /* it was of the rig before */
  if (touched == PH_TOUCHED_STRUCTURE)
    g_signal_emit (self, signals[SIGNAL_STRUCTURE_CHANGED], 0);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

void
ph_document_tell_replaced (PhDocument *self)
{
  ph_document_tell (self, PH_TOUCHED_STRUCTURE);
  g_signal_emit (self, signals[SIGNAL_REPLACED], 0);
}

void
ph_document_tell_removed (PhDocument *self, const char *text)
{
  g_signal_emit (self, signals[SIGNAL_REMOVED], 0, text);
}

static void
set_text (PhDocument *self, char **kept, const char *text, int prop)
{
  if (g_strcmp0 (*kept, text) == 0)
    return;
  char *fresh = g_strdup (text);
  g_free (*kept);
  *kept = fresh;
  ph_document_notify (self, prop);
}

void
ph_document_set_recovery_error (PhDocument *self, const char *text)
{
  if (text != NULL && self->recovery_error != NULL)
    return; /* told already */
  set_text (self, &self->recovery_error, text, PROP_RECOVERY_ERROR);
}

static const char *
label_on_top (GPtrArray *steps)
{
  return steps->len > 0 ? ((PhStep *)g_ptr_array_index (steps, steps->len - 1))->label : NULL;
}

static const char *
name_of (const PhRig *rig, const char *own_name)
{
  if (rig == NULL)
    return NULL;
  if (rig->name != NULL && *rig->name != '\0')
    return rig->name;
  return own_name != NULL ? own_name : _ ("Untitled rig");
}

void
ph_document_refresh (PhDocument *self)
{
  gboolean unsaved = self->saved == NULL || !ph_rig_equal (self->saved, self->open.rig);
  set_text (self, &self->title, name_of (self->open.rig, self->own_name), PROP_TITLE);
  set_text (self, &self->undo_label, label_on_top (self->undo), PROP_UNDO_LABEL);
  set_text (self, &self->redo_label, label_on_top (self->redo), PROP_REDO_LABEL);
  set_text (self, &self->reference_name, name_of (self->reference.rig, NULL), PROP_REFERENCE_NAME);
  if (self->reference.rig == NULL)
    ph_document_set_flipped (self, FALSE);
  if (unsaved == self->unsaved)
    return;
  self->unsaved = unsaved;
  ph_document_notify (self, PROP_UNSAVED);
}

/* Reading. */

const PhRig *
ph_document_get_rig (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->open.rig;
}

const PhReport *
ph_document_get_report (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->open.report;
}

const PhCompiled *
ph_document_get_compiled (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->open.compiled;
}

const PhRig *
ph_document_get_reference_rig (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->reference.rig;
}

const PhReport *
ph_document_get_reference_report (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->reference.report;
}

const PhCompiled *
ph_document_get_reference_compiled (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->reference.compiled;
}

const PhIssues *
ph_document_get_issues (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->errors.n > 0 ? &self->errors : &self->open.report->notes;
}

const char *
ph_document_get_title (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->title;
}

GFile *
ph_document_get_file (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->file;
}

gboolean
ph_document_get_unsaved (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return self->unsaved;
}

const char *
ph_document_get_undo_label (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->undo_label;
}

const char *
ph_document_get_redo_label (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->redo_label;
}

/* Selection and units. */

const char *
ph_document_get_selected (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), NULL);
  return self->selected;
}

int
ph_document_get_selected_part (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), -1);
  return self->selected != NULL ? ph_rig_find (self->open.rig, self->selected) : -1;
}

void
ph_document_select_if_there (PhDocument *self, const char *id)
{
  gboolean there = id != NULL && (g_str_equal (id, "bow") || ph_rig_find (self->open.rig, id) >= 0);
  set_text (self, &self->selected, there ? id : NULL, PROP_SELECTED);
}

void
ph_document_select (PhDocument *self, const char *id)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  ph_document_select_if_there (self, id);
}

PhUnits
ph_document_get_units (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), PH_UNITS_METRIC);
  return self->units;
}

void
ph_document_set_units (PhDocument *self, PhUnits units)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  if (self->units == units)
    return;
  self->units = units;
  ph_document_notify (self, PROP_UNITS);
}

/* The moment's look at the reference. */

gboolean
ph_document_get_flipped (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), FALSE);
  return self->flipped;
}

void
ph_document_set_flipped (PhDocument *self, gboolean flipped)
{
  g_return_if_fail (PH_IS_DOCUMENT (self));
  gboolean shown = flipped && self->reference.rig != NULL;
  if (shown == self->flipped)
    return;
  self->flipped = shown;
  ph_document_notify (self, PROP_FLIPPED);
}

static PhShown
shown_of (const PhComputed *computed, const char *name)
{
  return (PhShown){ computed->rig, computed->compiled, computed->report, name };
}

PhShown
ph_document_get_shown (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), (PhShown){ 0 });
  if (self->flipped)
    return shown_of (&self->reference, self->reference_name);
  return shown_of (self->preview.rig != NULL ? &self->preview : &self->open, self->title);
}

PhShown
ph_document_get_compared (PhDocument *self)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (self), (PhShown){ 0 });
  if (self->flipped || self->preview.rig != NULL)
    return shown_of (&self->open, self->title);
  return shown_of (&self->reference, self->reference_name);
}

/* The object. */

PhDocument *
ph_document_new (void)
{
  return g_object_new (PH_TYPE_DOCUMENT, NULL);
}

static void
ph_document_get_property (GObject *object, guint prop, GValue *value, GParamSpec *pspec)
{
  PhDocument *self = PH_DOCUMENT (object);
  switch (prop)
    {
    case PROP_TITLE:
      g_value_set_string (value, self->title);
      break;
    case PROP_FILE:
      g_value_set_object (value, self->file);
      break;
    case PROP_UNSAVED:
      g_value_set_boolean (value, self->unsaved);
      break;
    case PROP_UNDO_LABEL:
      g_value_set_string (value, self->undo_label);
      break;
    case PROP_REDO_LABEL:
      g_value_set_string (value, self->redo_label);
      break;
    case PROP_SELECTED:
      g_value_set_string (value, self->selected);
      break;
    case PROP_UNITS:
      g_value_set_int (value, (int)self->units);
      break;
    case PROP_REFERENCE_NAME:
      g_value_set_string (value, self->reference_name);
      break;
    case PROP_FLIPPED:
      g_value_set_boolean (value, self->flipped);
      break;
    case PROP_RECOVERY_ERROR:
      g_value_set_string (value, self->recovery_error);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop, pspec);
    }
}

static void
ph_document_set_property (GObject *object, guint prop, const GValue *value, GParamSpec *pspec)
{
  PhDocument *self = PH_DOCUMENT (object);
  switch (prop)
    {
    case PROP_SELECTED:
      ph_document_select (self, g_value_get_string (value));
      break;
    case PROP_UNITS:
      ph_document_set_units (self, (PhUnits)g_value_get_int (value));
      break;
    case PROP_FLIPPED:
      ph_document_set_flipped (self, g_value_get_boolean (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop, pspec);
    }
}

static void
ph_document_finalize (GObject *object)
{
  PhDocument *self = PH_DOCUMENT (object);
  g_clear_pointer (&self->gesture, ph_step_free);
  g_ptr_array_unref (self->undo);
  g_ptr_array_unref (self->redo);
  ph_recovery_free (self->recovery);
  computed_clear (&self->open);
  computed_clear (&self->reference);
  computed_clear (&self->preview);
  ph_rig_free (self->saved);
  ph_issues_clear (&self->errors);
  g_clear_object (&self->file);
  g_free (self->own_name);
  g_free (self->selected);
  g_free (self->title);
  g_free (self->undo_label);
  g_free (self->redo_label);
  g_free (self->reference_name);
  g_free (self->recovery_error);
  G_OBJECT_CLASS (ph_document_parent_class)->finalize (object);
}

static void
ph_document_init (PhDocument *self)
{
  static const PhStarter starter = { .kind = PH_BOW_COMPOUND,
                                     .hand = PH_BOW_HAND_LEFT,
                                     .stated_draw_mm = 28 * 25.4,
                                     .stature_mm = NAN };
  g_autofree char *folder = g_build_filename (g_get_user_state_dir (), "plumbhold", NULL);
  self->undo = g_ptr_array_new_with_free_func (ph_step_free);
  self->redo = g_ptr_array_new_with_free_func (ph_step_free);
  self->recovery = ph_recovery_new (folder);
  PhRig *rig = ph_starter_rig (&starter, _ ("New rig"));
  ph_document_replace (self, rig, NULL, NULL, ph_rig_copy (rig));
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags read = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  const GParamFlags write = read | G_PARAM_WRITABLE;
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, read);
  props[PROP_FILE] = g_param_spec_object ("file", NULL, NULL, G_TYPE_FILE, read);
  props[PROP_UNSAVED] = g_param_spec_boolean ("unsaved", NULL, NULL, FALSE, read);
  props[PROP_UNDO_LABEL] = g_param_spec_string ("undo-label", NULL, NULL, NULL, read);
  props[PROP_REDO_LABEL] = g_param_spec_string ("redo-label", NULL, NULL, NULL, read);
  props[PROP_SELECTED] = g_param_spec_string ("selected", NULL, NULL, NULL, write);
  props[PROP_UNITS] =
      g_param_spec_int ("units", NULL, NULL, PH_UNITS_METRIC, PH_UNITS_MIXED, 0, write);
  props[PROP_REFERENCE_NAME] = g_param_spec_string ("reference-name", NULL, NULL, NULL, read);
  props[PROP_FLIPPED] = g_param_spec_boolean ("flipped", NULL, NULL, FALSE, write);
  props[PROP_RECOVERY_ERROR] = g_param_spec_string ("recovery-error", NULL, NULL, NULL, read);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
ph_document_class_init (PhDocumentClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);
  object_class->get_property = ph_document_get_property;
  object_class->set_property = ph_document_set_property;
  object_class->finalize = ph_document_finalize;
  install_properties (object_class);
  signals[SIGNAL_CHANGED] =
      g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_STRUCTURE_CHANGED] = g_signal_new ("structure-changed", type, G_SIGNAL_RUN_LAST, 0,
                                                    NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_REPLACED] =
      g_signal_new ("replaced", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_REMOVED] = g_signal_new ("removed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 1, G_TYPE_STRING);
}
