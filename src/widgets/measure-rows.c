/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A table says which numbers a method has; scales are typed as what they show, a mass, and kept as
 * a force. Seconds have no unit to choose and use the toolkit's own entry.
 */
#include "widgets/measure-rows.h"

#include <glib/gi18n.h>
#include <math.h>

#include "base/units.h"
#include "widgets/quantity-entry.h"

struct _PhMeasureRows
{
  GtkWidget parent_instance;

  GtkGrid *grid;         /* child */
  PhMeasureDraft *draft; /* borrowed */
  GtkWidget *seconds;    /* borrowed child of the grid, or null */
  PhUnits units;
  int row; /* the next one, while building */
};

enum
{
  TYPED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (PhMeasureRows, ph_measure_rows, GTK_TYPE_WIDGET)

/* A force of the draft, typed as the mass that the scale shows [g]. */
#define N_PER_G (PH_GRAVITY / 1000)

typedef struct
{
  const char *label;
  PhQuantity quantity;
  size_t value, sd; /* in PhReadings; sd 0: it has none of its own */
  PhQuantity sd_quantity;
  double factor; /* number of the draft for one typed */
  gboolean seconds;
} Row;

#define AT(field) offsetof (PhReadings, field)
#define LENGTH_ROW(label, field)                                                                   \
  {                                                                                                \
    label, PH_QUANTITY_LENGTH, AT (field), AT (sd_##field), PH_QUANTITY_DIAMETER, 1, FALSE         \
  }
#define MASS_ROW                                                                                   \
  {                                                                                                \
    N_ ("Mass of all that moves"), PH_QUANTITY_BOW_MASS, AT (mass_g), AT (sd_mass_g),              \
        PH_QUANTITY_MASS, 1, FALSE                                                                 \
  }
#define TIME_ROWS                                                                                  \
  { N_ ("Full periods counted"), PH_QUANTITY_COUNT, AT (swings), 0, PH_QUANTITY_COUNT, 1, FALSE }, \
  {                                                                                                \
    N_ ("Seconds for all of them"), PH_QUANTITY_COUNT, AT (seconds), AT (sd_seconds),              \
        PH_QUANTITY_COUNT, 1, TRUE                                                                 \
  }

static const Row of_scales[] = {
  { N_ ("Scale 1, under the grip"), PH_QUANTITY_BOW_MASS, AT (f1_n), AT (sd_n), PH_QUANTITY_MASS,
    N_PER_G, FALSE },
  { N_ ("Scale 2, under the front bar"), PH_QUANTITY_BOW_MASS, AT (f2_n), 0, PH_QUANTITY_MASS,
    N_PER_G, FALSE },
  { N_ ("d: scale 2 ahead of the grip"), PH_QUANTITY_LENGTH, AT (d_mm), AT (sd_mm),
    PH_QUANTITY_DIAMETER, 1, FALSE },
  { NULL, 0, 0, 0, 0, 0, FALSE },
};
static const Row of_swing[] = {
  MASS_ROW,
  LENGTH_ROW (N_ ("l: edge to balance point"), distance_mm),
  TIME_ROWS,
  { NULL, 0, 0, 0, 0, 0, FALSE },
};
static const Row of_strings[] = {
  MASS_ROW,
  LENGTH_ROW (N_ ("D: distance between the strings"), spacing_mm),
  LENGTH_ROW (N_ ("h: length of the strings"), length_mm),
  TIME_ROWS,
  { NULL, 0, 0, 0, 0, 0, FALSE },
};

/* What an entry writes to. */
typedef struct
{
  PhMeasureRows *rows;
  double *number;
  double factor;
  gboolean is_sd;
} Cell;

static void
free_cell (gpointer data, GClosure *closure)
{
  (void)closure;
  g_free (data);
}

static char *
typed_cb (PhQuantityEntry *entry, double value, gpointer data)
{
  Cell *cell = data;
  (void)entry;
  if (cell->is_sd && value < 0)
    return g_strdup (_ ("An uncertainty is 0 or more."));
  *cell->number = value * cell->factor;
  g_signal_emit (cell->rows, signals[TYPED], 0);
  return NULL;
}

static void
spun_cb (GtkSpinButton *spin, Cell *cell)
{
  double value = gtk_spin_button_get_value (spin);
  *cell->number = value > 0 || cell->is_sd ? value : (double)NAN;
  g_signal_emit (cell->rows, signals[TYPED], 0);
}

static Cell *
cell_new (PhMeasureRows *self, double *number, double factor, gboolean is_sd)
{
  Cell *cell = g_new (Cell, 1);
  *cell = (Cell){ self, number, factor, is_sd };
  return cell;
}

static GtkWidget *
entry_new (PhMeasureRows *self, const char *name, PhQuantity quantity, double *number,
           double factor, gboolean is_sd)
{
  GtkWidget *widget = ph_quantity_entry_new (quantity);
  PhQuantityEntry *entry = PH_QUANTITY_ENTRY (widget);
  Cell *cell = cell_new (self, number, factor, is_sd);
  ph_quantity_entry_set_units (entry, self->units);
  ph_quantity_entry_set_label (entry, name);
  ph_quantity_entry_set_width_chars (entry, is_sd ? 7 : 9);
  ph_quantity_entry_set_value (entry, *number / factor);
  ph_quantity_entry_set_commit (entry, typed_cb, cell);
  g_object_set_data_full (G_OBJECT (widget), "ph-cell", cell, g_free);
  gtk_widget_set_valign (widget, GTK_ALIGN_START);
  return widget;
}

static GtkWidget *
add_entry (PhMeasureRows *self, int column, const char *name, PhQuantity quantity, double *number,
           double factor, gboolean is_sd)
{
  GtkWidget *widget = entry_new (self, name, quantity, number, factor, is_sd);
  gtk_grid_attach (self->grid, widget, column, self->row, 1, 1);
  return widget;
}

/* The wheel scrolls the page, it does not turn a reading. */
static gboolean
scroll_cb (GtkEventControllerScroll *controller, double dx, double dy, gpointer data)
{
  (void)controller;
  (void)dx;
  (void)dy;
  (void)data;
  return GDK_EVENT_STOP;
}

static GtkWidget *
add_spin (PhMeasureRows *self, int column, const char *name, double *number, gboolean is_sd)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (0, 3600, is_sd ? 0.05 : 0.1);
  GtkEventController *scroll =
      gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  gtk_event_controller_set_propagation_phase (scroll, GTK_PHASE_CAPTURE);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), NULL);
  gtk_widget_add_controller (spin, scroll);
  gtk_spin_button_set_digits (GTK_SPIN_BUTTON (spin), 2);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), is_sd ? 5 : 7);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (spin), isnan (*number) ? 0 : *number);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_data (spin, "value-changed", G_CALLBACK (spun_cb),
                         cell_new (self, number, 1, is_sd), free_cell, 0);
  gtk_widget_set_valign (spin, GTK_ALIGN_START);
  gtk_grid_attach (self->grid, spin, column, self->row, 1, 1);
  return spin;
}

