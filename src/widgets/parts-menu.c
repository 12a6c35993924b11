/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is done to a row: editing in place by double click or key, opening and closing, and the
 * context menu. The list view carries the gestures, since those of a row miss its padding.
 */
#include <glib/gi18n.h>

#include "widgets/parts-pane-private.h"
#include "widgets/place-list.h"

static const PhPart *
selected_part (PhPartsPane *self)
{
  int part = ph_document_get_selected_part (self->document);
  return part < 0 ? NULL : &ph_document_get_rig (self->document)->parts[part];
}

PhPartRow *
ph_parts_pane_row_at (PhPartsPane *self, double x, double y, double *row_x)
{
  GtkWidget *list = GTK_WIDGET (self->list);
  GtkWidget *widget = gtk_widget_pick (list, x, y, GTK_PICK_DEFAULT);
  while (widget && gtk_widget_get_parent (widget) != list)
    widget = gtk_widget_get_parent (widget);
  GtkWidget *row = widget ? gtk_widget_get_first_child (widget) : NULL;
  double row_y;
  if (!PH_IS_PART_ROW (row))
    return NULL;
  gtk_widget_translate_coordinates (list, row, x, y, row_x, &row_y);
  return PH_PART_ROW (row);
}

/* Menu. */

/* "Hang elsewhere": the places are kept until the next menu. */
static GMenu *
places_menu (PhPartsPane *self, const PhPart *part)
{
  GMenu *menu = g_menu_new ();
  int moving = ph_document_get_selected_part (self->document);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  self->places = ph_place_list_new (self->document, part, PH_POINTS_ANYWHERE, moving, NULL);
  for (guint i = 0; i < self->places->len; i++)
    {
      const PhPlaceOption *place = self->places->pdata[i];
      g_autoptr (GMenuItem) item = g_menu_item_new (place->words, NULL);
      g_menu_item_set_action_and_target (item, "parts.hang", "i", (int)i);
      g_menu_append_item (menu, item);
    }
  return menu;
}

static void
append_section (GMenu *menu, GMenu *section)
{
  g_menu_append_section (menu, NULL, G_MENU_MODEL (section));
  g_object_unref (section);
}

static GMenuModel *
make_menu (PhPartsPane *self)
{
  const PhPart *part = selected_part (self);
  GMenu *menu = g_menu_new (), *edit = g_menu_new (), *place = g_menu_new (), *rest = g_menu_new ();
  g_menu_append (edit, _ ("Add Here…"), "parts.add-here");
  g_menu_append (edit, _ ("Duplicate"), "win.duplicate");
  g_menu_append (edit, _ ("Copy"), "win.copy");
  g_menu_append (edit, _ ("Paste"), "win.paste");
  append_section (menu, edit);
  if (part)
    {
      GMenu *places = places_menu (self, part);
      if (self->places->len)
        g_menu_append_submenu (place, _ ("Hang Elsewhere"), G_MENU_MODEL (places));
      g_object_unref (places);
      g_menu_append (place, _ ("Fitted"), "win.toggle-fitted");
    }
  append_section (menu, place);
  g_menu_append (rest, _ ("Rename"), "parts.rename");
  g_menu_append (rest, _ ("Remove"), "win.remove");
  append_section (menu, rest);
  return G_MENU_MODEL (menu);
}

static gboolean
popup_cb (gpointer data)
{
  PhPartsPane *self = data;
  self->menu_idle = 0;
  gtk_popover_popup (GTK_POPOVER (self->menu));
  return G_SOURCE_REMOVE;
}

/* The toolkit adds a menu's separators in an idle of its own and would cut off the last item of a
 * menu that is already up. */
static void
open_menu (PhPartsPane *self, double x, double y)
{
  g_autoptr (GMenuModel) model = make_menu (self);
  gtk_popover_menu_set_menu_model (GTK_POPOVER_MENU (self->menu), model);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "parts.rename", selected_part (self) != NULL);
  gtk_popover_set_pointing_to (GTK_POPOVER (self->menu), &(GdkRectangle){ (int)x, (int)y, 1, 1 });
  if (!self->menu_idle)
    self->menu_idle = g_idle_add (popup_cb, self);
}

/* By key: at the selected row. */
static gboolean
open_menu_by_key (PhPartsPane *self)
{
  const char *id = ph_document_get_selected (self->document);
  PhPartRow *row = id ? ph_parts_pane_row_of (self, id) : NULL;
  graphene_rect_t at;
  if (!row || !gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &at))
    return FALSE;
  open_menu (self, at.origin.x + 40, at.origin.y + at.size.height);
  return TRUE;
}

