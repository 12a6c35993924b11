/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reads and writes one number by its key through the table of model/fields.h. Weights at the end
 * of a bar are the one number that may have to make its part first: a stack of one-ounce discs
 * (25.4 mm across, 7.2 mm thick: common practice, no source).
 */
#include "widgets/number-ref.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "model/check.h"
#include "model/fields.h"
#include "widgets/part-name.h"

#define DISC_G 28.349523125
#define DISC_DIAMETER_MM 25.4
#define DISC_THICK_MM 7.2

PhNumberRef
ph_number_ref (PhNumberOf of, const char *part, const char *key, int component)
{
  return (PhNumberRef){ of, g_strdup (part), key, NULL, component };
}

PhNumberRef
ph_number_ref_socket (const char *part, const char *socket, int component)
{
  return (PhNumberRef){ PH_NUMBER_SOCKET, g_strdup (part), NULL, g_strdup (socket), component };
}

PhNumberRef
ph_number_ref_copy (const PhNumberRef *ref)
{
  PhNumberRef copy = *ref;
  copy.part = g_strdup (ref->part);
  copy.socket = g_strdup (ref->socket);
  return copy;
}

void
ph_number_ref_clear (PhNumberRef *ref)
{
  g_clear_pointer (&ref->part, g_free);
  g_clear_pointer (&ref->socket, g_free);
}

static gboolean
hangs_at_end (const PhRig *rig, size_t i, int host)
{
  const char *socket = NULL;
  return ph_rig_host (rig, i, &socket) == host && !socket && isnan (rig->parts[i].along_mm);
}

static int
guest_at_end (const PhRig *rig, int host, gboolean fitted)
{
  for (size_t i = 0; i < rig->n_parts; i++)
    if (hangs_at_end (rig, i, host) && rig->parts[i].off != fitted)
      return (int)i;
  return -1;
}

static int
stack_behind (const PhRig *rig, int host, gboolean fitted)
{
  int guest = guest_at_end (rig, host, fitted);
  for (int steps = 0; guest >= 0 && steps < PH_RIG_NESTING_MOST; steps++)
    {
      if (rig->parts[guest].kind == PH_PART_WEIGHTS)
        return guest;
      if (rig->parts[guest].kind != PH_PART_DAMPER)
        return -1;
      guest = guest_at_end (rig, guest, TRUE);
    }
  return -1;
}

int
ph_end_stack (const PhRig *rig, int bar)
{
  int stack = stack_behind (rig, bar, TRUE);
  return stack >= 0 ? stack : stack_behind (rig, bar, FALSE);
}

/* The id of what a new stack would hang on: the bar, or the damper at its end; null: taken. */
static const char *
new_stack_host (const PhRig *rig, int bar)
{
  int host = bar;
  for (int steps = 0; steps < PH_RIG_NESTING_MOST; steps++)
    {
      int guest = guest_at_end (rig, host, TRUE);
      if (guest < 0)
        return rig->parts[host].id;
      if (rig->parts[guest].kind != PH_PART_DAMPER)
        return NULL;
      host = guest;
    }
  return NULL;
}

gboolean
ph_end_stack_possible (const PhRig *rig, int bar)
{
  return ph_end_stack (rig, bar) >= 0 || new_stack_host (rig, bar) != NULL;
}

static PhPart
new_stack (double count, const char *bar)
{
  static const char *const given[] = { "count", "each_g", "each_mm", "diameter_mm" };
  PhPart stack = ph_part_default (PH_PART_WEIGHTS);
  for (gsize i = 0; i < G_N_ELEMENTS (given); i++)
    stack.given |= ph_given_bit (PH_OBJECT_PART, given[i]);
  stack.name = ph_name_of_weights_on (bar);
  stack.count = count;
  stack.each_g = DISC_G;
  stack.each_mm = DISC_THICK_MM;
  stack.diameter_mm = DISC_DIAMETER_MM;
  stack.source = PH_SOURCE_CATALOGUE;
  return stack;
}

static PhObject
object_of (const PhNumberRef *ref)
{
  return ref->of == PH_NUMBER_PART  ? PH_OBJECT_PART
         : ref->of == PH_NUMBER_BOW ? PH_OBJECT_BOW
                                    : PH_OBJECT_ARCHER;
}