static void
add_label (PhMeasureRows *self, int column, const char *text, float xalign)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_wrap (GTK_LABEL (label), column == 0);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 26);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "measure-word");
  gtk_grid_attach (self->grid, label, column, self->row, 1, 1);
}

/* "± of …": its name for a screen reader. */
static char *
sd_name (const char *of)
{
  return g_strdup_printf (_ ("Uncertainty of %s"), of);
}

static void
add_row (PhMeasureRows *self, const Row *row)
{
  char *base = (char *)&self->draft->readings;
  double *value = (double *)(void *)(base + row->value);
  double *sd = row->sd ? (double *)(void *)(base + row->sd) : NULL;
  const char *label = _ (row->label);
  g_autofree char *name = sd_name (label);
  add_label (self, 0, label, 0);
  if (row->seconds)
    self->seconds = add_spin (self, 1, label, value, FALSE);
  else
    add_entry (self, 1, label, row->quantity, value, row->factor, FALSE);
  if (sd)
    add_label (self, 2, "±", 0.5f);
  if (sd && row->seconds)
    add_spin (self, 3, name, sd, TRUE);
  else if (sd)
    add_entry (self, 3, name, row->sd_quantity, sd, row->factor, TRUE);
  self->row++;
}

static void
add_point (PhMeasureRows *self, int i, int p, GtkWidget *entries[3])
{
  static const char *const axes[] = { N_ ("ahead"), N_ ("left"), N_ ("up") };
  for (int c = 0; c < 3; c++)
    {
      g_autofree char *name = g_strdup_printf (
          /* Translators: number of the plumb line, point 1 or 2, direction. */
          _ ("Line %d, point %d, %s"), i + 1, p + 1, _ (axes[c]));
      entries[c] = add_entry (self, 1 + c, name, PH_QUANTITY_DIAMETER,
                              &self->draft->points[i][p][c], 1, FALSE);
    }
}

