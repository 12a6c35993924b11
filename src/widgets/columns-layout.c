/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Assumes few children (each is measured once a pass). Children that are hidden take no place.
 */
#include "widgets/columns-layout.h"

struct _PhColumnsLayout
{
  GtkLayoutManager parent_instance;

  int column_spacing, row_spacing;
};

G_DEFINE_FINAL_TYPE (PhColumnsLayout, ph_columns_layout, GTK_TYPE_LAYOUT_MANAGER)

/* The children that take part, and the widths that all of them have in common. */
typedef struct
{
  GPtrArray *children;
  int minimum, natural; /* of one cell */
} Cells;

static Cells
collect (GtkWidget *widget)
{
  Cells cells = { g_ptr_array_new (), 0, 0 };
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child;
       child = gtk_widget_get_next_sibling (child))
    {
      int minimum, natural;
      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &minimum, &natural, NULL, NULL);
      cells.minimum = MAX (cells.minimum, minimum);
      cells.natural = MAX (cells.natural, natural);
      g_ptr_array_add (cells.children, child);
    }
  return cells;
}

int
ph_columns_layout_columns (int n, int cell, int spacing, int width)
{
  if (n <= 0)
    return 0;
  int fit = CLAMP ((width + spacing) / MAX (cell + spacing, 1), 1, n);
  int rows = (n + fit - 1) / fit;
  return (n + rows - 1) / rows;
}

static int
row_height (const Cells *cells, guint from, int columns, int cell_width)
{
  int height = 0;
  for (guint i = from; i < MIN (from + (guint)columns, cells->children->len); i++)
    {
      int natural;
      gtk_widget_measure (g_ptr_array_index (cells->children, i), GTK_ORIENTATION_VERTICAL,
                          cell_width, NULL, &natural, NULL, NULL);
      height = MAX (height, natural);
    }
  return height;
}

static int
cell_width (const PhColumnsLayout *self, int columns, int width)
{
  return (width - (columns - 1) * self->column_spacing) / MAX (columns, 1);
}

static int
total_height (const PhColumnsLayout *self, const Cells *cells, int width)
{
  int n = (int)cells->children->len, height = 0;
  int columns = ph_columns_layout_columns (n, cells->minimum, self->column_spacing, width);
  int cell = cell_width (self, columns, width);
  for (int i = 0; i < n; i += columns)
    height += row_height (cells, (guint)i, columns, cell) + (i > 0 ? self->row_spacing : 0);
  return height;
}

static GtkSizeRequestMode
ph_columns_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  (void)manager;
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ph_columns_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation,
                           int for_size, int *minimum, int *natural, int *minimum_baseline,
                           int *natural_baseline)
{
  PhColumnsLayout *self = PH_COLUMNS_LAYOUT (manager);
  Cells cells = collect (widget);
  int n = (int)cells.children->len;
  int all = n * cells.natural + MAX (n - 1, 0) * self->column_spacing;
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = cells.minimum;
      *natural = all;
    }
  else
    *minimum = *natural = total_height (self, &cells, for_size < 0 ? all : for_size);
  g_ptr_array_unref (cells.children);
}

static void
ph_columns_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height,
                            int baseline)
{
  PhColumnsLayout *self = PH_COLUMNS_LAYOUT (manager);
  Cells cells = collect (widget);
  gboolean from_right = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int n = (int)cells.children->len, y = 0;
  int columns = ph_columns_layout_columns (n, cells.minimum, self->column_spacing, width);
  int cell = cell_width (self, columns, width);
  (void)height;
  (void)baseline;
  for (int i = 0; i < n; i += columns)
    {
      int row = row_height (&cells, (guint)i, columns, cell);
      for (int j = i; j < MIN (i + columns, n); j++)
        {
          int x = (j - i) * (cell + self->column_spacing);
          GtkAllocation place = { from_right ? width - x - cell : x, y, cell, row };
          gtk_widget_size_allocate (g_ptr_array_index (cells.children, (guint)j), &place, -1);
        }
      y += row + self->row_spacing;
    }
  g_ptr_array_unref (cells.children);
}

static void
ph_columns_layout_class_init (PhColumnsLayoutClass *klass)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (klass);
  manager_class->get_request_mode = ph_columns_layout_get_request_mode;
  manager_class->measure = ph_columns_layout_measure;
  manager_class->allocate = ph_columns_layout_allocate;
}

static void
ph_columns_layout_init (PhColumnsLayout *self)
{
  (void)self;
}

GtkLayoutManager *
ph_columns_layout_new (int column_spacing, int row_spacing)
{
  PhColumnsLayout *self = g_object_new (PH_TYPE_COLUMNS_LAYOUT, NULL);
  self->column_spacing = column_spacing;
  self->row_spacing = row_spacing;
  return GTK_LAYOUT_MANAGER (self);
}