/* The mount or socket in a rig; null where it is not there. */
static PhSocket *
find_socket (const PhNumberRef *ref, const PhRig *rig)
{
  int part = ref->part ? ph_rig_find (rig, ref->part) : -1;
  if (ref->part && part < 0)
    return NULL;
  PhSocket *sockets = part < 0 ? rig->bow.mounts : rig->parts[part].sockets;
  size_t n = part < 0 ? rig->bow.n_mounts : rig->parts[part].n_sockets;
  int i = ph_sockets_find (sockets, n, ref->socket);
  return i < 0 ? NULL : &sockets[i];
}

static double
read_end_count (const PhNumberRef *ref, const PhRig *rig)
{
  int bar = ph_rig_find (rig, ref->part);
  if (bar < 0)
    return NAN;
  int stack = ph_end_stack (rig, bar);
  return stack < 0 ? 0 : rig->parts[stack].count;
}

double
ph_number_ref_read (const PhNumberRef *ref, const PhRig *rig)
{
  if (ref->of == PH_NUMBER_STATED_DRAW)
    return rig->archer.draw_length_mm + PH_STATED_DRAW_MORE_MM;
  if (ref->of == PH_NUMBER_END_COUNT)
    return read_end_count (ref, rig);
  if (ref->of == PH_NUMBER_SOCKET)
    {
      const PhSocket *socket = find_socket (ref, rig);
      return socket ? socket->at_mm[ref->component] : NAN;
    }

  const PhField *field = ph_field_find (object_of (ref), ref->key, NULL);
  g_return_val_if_fail (field != NULL, NAN);
  if (ref->of == PH_NUMBER_BOW)
    return ph_field_number (field, &rig->bow, ref->component);
  if (ref->of == PH_NUMBER_ARCHER && g_str_equal (ref->key, "holding_weight_n"))
    return ph_rig_holding_weight_n (rig); /* its default is the bow kind's */
  if (ref->of == PH_NUMBER_ARCHER)
    return ph_field_number (field, &rig->archer, ref->component);
  int part = ph_rig_find (rig, ref->part);
  return part < 0 ? NAN : ph_field_number (field, &rig->parts[part], ref->component);
}

PhQuantity
ph_number_ref_quantity (const PhNumberRef *ref)
{
  if (ref->of == PH_NUMBER_END_COUNT)
    return PH_QUANTITY_COUNT;
  if (ref->of == PH_NUMBER_STATED_DRAW || ref->of == PH_NUMBER_SOCKET)
    return PH_QUANTITY_LENGTH;
  const PhField *field = ph_field_find (object_of (ref), ref->key, NULL);
  g_return_val_if_fail (field != NULL, PH_QUANTITY_LENGTH);
  return field->quantity;
}

gboolean
ph_number_ref_way (const PhNumberRef *ref, const PhRig *rig, const PhCompiled *compiled, PhWay *way)
{
  int part = ref->part ? ph_rig_find (rig, ref->part) : -1;
  if ((ref->of == PH_NUMBER_BOW && strcmp (ref->key, "com_mm") == 0)
      || (ref->of == PH_NUMBER_SOCKET && !ref->part))
    *way = ph_way_of_position (ref->component);
  else if (ref->of != PH_NUMBER_PART || part < 0)
    return FALSE;
  else if (strcmp (ref->key, "swing_deg") == 0)
    *way = ph_way_of_swing (compiled, (size_t)part);
  else if (strcmp (ref->key, "lift_deg") == 0)
    *way = ph_way_of_lift (compiled, (size_t)part);
  else if (strcmp (ref->key, "at_mm") == 0 || strcmp (ref->key, "aperture_mm") == 0)
    *way = ph_way_of_position (ref->component);
  else
    return FALSE;
  return TRUE;
}

static bool apply_end_count (const PhNumberRef *ref, PhRig *rig, double value, PhIssues *issues);

typedef struct
{
  const PhNumberRef *ref;
  double value;
} Change;

/* As a plain edit rather than ph_document_add, which would select the new stack: the form that
 * asked stays with its bar. */