/* "± … from the side, ± … out of the plane", in one cell. */
static GtkWidget *
angles_new (PhMeasureRows *self, int i)
{
  static const char *const names[] = { N_ ("Line %d, angle from the side"),
                                       N_ ("Line %d, angle out of the plane") };
  /* Translators: behind an angle. */
  static const char *const words[] = { N_ ("from the side"), N_ ("out of the plane") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  for (gsize k = 0; k < G_N_ELEMENTS (names); k++)
    {
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
      g_autofree char *name = g_strdup_printf (_ (names[k]), i + 1);
#pragma GCC diagnostic pop
      GtkWidget *entry =
          entry_new (self, name, PH_QUANTITY_ANGLE, &self->draft->angles[i][k], 1, FALSE);
      GtkWidget *word = gtk_label_new (_ (words[k]));
      ph_quantity_entry_set_step (PH_QUANTITY_ENTRY (entry), 0.1);
      gtk_widget_set_valign (word, GTK_ALIGN_START);
      gtk_widget_add_css_class (word, "measure-word");
      gtk_box_append (GTK_BOX (box), entry);
      gtk_box_append (GTK_BOX (box), word);
    }
  return box;
}

/* Which way the second row of a line is typed. */
typedef struct
{
  PhMeasureRows *rows;
  gboolean *by_angle;
  GtkWidget *points[3], *angles;
} Way;

static void
show_way (const Way *way)
{
  for (gsize k = 0; k < G_N_ELEMENTS (way->points); k++)
    gtk_widget_set_visible (way->points[k], !*way->by_angle);
  gtk_widget_set_visible (way->angles, *way->by_angle);
}

static void
way_cb (GtkDropDown *drop, GParamSpec *pspec, Way *way)
{
  (void)pspec;
  *way->by_angle = gtk_drop_down_get_selected (drop) == 1;
  show_way (way);
  g_signal_emit (way->rows, signals[TYPED], 0);
}

static void
free_way (gpointer data, GClosure *closure)
{
  (void)closure;
  g_free (data);
}

/* The second row: another point, or the line's angles. */
static void
add_way (PhMeasureRows *self, int i)
{
  const char *const words[] = { _ ("and crosses"), _ ("at the angles"), NULL };
  GtkWidget *drop = gtk_drop_down_new_from_strings (words);
  Way *way = g_new0 (Way, 1);
  g_autofree char *name = g_strdup_printf (_ ("Line %d, typed as"), i + 1);
  way->rows = self;
  way->by_angle = &self->draft->by_angle[i];
  gtk_drop_down_set_selected (GTK_DROP_DOWN (drop), *way->by_angle ? 1 : 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (drop), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_widget_set_valign (drop, GTK_ALIGN_START);
  gtk_widget_set_halign (drop, GTK_ALIGN_START);
  gtk_grid_attach (self->grid, drop, 0, self->row, 1, 1);
  add_point (self, i, 1, way->points);
  way->angles = angles_new (self, i);
  gtk_grid_attach (self->grid, way->angles, 1, self->row, 5, 1);
  g_signal_connect_data (drop, "notify::selected", G_CALLBACK (way_cb), way, free_way, 0);
  show_way (way);
}

static void
add_line (PhMeasureRows *self, int i)
{
  g_autofree char *from = g_strdup_printf (_ ("Line %d hangs from"), i + 1);
  g_autofree char *of = g_strdup_printf (_ ("line %d"), i + 1);
  g_autofree char *name = sd_name (of);
  GtkWidget *hung[3];
  add_label (self, 0, from, 0);
  add_point (self, i, 0, hung);
  add_label (self, 4, "±", 0.5f);
  add_entry (self, 5, name, PH_QUANTITY_DIAMETER, &self->draft->line_sds[i], 1, TRUE);
  self->row++;
  add_way (self, i);
  self->row++;
}

static void
add_lines (PhMeasureRows *self)
{
  add_label (self, 1, _ ("ahead"), 0);
  add_label (self, 2, _ ("to the left"), 0);
  add_label (self, 3, _ ("up"), 0);
  self->row++;
  for (int i = 0; i < PH_DRAFT_LINES; i++)
    add_line (self, i);
}

void
ph_measure_rows_set_draft (PhMeasureRows *self, PhMeasureDraft *draft, PhUnits units)
{
  static const Row *const rows[PH_METHODS] = { of_scales, NULL, of_swing, of_strings };
  GtkWidget *child;
  g_return_if_fail (PH_IS_MEASURE_ROWS (self) && draft != NULL);
  self->seconds = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->grid))))
    gtk_grid_remove (self->grid, child);
  self->draft = draft;
  self->units = units;
  self->row = 0;
  if (draft->readings.method == PH_METHOD_HANGING)
    add_lines (self);
  else
    for (const Row *row = rows[draft->readings.method]; row->label; row++)
      add_row (self, row);
}