static void
menu_at (PhPartsPane *self, double x, double y)
{
  double row_x;
  PhPartRow *row = ph_parts_pane_row_at (self, x, y, &row_x);
  if (!row || !ph_part_row_get_item (row))
    return;
  ph_document_select (self->document, ph_part_item_get_id (ph_part_row_get_item (row)));
  open_menu (self, x, y);
}

static void
menu_click_cb (GtkGestureClick *click, int n_press G_GNUC_UNUSED, double x, double y,
               PhPartsPane *self)
{
  menu_at (self, x, y);
  gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
long_press_cb (GtkGestureLongPress *press G_GNUC_UNUSED, double x, double y, PhPartsPane *self)
{
  menu_at (self, x, y);
}

/* Actions. */

static gboolean
rename_idle_cb (gpointer data)
{
  PhPartsPane *self = data;
  self->rename_idle = 0;
  ph_parts_pane_rename_selected (self);
  return G_SOURCE_REMOVE;
}

/* Once the menu is gone: it would take the focus back from the editor. */
static void
rename_cb (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  PhPartsPane *self = PH_PARTS_PANE (widget);
  if (!self->rename_idle)
    self->rename_idle = g_idle_add (rename_idle_cb, self);
}

static void
add_here_cb (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter G_GNUC_UNUSED)
{
  ph_parts_pane_show_add (PH_PARTS_PANE (widget));
}

static void
hang_cb (GtkWidget *widget, const char *name G_GNUC_UNUSED, GVariant *parameter)
{
  PhPartsPane *self = PH_PARTS_PANE (widget);
  const PhPart *part = selected_part (self);
  guint i = (guint)g_variant_get_int32 (parameter);
  if (!part || !self->places || i >= self->places->len)
    return;
  g_autoptr (GError) error = NULL;
  g_autofree char *id = g_strdup (part->id);
  if (!ph_place_hang (self->places->pdata[i], self->document, id, &error))
    ph_parts_pane_say (self, error ? error->message : _ ("It cannot hang there."));
}

void
ph_parts_pane_install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "parts.rename", NULL, rename_cb);
  gtk_widget_class_install_action (widget_class, "parts.add-here", NULL, add_here_cb);
  gtk_widget_class_install_action (widget_class, "parts.hang", "i", hang_cb);
}

/* Keys and double clicks. */

static GtkTreeListRow *
selected_tree_row (PhPartsPane *self)
{
  return gtk_single_selection_get_selected_item (self->selection);
}

/* Right opens a row, then goes into it. */
static void
go_in (PhPartsPane *self)
{
  GtkTreeListRow *row = selected_tree_row (self);
  if (!row || !gtk_tree_list_row_is_expandable (row))
    return;
  if (!gtk_tree_list_row_get_expanded (row))
    {
      gtk_tree_list_row_set_expanded (row, TRUE);
      return;
    }
  g_autoptr (GtkTreeListRow) child = gtk_tree_list_row_get_child_row (row, 0);
  g_autoptr (PhPartItem) item = child ? gtk_tree_list_row_get_item (child) : NULL;
  if (item)
    ph_document_select (self->document, ph_part_item_get_id (item));
  ph_parts_pane_focus_row (self);
}

/* Left closes it, then goes out to its host. */
static void
go_out (PhPartsPane *self)
{
  GtkTreeListRow *row = selected_tree_row (self);
  if (!row)
    return;
  if (gtk_tree_list_row_get_expanded (row))
    {
      gtk_tree_list_row_set_expanded (row, FALSE);
      return;
    }
  g_autoptr (GtkTreeListRow) parent = gtk_tree_list_row_get_parent (row);
  g_autoptr (PhPartItem) item = parent ? gtk_tree_list_row_get_item (parent) : NULL;
  if (item)
    ph_document_select (self->document, ph_part_item_get_id (item));
  ph_parts_pane_focus_row (self);
}

static gboolean
edit_selected (PhPartsPane *self, PhPartCell cell)
{
  const char *id = ph_document_get_selected (self->document);
  PhPartRow *row = id ? ph_parts_pane_row_of (self, id) : NULL;
  return row && ph_part_row_edit (row, cell);
}

static gboolean
is_typing (PhPartsPane *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  return root && GTK_IS_TEXT (gtk_root_get_focus (root));
}

