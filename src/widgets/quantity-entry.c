/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Text is only parsed when it differs from what was last shown, so that looking at a rounded
 * number never changes it. The value here is what was last shown, not a second copy of the rig:
 * every commit goes to the callback, and what it made comes back through set_value.
 */
#include "widgets/quantity-entry.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "document/format.h"

struct _PhQuantityEntry
{
  GtkWidget parent_instance;

  /* Template widgets */
  GtkEntry *entry;
  GtkLabel *below;

  PhQuantity quantity;
  PhUnits units;
  double value;      /* last good one, file's unit; NAN: missing */
  double step;       /* shown unit */
  char *shown;       /* the text of value */
  char *suffix;      /* null: none */
  char *description; /* for a screen reader while all is well; may be null */
  char *message;     /* null: all is well */
  gboolean message_below;

  PhQuantityCommit commit;
  gpointer commit_data;
};

enum
{
  PROP_MESSAGE = 1,
  N_PROPS
};
enum
{
  FINISHED,
  N_SIGNALS
};
static GParamSpec *properties[N_PROPS];
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhQuantityEntry, ph_quantity_entry, GTK_TYPE_WIDGET)

static const char *
typed_text (PhQuantityEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->entry));
}

static gboolean
is_typed (PhQuantityEntry *self)
{
  return strcmp (typed_text (self), self->shown) != 0;
}

static void
describe (PhQuantityEntry *self)
{
  const char *text = self->message ? self->message : self->description;
  GtkAccessible *accessible = GTK_ACCESSIBLE (self->entry);
  gtk_accessible_update_state (
      accessible, GTK_ACCESSIBLE_STATE_INVALID,
      self->message ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  if (text)
    gtk_accessible_update_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  else
    gtk_accessible_reset_property (accessible, GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
set_message (PhQuantityEntry *self, const char *message)
{
  if (g_strcmp0 (message, self->message) == 0)
    return;
  g_free (self->message);
  self->message = g_strdup (message);
  if (message)
    gtk_widget_add_css_class (GTK_WIDGET (self->entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->entry), "error");
  gtk_label_set_text (self->below, message ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->below), message && self->message_below);
  describe (self);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_MESSAGE]);
}

static char *
text_of_value (PhQuantityEntry *self)
{
  g_autofree char *number = ph_format_quantity (self->value, self->quantity, self->units);
  return self->suffix ? g_strdup_printf ("%s %s", number, self->suffix) : g_steal_pointer (&number);
}

static void
show_value (PhQuantityEntry *self)
{
  g_free (self->shown);
  self->shown = text_of_value (self);
  if (is_typed (self))
    {
      gtk_editable_set_text (GTK_EDITABLE (self->entry), self->shown);
      gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
    }
  set_message (self, NULL);
}

/* "… Still 12 in." */
static void
complain (PhQuantityEntry *self, const char *why)
{
  g_autofree char *good = text_of_value (self);
  g_autofree char *message =
      isnan (self->value) ? g_strdup (why) : g_strdup_printf (_ ("%s Still %s."), why, good);
  set_message (self, message);
}

static const char *
right_unit (PhQuantity quantity)
{
  switch (quantity)
    {
    case PH_QUANTITY_LENGTH:
    case PH_QUANTITY_DIAMETER:
    case PH_QUANTITY_STATURE:
      return _ ("A length is in mm, cm, m, in or ft.");
    case PH_QUANTITY_MASS:
    case PH_QUANTITY_BOW_MASS:
      return _ ("A mass is in g, kg, oz or lb.");
    case PH_QUANTITY_ANGLE:
      return _ ("An angle is in degrees (deg, °) or rad.");
    case PH_QUANTITY_FORCE:
      return _ ("A force is in N or lbf.");
    case PH_QUANTITY_MODULUS:
      return _ ("A stiffness of material is in GPa.");
    case PH_QUANTITY_STIFFNESS:
      return _ ("A stiffness of the hand is in N·m/rad.");
    case PH_QUANTITY_MOMENT:
      return _ ("A moment is in N·m.");
    case PH_QUANTITY_SPEED:
      return _ ("A speed is in m/s or ft/s (fps).");
    case PH_QUANTITY_COUNT:
    default:
      return _ ("A count has no unit.");
    }
}

