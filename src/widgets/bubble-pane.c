/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A change costs one PhSettle and a few strings; the vial is redrawn, and labels only where their
 * text differs. While a gesture runs the bubble follows at once; else it eases to its place.
 */
#include "widgets/bubble-pane.h"

#include <glib/gi18n.h>

#include "base/units.h"
#include "widgets/bubble.h"
#include "widgets/guess-mark.h"
#include "widgets/lean-words.h"
#include "widgets/live-text.h"
#include "widgets/say.h"
#include "widgets/vial.h"

/* From this width on vial and words stand side by side; the vial then has this share of it. */
#define BESIDE_FROM 620
#define VIAL_SHARE 0.42
#define SPACING 20

struct _PhBubblePane
{
  GtkWidget parent_instance;

  /* template */
  PhBubble *vial;
  GtkWidget *text;
  GtkBox *heading;
  GtkLabel *title;
  PhLiveText *headline, *detail, *compare;
  GtkToggleButton *why;
  GtkWidget *level;
  GtkButton *add_check;

  /* owned */
  PhDocument *document;

  gboolean stale;
};

enum
{
  PROP_0,
  PROP_WHY,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (PhBubblePane, ph_bubble_pane, GTK_TYPE_WIDGET)

static void
show_words (PhBubblePane *self, const PhLeanWords *words)
{
  GtkWidget *headline = GTK_WIDGET (self->headline);
  ph_live_text_show (self->headline, words->headline);
  ph_live_text_show (self->detail, words->detail);
  ph_live_text_show (self->compare, words->compare);
  gtk_widget_remove_css_class (headline,
                               words->is_number ? "ph-bubble-sentence" : "ph-bubble-number");
  gtk_widget_add_css_class (headline, words->is_number ? "ph-bubble-number" : "ph-bubble-sentence");
}

static void
update (PhBubblePane *self)
{
  PhShown shown = ph_document_get_shown (self->document);
  PhShown compared = ph_document_get_compared (self->document);
  PhSettle settle = ph_settle_of (shown.rig, shown.report, compared.report);
  double wanted = ph_rad_from_deg (shown.rig->archer.wanted_bubble_deg);
  PhLeanWords words =
      ph_lean_words_of (&settle, shown.report->reason, compared.name, PH_VIAL_RANGE_RAD, wanted);
  if (!g_str_equal (gtk_label_get_text (self->title), ph_lean_title (&settle)))
    gtk_label_set_text (self->title, ph_lean_title (&settle));
  show_words (self, &words);
  ph_bubble_show (self->vial, &settle, wanted, !ph_document_in_gesture (self->document),
                  words.spoken);
  ph_say (GTK_WIDGET (self), words.spoken);
  ph_lean_words_clear (&words);
  self->stale = FALSE;
}

static void
changed_cb (PhBubblePane *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
}

static void
why_toggled_cb (PhBubblePane *self)
{
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_WHY]);
}

static gboolean
stands_beside (int width)
{
  return width >= BESIDE_FROM;
}

static int
least_width (GtkWidget *widget)
{
  int least;
  gtk_widget_measure (widget, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  return least;
}

static int
height_for (GtkWidget *widget, int width)
{
  int natural;
  gtk_widget_measure (widget, GTK_ORIENTATION_VERTICAL, width, NULL, &natural, NULL, NULL);
  return natural;
}

/* The vial's width beside the words: its share, unless the words need more. */
static int
vial_width (PhBubblePane *self, int width)
{
  int most = width - SPACING - least_width (self->text);
  return MAX (MIN ((int)(VIAL_SHARE * width), most), least_width (GTK_WIDGET (self->vial)));
}

/* Words that need more room than is left beside the least vial (a large text size) go below it. */
static gboolean
fits_beside (PhBubblePane *self, int width)
{
  return stands_beside (width)
         && width >= least_width (GTK_WIDGET (self->vial)) + SPACING + least_width (self->text);
}

static void
ph_bubble_pane_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                        int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhBubblePane *self = PH_BUBBLE_PANE (widget);
  int width = for_size < 0 ? BESIDE_FROM : for_size;
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (least_width (GTK_WIDGET (self->vial)), least_width (self->text));
      *natural = MAX (BESIDE_FROM, *minimum);
      return;
    }
  if (fits_beside (self, width))
    {
      int vial = vial_width (self, width);
      *minimum = MAX (height_for (GTK_WIDGET (self->vial), vial),
                      height_for (self->text, width - vial - SPACING));
    }
  else
    *minimum = height_for (GTK_WIDGET (self->vial), width) + height_for (self->text, width);
  *natural = *minimum;
}

