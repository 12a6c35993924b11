/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One "changed" of the document makes all texts anew (some twenty short strings, tens of µs) and
 * touches only the labels whose text differs. While the pane is not on the screen nothing is done;
 * it is caught up when it is mapped.
 */
#include "widgets/readings-pane.h"

#include <glib/gi18n.h>

#include "widgets/columns-layout.h"
#include "widgets/guess-mark.h"
#include "widgets/live-text.h"
#include "widgets/reading.h"
#include "widgets/shooting-button.h"
#include "widgets/turn-rows.h"

typedef PhReadingText (*ReadingMaker) (const PhReadingSource *source);

/* The readings that follow from the source alone, in their order; the turns and the cost of the
   lean, which need more, stand between and after them. */
typedef struct
{
  const char *title;
  ReadingMaker make; /* null: filled by other means */
  PhRestsOn rests_on;
} ReadingKind;

enum
{
  READING_BALANCE = 1,
  READING_TURNS = 4,
  READING_COST = 7,
  N_READINGS
};

static const ReadingKind kinds[N_READINGS] = {
  { N_ ("Mass"), ph_reading_mass, PH_RESTS_ON_MASS },
  { N_ ("Balance point"), ph_reading_balance, PH_RESTS_ON_BALANCE },
  { N_ ("Front pull"), ph_reading_front, PH_RESTS_ON_BALANCE },
  { N_ ("On the arm"), ph_reading_arm, PH_RESTS_ON_BALANCE },
  [READING_TURNS] = { N_ ("Slow to"), NULL, PH_RESTS_ON_INERTIA },
  { N_ ("At the shot"), ph_reading_shot, PH_RESTS_ON_INERTIA },
  { N_ ("Clear of the string"), ph_reading_string, PH_RESTS_ON_STRING },
  [READING_COST] = { N_ ("What the lean costs"), NULL, PH_RESTS_ON_BALANCE },
};

struct _PhReadingsPane
{
  GtkWidget parent_instance;

  /* template */
  GtkWidget *scroller, *content;
  GtkBox *cells;
  PhLiveText *against, *tensor;
  GtkToggleButton *more_button;

  /* borrowed: children of cells */
  PhReading *readings[N_READINGS];
  PhTurnRows *turns;
  PhShootingButton *shooting;

  /* owned */
  PhDocument *document;

  gboolean stale; /* changed while not on the screen */
};

G_DEFINE_FINAL_TYPE (PhReadingsPane, ph_readings_pane, GTK_TYPE_WIDGET)

static void
update_against (PhReadingsPane *self)
{
  const char *name = ph_document_get_compared (self->document).name;
  g_autofree char *text = name ? g_strdup_printf (_ ("Changes against %s"), name) : NULL;
  ph_live_text_show (self->against, text);
}

static PhReadingSource
source_of (PhReadingsPane *self)
{
  PhShown shown = ph_document_get_shown (self->document);
  return (PhReadingSource){ shown.rig, shown.compiled, shown.report,
                            ph_document_get_compared (self->document).report,
                            ph_document_get_units (self->document) };
}

static void
update (PhReadingsPane *self)
{
  PhReadingSource source = source_of (self);
  PhShooting shooting = ph_shooting_button_get (self->shooting);
  for (int i = 0; i < N_READINGS; i++)
    {
      PhReadingText text = { 0 };
      if (i == READING_TURNS)
        text.detail = g_strdup (source.reference ? NULL : _ ("kg·m² about the grip"));
      else
        text = kinds[i].make ? kinds[i].make (&source) : ph_reading_cost (&source, &shooting);
      ph_reading_show (self->readings[i], &text);
      ph_reading_text_clear (&text);
    }
  ph_turn_rows_show (self->turns, &source);
  update_against (self);
  if (gtk_toggle_button_get_active (self->more_button))
    {
      g_autofree char *tensor = ph_reading_tensor (source.report);
      ph_live_text_show (self->tensor, tensor);
    }
  else
    gtk_widget_set_visible (GTK_WIDGET (self->tensor), FALSE);
  self->stale = FALSE;
}

static void
changed_cb (PhReadingsPane *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
}

static void
units_changed_cb (PhReadingsPane *self)
{
  ph_shooting_button_set_units (self->shooting, ph_document_get_units (self->document));
  changed_cb (self);
}

static void
more_toggled_cb (PhReadingsPane *self)
{
  gboolean more = gtk_toggle_button_get_active (self->more_button);
  for (int i = 0; i < N_READINGS; i++)
    ph_reading_set_more (self->readings[i], more);
  ph_turn_rows_set_more (self->turns, more);
  changed_cb (self);
}

