/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hanging a part elsewhere by dragging its row onto another: only rows with a free place for it
 * take it, and what follows the pointer says which place that is. The list carries the drag, since
 * a row's own controllers miss its padding.
 */
#include <glib/gi18n.h>
#include <string.h>

#include "widgets/parts-pane-private.h"
#include "widgets/place-list.h"

/* Whether a place is on that part ("bow" for the bow): "front-bar", "block:a". */
static gboolean
is_on (const PhPlaceOption *place, const char *id)
{
  gsize length = strlen (id);
  return strncmp (place->on, id, length) == 0
         && (place->on[length] == '\0' || place->on[length] == ':');
}

/* The most sensible place on the row's part for the one that is dragged; null: none. Borrowed from
 * the list of places, which was made when the drag began. */
static const PhPlaceOption *
place_at (PhPartsPane *self, double x, double y, PhPartRow **row)
{
  double row_x;
  *row = ph_parts_pane_row_at (self, x, y, &row_x);
  PhPartItem *item = *row ? ph_part_row_get_item (*row) : NULL;
  for (guint i = 0; item && self->drop_places && i < self->drop_places->len; i++)
    if (is_on (self->drop_places->pdata[i], ph_part_item_get_id (item)))
      return self->drop_places->pdata[i];
  return NULL;
}

static void
mark_row (PhPartsPane *self, PhPartRow *row)
{
  if (self->drop_row)
    gtk_widget_remove_css_class (GTK_WIDGET (self->drop_row), "drop-here");
  g_set_weak_pointer (&self->drop_row, row);
  if (row)
    gtk_widget_add_css_class (GTK_WIDGET (row), "drop-here");
}

static const PhPart *
dragged_part (PhPartsPane *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  int part = self->dragged ? ph_rig_find (rig, self->dragged) : -1;
  return part < 0 ? NULL : &rig->parts[part];
}

static void
say_place (PhPartsPane *self, const PhPlaceOption *place)
{
  const PhPart *part = dragged_part (self);
  if (!self->drag_label || !part)
    return;
  /* Translators: "Hang on front bar's end" */
  g_autofree char *words =
      place ? g_strdup_printf (_ ("Hang on %s"), place->words) : g_strdup (ph_part_name (part));
  gtk_label_set_text (self->drag_label, words);
}

/* The source. */

static GdkContentProvider *
prepare_cb (PhPartsPane *self, double x, double y)
{
  double row_x;
  PhPartRow *row = ph_parts_pane_row_at (self, x, y, &row_x);
  PhPartItem *item = row ? ph_part_row_get_item (row) : NULL;
  if (!item || ph_part_item_get_kind (item) < 0)
    return NULL;
  g_free (self->dragged);
  self->dragged = g_strdup (ph_part_item_get_id (item));
  return gdk_content_provider_new_typed (PH_TYPE_PART_ITEM, item);
}

/* What follows the pointer keeps the size it begins with: wide enough for every place. */
static GtkWidget *
new_label (PhPartsPane *self)
{
  GtkWidget *label = gtk_label_new (NULL);
  glong most = g_utf8_strlen (ph_part_name (dragged_part (self)), -1);
  for (guint i = 0; i < self->drop_places->len; i++)
    {
      const PhPlaceOption *place = self->drop_places->pdata[i];
      g_autofree char *words = g_strdup_printf (_ ("Hang on %s"), place->words);
      most = MAX (most, g_utf8_strlen (words, -1));
    }
  gtk_label_set_width_chars (GTK_LABEL (label), (int)most);
  gtk_widget_add_css_class (label, "drag-words");
  return label;
}

static void
begin_cb (PhPartsPane *self, GdkDrag *drag)
{
  const PhPart *part = dragged_part (self);
  if (!part)
    return;
  int moving = ph_rig_find (ph_document_get_rig (self->document), part->id);
  g_clear_pointer (&self->drop_places, g_ptr_array_unref);
  self->drop_places = ph_place_list_new (self->document, part, PH_POINTS_ANYWHERE, moving, NULL);
  GtkWidget *label = new_label (self);
  gtk_drag_icon_set_child (GTK_DRAG_ICON (gtk_drag_icon_get_for_drag (drag)), label);
  gdk_drag_set_hotspot (drag, -14, -14);
  g_set_weak_pointer (&self->drag_label, GTK_LABEL (label));
  say_place (self, NULL);
}

static void
end_cb (PhPartsPane *self)
{
  mark_row (self, NULL);
  g_clear_weak_pointer (&self->drag_label);
  g_clear_pointer (&self->drop_places, g_ptr_array_unref);
  g_clear_pointer (&self->dragged, g_free);
}

/* The target. */

static GdkDragAction
motion_cb (PhPartsPane *self, double x, double y)
{
  PhPartRow *row;
  const PhPlaceOption *place = place_at (self, x, y, &row);
  mark_row (self, place ? row : NULL);
  say_place (self, place);
  return place ? GDK_ACTION_MOVE : 0;
}

static void
leave_cb (PhPartsPane *self)
{
  mark_row (self, NULL);
  say_place (self, NULL);
}

static gboolean
drop_cb (PhPartsPane *self, const GValue *value G_GNUC_UNUSED, double x, double y)
{
  PhPartRow *row;
  const PhPlaceOption *place = place_at (self, x, y, &row);
  g_autofree char *id = g_strdup (self->dragged);
  g_autoptr (GError) error = NULL;
  mark_row (self, NULL);
  if (!place || !dragged_part (self))
    return FALSE;
  gboolean done = ph_place_hang (place, self->document, id, &error);
  if (done)
    ph_document_select (self->document, id);
  ph_parts_pane_say (self, done ? NULL : error ? error->message : _ ("It cannot hang there."));
  return done;
}

void
ph_parts_pane_init_drag (PhPartsPane *self)
{
  GtkDragSource *source = gtk_drag_source_new ();
  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect_swapped (source, "prepare", G_CALLBACK (prepare_cb), self);
  g_signal_connect_swapped (source, "drag-begin", G_CALLBACK (begin_cb), self);
  g_signal_connect_swapped (source, "drag-end", G_CALLBACK (end_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (source));

  GtkDropTarget *target = gtk_drop_target_new (PH_TYPE_PART_ITEM, GDK_ACTION_MOVE);
  g_signal_connect_swapped (target, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (target, "leave", G_CALLBACK (leave_cb), self);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (drop_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (target));
}

void
ph_parts_pane_clear_drag (PhPartsPane *self)
{
  end_cb (self);
}
