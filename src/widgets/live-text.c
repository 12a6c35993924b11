/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A change costs the shaping of the text once. The sizes that the toolkit remembers for other
 * widths may then be those of an older text, so a while after the last change the widget asks for
 * one layout after all.
 */
#include "widgets/live-text.h"

#include <math.h>

#include "widgets/say.h"

#define CATCH_UP_MS 300

struct _PhLiveText
{
  GtkWidget parent_instance;

  /* owned */
  PangoLayout *layout;

  int chars, least_chars;
  float xalign;
  gboolean single_line, bold;

  int laid_out_height; /* what the last layout gave the text */
  gint64 changed_at;   /* time of the last change that was only drawn */
  guint catch_up;
};

enum
{
  PROP_0,
  PROP_CHARS,
  PROP_LEAST_CHARS,
  PROP_XALIGN,
  PROP_SINGLE_LINE,
  N_PROPS
};

static GParamSpec *props[N_PROPS];

G_DEFINE_FINAL_TYPE (PhLiveText, ph_live_text, GTK_TYPE_WIDGET)

/* Pango turns left and right about where a text runs against its context; the text is to stand
   where the widget's direction says, so they are turned once more. */
static PangoAlignment
alignment_of (PhLiveText *self)
{
  gboolean rtl = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  PangoLayoutLine *line = pango_layout_get_line_readonly (self->layout, 0);
  PangoDirection runs = pango_layout_line_get_resolved_direction (line);
  gboolean against = runs == (rtl ? PANGO_DIRECTION_LTR : PANGO_DIRECTION_RTL);
  if (self->xalign == 0.5f)
    return PANGO_ALIGN_CENTER;
  return ((self->xalign < 0.5f) != rtl) != against ? PANGO_ALIGN_LEFT : PANGO_ALIGN_RIGHT;
}

/* Another font, text size or direction: the text stays. */
static void
renew_layout (PhLiveText *self)
{
  g_autofree char *text = self->layout ? g_strdup (pango_layout_get_text (self->layout)) : NULL;
  g_clear_object (&self->layout);
  self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  pango_layout_set_alignment (self->layout, alignment_of (self));
  if (self->single_line)
    pango_layout_set_ellipsize (self->layout, PANGO_ELLIPSIZE_END);
  else
    pango_layout_set_wrap (self->layout, PANGO_WRAP_WORD_CHAR);
  if (self->bold)
    {
      PangoAttrList *bold = pango_attr_list_new ();
      pango_attr_list_insert (bold, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
      pango_layout_set_attributes (self->layout, bold);
      pango_attr_list_unref (bold);
    }
}

static int
height_for (PhLiveText *self, int width)
{
  int height;
  pango_layout_set_width (self->layout, width < 0 ? -1 : width * PANGO_SCALE);
  pango_layout_get_pixel_size (self->layout, NULL, &height);
  return height;
}

static int
width_of_chars (PhLiveText *self, int chars)
{
  PangoContext *context = pango_layout_get_context (self->layout);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  int one = MAX (pango_font_metrics_get_approximate_char_width (metrics),
                 pango_font_metrics_get_approximate_digit_width (metrics));
  pango_font_metrics_unref (metrics);
  return PANGO_PIXELS_CEIL (one * chars);
}

static GtkSizeRequestMode
ph_live_text_get_request_mode (GtkWidget *widget)
{
  (void)widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
ph_live_text_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhLiveText *self = PH_LIVE_TEXT (widget);
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *natural = width_of_chars (self, self->chars);
      *minimum = self->least_chars > 0 ? width_of_chars (self, self->least_chars) : *natural;
    }
  else
    *minimum = *natural =
        height_for (self, for_size < 0 ? width_of_chars (self, self->chars) : for_size);
}

static void
ph_live_text_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  PhLiveText *self = PH_LIVE_TEXT (widget);
  (void)height;
  (void)baseline;
  self->laid_out_height = height_for (self, width);
}

static void
ph_live_text_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhLiveText *self = PH_LIVE_TEXT (widget);
  int text_height = height_for (self, gtk_widget_get_width (widget));
  int room = gtk_widget_get_height (widget) - text_height;
  gtk_snapshot_render_layout (snapshot, gtk_widget_get_style_context (widget), 0.0,
                              self->single_line ? floor (room / 2.0) : 0.0, self->layout);
}

