/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Blocks are buttons from a pool, so that keyboard and screen reader have them too; a change sets
 * their texts and places and makes no widget. A share under a ninth of the heavier side is merged
 * into the rest. Where the selected block is too narrow for its name, that stands beside the
 * fulcrum, in a room that is always kept free for it. Left and right are the archer's whatever the
 * text direction.
 */
#include "widgets/balance-beam.h"

#include <glib/gi18n.h>
#include <limits.h>
#include <math.h>

#include "document/format.h"
#include "model/moments.h"
#include "widgets/live-text.h"
#include "widgets/moment-words.h"
#include "widgets/say.h"

/* Merged below this share of the heavier side. */
#define LEAST_SHARE (1.0 / 9.0)
/* Left and right together never have more: 9 of a ninth each, the selected one, the rest, the hand
   and the levelling, twice. */
#define BLOCKS_MOST 26
#define BLOCK_HEIGHT 44
#define BEAM_HEIGHT 4
#define FULCRUM_HEIGHT 16
#define FULCRUM_HALF 12
#define FOOT_GAP 2
#define WIDTH_LEAST 240
#define WIDTH_NATURAL 340
#define GAP 1

typedef enum
{
  BLOCK_PART,
  BLOCK_REST,
  BLOCK_HAND,
  BLOCK_LEVELLING
} BlockIs;

typedef struct
{
  GtkWidget *button; /* owned child */
  PhLiveText *name, *number;
  BlockIs is;
  int part;
  double start_nm, end_nm; /* from the fulcrum, the left side negative */
} Block;

struct _PhBalanceBeam
{
  GtkWidget parent_instance;

  PhDocument *document; /* owned */
  Block blocks[BLOCKS_MOST];
  PhLiveText *selected; /* owned child: the selected block's name, where the block has no room */
  int n;                /* in use */
  double reach_nm;      /* of the longer side, all blocks */
  int foot;             /* height below the beam, as measured last */
  gboolean stale;
};

G_DEFINE_FINAL_TYPE (PhBalanceBeam, ph_balance_beam, GTK_TYPE_WIDGET)

static const char *const block_classes[] = { "part", "rest", "hand", "levelling" };

static void
set_class (GtkWidget *widget, const char *css_class, gboolean on)
{
  if (on)
    gtk_widget_add_css_class (widget, css_class);
  else
    gtk_widget_remove_css_class (widget, css_class);
}

/* "Back weights, 0.17 N·m to the left". */
static void
say_block (Block *block, gboolean left, gboolean known)
{
  const char *name = ph_live_text_get (block->name), *number = ph_live_text_get (block->number);
  g_autofree char *spoken = NULL;
  if (!known)
    spoken = left ? g_strdup_printf (_ ("%s to the left: not known yet how much"), name)
                  : g_strdup_printf (_ ("%s to the right: not known yet how much"), name);
  else
    spoken = left ? g_strdup_printf (_ ("%s, %s N·m to the left"), name, number)
                  : g_strdup_printf (_ ("%s, %s N·m to the right"), name, number);
  ph_say (block->button, spoken);
}

/* What an unknown hand shows instead of a number. */
#define NOT_KNOWN "?"

/* Puts the next free block of the pool beside what already stands on its side. `number` is taken
   over. */
static void
add_block (PhBalanceBeam *self, double *side_nm, double size_nm, BlockIs is, int part,
           const char *name, char *number)
{
  Block *block = &self->blocks[self->n];
  g_autofree char *owned = number;
  int selected = ph_share_selected (ph_document_get_shown (self->document).rig,
                                    ph_document_get_selected (self->document));
  if (self->n == BLOCKS_MOST)
    return;
  self->n++;
  block->is = is;
  block->part = part;
  block->start_nm = *side_nm;
  *side_nm += size_nm;
  block->end_nm = *side_nm;
  ph_live_text_show (block->name, name);
  ph_live_text_show (block->number, number);
  for (int i = 0; i < (int)G_N_ELEMENTS (block_classes); i++)
    set_class (block->button, block_classes[i], i == (int)is);
  set_class (block->button, "selected", is == BLOCK_PART && part == selected);
  gtk_widget_set_focusable (block->button, is == BLOCK_PART);
  gtk_widget_set_visible (block->button, TRUE);
  say_block (block, size_nm < 0.0, !g_str_equal (number, NOT_KNOWN));
}

static char *
moment_number (double moment_nm)
{
  return ph_format_number (fabs (moment_nm), 2);
}

