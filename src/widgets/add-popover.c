/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A list box over the catalogue, one row an item, under a heading a group. Places are worked out
 * anew for the chosen item, as the rig stands when the popover opens.
 */
#include "widgets/add-popover.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "document/format.h"
#include "widgets/part-words.h"
#include "widgets/place-list.h"
#include "widgets/search-words.h"

struct _PhAddPopover
{
  GtkPopover parent_instance;

  /* Template widgets */
  GtkSearchEntry *search;
  GtkScrolledWindow *scroller;
  GtkListBox *list;
  GtkLabel *sentence, *place_label;
  GtkWidget *place_box, *add;
  GtkDropDown *place;

  /* Borrowed */
  const PhCatalogue *catalogue;

  /* Owned */
  PhDocument *document;
  GPtrArray *places; /* of the chosen item, PhPlaceOption */
  char *near_id;

  int frames_to_show; /* until the chosen row is scrolled into sight */
};

enum
{
  ADDED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* A place may be long: in the button and in the list it takes the lines that it needs. */
#define PLACE_CHARS 24

G_DEFINE_FINAL_TYPE (PhAddPopover, ph_add_popover, GTK_TYPE_POPOVER)

static GQuark
item_quark (void)
{
  return g_quark_from_static_string ("ph-catalogue-item");
}

static const PhCatalogueItem *
item_of (GtkListBoxRow *row)
{
  return row ? g_object_get_qdata (G_OBJECT (row), item_quark ()) : NULL;
}

static void
say (PhAddPopover *self, const char *sentence)
{
  gtk_label_set_text (self->sentence, sentence ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->sentence), sentence && *sentence);
}

static const char *
no_place_sentence (PhPartKind kind, PhPoints points)
{
  if (points == PH_POINTS_BACK)
    return _ (
        "No free place leads back yet: add a V bracket or a side mount first. It can go between "
        "the bow and the front bar.");
  switch (kind)
    {
    case PH_PART_WEIGHTS:
      return _ ("There is nothing to put weights on yet: add a front bar first.");
    case PH_PART_DAMPER:
      return _ ("Every bar’s end is taken: take something off, then add the damper.");
    case PH_PART_BAR:
    case PH_PART_BRACKET:
    case PH_PART_ACCESSORY:
    default:
      return _ ("Every mount is taken: take something off or add a bracket.");
    }
}

static void
show_places (PhAddPopover *self, const PhCatalogueItem *item)
{
  gboolean any = self->places && self->places->len > 0;
  g_autoptr (GtkStringList) words = gtk_string_list_new (NULL);
  for (guint i = 0; any && i < self->places->len; i++)
    gtk_string_list_append (words, ((PhPlaceOption *)self->places->pdata[i])->words);
  gtk_drop_down_set_model (self->place, G_LIST_MODEL (words));
  gtk_drop_down_set_selected (self->place, any ? 0 : GTK_INVALID_LIST_POSITION);
  gtk_widget_set_visible (self->place_box, any);
  gtk_widget_set_sensitive (self->add, any);
  say (self,
       item && !any ? no_place_sentence (item->part.kind, ph_points_of_group (item->group)) : NULL);
}

static void
selected_cb (PhAddPopover *self)
{
  if (!self->document)
    return; /* the last of it is going away */
  const PhCatalogueItem *item = item_of (gtk_list_box_get_selected_row (self->list));
  g_clear_pointer (&self->places, g_ptr_array_unref);
  if (item)
    self->places = ph_place_list_new (self->document, &item->part, ph_points_of_group (item->group),
                                      -1, self->near_id);
  show_places (self, item);
}

static void
add_cb (PhAddPopover *self)
{
  const PhCatalogueItem *item = item_of (gtk_list_box_get_selected_row (self->list));
  guint chosen = gtk_drop_down_get_selected (self->place);
  if (!item || !self->places || chosen >= self->places->len)
    return;
  g_autoptr (GError) error = NULL;
  if (ph_place_add (self->places->pdata[chosen], self->document, &item->part, &error))
    {
      gtk_popover_popdown (GTK_POPOVER (self));
      g_signal_emit (self, signals[ADDED], 0);
    }
  else
    say (self, error ? error->message : _ ("This part cannot go there."));
}

/* Keeps the chosen row in sight without taking the focus from the search. */
static gboolean
show_row_cb (GtkWidget *widget, GdkFrameClock *clock G_GNUC_UNUSED, gpointer data G_GNUC_UNUSED)
{
  PhAddPopover *self = PH_ADD_POPOVER (widget);
  if (--self->frames_to_show > 0)
    return G_SOURCE_CONTINUE;
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  graphene_rect_t at;
  if (!row || !gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &at))
    return G_SOURCE_REMOVE;
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  gtk_adjustment_clamp_page (adjustment, at.origin.y, at.origin.y + at.size.height);
  return G_SOURCE_REMOVE;
}