static const char *
what_is_wrong (PhTyped typed, PhQuantity quantity)
{
  switch (typed)
    {
    case PH_TYPED_EMPTY:
      return _ ("Nothing is typed.");
    case PH_TYPED_NOT_A_NUMBER:
      return _ ("This is not a number such as 12 or 28 ½.");
    case PH_TYPED_NOT_WHOLE:
      return _ ("A count is a whole number.");
    case PH_TYPED_NOT_FINITE:
      return _ ("This number is too large.");
    case PH_TYPED_UNKNOWN_UNIT:
    case PH_TYPED_WRONG_UNIT:
    case PH_TYPED_OK:
    default:
      return right_unit (quantity);
    }
}

/* What was typed without a "× 1 oz" behind it. */
static char *
number_part (PhQuantityEntry *self)
{
  char *text = g_strdup (typed_text (self));
  char *times = self->suffix ? strstr (text, "×") : NULL;
  if (times)
    *times = '\0';
  return text;
}

/* The value stands before the callback runs, since what it makes may come back through set_value
 * under another sign, and may even take this entry away. */
static gboolean
take (PhQuantityEntry *self, double value)
{
  g_autoptr (PhQuantityEntry) alive = g_object_ref (self);
  g_autofree char *typed = g_strdup (typed_text (self));
  double before = self->value;
  self->value = value;
  show_value (self);
  g_autofree char *why = self->commit ? self->commit (self, value, self->commit_data) : NULL;
  if (!why)
    return TRUE;
  self->value = before;
  show_value (self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), typed);
  complain (self, why);
  return FALSE;
}

gboolean
ph_quantity_entry_commit (PhQuantityEntry *self)
{
  g_return_val_if_fail (PH_IS_QUANTITY_ENTRY (self), FALSE);
  if (!is_typed (self))
    {
      set_message (self, NULL);
      return TRUE;
    }
  g_autofree char *text = number_part (self);
  double value = NAN;
  PhTyped typed = ph_quantity_parse (text, self->quantity, self->units, &value);
  if (typed == PH_TYPED_OK)
    return take (self, value);
  complain (self, what_is_wrong (typed, self->quantity));
  return FALSE;
}

static void
finish (PhQuantityEntry *self)
{
  g_signal_emit (self, signals[FINISHED], 0);
}

static void
activate_cb (GtkEntry *entry G_GNUC_UNUSED, PhQuantityEntry *self)
{
  if (ph_quantity_entry_commit (self))
    {
      gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
      finish (self);
    }
}

static void
leave_cb (GtkEventControllerFocus *focus G_GNUC_UNUSED, PhQuantityEntry *self)
{
  if (gtk_widget_in_destruction (GTK_WIDGET (self)))
    return;
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, 0);
  if (ph_quantity_entry_commit (self))
    finish (self);
}

/* From the number as it is read, so that 12.008 in, which shows 12, steps to 12.5. */
static void
step_by (PhQuantityEntry *self, int steps)
{
  if (!ph_quantity_entry_commit (self) || isnan (self->value))
    return;
  double grain = pow (10, ph_quantity_digits (self->quantity, self->units));
  double shown = ph_quantity_to_shown (self->quantity, self->units, self->value);
  shown = round (shown * grain) / grain + steps * self->step;
  take (self, ph_quantity_from_shown (self->quantity, self->units, shown));
}

/* The text keeps the keys of undo even when it has nothing to take back: with nothing typed they
 * are the rig's. */
static gboolean
undo_key (PhQuantityEntry *self, guint keyval, GdkModifierType state)
{
  guint key = gdk_keyval_to_lower (keyval);
  gboolean redo = key == GDK_KEY_y || (key == GDK_KEY_z && (state & GDK_SHIFT_MASK));
  if (!(state & GDK_CONTROL_MASK) || (key != GDK_KEY_z && key != GDK_KEY_y) || is_typed (self))
    return FALSE;
  gtk_widget_activate_action (GTK_WIDGET (self), redo ? "win.redo" : "win.undo", NULL);
  return TRUE;
}

static gboolean
key_cb (GtkEventControllerKey *keys G_GNUC_UNUSED, guint keyval, guint code G_GNUC_UNUSED,
        GdkModifierType state, PhQuantityEntry *self)
{
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return undo_key (self, keyval, state);
  int size = state & GDK_SHIFT_MASK ? 5 : 1;
  switch (keyval)
    {
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      step_by (self, size);
      return TRUE;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      step_by (self, -size);
      return TRUE;
    case GDK_KEY_Escape:
      {
        gboolean typed = is_typed (self) || self->message;
        show_value (self);
        finish (self);
        return typed;
      }
    default:
      return FALSE;
    }
}

static void
ph_quantity_entry_dispose (GObject *object)
{
  PhQuantityEntry *self = PH_QUANTITY_ENTRY (object);
  self->commit = NULL;
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (ph_quantity_entry_parent_class)->dispose (object);
}

