/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "widgets/turn-rows.h"

#include <glib/gi18n.h>

#include "widgets/live-text.h"
#include "widgets/ratio-bar.h"
#include "widgets/say.h"

#define NUMBER_CHARS 7 /* "−12.3 %" */
#define MORE_CHARS 12  /* "0.412 kg·m²" */

struct _PhTurnRows
{
  GtkWidget parent_instance;

  /* owned children */
  GtkWidget *grid;
  GtkWidget *bars[PH_TURNS];
  PhLiveText *values[PH_TURNS], *more[PH_TURNS];

  gboolean wants_more;
};

G_DEFINE_FINAL_TYPE (PhTurnRows, ph_turn_rows, GTK_TYPE_WIDGET)

static const char *const names[PH_TURNS] = { N_ ("roll"), N_ ("nod"), N_ ("swing") };

void
ph_turn_rows_show (PhTurnRows *self, const PhReadingSource *source)
{
  g_return_if_fail (PH_IS_TURN_ROWS (self) && source != NULL);
  GString *spoken = g_string_new (_ ("Slow to"));
  for (int i = 0; i < PH_TURNS; i++)
    {
      PhTurnText text = ph_reading_turn (source, (PhTurn)i);
      ph_live_text_show (self->values[i], text.value);
      ph_live_text_show (self->more[i], self->wants_more ? text.more : NULL);
      ph_ratio_bar_show_fill (PH_RATIO_BAR (self->bars[i]), text.fill, text.mark);
      g_string_append_printf (spoken, "%s %s %s", i > 0 ? "," : "", _ (names[i]), text.value);
      ph_turn_text_clear (&text);
    }
  ph_say (GTK_WIDGET (self), spoken->str);
  g_string_free (spoken, TRUE);
}

void
ph_turn_rows_set_more (PhTurnRows *self, gboolean more)
{
  g_return_if_fail (PH_IS_TURN_ROWS (self));
  self->wants_more = more;
}

static void
ph_turn_rows_dispose (GObject *object)
{
  PhTurnRows *self = PH_TURN_ROWS (object);
  g_clear_pointer (&self->grid, gtk_widget_unparent);
  G_OBJECT_CLASS (ph_turn_rows_parent_class)->dispose (object);
}

static void
ph_turn_rows_class_init (PhTurnRowsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_turn_rows_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
new_label (const char *text, float xalign, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static void
ph_turn_rows_init (PhTurnRows *self)
{
  self->grid = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->grid), 8);
  gtk_widget_set_parent (self->grid, GTK_WIDGET (self));
  for (int i = 0; i < PH_TURNS; i++)
    {
      GtkWidget *value = ph_live_text_new_single_line (NUMBER_CHARS, 1.0f);
      GtkWidget *more = ph_live_text_new_single_line (MORE_CHARS, 1.0f);
      self->bars[i] = ph_ratio_bar_new ();
      self->values[i] = PH_LIVE_TEXT (value);
      self->more[i] = PH_LIVE_TEXT (more);
      gtk_widget_add_css_class (value, "ph-turn-value");
      gtk_widget_add_css_class (more, "ph-reading-more");
      gtk_grid_attach (GTK_GRID (self->grid), new_label (_ (names[i]), 0.0f, "ph-turn-name"), 0,
                       2 * i, 1, 1);
      gtk_grid_attach (GTK_GRID (self->grid), self->bars[i], 1, 2 * i, 1, 1);
      gtk_grid_attach (GTK_GRID (self->grid), value, 2, 2 * i, 1, 1);
      gtk_grid_attach (GTK_GRID (self->grid), more, 1, 2 * i + 1, 2, 1);
    }
}

GtkWidget *
ph_turn_rows_new (void)
{
  return g_object_new (PH_TYPE_TURN_ROWS, NULL);
}