static void
add_side (PhBalanceBeam *self, const PhSide *side, double sign, double *side_nm)
{
  const PhRig *rig = ph_document_get_shown (self->document).rig;
  for (size_t i = 0; i < side->n; i++)
    {
      const PhBlock *block = &side->blocks[i];
      gboolean rest = block->part == PH_BLOCK_REST;
      add_block (self, side_nm, sign * block->moment_nm, rest ? BLOCK_REST : BLOCK_PART,
                 block->part, rest ? _ ("rest") : ph_share_name (rig, block->part),
                 moment_number (block->moment_nm));
    }
}

/* What holds the difference: a known hand and the levelling by their moments, an unknown one as a
   question mark as wide as the whole difference. */
static void
add_holding (PhBalanceBeam *self, const PhReport *report, double *left_nm, double *right_nm)
{
  double rest_nm = -(*left_nm + *right_nm), least = 0.005;
  if (!report->hand_fitted)
    {
      if (fabs (rest_nm) >= least)
        add_block (self, rest_nm < 0.0 ? left_nm : right_nm, rest_nm, BLOCK_HAND, PH_BLOCK_REST,
                   _ ("hand"), g_strdup (NOT_KNOWN));
      return;
    }
  PhHolding holding = ph_holding_of (report);
  if (fabs (holding.levelling_nm) >= least)
    add_block (self, holding.levelling_nm < 0.0 ? left_nm : right_nm, holding.levelling_nm,
               BLOCK_LEVELLING, PH_BLOCK_REST,
               report->above_line_m < 0.0 ? _ ("hangs low") : _ ("stands high"),
               moment_number (holding.levelling_nm));
  if (fabs (holding.hand_nm) >= least)
    add_block (self, holding.hand_nm < 0.0 ? left_nm : right_nm, holding.hand_nm, BLOCK_HAND,
               PH_BLOCK_REST, _ ("hand"), moment_number (holding.hand_nm));
}

static Block *
selected_block (PhBalanceBeam *self)
{
  for (int i = 0; i < self->n; i++)
    if (gtk_widget_has_css_class (self->blocks[i].button, "selected"))
      return &self->blocks[i];
  return NULL;
}

static void
name_selected (PhBalanceBeam *self)
{
  const Block *block = selected_block (self);
  g_autofree char *text = block ? g_strdup_printf ("%s %s", ph_live_text_get (block->name),
                                                   ph_live_text_get (block->number))
                                : NULL;
  ph_live_text_show (self->selected, text);
}

static void
update (PhBalanceBeam *self)
{
  const PhReport *report = ph_document_get_shown (self->document).report;
  const PhRig *rig = ph_document_get_shown (self->document).rig;
  int keep = ph_share_selected (rig, ph_document_get_selected (self->document));
  double left_nm = 0.0, right_nm = 0.0;
  PhSides sides = ph_sides_of (report, LEAST_SHARE, keep == INT_MIN ? PH_BLOCK_REST : keep);
  self->n = 0;
  add_side (self, &sides.left, -1.0, &left_nm);
  add_side (self, &sides.right, 1.0, &right_nm);
  ph_sides_clear (&sides);
  add_holding (self, report, &left_nm, &right_nm);
  self->reach_nm = fmax (-left_nm, right_nm);
  for (int i = self->n; i < BLOCKS_MOST; i++)
    gtk_widget_set_visible (self->blocks[i].button, FALSE);
  name_selected (self);
  self->stale = FALSE;
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
changed_cb (PhBalanceBeam *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    update (self);
}

static void
clicked_cb (GtkButton *button, PhBalanceBeam *self)
{
  for (int i = 0; i < self->n; i++)
    if (self->blocks[i].button == GTK_WIDGET (button) && self->blocks[i].is == BLOCK_PART)
      {
        const PhRig *rig = ph_document_get_shown (self->document).rig;
        g_autofree char *id = g_strdup (ph_share_id (rig, self->blocks[i].part));
        ph_document_select (self->document, id);
        return;
      }
}

/* Below the beam: the fulcrum, and room for a name whether there is one or not. */
static int
foot_height (PhBalanceBeam *self)
{
  int line = 0;
  GtkWidget *text = GTK_WIDGET (self->selected);
  PangoLayout *layout = gtk_widget_create_pango_layout (text, "Xg");
  pango_layout_get_pixel_size (layout, NULL, &line);
  g_object_unref (layout);
  return MAX (FULCRUM_HEIGHT, line);
}

static void
ph_balance_beam_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  PhBalanceBeam *self = PH_BALANCE_BEAM (widget);
  int height = BLOCK_HEIGHT;
  (void)for_size;
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = WIDTH_LEAST;
      *natural = WIDTH_NATURAL;
      return;
    }
  for (int i = 0; i < self->n; i++)
    {
      int least;
      gtk_widget_measure (self->blocks[i].button, GTK_ORIENTATION_VERTICAL, -1, &least, NULL, NULL,
                          NULL);
      height = MAX (height, least);
    }
  self->foot = foot_height (self);
  *minimum = *natural = height + BEAM_HEIGHT + self->foot;
}