static void
ph_quantity_entry_finalize (GObject *object)
{
  PhQuantityEntry *self = PH_QUANTITY_ENTRY (object);
  g_free (self->shown);
  g_free (self->suffix);
  g_free (self->description);
  g_free (self->message);
  G_OBJECT_CLASS (ph_quantity_entry_parent_class)->finalize (object);
}

static void
ph_quantity_entry_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_MESSAGE)
    g_value_set_string (value, PH_QUANTITY_ENTRY (object)->message);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ph_quantity_entry_class_init (PhQuantityEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->dispose = ph_quantity_entry_dispose;
  object_class->finalize = ph_quantity_entry_finalize;
  object_class->get_property = ph_quantity_entry_get_property;

  properties[PROP_MESSAGE] =
      g_param_spec_string ("message", NULL, NULL, NULL,
                           G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, properties);
  signals[FINISHED] = g_signal_new ("finished", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0,
                                    NULL, NULL, NULL, G_TYPE_NONE, 0);

  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/quantity-entry.ui");
  gtk_widget_class_bind_template_child (widget_class, PhQuantityEntry, entry);
  gtk_widget_class_bind_template_child (widget_class, PhQuantityEntry, below);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, leave_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_cb);
}

static void
ph_quantity_entry_init (PhQuantityEntry *self)
{
  self->value = NAN;
  self->step = 1;
  self->message_below = TRUE;
  self->shown = g_strdup ("");
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
ph_quantity_entry_new (PhQuantity quantity)
{
  PhQuantityEntry *self = g_object_new (PH_TYPE_QUANTITY_ENTRY, NULL);
  self->quantity = quantity;
  show_value (self);
  return GTK_WIDGET (self);
}

void
ph_quantity_entry_set_quantity (PhQuantityEntry *self, PhQuantity quantity)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  self->quantity = quantity;
  show_value (self);
}

void
ph_quantity_entry_set_units (PhQuantityEntry *self, PhUnits units)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  if (units == self->units)
    return;
  self->units = units;
  show_value (self);
}

void
ph_quantity_entry_set_commit (PhQuantityEntry *self, PhQuantityCommit commit, gpointer user_data)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  self->commit = commit;
  self->commit_data = user_data;
}

void
ph_quantity_entry_set_label (PhQuantityEntry *self, const char *label)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
}

void
ph_quantity_entry_set_description (PhQuantityEntry *self, const char *description)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  if (g_strcmp0 (description, self->description) == 0)
    return;
  g_free (self->description);
  self->description = g_strdup (description);
  describe (self);
}

void
ph_quantity_entry_set_step (PhQuantityEntry *self, double shown_step)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self) && shown_step > 0);
  self->step = shown_step;
}

void
ph_quantity_entry_set_suffix (PhQuantityEntry *self, const char *suffix)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  if (g_strcmp0 (suffix, self->suffix) == 0)
    return;
  gboolean typed = is_typed (self);
  g_free (self->suffix);
  self->suffix = g_strdup (suffix);
  if (!typed)
    show_value (self);
}

void
ph_quantity_entry_set_width_chars (PhQuantityEntry *self, int chars)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), chars);
}

void
ph_quantity_entry_set_message_below (PhQuantityEntry *self, gboolean below)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  self->message_below = below;
  gtk_widget_set_visible (GTK_WIDGET (self->below), below && self->message);
}

static gboolean
has_focus (PhQuantityEntry *self)
{
  return (gtk_widget_get_state_flags (GTK_WIDGET (self->entry)) & GTK_STATE_FLAG_FOCUS_WITHIN) != 0;
}

void
ph_quantity_entry_set_value (PhQuantityEntry *self, double value)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  gboolean same = value == self->value || (isnan (value) && isnan (self->value));
  if (same && (is_typed (self) || self->message))
    return;
  self->value = value;
  if (!is_typed (self) || !has_focus (self))
    show_value (self);
}

double
ph_quantity_entry_get_value (PhQuantityEntry *self)
{
  g_return_val_if_fail (PH_IS_QUANTITY_ENTRY (self), NAN);
  return self->value;
}

void
ph_quantity_entry_say (PhQuantityEntry *self, const char *why)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self) && why);
  complain (self, why);
}

void
ph_quantity_entry_edit (PhQuantityEntry *self)
{
  g_return_if_fail (PH_IS_QUANTITY_ENTRY (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
  gtk_editable_select_region (GTK_EDITABLE (self->entry), 0, -1);
}