/* A scrolled window asks its child how high it would be at its natural width, which is one row of
   readings: so the height is asked of the content here, for the width that there is. */
static void
ph_readings_pane_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhReadingsPane *self = PH_READINGS_PANE (widget);
  gtk_widget_measure (self->scroller, orientation, for_size, minimum, natural, minimum_baseline,
                      natural_baseline);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    return;
  gtk_widget_measure (self->content, orientation, for_size, NULL, natural, NULL, NULL);
  *natural = MAX (*minimum, *natural);
}

static void
ph_readings_pane_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GtkAllocation all = { 0, 0, width, height };
  gtk_widget_size_allocate (PH_READINGS_PANE (widget)->scroller, &all, baseline);
}

static GtkSizeRequestMode
ph_readings_pane_get_request_mode (GtkWidget *widget)
{
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ph_readings_pane_map (GtkWidget *widget)
{
  PhReadingsPane *self = PH_READINGS_PANE (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_readings_pane_parent_class)->map (widget);
}

static void
ph_readings_pane_dispose (GObject *object)
{
  PhReadingsPane *self = PH_READINGS_PANE (object);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));
  g_clear_pointer (&child, gtk_widget_unparent);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_readings_pane_parent_class)->dispose (object);
}

static void
ph_readings_pane_class_init (PhReadingsPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  g_type_ensure (PH_TYPE_LIVE_TEXT);
  G_OBJECT_CLASS (klass)->dispose = ph_readings_pane_dispose;
  widget_class->map = ph_readings_pane_map;
  widget_class->measure = ph_readings_pane_measure;
  widget_class->size_allocate = ph_readings_pane_size_allocate;
  widget_class->get_request_mode = ph_readings_pane_get_request_mode;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/readings-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, PhReadingsPane, scroller);
  gtk_widget_class_bind_template_child (widget_class, PhReadingsPane, content);
  gtk_widget_class_bind_template_child (widget_class, PhReadingsPane, cells);
  gtk_widget_class_bind_template_child (widget_class, PhReadingsPane, against);
  gtk_widget_class_bind_template_child (widget_class, PhReadingsPane, tensor);
  gtk_widget_class_bind_template_child (widget_class, PhReadingsPane, more_button);
  gtk_widget_class_bind_template_callback (widget_class, more_toggled_cb);
}

static void
ph_readings_pane_init (PhReadingsPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_layout_manager (GTK_WIDGET (self->cells), ph_columns_layout_new (16, 10));
  for (int i = 0; i < N_READINGS; i++)
    {
      GtkWidget *reading = ph_reading_new (_ (kinds[i].title));
      self->readings[i] = PH_READING (reading);
      gtk_box_append (self->cells, reading);
    }
  gtk_widget_add_css_class (GTK_WIDGET (self->readings[READING_BALANCE]), "long");
  self->turns = PH_TURN_ROWS (ph_turn_rows_new ());
  ph_reading_add_extra (self->readings[READING_TURNS], GTK_WIDGET (self->turns));
  self->shooting = PH_SHOOTING_BUTTON (ph_shooting_button_new ());
  ph_reading_add_extra (self->readings[READING_COST], GTK_WIDGET (self->shooting));
  g_signal_connect_swapped (self->shooting, "notify", G_CALLBACK (changed_cb), self);
}

GtkWidget *
ph_readings_pane_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhReadingsPane *self = g_object_new (PH_TYPE_READINGS_PANE, NULL);
  self->document = g_object_ref (document);
  for (int i = 0; i < N_READINGS; i++)
    ph_reading_add_mark (self->readings[i], ph_guess_mark_new (document, kinds[i].rests_on));
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::flipped", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::units", G_CALLBACK (units_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::reference-name", G_CALLBACK (update_against), self,
                           G_CONNECT_SWAPPED);
  update_against (self);
  units_changed_cb (self);
  return GTK_WIDGET (self);
}

void
ph_readings_pane_bind_settings (PhReadingsPane *self, GSettings *settings)
{
  g_return_if_fail (PH_IS_READINGS_PANE (self));
  ph_shooting_button_bind (self->shooting, settings);
}

void
ph_readings_pane_set_more (PhReadingsPane *self, gboolean more)
{
  g_return_if_fail (PH_IS_READINGS_PANE (self));
  gtk_toggle_button_set_active (self->more_button, more);
}