static gboolean
is_cut (PhLiveText *text)
{
  return gtk_widget_get_width (GTK_WIDGET (text)) < ph_live_text_get_full_width (text);
}

/* Under the middle of its block, on its own side of the fulcrum. */
static void
allocate_selected (PhBalanceBeam *self, int width, int height)
{
  const Block *block = selected_block (self);
  GtkWidget *text = GTK_WIDGET (self->selected);
  graphene_rect_t at;
  if (!block || !gtk_widget_compute_bounds (block->button, GTK_WIDGET (self), &at))
    return;
  int room = width / 2 - FULCRUM_HALF - 2 * FOOT_GAP, least;
  int wide = MIN (ph_live_text_get_full_width (self->selected), room);
  int from = block->start_nm + block->end_nm < 0.0 ? 0 : width - room;
  int x = (int)(at.origin.x + at.size.width / 2.0f) - wide / 2;
  gtk_widget_measure (text, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  GtkAllocation place = { CLAMP (x, from, from + room - wide), height - self->foot,
                          MAX (wide, least), self->foot };
  gtk_widget_size_allocate (text, &place, -1);
  gtk_widget_set_child_visible (text, is_cut (block->name) || is_cut (block->number));
}

static void
ph_balance_beam_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  PhBalanceBeam *self = PH_BALANCE_BEAM (widget);
  double per_nm = self->reach_nm > 0.0 ? (width / 2.0 - 2.0) / self->reach_nm : 0.0;
  (void)baseline;
  for (int i = 0; i < self->n; i++)
    {
      Block *block = &self->blocks[i];
      double a = width / 2.0 + fmin (block->start_nm, block->end_nm) * per_nm;
      double b = width / 2.0 + fmax (block->start_nm, block->end_nm) * per_nm;
      int x = (int)round (a) + GAP, least;
      gtk_widget_measure (block->button, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      GtkAllocation place = { x, 0, MAX ((int)round (b) - GAP - x, least),
                              height - BEAM_HEIGHT - self->foot };
      gtk_widget_size_allocate (block->button, &place, -1);
    }
  allocate_selected (self, width, height);
}

static void
draw_fulcrum (GtkWidget *widget, GtkSnapshot *snapshot)
{
  float width = (float)gtk_widget_get_width (widget);
  float foot = (float)(gtk_widget_get_height (widget) - PH_BALANCE_BEAM (widget)->foot);
  GdkRGBA color;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &color);
  gtk_snapshot_append_color (snapshot, &color,
                             &GRAPHENE_RECT_INIT (0.0f, foot - BEAM_HEIGHT, width, BEAM_HEIGHT));
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot,
      &GRAPHENE_RECT_INIT (width / 2.0f - FULCRUM_HALF, foot, 2.0f * FULCRUM_HALF, FULCRUM_HEIGHT));
  gdk_cairo_set_source_rgba (cr, &color);
  cairo_move_to (cr, (double)width / 2.0, (double)foot);
  cairo_rel_line_to (cr, -FULCRUM_HALF, FULCRUM_HEIGHT);
  cairo_rel_line_to (cr, 2.0 * FULCRUM_HALF, 0.0);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_destroy (cr);
}

static void
ph_balance_beam_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  draw_fulcrum (widget, snapshot);
  GTK_WIDGET_CLASS (ph_balance_beam_parent_class)->snapshot (widget, snapshot);
}

static void
ph_balance_beam_map (GtkWidget *widget)
{
  PhBalanceBeam *self = PH_BALANCE_BEAM (widget);
  if (self->stale)
    update (self);
  GTK_WIDGET_CLASS (ph_balance_beam_parent_class)->map (widget);
}

static void
ph_balance_beam_dispose (GObject *object)
{
  PhBalanceBeam *self = PH_BALANCE_BEAM (object);
  for (int i = 0; i < BLOCKS_MOST; i++)
    g_clear_pointer (&self->blocks[i].button, gtk_widget_unparent);
  if (self->selected)
    gtk_widget_unparent (GTK_WIDGET (self->selected));
  self->selected = NULL;
  self->n = 0;
  g_clear_object (&self->document);
  G_OBJECT_CLASS (ph_balance_beam_parent_class)->dispose (object);
}

