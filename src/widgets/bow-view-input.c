/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bow view on the keyboard. Keys that are held make one undo step: a gesture is
 * opened at the first press and closed when the key comes up.
 */
#include "widgets/bow-view-private.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/number-range.h"
#include "widgets/number-ref.h"
#include "widgets/part-words.h"
#include "widgets/step-effect.h"

#define ZOOM_STEP 1.15
#define PAN_STEP_PX 40.0
#define MANY_STEPS 5

/* Parts in the order of Tab: the bow, then each part followed by what hangs on it. */

static void
add_guests (const PhRig *rig, int host, GArray *order)
{
  for (gsize i = 0; i < rig->n_parts; i++)
    if (ph_rig_host (rig, i, NULL) == host)
      {
        int part = (int)i;
        g_array_append_val (order, part);
        add_guests (rig, part, order);
      }
}

static const char *
id_of (const PhRig *rig, int part)
{
  return part >= 0 ? rig->parts[part].id : "bow";
}

/* Selects the next or the previous part; false at either end, where Tab leaves the view. */
static gboolean
walk (PhBowView *self, int step)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  const char *now = ph_document_get_selected (self->document);
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (int));
  int bow = PH_PART_BOW, at = step > 0 ? -1 : 0;
  g_array_append_val (order, bow);
  add_guests (rig, PH_PART_BOW, order);
  for (guint i = 0; now && i < order->len; i++)
    if (g_str_equal (id_of (rig, g_array_index (order, int, i)), now))
      at = (int)i;
  at += step;
  if (at < 0 || at >= (int)order->len)
    return FALSE;
  ph_document_select (self->document, id_of (rig, g_array_index (order, int, at)));
  return TRUE;
}

gboolean
ph_bow_view_focus (GtkWidget *widget, GtkDirectionType direction)
{
  PhBowView *self = PH_BOW_VIEW (widget);
  if (!gtk_widget_is_focus (widget))
    return gtk_widget_grab_focus (widget);
  if (direction == GTK_DIR_TAB_FORWARD)
    return walk (self, 1);
  if (direction == GTK_DIR_TAB_BACKWARD)
    return walk (self, -1);
  return FALSE;
}

/* Steps of a number. */

static void
begin_key_gesture (PhBowView *self)
{
  if (self->key_gesture || ph_document_in_gesture (self->document))
    return;
  ph_document_begin_gesture (self->document);
  self->key_gesture = TRUE;
}

void
ph_bow_view_end_key_gesture (PhBowView *self)
{
  if (!self->key_gesture)
    return;
  self->key_gesture = FALSE;
  ph_document_end_gesture (self->document);
}

/* What the step did, as one sentence: "Back bar out 21°: bubble 0.1–0.4° to the right". */
static char *
step_said (PhBowView *self, const PhNumberRef *ref, const PhStepEffect *effect, double to)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  PhUnits units = ph_document_get_units (self->document);
  const char *name = ph_part_name (&rig->parts[ph_rig_find (rig, ref->part)]);
  PhQuantity quantity = ph_number_ref_quantity (ref);
  g_autofree char *size = ph_format_quantity_short (fabs (to), quantity, units);
  g_autofree char *value = NULL;
  PhWay way;
  if (quantity == PH_QUANTITY_COUNT)
    value = g_strdup_printf (ngettext ("%s, %s weight", "%s, %s weights", (gulong)to), name, size);
  else if (ph_number_ref_way (ref, rig, ph_document_get_compiled (self->document), &way))
    value = g_strdup_printf ("%s %s %s", name, ph_way_word (way, to), size);
  else
    value = g_strdup_printf ("%s %s", name, size);
  return effect ? ph_step_effect_text (effect, value, units) : g_steal_pointer (&value);
}

static gboolean
step_number (PhBowView *self, const PhNumberRef *ref, int steps)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  double now = ph_number_ref_read (ref, rig);
  PhNumberRange range = ph_number_range (ref, rig, ph_document_get_units (self->document));
  if (isnan (now))
    return FALSE;
  double to = CLAMP (now + steps * range.step, fmin (range.lo, now), fmax (range.hi, now));
  if (to == now)
    return FALSE;
  PhStepEffect effect;
  gboolean known = ph_step_effect_try (rig, ph_document_get_report (self->document),
                                       ph_document_get_compiled (self->document), ref, to, &effect);
  g_autoptr (GError) error = NULL;
  begin_key_gesture (self);
  if (!ph_number_ref_write (ref, self->document, to, &error))
    {
      ph_bow_view_emit_refused (self, error->message);
      return FALSE;
    }
  if (ph_number_ref_quantity (ref) == PH_QUANTITY_ANGLE)
    ph_bow_scene_ease (self->document, GTK_WIDGET (self), ref, now);
  g_autofree char *said = step_said (self, ref, known ? &effect : NULL, to);
  ph_bow_view_tell (self, said);
  return TRUE;
}

static gboolean
turn (PhBowView *self, const char *key, int steps)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = ph_view_turning_part (rig, ph_document_get_selected_part (self->document));
  if (part < 0)
    return FALSE;
  PhNumberRef ref = ph_number_ref (PH_NUMBER_PART, rig->parts[part].id, key, 0);
  gboolean done = step_number (self, &ref, steps);
  ph_number_ref_clear (&ref);
  return done;
}

