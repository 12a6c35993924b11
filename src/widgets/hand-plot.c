/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cairo, drawn anew when the document changed; sixty fits of a line, no fit of the hand.
 */
#include "widgets/hand-plot.h"

#include <glib/gi18n.h>
#include <math.h>

#include "document/format.h"
#include "widgets/hand-curve.h"
#include "widgets/say.h"
#include "widgets/tilt-words.h"
#include "widgets/view-palette.h"

#define HEIGHT 300
#define WIDTH_LEAST 280
#define RIGHT 14.0
#define TOP 14.0

struct _PhHandPlot
{
  GtkWidget parent_instance;
  PhDocument *document; /* owned */
  PhHandCurve curve;
  gboolean stale;
};

G_DEFINE_FINAL_TYPE (PhHandPlot, ph_hand_plot, GTK_TYPE_WIDGET)

/* What a stroke needs to know. */
typedef struct
{
  cairo_t *cr;
  PangoLayout *layout;
  const PhHandCurve *curve;
  const PhArcher *archer;
  GdkRGBA ink, accent;
  double width, height;
  double left, bottom; /* room for the words there, in the person's font */
  gboolean level;
} Pen;

static double
x_of (const Pen *pen, double moment_nm)
{
  const PhHandCurve *c = pen->curve;
  return pen->left
         + (pen->width - pen->left - RIGHT) * (moment_nm - c->lo_nm) / (c->hi_nm - c->lo_nm);
}

static double
y_of (const Pen *pen, double deg)
{
  const PhHandCurve *c = pen->curve;
  return TOP + (pen->height - TOP - pen->bottom) * (c->hi_deg - deg) / (c->hi_deg - c->lo_deg);
}

static void
set_color (const Pen *pen, const GdkRGBA *color, double alpha)
{
  cairo_set_source_rgba (pen->cr, (double)color->red, (double)color->green, (double)color->blue,
                         alpha);
}

static void
line (const Pen *pen, double x0, double y0, double x1, double y1)
{
  cairo_move_to (pen->cr, x0, y0);
  cairo_line_to (pen->cr, x1, y1);
  cairo_stroke (pen->cr);
}

/* `ax`, `ay`: which point of the text stands at x, y (0 its start, 1 its end). */
static void
text (const Pen *pen, const char *words, double x, double y, double ax, double ay)
{
  int w, h;
  pango_layout_set_text (pen->layout, words, -1);
  pango_layout_get_pixel_size (pen->layout, &w, &h);
  cairo_move_to (pen->cr, floor (x - ax * w), floor (y - ay * h));
  pango_cairo_show_layout (pen->cr, pen->layout);
}

/* The widest of a row's words and, below, two lines and what keeps them apart. */
static void
make_room (Pen *pen)
{
  g_autofree char *number = ph_format_number (8.8, 1);
  g_autofree char *side = g_strdup_printf (_ ("%s° right"), number);
  const char *const rows[] = { side, pen->level ? _ ("centred") : _ ("plumb") };
  int w, h;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      pango_layout_set_text (pen->layout, rows[i], -1);
      pango_layout_get_pixel_size (pen->layout, &w, &h);
      pen->left = MAX (pen->left, w + 12.0);
      pen->bottom = 2.0 * h + 14.0;
    }
}

static void
draw_rows (const Pen *pen)
{
  const PhHandCurve *c = pen->curve;
  double step = ph_plot_step (c->hi_deg - c->lo_deg, 6);
  for (double deg = ceil (c->lo_deg / step) * step; deg <= c->hi_deg; deg += step)
    {
      double y = floor (y_of (pen, deg)) + 0.5;
      gboolean zero = fabs (deg) < step / 2;
      g_autofree char *number = ph_format_short (fabs (deg), step < 1 ? 1 : 0);
      g_autofree char *side =
          zero ? g_strdup (pen->level ? _ ("centred") : _ ("plumb"))
               : g_strdup_printf (
                   ph_tilt_is_left (deg, pen->level) ? _ ("%s° left") : _ ("%s° right"), number);
      set_color (pen, &pen->ink, zero ? 0.6 : 0.15);
      line (pen, pen->left, y, pen->width - RIGHT, y);
      set_color (pen, &pen->ink, 0.8);
      text (pen, side, pen->left - 6, y, 1, 0.5);
    }
}

