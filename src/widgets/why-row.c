/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every column has a fixed number of characters and the bars share what is left, so that rows line
 * up without knowing each other.
 */
#include "widgets/why-row.h"

#include <glib/gi18n.h>

#include "widgets/live-text.h"
#include "widgets/moment-words.h"
#include "widgets/ratio-bar.h"
#include "widgets/say.h"

#define NAME_CHARS 9
#define NAME_CHARS_MOST 24
#define NUMBER_CHARS 10

struct _PhWhyRow
{
  GtkWidget parent_instance;

  GtkWidget *box; /* owned child */
  PhLiveText *name, *roll, *pitch;
  GtkWidget *roll_bar, *pitch_bar;
};

G_DEFINE_FINAL_TYPE (PhWhyRow, ph_why_row, GTK_TYPE_WIDGET)

void
ph_why_row_show (PhWhyRow *self, const char *name, double roll_nm, double roll_scale_nm,
                 double pitch_nm, double pitch_scale_nm)
{
  g_return_if_fail (PH_IS_WHY_ROW (self));
  g_autofree char *roll = ph_roll_share_text (roll_nm);
  g_autofree char *pitch = ph_pitch_share_text (pitch_nm);
  ph_live_text_show (self->name, name);
  ph_live_text_show (self->roll, roll);
  ph_live_text_show (self->pitch, pitch);
  ph_ratio_bar_show_side (PH_RATIO_BAR (self->roll_bar),
                          roll_scale_nm > 0.0 ? roll_nm / roll_scale_nm : 0.0);
  ph_ratio_bar_show_side (PH_RATIO_BAR (self->pitch_bar),
                          pitch_scale_nm > 0.0 ? pitch_nm / pitch_scale_nm : 0.0);
  g_autofree char *spoken =
      g_strdup_printf (_ ("%s: leans it %s, pulls the nose %s, in N·m"), name, roll, pitch);
  ph_say (GTK_WIDGET (self), spoken);
}

static void
ph_why_row_dispose (GObject *object)
{
  PhWhyRow *self = PH_WHY_ROW (object);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (ph_why_row_parent_class)->dispose (object);
}

static void
ph_why_row_class_init (PhWhyRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_why_row_dispose;
  gtk_widget_class_set_css_name (widget_class, "whyrow");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static PhLiveText *
add_text (PhWhyRow *self, int chars, int least, double xalign)
{
  GtkWidget *text = g_object_new (PH_TYPE_LIVE_TEXT, "chars", chars, "least-chars", least, "xalign",
                                  xalign, "single-line", TRUE, NULL);
  gtk_box_append (GTK_BOX (self->box), text);
  return PH_LIVE_TEXT (text);
}

static GtkWidget *
add_bar (PhWhyRow *self)
{
  GtkWidget *bar = ph_ratio_bar_new ();
  gtk_box_append (GTK_BOX (self->box), bar);
  return bar;
}

static void
ph_why_row_init (PhWhyRow *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  self->name = add_text (self, NAME_CHARS_MOST, NAME_CHARS, 0.0);
  self->roll_bar = add_bar (self);
  self->roll = add_text (self, NUMBER_CHARS, NUMBER_CHARS, 1.0);
  self->pitch_bar = add_bar (self);
  self->pitch = add_text (self, NUMBER_CHARS, NUMBER_CHARS, 1.0);
}

GtkWidget *
ph_why_row_new (void)
{
  return g_object_new (PH_TYPE_WHY_ROW, NULL);
}

void
ph_why_row_show_headings (PhWhyRow *self)
{
  g_return_if_fail (PH_IS_WHY_ROW (self));
  ph_live_text_show (self->name, _ ("N·m"));
  ph_live_text_show (self->roll, _ ("lean"));
  ph_live_text_show (self->pitch, _ ("nose"));
  gtk_widget_set_opacity (self->roll_bar, 0.0);
  gtk_widget_set_opacity (self->pitch_bar, 0.0);
}

void
ph_why_row_set_strong (PhWhyRow *self)
{
  g_return_if_fail (PH_IS_WHY_ROW (self));
  ph_live_text_set_bold (self->name);
  ph_live_text_set_bold (self->roll);
  ph_live_text_set_bold (self->pitch);
}