/* Rows have their places only after the frame that follows a search. */
static void
show_row_soon (PhAddPopover *self)
{
  if (self->frames_to_show <= 0)
    gtk_widget_add_tick_callback (GTK_WIDGET (self), show_row_cb, NULL, NULL);
  self->frames_to_show = 2;
}

static gboolean
is_found (GtkListBoxRow *row)
{
  return gtk_widget_get_child_visible (GTK_WIDGET (row));
}

/* The next or previous row that the search left, from row i on. */
static void
select_from (PhAddPopover *self, int i, int way)
{
  GtkListBoxRow *row;
  for (; (row = gtk_list_box_get_row_at_index (self->list, i)) && !is_found (row); i += way)
    ;
  if (row)
    gtk_list_box_select_row (self->list, row);
}

/* The first found row whose part has the most sensible place now; the very first found one where
 * none has any. */
static void
select_fitting (PhAddPopover *self)
{
  GtkListBoxRow *row, *best = NULL;
  int least = G_MAXINT;
  select_from (self, 0, 1);
  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)); i++)
    {
      if (!is_found (row))
        continue;
      const PhCatalogueItem *item = item_of (row);
      PhPoints points = ph_points_of_group (item->group);
      g_autoptr (GPtrArray) places =
          ph_place_list_new (self->document, &item->part, points, -1, self->near_id);
      int rank = places->len ? ((PhPlaceOption *)places->pdata[0])->rank : G_MAXINT;
      if (rank < least)
        {
          best = row;
          least = rank;
        }
    }
  if (best)
    gtk_list_box_select_row (self->list, best);
}

static void
move_selection (PhAddPopover *self, int way)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  select_from (self, row ? gtk_list_box_row_get_index (row) + way : 0, way);
}

static gboolean
search_key_cb (GtkEventControllerKey *keys G_GNUC_UNUSED, guint keyval, guint code G_GNUC_UNUSED,
               GdkModifierType state G_GNUC_UNUSED, PhAddPopover *self)
{
  int way = keyval == GDK_KEY_Down || keyval == GDK_KEY_KP_Down ? 1
            : keyval == GDK_KEY_Up || keyval == GDK_KEY_KP_Up   ? -1
                                                                : 0;
  if (way)
    {
      move_selection (self, way);
      show_row_soon (self);
      return TRUE;
    }
  if (keyval != GDK_KEY_Escape)
    return FALSE;
  gtk_popover_popdown (GTK_POPOVER (self));
  return TRUE;
}

static gboolean
filter_cb (GtkListBoxRow *row, gpointer data)
{
  PhAddPopover *self = data;
  const PhCatalogueItem *item = item_of (row);
  g_autofree char *text = g_strdup_printf ("%s, %s, %s", item->part.name, _ (item->group),
                                           item->search ? item->search : "");
  return ph_search_matches (text, gtk_editable_get_text (GTK_EDITABLE (self->search)));
}

static void
header_cb (GtkListBoxRow *row, GtkListBoxRow *before, gpointer data G_GNUC_UNUSED)
{
  const char *group = item_of (row)->group;
  if (before && g_str_equal (item_of (before)->group, group))
    {
      gtk_list_box_row_set_header (row, NULL);
      return;
    }
  GtkWidget *label = gtk_label_new (_ (group));
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "add-group");
  gtk_list_box_row_set_header (row, label);
}

/* Of the same group as the chosen bar, the one that is nearest to the rule. */
static void
select_rule_length (PhAddPopover *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list), *best = row;
  const PhCatalogueItem *first = item_of (row);
  double wanted = first ? ph_rule_length_mm (self->document, first) : NAN, least = INFINITY;
  if (isnan (wanted))
    return;
  for (int i = 0; (row = gtk_list_box_get_row_at_index (self->list, i)); i++)
    {
      double off = fabs (item_of (row)->part.length_mm - wanted);
      if (g_str_equal (item_of (row)->group, first->group) && off < least && is_found (row))
        {
          best = row;
          least = off;
        }
    }
  gtk_list_box_select_row (self->list, best);
}

/* A row is always chosen, so that Enter adds it: of those found the part that the rig has the best
 * place for. */