static void
draw_columns (const Pen *pen)
{
  const PhHandCurve *c = pen->curve;
  double step = ph_plot_step (c->hi_nm - c->lo_nm, 5), foot = pen->height - pen->bottom;
  for (double nm = ceil (c->lo_nm / step) * step; nm <= c->hi_nm; nm += step)
    {
      double x = floor (x_of (pen, nm)) + 0.5;
      gboolean zero = fabs (nm) < step / 2;
      g_autofree char *number = ph_format_short (zero ? 0 : fabs (nm), 2);
      set_color (pen, &pen->ink, zero ? 0.6 : 0.15);
      line (pen, x, TOP, x, foot);
      set_color (pen, &pen->ink, 0.8);
      text (pen, number, x, foot + 4, 0.5, 0);
    }
  text (pen, _ ("← left side heavy"), pen->left, pen->height, 0, 1);
  text (pen, _ ("right side heavy, N·m →"), pen->width - RIGHT, pen->height, 1, 1);
}

/* Up and back along the band, over what settles. */
static void
draw_band (const Pen *pen)
{
  gboolean any = FALSE;
  for (int pass = 0; pass < 2; pass++)
    for (int k = 0; k < PH_HAND_CURVE_POINTS; k++)
      {
        const PhHandPoint *p = &pen->curve->curve[pass ? PH_HAND_CURVE_POINTS - 1 - k : k];
        if (isnan (p->tilt_deg))
          continue;
        double y = y_of (pen, p->tilt_deg + (pass ? -p->half_deg : p->half_deg));
        any ? cairo_line_to (pen->cr, x_of (pen, p->moment_nm), y)
            : cairo_move_to (pen->cr, x_of (pen, p->moment_nm), y);
        any = TRUE;
      }
  set_color (pen, &pen->accent, 0.18);
  cairo_fill (pen->cr);
}

static void
draw_fit (const Pen *pen)
{
  gboolean on = FALSE;
  for (int i = 0; i < PH_HAND_CURVE_POINTS; i++)
    {
      const PhHandPoint *p = &pen->curve->curve[i];
      if (!isnan (p->tilt_deg) && on)
        cairo_line_to (pen->cr, x_of (pen, p->moment_nm), y_of (pen, p->tilt_deg));
      else if (!isnan (p->tilt_deg))
        cairo_move_to (pen->cr, x_of (pen, p->moment_nm), y_of (pen, p->tilt_deg));
      on = !isnan (p->tilt_deg);
    }
  set_color (pen, &pen->accent, 1);
  cairo_set_line_width (pen->cr, 2);
  cairo_stroke (pen->cr);
}

/* A filled dot with its bar; one set aside is an open ring. */
static void
draw_check (const Pen *pen, size_t i)
{
  const PhHandPoint *p = &pen->curve->checks[i];
  double x = x_of (pen, p->moment_nm), y = y_of (pen, p->tilt_deg);
  double top = y_of (pen, p->tilt_deg + p->half_deg), foot = y_of (pen, p->tilt_deg - p->half_deg);
  gboolean aside = pen->archer->checks[i].aside;
  set_color (pen, &pen->ink, aside ? 0.5 : 1);
  cairo_set_line_width (pen->cr, 1.5);
  line (pen, x, top, x, aside ? y - 4.5 : y);
  line (pen, x, aside ? y + 4.5 : y, x, foot);
  line (pen, x - 4, top, x + 4, top);
  line (pen, x - 4, foot, x + 4, foot);
  cairo_new_sub_path (pen->cr);
  cairo_arc (pen->cr, x, y, 4.5, 0, 2 * G_PI);
  aside ? cairo_stroke (pen->cr) : cairo_fill (pen->cr);
}

/* The open rig: a diamond on the line, with its name. */
static void
draw_open (const Pen *pen)
{
  const PhHandPoint *p = &pen->curve->open;
  if (isnan (p->tilt_deg))
    return;
  double x = x_of (pen, p->moment_nm), y = y_of (pen, p->tilt_deg);
  gboolean to_left = x > pen->width * 0.6;
  cairo_move_to (pen->cr, x, y - 8);
  cairo_line_to (pen->cr, x + 8, y);
  cairo_line_to (pen->cr, x, y + 8);
  cairo_line_to (pen->cr, x - 8, y);
  cairo_close_path (pen->cr);
  set_color (pen, &pen->accent, 1);
  cairo_fill_preserve (pen->cr);
  set_color (pen, &pen->ink, 1);
  cairo_set_line_width (pen->cr, 1.5);
  cairo_stroke (pen->cr);
  text (pen, _ ("this rig"), x + (to_left ? -12 : 12), y, to_left ? 1 : 0, 1.1);
}