gboolean
ph_bow_view_add_weights (PhBowView *self, int steps)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = ph_document_get_selected_part (self->document);
  if (part < 0
      || (rig->parts[part].kind != PH_PART_WEIGHTS && rig->parts[part].kind != PH_PART_BAR))
    return FALSE;
  gboolean stack = rig->parts[part].kind == PH_PART_WEIGHTS;
  PhNumberRef ref = ph_number_ref (stack ? PH_NUMBER_PART : PH_NUMBER_END_COUNT,
                                   rig->parts[part].id, stack ? "count" : NULL, 0);
  gboolean done = step_number (self, &ref, steps);
  ph_number_ref_clear (&ref);
  return done;
}

/* Keys. */

static gboolean
edit_key (PhBowView *self, guint key, int steps)
{
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return turn (self, "swing_deg", steps);
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return turn (self, "swing_deg", -steps);
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      return turn (self, "lift_deg", steps);
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      return turn (self, "lift_deg", -steps);
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      return ph_bow_view_add_weights (self, steps);
    default:
      return ph_bow_view_add_weights (self, -steps);
    }
}

static gboolean
is_edit_key (guint key)
{
  static const guint keys[] = { GDK_KEY_Left,       GDK_KEY_KP_Left,    GDK_KEY_Right,
                                GDK_KEY_KP_Right,   GDK_KEY_Up,         GDK_KEY_KP_Up,
                                GDK_KEY_Down,       GDK_KEY_KP_Down,    GDK_KEY_plus,
                                GDK_KEY_equal,      GDK_KEY_KP_Add,     GDK_KEY_minus,
                                GDK_KEY_underscore, GDK_KEY_KP_Subtract };
  for (gsize i = 0; i < G_N_ELEMENTS (keys); i++)
    if (keys[i] == key)
      return TRUE;
  return FALSE;
}

/* With Ctrl the same keys move the picture instead of the part. */
static void
picture_key (PhBowView *self, guint key)
{
  double x = gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  double y = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0;
  switch (key)
    {
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      ph_bow_view_emit_pan (self, PAN_STEP_PX, 0);
      break;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      ph_bow_view_emit_pan (self, -PAN_STEP_PX, 0);
      break;
    case GDK_KEY_Up:
    case GDK_KEY_KP_Up:
      ph_bow_view_emit_pan (self, 0, PAN_STEP_PX);
      break;
    case GDK_KEY_Down:
    case GDK_KEY_KP_Down:
      ph_bow_view_emit_pan (self, 0, -PAN_STEP_PX);
      break;
    case GDK_KEY_plus:
    case GDK_KEY_equal:
    case GDK_KEY_KP_Add:
      ph_bow_view_emit_zoom (self, ZOOM_STEP, x, y);
      break;
    default:
      ph_bow_view_emit_zoom (self, 1.0 / ZOOM_STEP, x, y);
      break;
    }
}

static gboolean
other_key (PhBowView *self, guint key)
{
  const char *selected = ph_document_get_selected (self->document);
  switch (key)
    {
    case GDK_KEY_f:
    case GDK_KEY_F:
    case GDK_KEY_0:
    case GDK_KEY_KP_0:
      ph_bow_view_emit_fit (self);
      return TRUE;
    case GDK_KEY_l:
    case GDK_KEY_L:
      ph_bow_view_set_lean_factor (self, self->lean_factor > 1.0 ? 1.0 : 5.0);
      return TRUE;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (selected)
        ph_bow_view_emit_activated (self, selected);
      return selected != NULL;
    case GDK_KEY_Escape:
      if (selected)
        ph_document_select (self->document, NULL);
      return selected != NULL;
    default:
      return FALSE;
    }
}

/* While a part is dragged, keys do nothing but give it up. */
static gboolean
drag_key (PhBowView *self, guint key)
{
  if (key == GDK_KEY_Escape)
    ph_view_drag_give_up (self);
  return TRUE;
}

static gboolean
key_pressed_cb (PhBowView *self, guint key, guint code, GdkModifierType state)
{
  (void)code;
  if (ph_view_drag_is_on (self))
    return drag_key (self, key);
  if (state & (GDK_ALT_MASK | GDK_SUPER_MASK | GDK_META_MASK))
    return FALSE;
  if (is_edit_key (key) && state & GDK_CONTROL_MASK)
    {
      picture_key (self, key);
      return TRUE;
    }
  if (state & GDK_CONTROL_MASK)
    return FALSE;
  if (!is_edit_key (key))
    return other_key (self, key);
  /* "+" may itself need Shift on a keyboard: there it does not mean five. */
  gboolean many = state & GDK_SHIFT_MASK && key != GDK_KEY_plus && key != GDK_KEY_underscore;
  if (!edit_key (self, key, many ? MANY_STEPS : 1))
    gtk_widget_error_bell (GTK_WIDGET (self));
  return TRUE;
}

void
ph_bow_view_init_input (PhBowView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  ph_bow_view_init_pointer (self);
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-released", G_CALLBACK (ph_bow_view_end_key_gesture), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (ph_bow_view_end_key_gesture), self);
  gtk_widget_add_controller (widget, keys);
  gtk_widget_add_controller (widget, focus);
}