static gboolean
catch_up_cb (gpointer data)
{
  PhLiveText *self = data;
  if (g_get_monotonic_time () - self->changed_at < CATCH_UP_MS * 1000)
    return G_SOURCE_CONTINUE;
  self->catch_up = 0;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

static void
only_draw (PhLiveText *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  self->changed_at = g_get_monotonic_time ();
  if (!self->catch_up && !self->single_line)
    self->catch_up = g_timeout_add (CATCH_UP_MS, catch_up_cb, self);
}

void
ph_live_text_show (PhLiveText *self, const char *text)
{
  g_return_if_fail (PH_IS_LIVE_TEXT (self));
  GtkWidget *widget = GTK_WIDGET (self);
  gboolean there = text && *text;
  gtk_widget_set_visible (widget, there);
  if (!there || g_str_equal (pango_layout_get_text (self->layout), text))
    return;
  pango_layout_set_text (self->layout, text, -1);
  pango_layout_set_alignment (self->layout, alignment_of (self));
  ph_say (widget, text);
  int width = gtk_widget_get_width (widget);
  if (width > 0 && height_for (self, width) == self->laid_out_height)
    only_draw (self);
  else
    gtk_widget_queue_resize (widget);
}

const char *
ph_live_text_get (PhLiveText *self)
{
  g_return_val_if_fail (PH_IS_LIVE_TEXT (self), "");
  return pango_layout_get_text (self->layout);
}

int
ph_live_text_get_full_width (PhLiveText *self)
{
  int width;
  g_return_val_if_fail (PH_IS_LIVE_TEXT (self), 0);
  pango_layout_set_width (self->layout, -1);
  pango_layout_get_pixel_size (self->layout, &width, NULL);
  return width;
}

/* By attributes, not by the style: widths are counted in the style's characters. */
void
ph_live_text_set_bold (PhLiveText *self)
{
  g_return_if_fail (PH_IS_LIVE_TEXT (self));
  self->bold = TRUE;
  renew_layout (self);
}

static void
ph_live_text_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (ph_live_text_parent_class)->css_changed (widget, change);
  renew_layout (PH_LIVE_TEXT (widget));
  gtk_widget_queue_resize (widget);
}

static void
ph_live_text_system_setting_changed (GtkWidget *widget, GtkSystemSetting setting)
{
  GTK_WIDGET_CLASS (ph_live_text_parent_class)->system_setting_changed (widget, setting);
  renew_layout (PH_LIVE_TEXT (widget));
  gtk_widget_queue_resize (widget);
}

static void
ph_live_text_direction_changed (GtkWidget *widget, GtkTextDirection before)
{
  GTK_WIDGET_CLASS (ph_live_text_parent_class)->direction_changed (widget, before);
  renew_layout (PH_LIVE_TEXT (widget));
}

static void
ph_live_text_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  PhLiveText *self = PH_LIVE_TEXT (object);
  if (id == PROP_CHARS)
    g_value_set_int (value, self->chars);
  else if (id == PROP_LEAST_CHARS)
    g_value_set_int (value, self->least_chars);
  else if (id == PROP_XALIGN)
    g_value_set_float (value, self->xalign);
  else if (id == PROP_SINGLE_LINE)
    g_value_set_boolean (value, self->single_line);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ph_live_text_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  PhLiveText *self = PH_LIVE_TEXT (object);
  if (id == PROP_CHARS)
    self->chars = g_value_get_int (value);
  else if (id == PROP_LEAST_CHARS)
    self->least_chars = g_value_get_int (value);
  else if (id == PROP_XALIGN)
    self->xalign = g_value_get_float (value);
  else if (id == PROP_SINGLE_LINE)
    self->single_line = g_value_get_boolean (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
ph_live_text_constructed (GObject *object)
{
  G_OBJECT_CLASS (ph_live_text_parent_class)->constructed (object);
  renew_layout (PH_LIVE_TEXT (object));
  gtk_widget_set_visible (GTK_WIDGET (object), FALSE);
}

static void
ph_live_text_dispose (GObject *object)
{
  PhLiveText *self = PH_LIVE_TEXT (object);
  g_clear_handle_id (&self->catch_up, g_source_remove);
  g_clear_object (&self->layout);
  G_OBJECT_CLASS (ph_live_text_parent_class)->dispose (object);
}

static void
ph_live_text_class_init (PhLiveTextClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS;
  object_class->get_property = ph_live_text_get_property;
  object_class->set_property = ph_live_text_set_property;
  object_class->constructed = ph_live_text_constructed;
  object_class->dispose = ph_live_text_dispose;
  widget_class->get_request_mode = ph_live_text_get_request_mode;
  widget_class->measure = ph_live_text_measure;
  widget_class->size_allocate = ph_live_text_size_allocate;
  widget_class->snapshot = ph_live_text_snapshot;
  widget_class->css_changed = ph_live_text_css_changed;
  widget_class->system_setting_changed = ph_live_text_system_setting_changed;
  widget_class->direction_changed = ph_live_text_direction_changed;
  props[PROP_CHARS] = g_param_spec_int ("chars", NULL, NULL, 0, 200, 10, flags);
  props[PROP_LEAST_CHARS] = g_param_spec_int ("least-chars", NULL, NULL, 0, 200, 0, flags);
  props[PROP_XALIGN] = g_param_spec_float ("xalign", NULL, NULL, 0.0f, 1.0f, 0.0f, flags);
  props[PROP_SINGLE_LINE] = g_param_spec_boolean ("single-line", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_css_name (widget_class, "livetext");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
}

static void
ph_live_text_init (PhLiveText *self)
{
  (void)self;
}

GtkWidget *
ph_live_text_new_single_line (int chars, float xalign)
{
  return g_object_new (PH_TYPE_LIVE_TEXT, "chars", chars, "xalign", (double)xalign, "single-line",
                       TRUE, NULL);
}