static bool
add_stack (PhRig *rig, gpointer data, PhIssues *issues)
{
  const Change *change = data;
  return apply_end_count (change->ref, rig, change->value, issues);
}

static gboolean
write_end_count (const PhNumberRef *ref, PhDocument *document, double value, GError **error)
{
  const PhRig *rig = ph_document_get_rig (document);
  int bar = ph_rig_find (rig, ref->part);
  g_return_val_if_fail (bar >= 0, FALSE);
  int stack = ph_end_stack (rig, bar);
  Change change = { ref, value };
  if (stack < 0)
    return value > 0 ? ph_document_edit (document, add_stack, &change, error) : TRUE;
  g_autofree char *id = g_strdup (rig->parts[stack].id);
  return ph_document_set_number (document, id, "count", 0, value, error);
}

static bool
move_socket (PhRig *rig, gpointer data, PhIssues *issues G_GNUC_UNUSED)
{
  const Change *change = data;
  PhSocket *socket = find_socket (change->ref, rig);
  if (socket)
    socket->at_mm[change->ref->component] = change->value;
  return socket != NULL;
}

gboolean
ph_number_ref_write (const PhNumberRef *ref, PhDocument *document, double value, GError **error)
{
  switch (ref->of)
    {
    case PH_NUMBER_PART:
      return ph_document_set_number (document, ref->part, ref->key, ref->component, value, error);
    case PH_NUMBER_BOW:
      return ph_document_set_bow_number (document, ref->key, ref->component, value, error);
    case PH_NUMBER_ARCHER:
      return ph_document_set_archer_number (document, ref->key, value, error);
    case PH_NUMBER_STATED_DRAW:
      return ph_document_set_archer_number (document, "draw_length_mm",
                                            value - PH_STATED_DRAW_MORE_MM, error);
    case PH_NUMBER_SOCKET:
      {
        Change change = { ref, value };
        return ph_document_edit (document, move_socket, &change, error);
      }
    case PH_NUMBER_END_COUNT:
      return write_end_count (ref, document, value, error);
    default:
      g_return_val_if_reached (FALSE);
    }
}

static bool
apply_end_count (const PhNumberRef *ref, PhRig *rig, double value, PhIssues *issues)
{
  int bar = ph_rig_find (rig, ref->part);
  if (bar < 0)
    return false;
  int stack = ph_end_stack (rig, bar);
  if (stack >= 0)
    return ph_edit_set_number (rig, (size_t)stack, "count", 0, value, issues);
  const char *on = new_stack_host (rig, bar);
  if (!on)
    return false;
  g_autofree char *place = g_strdup (on);
  PhPart part = new_stack (value, rig->parts[bar].name);
  bool added = ph_edit_add (rig, &part, place, NULL, issues);
  ph_part_clear (&part);
  return added;
}

static bool
apply (const PhNumberRef *ref, PhRig *rig, double value, PhIssues *issues)
{
  int part = ref->part ? ph_rig_find (rig, ref->part) : -1;
  switch (ref->of)
    {
    case PH_NUMBER_PART:
      return part >= 0
             && ph_edit_set_number (rig, (size_t)part, ref->key, ref->component, value, issues);
    case PH_NUMBER_BOW:
      return ph_edit_set_bow_number (rig, ref->key, ref->component, value, issues);
    case PH_NUMBER_ARCHER:
      return ph_edit_set_archer_number (rig, ref->key, value, issues);
    case PH_NUMBER_STATED_DRAW:
      return ph_edit_set_archer_number (rig, "draw_length_mm", value - PH_STATED_DRAW_MORE_MM,
                                        issues);
    case PH_NUMBER_SOCKET:
      {
        Change change = { ref, value };
        return move_socket (rig, &change, issues) && ph_check_rig (rig, issues);
      }
    case PH_NUMBER_END_COUNT:
      return apply_end_count (ref, rig, value, issues);
    default:
      g_return_val_if_reached (false);
    }
}

gboolean
ph_number_ref_apply (const PhNumberRef *ref, PhRig *rig, double value)
{
  PhIssues issues = { 0 };
  gboolean done = apply (ref, rig, value, &issues);
  ph_issues_clear (&issues);
  return done;
}