static gboolean
key_cb (GtkEventControllerKey *keys G_GNUC_UNUSED, guint keyval, guint code G_GNUC_UNUSED,
        GdkModifierType state, PhPartsPane *self)
{
  GdkModifierType held = state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SHIFT_MASK);
  if (is_typing (self))
    return FALSE;
  if (keyval == GDK_KEY_Menu || (keyval == GDK_KEY_F10 && held == GDK_SHIFT_MASK))
    return open_menu_by_key (self);
  if (keyval == GDK_KEY_F2 && held == GDK_SHIFT_MASK)
    return edit_selected (self, PH_PART_CELL_SIZE) || edit_selected (self, PH_PART_CELL_MASS);
  if (keyval == GDK_KEY_F2 && held == GDK_CONTROL_MASK)
    return edit_selected (self, PH_PART_CELL_MASS);
  if (held)
    return FALSE;
  switch (keyval)
    {
    case GDK_KEY_F2:
      return edit_selected (self, PH_PART_CELL_NAME);
    case GDK_KEY_Insert:
    case GDK_KEY_KP_Insert:
      ph_parts_pane_show_add (self);
      return TRUE;
    case GDK_KEY_Left:
    case GDK_KEY_KP_Left:
      return go_out (self), TRUE;
    case GDK_KEY_Right:
    case GDK_KEY_KP_Right:
      return go_in (self), TRUE;
    default:
      return FALSE;
    }
}

static void
click_cb (GtkGestureClick *click, int n_press, double x, double y, PhPartsPane *self)
{
  double row_x;
  PhPartRow *row = n_press == 2 ? ph_parts_pane_row_at (self, x, y, &row_x) : NULL;
  if (row && ph_part_row_edit (row, ph_part_row_cell_at (row, row_x)))
    gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
}

static void
activate_cb (GtkListView *list G_GNUC_UNUSED, guint position G_GNUC_UNUSED, PhPartsPane *self)
{
  g_signal_emit_by_name (self, "edit-form");
}

static gboolean
find_focus_cb (gpointer data)
{
  PhPartsPane *self = data;
  self->focus_idle = 0;
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root ? gtk_root_get_focus (root) : NULL;
  if (root && (self->want_focus || !focus || !gtk_widget_get_mapped (focus)))
    ph_parts_pane_focus_row (self);
  self->want_focus = FALSE;
  return G_SOURCE_REMOVE;
}

/* After what is going on, since a popover that closes gives the focus back to where it was, and
 * rows are used for other parts while an edit goes on; but before the next key, which would be
 * lost. */
void
ph_parts_pane_find_focus (PhPartsPane *self)
{
  if (!self->focus_idle && !gtk_widget_in_destruction (GTK_WIDGET (self)))
    self->focus_idle = g_idle_add_full (G_PRIORITY_HIGH, find_focus_cb, self, NULL);
}

void
ph_parts_pane_want_focus (PhPartsPane *self)
{
  self->want_focus = TRUE;
  ph_parts_pane_find_focus (self);
}

void
ph_parts_pane_init_menu (PhPartsPane *self)
{
  GtkWidget *list = GTK_WIDGET (self->list);
  g_signal_connect (list, "activate", G_CALLBACK (activate_cb), self);

  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (list, keys);

  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (ph_parts_pane_find_focus), self);
  gtk_widget_add_controller (list, focus);

  GtkGesture *click = gtk_gesture_click_new ();
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (click), GTK_PHASE_CAPTURE);
  g_signal_connect (click, "pressed", G_CALLBACK (click_cb), self);
  gtk_widget_add_controller (list, GTK_EVENT_CONTROLLER (click));

  GtkGesture *menu_click = gtk_gesture_click_new ();
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu_click), GDK_BUTTON_SECONDARY);
  g_signal_connect (menu_click, "pressed", G_CALLBACK (menu_click_cb), self);
  gtk_widget_add_controller (list, GTK_EVENT_CONTROLLER (menu_click));

  GtkGesture *press = gtk_gesture_long_press_new ();
  gtk_gesture_single_set_touch_only (GTK_GESTURE_SINGLE (press), TRUE);
  g_signal_connect (press, "pressed", G_CALLBACK (long_press_cb), self);
  gtk_widget_add_controller (list, GTK_EVENT_CONTROLLER (press));

  self->menu = gtk_popover_menu_new_from_model (NULL);
  gtk_popover_set_has_arrow (GTK_POPOVER (self->menu), FALSE);
  gtk_widget_set_halign (self->menu, GTK_ALIGN_START);
  gtk_widget_set_parent (self->menu, list);
  g_signal_connect_swapped (self->menu, "closed", G_CALLBACK (ph_parts_pane_find_focus), self);
}