static void
ph_bubble_pane_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  PhBubblePane *self = PH_BUBBLE_PANE (widget);
  gboolean from_right = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  GtkAllocation vial = { 0, 0, width, height }, text = vial;
  (void)baseline;
  if (fits_beside (self, width))
    {
      vial.width = vial_width (self, width);
      text.width = width - vial.width - SPACING;
      vial.x = from_right ? text.width + SPACING : 0;
      text.x = from_right ? 0 : vial.width + SPACING;
    }
  else
    {
      vial.height = height_for (GTK_WIDGET (self->vial), width);
      text.y = vial.height;
      text.height = height - vial.height;
    }
  gtk_widget_size_allocate (GTK_WIDGET (self->vial), &vial, -1);
  gtk_widget_size_allocate (self->text, &text, -1);
}

static GtkSizeRequestMode
ph_bubble_pane_get_request_mode (GtkWidget *widget)
{
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ph_bubble_pane_map (GtkWidget *widget)
{
  PhBubblePane *self = PH_BUBBLE_PANE (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_bubble_pane_parent_class)->map (widget);
}

static void
ph_bubble_pane_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_WHY)
    g_value_set_boolean (value, gtk_toggle_button_get_active (PH_BUBBLE_PANE (object)->why));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ph_bubble_pane_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_WHY)
    gtk_toggle_button_set_active (PH_BUBBLE_PANE (object)->why, g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ph_bubble_pane_dispose (GObject *object)
{
  PhBubblePane *self = PH_BUBBLE_PANE (object);
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))))
    gtk_widget_unparent (child);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_bubble_pane_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/plumbhold/Plumbhold/ui/bubble-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, vial);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, text);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, heading);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, title);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, headline);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, detail);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, compare);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, why);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, level);
  gtk_widget_class_bind_template_child (widget_class, PhBubblePane, add_check);
}

static void
ph_bubble_pane_class_init (PhBubblePaneClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  g_type_ensure (PH_TYPE_BUBBLE);
  g_type_ensure (PH_TYPE_LIVE_TEXT);
  object_class->dispose = ph_bubble_pane_dispose;
  object_class->get_property = ph_bubble_pane_get_property;
  object_class->set_property = ph_bubble_pane_set_property;
  widget_class->measure = ph_bubble_pane_measure;
  widget_class->size_allocate = ph_bubble_pane_size_allocate;
  widget_class->get_request_mode = ph_bubble_pane_get_request_mode;
  widget_class->map = ph_bubble_pane_map;
  props[PROP_WHY] =
      g_param_spec_boolean ("why", NULL, NULL, FALSE,
                            G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  bind_children (widget_class);
}

static void
ph_bubble_pane_init (PhBubblePane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  /* A button whose action the window does not have is insensitive: then it is not shown. */
  g_object_bind_property (self->add_check, "sensitive", self->add_check, "visible",
                          G_BINDING_SYNC_CREATE);
  g_object_bind_property (self->level, "sensitive", self->level, "visible", G_BINDING_SYNC_CREATE);
  g_signal_connect_swapped (self->why, "toggled", G_CALLBACK (why_toggled_cb), self);
}

GtkWidget *
ph_bubble_pane_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhBubblePane *self = g_object_new (PH_TYPE_BUBBLE_PANE, NULL);
  self->document = g_object_ref (document);
  gtk_box_append (self->heading, ph_guess_mark_new (document, PH_RESTS_ON_BALANCE));
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::flipped", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::reference-name", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