static void
search_cb (GtkSearchEntry *search G_GNUC_UNUSED, PhAddPopover *self)
{
  if (!self->document)
    return;
  gtk_list_box_invalidate_filter (self->list);
  gtk_list_box_select_row (self->list, NULL);
  select_fitting (self);
  select_rule_length (self);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
  show_row_soon (self);
}

static GtkWidget *
make_row (PhAddPopover *self, const PhCatalogueItem *item)
{
  PhUnits units = ph_document_get_units (self->document);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *name = gtk_label_new (item->part.name);
  g_autofree char *mass_text =
      ph_format_quantity (ph_part_mass_g (&item->part), PH_QUANTITY_MASS, units);
  GtkWidget *mass = gtk_label_new (mass_text);
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (name), 26);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (mass, "quiet");
  gtk_widget_add_css_class (mass, "numeric");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), mass);

  GtkWidget *row = gtk_list_box_row_new ();
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_qdata (G_OBJECT (row), item_quark (), (gpointer)item);
  g_autofree char *label = g_strdup_printf ("%s, %s", item->part.name, mass_text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  return row;
}

static void
fill (PhAddPopover *self)
{
  GtkListBoxRow *row;
  while ((row = gtk_list_box_get_row_at_index (self->list, 0)))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (size_t i = 0; i < self->catalogue->n; i++)
    gtk_list_box_append (self->list, make_row (self, &self->catalogue->items[i]));
}

/* Masses follow the units, places the rig: both as they are now. */
static void
ph_add_popover_show (GtkWidget *widget)
{
  PhAddPopover *self = PH_ADD_POPOVER (widget);
  fill (self);
  search_cb (self->search, self);
  GTK_WIDGET_CLASS (ph_add_popover_parent_class)->show (widget);
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

static void
ph_add_popover_closed (GtkPopover *popover)
{
  PhAddPopover *self = PH_ADD_POPOVER (popover);
  ph_add_popover_prepare (self, NULL, NULL);
  if (GTK_POPOVER_CLASS (ph_add_popover_parent_class)->closed)
    GTK_POPOVER_CLASS (ph_add_popover_parent_class)->closed (popover);
}

static void
ph_add_popover_dispose (GObject *object)
{
  PhAddPopover *self = PH_ADD_POPOVER (object);
  g_clear_object (&self->document);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->near_id, g_free);
  G_OBJECT_CLASS (ph_add_popover_parent_class)->dispose (object);
}

static void
ph_add_popover_class_init (PhAddPopoverClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_add_popover_dispose;
  widget_class->show = ph_add_popover_show;
  GTK_POPOVER_CLASS (klass)->closed = ph_add_popover_closed;
  signals[ADDED] = g_signal_new ("added", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/add-popover.ui");
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, search);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, scroller);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, list);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, sentence);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, place_box);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, place_label);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, place);
  gtk_widget_class_bind_template_child (widget_class, PhAddPopover, add);
  gtk_widget_class_bind_template_callback (widget_class, search_cb);
  gtk_widget_class_bind_template_callback (widget_class, search_key_cb);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, add_cb);
}

static void
place_setup_cb (GtkListItemFactory *factory G_GNUC_UNUSED, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (label), PLACE_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (label), PLACE_CHARS);
  gtk_list_item_set_child (item, label);
}

static void
place_bind_cb (GtkListItemFactory *factory G_GNUC_UNUSED, GtkListItem *item)
{
  GtkStringObject *words = gtk_list_item_get_item (item);
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (words));
}

static void
ph_add_popover_init (PhAddPopover *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
  g_signal_connect (factory, "setup", G_CALLBACK (place_setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (place_bind_cb), NULL);
  gtk_drop_down_set_factory (self->place, factory);
  gtk_list_box_set_filter_func (self->list, filter_cb, self, NULL);
  gtk_list_box_set_header_func (self->list, header_cb, self, NULL);
  gtk_search_entry_set_key_capture_widget (self->search, GTK_WIDGET (self->list));
}

GtkWidget *
ph_add_popover_new (PhDocument *document, const PhCatalogue *catalogue)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document) && catalogue, NULL);
  PhAddPopover *self = g_object_new (PH_TYPE_ADD_POPOVER, NULL);
  self->document = g_object_ref (document);
  self->catalogue = catalogue;
  return GTK_WIDGET (self);
}

void
ph_add_popover_prepare (PhAddPopover *self, const char *search, const char *near_id)
{
  g_return_if_fail (PH_IS_ADD_POPOVER (self));
  g_free (self->near_id);
  self->near_id = g_strdup (near_id);
  gtk_editable_set_text (GTK_EDITABLE (self->search), search ? search : "");
}