static void
draw (const Pen *pen)
{
  cairo_set_line_width (pen->cr, 1);
  draw_rows (pen);
  draw_columns (pen);
  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, pen->left, TOP, pen->width - pen->left - RIGHT,
                   pen->height - TOP - pen->bottom);
  cairo_clip (pen->cr);
  draw_band (pen);
  draw_fit (pen);
  for (size_t i = 0; i < pen->curve->n; i++)
    draw_check (pen, i);
  draw_open (pen);
  cairo_restore (pen->cr);
}

/* What the plot shows, for who cannot see it. */
static void
describe (PhHandPlot *self)
{
  const PhRig *rig = ph_document_get_rig (self->document);
  gboolean level = ph_tilt_has_level (rig);
  const PhHandPoint *open = &self->curve.open;
  g_autofree char *words = ph_tilt_phrase (open->tilt_deg, level);
  g_autofree char *half = ph_tilt_half (open->half_deg);
  g_autofree char *moment = ph_format_number (fabs (open->moment_nm), 2);
  g_autoptr (GString) text = g_string_new (NULL);
  g_string_append_printf (text,
                          ngettext ("Plot of roll moment against reading: %u check.",
                                    "Plot of roll moment against reading: %u checks.",
                                    (guint)self->curve.n),
                          (guint)self->curve.n);
  if (!isnan (open->tilt_deg))
    g_string_append_printf (text,
                            open->moment_nm < 0
                                ? _ (" This rig, %s N·m heavy to the left: %s, %s at 90 %%.")
                                : _ (" This rig, %s N·m heavy to the right: %s, %s at 90 %%."),
                            moment, words, half);
  ph_say (GTK_WIDGET (self), text->str);
}

static void
update (PhHandPlot *self)
{
  self->stale = FALSE;
  ph_hand_curve_clear (&self->curve);
  self->curve = ph_hand_curve_of (ph_document_get_rig (self->document),
                                  ph_document_get_report (self->document));
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
changed_cb (PhHandPlot *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
}

static void
ph_hand_plot_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  PhHandPlot *self = PH_HAND_PLOT (widget);
  const PhRig *rig = ph_document_get_rig (self->document);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  Pen pen = { .curve = &self->curve,
              .archer = &rig->archer,
              .width = gtk_widget_get_width (widget),
              .height = gtk_widget_get_height (widget),
              .level = ph_tilt_has_level (rig) };
  PhShade accent = ph_palette_of_widget (widget).accent; /* one that can be read on the ground */
  gtk_style_context_get_color (style, &pen.ink);
  pen.accent = (GdkRGBA){ (float)accent.red, (float)accent.green, (float)accent.blue, 1.0f };
  pen.cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)pen.width, (float)pen.height));
  pen.layout = gtk_widget_create_pango_layout (widget, NULL);
  make_room (&pen);
  draw (&pen);
  g_object_unref (pen.layout);
  cairo_destroy (pen.cr);
}

static void
ph_hand_plot_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                      int *natural, int *minimum_baseline, int *natural_baseline)
{
  (void)widget;
  (void)for_size;
  *minimum_baseline = *natural_baseline = -1;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH_LEAST : HEIGHT;
}

static void
ph_hand_plot_map (GtkWidget *widget)
{
  PhHandPlot *self = PH_HAND_PLOT (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_hand_plot_parent_class)->map (widget);
}

static void
ph_hand_plot_dispose (GObject *object)
{
  PhHandPlot *self = PH_HAND_PLOT (object);
  ph_hand_curve_clear (&self->curve);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_hand_plot_parent_class)->dispose (object);
}

static void
ph_hand_plot_class_init (PhHandPlotClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_hand_plot_dispose;
  widget_class->snapshot = ph_hand_plot_snapshot;
  widget_class->measure = ph_hand_plot_measure;
  widget_class->map = ph_hand_plot_map;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
ph_hand_plot_init (PhHandPlot *self)
{
  self->stale = TRUE;
}

GtkWidget *
ph_hand_plot_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhHandPlot *self = g_object_new (PH_TYPE_HAND_PLOT, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