static void
ph_balance_beam_class_init (PhBalanceBeamClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = ph_balance_beam_dispose;
  widget_class->measure = ph_balance_beam_measure;
  widget_class->size_allocate = ph_balance_beam_size_allocate;
  widget_class->snapshot = ph_balance_beam_snapshot;
  widget_class->map = ph_balance_beam_map;
  gtk_widget_class_set_css_name (widget_class, "beam");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

/* A block may be narrower than its text: the name is then cut, and where the number has no room
   nothing is shown (the tooltip has it). */
static void
measure_block (GtkWidget *button, GtkOrientation orientation, int for_size, int *minimum,
               int *natural, int *minimum_baseline, int *natural_baseline)
{
  GtkWidget *text = gtk_button_get_child (GTK_BUTTON (button));
  (void)for_size;
  gtk_widget_measure (text, orientation, -1, minimum, natural, NULL, NULL);
  *minimum_baseline = *natural_baseline = -1;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = 0;
}

static void
allocate_block (GtkWidget *button, int width, int height, int baseline)
{
  GtkWidget *text = gtk_button_get_child (GTK_BUTTON (button));
  PhLiveText *number = PH_LIVE_TEXT (gtk_widget_get_last_child (text));
  int least, least_height;
  (void)baseline;
  gtk_widget_measure (text, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  gtk_widget_measure (text, GTK_ORIENTATION_VERTICAL, -1, &least_height, NULL, NULL, NULL);
  gtk_widget_set_opacity (text, width < ph_live_text_get_full_width (number) ? 0.0 : 1.0);
  GtkAllocation place = { 0, 0, MAX (width, least), MAX (height, least_height) };
  gtk_widget_size_allocate (text, &place, -1);
}

/* Made when it is asked for: a tooltip set anew each frame is not cheap. */
static gboolean
query_tooltip_cb (GtkWidget *button, int x, int y, gboolean keyboard, GtkTooltip *tooltip,
                  gpointer data)
{
  (void)x;
  (void)y;
  (void)keyboard;
  (void)data;
  gtk_tooltip_set_text (tooltip, ph_said (button));
  return TRUE;
}

static PhLiveText *
new_block_text (GtkWidget *box)
{
  GtkWidget *text = g_object_new (PH_TYPE_LIVE_TEXT, "chars", 10, "least-chars", 1, "xalign", 0.5,
                                  "single-line", TRUE, NULL);
  gtk_box_append (GTK_BOX (box), text);
  return PH_LIVE_TEXT (text);
}

static void
init_block (PhBalanceBeam *self, Block *block)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  block->button = gtk_button_new ();
  block->name = new_block_text (box);
  block->number = new_block_text (box);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_button_set_child (GTK_BUTTON (block->button), box);
  gtk_widget_set_overflow (block->button, GTK_OVERFLOW_HIDDEN);
  gtk_widget_set_layout_manager (block->button,
                                 gtk_custom_layout_new (NULL, measure_block, allocate_block));
  gtk_widget_add_css_class (block->button, "block");
  gtk_widget_set_visible (block->button, FALSE);
  gtk_widget_set_has_tooltip (block->button, TRUE);
  gtk_widget_set_parent (block->button, GTK_WIDGET (self));
  g_signal_connect (block->button, "clicked", G_CALLBACK (clicked_cb), self);
  g_signal_connect (block->button, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
}

static void
ph_balance_beam_init (PhBalanceBeam *self)
{
  for (int i = 0; i < BLOCKS_MOST; i++)
    init_block (self, &self->blocks[i]);
  self->selected = PH_LIVE_TEXT (ph_live_text_new_single_line (10, 0.5f));
  gtk_widget_add_css_class (GTK_WIDGET (self->selected), "selected-name");
  gtk_widget_set_parent (GTK_WIDGET (self->selected), GTK_WIDGET (self));
}

GtkWidget *
ph_balance_beam_new (PhDocument *document)
{
  g_return_val_if_fail (PH_IS_DOCUMENT (document), NULL);
  PhBalanceBeam *self = g_object_new (PH_TYPE_BALANCE_BEAM, NULL);
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::flipped", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "notify::selected", G_CALLBACK (changed_cb), self,
                           G_CONNECT_SWAPPED);
  changed_cb (self);
  self->stale = TRUE;
  return GTK_WIDGET (self);
}