void
ph_measure_rows_set_seconds (PhMeasureRows *self, double seconds)
{
  g_return_if_fail (PH_IS_MEASURE_ROWS (self));
  if (self->seconds)
    gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->seconds), seconds);
}

void
ph_measure_rows_set_units (PhMeasureRows *self, PhUnits units)
{
  g_return_if_fail (PH_IS_MEASURE_ROWS (self));
  if (self->draft && units != self->units)
    ph_measure_rows_set_draft (self, self->draft, units);
}

static void
ph_measure_rows_dispose (GObject *object)
{
  PhMeasureRows *self = PH_MEASURE_ROWS (object);
  GtkWidget *grid = (GtkWidget *)self->grid;
  self->grid = NULL;
  self->seconds = NULL;
  g_clear_pointer (&grid, gtk_widget_unparent);
  G_OBJECT_CLASS (ph_measure_rows_parent_class)->dispose (object);
}

static void
ph_measure_rows_class_init (PhMeasureRowsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_measure_rows_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  signals[TYPED] = g_signal_new ("typed", PH_TYPE_MEASURE_ROWS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                 NULL, G_TYPE_NONE, 0);
}

static void
ph_measure_rows_init (PhMeasureRows *self)
{
  GtkWidget *grid = gtk_grid_new ();
  self->grid = GTK_GRID (grid);
  gtk_grid_set_row_spacing (self->grid, 6);
  gtk_grid_set_column_spacing (self->grid, 8);
  gtk_widget_set_parent (grid, GTK_WIDGET (self));
}

GtkWidget *
ph_measure_rows_new (void)
{
  return g_object_new (PH_TYPE_MEASURE_ROWS, NULL);
}
