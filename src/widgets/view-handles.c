/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything is worked out from the compiled rig and the camera, for drawing and for the pointer
 * alike, so that what is seen is what is taken hold of.
 */
#include "widgets/view-handles.h"

#include <math.h>

#include "base/units.h"
#include "widgets/marks-build.h"

#define DISC_CORNERS 20
#define DISC_PX 6.0f
#define DISC_HOT_PX 8.0f
/* The handle stands a little beyond the end, so that the end stays seen. */
#define BEYOND_PX 11.0f
#define CHEVRON_FAR_PX 15.0f
#define CHEVRON_PX 4.5f
#define BUTTON_PX 11.0f
#define GLYPH_PX 4.5f
/* − and + stand a target apart, the nearer edge of both this far from the stack. */
#define STACK_ASIDE_PX 16.0f
#define EDGE_PX (PH_HANDLE_TARGET_PX / 2.0f)
#define HALO_PX 7.0f
#define HALO_ALPHA 0.28
#define LIMITS_ALPHA 0.2
#define LIMITS_EDGE_ALPHA 0.45
#define ARC_LEAST_PX 36.0f
#define ARC_STEPS 32
#define ARC_DEG 30.0
#define TICK_GAP_PX 6.0f
#define TICK_PX 4.0f
#define TICKS_MOST 60
#define POINTER_ASIDE 22

static PhPixel
moved (PhPixel at, PhPixel way, float far)
{
  return (PhPixel){ at.x + way.x * far, at.y + way.y * far };
}

static PhPixel
inside (PhPixel at, const PhCamera *camera)
{
  return (PhPixel){ fmaxf (EDGE_PX, fminf (at.x, camera->width_px - EDGE_PX)),
                    fmaxf (EDGE_PX, fminf (at.y, camera->height_px - EDGE_PX)) };
}

/* Where things are. */

gboolean
ph_view_tip (const PhCompiled *compiled, int part, const PhCamera *camera, PhPixel *at)
{
  PhHandle handle;
  if (part < 0 || !ph_handle_of (compiled, (size_t)part, &handle))
    return FALSE;
  PhPixel root = ph_camera_project (camera, handle.root, NULL);
  PhPixel tip = ph_camera_project (camera, ph_handle_tip (&handle), NULL);
  float long_px = hypotf (tip.x - root.x, tip.y - root.y);
  float whole_px = fmaxf (handle.reach_mm * camera->px_per_mm, 1.0f);
  *at = tip;
  if (long_px > 1.0f)
    *at = moved (tip, (PhPixel){ (tip.x - root.x) / long_px, (tip.y - root.y) / long_px },
                 BEYOND_PX * fminf (1.0f, long_px / whole_px));
  *at = inside (*at, camera);
  return TRUE;
}

gboolean
ph_view_stack_handles (const PhCompiled *compiled, int part, const PhCamera *camera, PhPixel at[2])
{
  int i = part < 0 ? -1 : compiled->piece_of_part[part];
  const PhPiece *piece = i < 0 ? NULL : ph_assembly_piece (compiled->assembly, i);
  if (!piece || piece->kind != PH_PIECE_WEIGHTS)
    return FALSE;
  const PhPlace *place = ph_assembly_place (compiled->assembly, i);
  PhPoint middle = ph_point_mix (ph_point_of_m (place->root_m), ph_point_of_m (place->end_m), 0.5f);
  PhPixel way = { 1.0f, 0.0f }, on = ph_camera_project (camera, middle, NULL);
  ph_handle_axis (compiled, (size_t)part, camera, &way, NULL);
  /* Aside: below from the side; above elsewhere, where the lever arm has the place below. */
  PhPixel aside = { -way.y, way.x };
  if ((aside.y < 0.0f) == (camera->view == PH_VIEW_SIDE))
    aside = (PhPixel){ -aside.x, -aside.y };
  float radius = (float)ph_to_milli (piece->diameter_m) / 2.0f * camera->px_per_mm;
  PhPixel between = moved (on, aside, radius + STACK_ASIDE_PX + BUTTON_PX);
  between.x =
      fmaxf (PH_HANDLE_TARGET_PX, fminf (between.x, camera->width_px - PH_HANDLE_TARGET_PX));
  for (int k = 0; k < 2; k++)
    at[k] = inside (moved (between, way, (k ? 0.5f : -0.5f) * PH_HANDLE_TARGET_PX), camera);
  return TRUE;
}

PhHold
ph_view_handle_at (const PhMarkHand *hand, const PhCamera *camera, PhPixel at, float reach_px)
{
  PhPixel buttons[3];
  PhHold holds[3], nearest = { PH_HOLD_NONE, -1 };
  float reach[3], least = INFINITY, button_px = fmaxf (reach_px, BUTTON_PX + 3.0f);
  int n = 0;
  if (hand->stack >= 0 && ph_view_stack_handles (hand->compiled, hand->stack, camera, buttons))
    for (; n < 2; n++)
      {
        holds[n] = (PhHold){ n ? PH_HOLD_MORE : PH_HOLD_LESS, hand->stack };
        reach[n] = button_px;
      }
  if (ph_view_tip (hand->compiled, hand->turns, camera, &buttons[n]))
    {
      holds[n] = (PhHold){ PH_HOLD_TURN, hand->turns };
      reach[n++] = reach_px;
    }
  for (int i = 0; i < n; i++)
    {
      float far = hypotf (at.x - buttons[i].x, at.y - buttons[i].y);
      if (far > reach[i] || far >= least)
        continue;
      least = far;
      nearest = holds[i];
    }
  return nearest;
}

/* How they look. */

static void
line (PhMarks *marks, PhPixel a, PhPixel b, double alpha)
{
  ph_marks_add_line (marks, a, b, PH_DASH_NONE, alpha, TRUE, FALSE);
}

static void
disc_corners (PhPixel at, float radius, PhPixel corners[DISC_CORNERS])
{
  for (int i = 0; i < DISC_CORNERS; i++)
    {
      float angle = 2.0f * (float)G_PI * (float)i / DISC_CORNERS;
      corners[i] = (PhPixel){ at.x + radius * cosf (angle), at.y + radius * sinf (angle) };
    }
}

static void
disc (PhMarks *marks, PhPixel at, float radius, double alpha)
{
  PhMark mark = { .kind = PH_MARK_FILL, .accent = TRUE, .alpha = alpha, .n_at = DISC_CORNERS };
  disc_corners (at, radius, mark.at);
  g_array_append_val (marks->marks, mark);
}

static void
ring (PhMarks *marks, PhPixel at, float radius)
{
  PhPixel corners[DISC_CORNERS];
  disc_corners (at, radius, corners);
  for (int i = 0; i < DISC_CORNERS; i++)
    line (marks, corners[i], corners[(i + 1) % DISC_CORNERS], 1.0);
}

static void
keep_free (PhMarks *marks, PhPixel at, float reach)
{
  double x = (double)(at.x - reach), y = (double)(at.y - reach), size = 2.0 * (double)reach;
  ph_label_places_take (&marks->places, (PhLabelBox){ x, y, size, size });
}

/* An arrowhead that points that way. */
static void
chevron (PhMarks *marks, PhPixel tip, PhPixel way)
{
  PhPixel back = moved (tip, way, -CHEVRON_PX), across = { -way.y, way.x };
  line (marks, tip, moved (back, across, CHEVRON_PX), 1.0);
  line (marks, tip, moved (back, across, -CHEVRON_PX), 1.0);
}

/* A dot between two arrowheads: which way it goes. */
static void
tip_handle (PhMarks *marks, const PhMarkHand *hand)
{
  PhHandle handle;
  PhPixel at;
  if (!ph_view_tip (hand->compiled, hand->turns, marks->camera, &at)
      || !ph_handle_of (hand->compiled, (size_t)hand->turns, &handle))
    return;
  gboolean hot = hand->hot.kind == PH_HOLD_TURN && hand->hot.part == hand->turns;
  PhGrip grip = ph_handle_grip (&handle, marks->camera, (PhPixel){ 0.0f, 0.0f });
  PhPixel other = { -grip.way.x, -grip.way.y };
  disc (marks, at, hot ? DISC_HOT_PX : DISC_PX, 1.0);
  chevron (marks, moved (at, grip.way, CHEVRON_FAR_PX), grip.way);
  chevron (marks, moved (at, other, CHEVRON_FAR_PX), other);
  keep_free (marks, at, CHEVRON_FAR_PX);
}

static void
stack_buttons (PhMarks *marks, const PhMarkHand *hand)
{
  PhPixel at[2];
  if (!ph_view_stack_handles (hand->compiled, hand->stack, marks->camera, at))
    return;
  for (int k = 0; k < 2; k++)
    {
      gboolean hot = hand->hot.kind == (k ? PH_HOLD_MORE : PH_HOLD_LESS);
      disc (marks, at[k], BUTTON_PX, hot ? 0.35 : 0.12);
      ring (marks, at[k], BUTTON_PX);
      line (marks, (PhPixel){ at[k].x - GLYPH_PX, at[k].y },
            (PhPixel){ at[k].x + GLYPH_PX, at[k].y }, 1.0);
      if (k)
        line (marks, (PhPixel){ at[k].x, at[k].y - GLYPH_PX },
              (PhPixel){ at[k].x, at[k].y + GLYPH_PX }, 1.0);
      keep_free (marks, at[k], BUTTON_PX);
    }
}

/* A glow beneath what would move. */
static void
halo (PhMarks *marks, const PhMarkHand *hand)
{
  int i = hand->hot.kind == PH_HOLD_NONE ? -1 : hand->compiled->piece_of_part[hand->hot.part];
  PhHandle handle;
  if (i < 0)
    return;
  const PhPlace *place = ph_assembly_place (hand->compiled->assembly, i);
  const PhPiece *piece = ph_assembly_piece (hand->compiled->assembly, i);
  PhPoint from = ph_point_of_m (place->root_m), to = ph_point_of_m (place->end_m);
  double wide_m = piece->kind == PH_PIECE_BRACKET ? piece->size_m.y : piece->diameter_m;
  if (hand->hot.kind == PH_HOLD_TURN
      && ph_handle_of (hand->compiled, (size_t)hand->hot.part, &handle))
    to = ph_handle_tip (&handle);
  ph_marks_add_line (marks, ph_camera_project (marks->camera, from, NULL),
                     ph_camera_project (marks->camera, to, NULL), PH_DASH_NONE, HALO_ALPHA, TRUE,
                     TRUE);
  PhMark *mark = &g_array_index (marks->marks, PhMark, marks->marks->len - 1);
  mark->width_px = ph_to_milli (wide_m) * (double)marks->camera->px_per_mm + 2.0 * HALO_PX;
}

/* The arc that the end goes along. */

typedef struct
{
  PhHandle handle;
  PhTurn turn;
  const PhCamera *camera;
} Arc;

static PhPixel
on_arc (const Arc *arc, double degrees)
{
  return ph_camera_project (arc->camera, ph_handle_tip_at (&arc->handle, arc->turn, degrees), NULL);
}

static void
limits_fan (PhMarks *marks, const Arc *arc, double lo, double hi)
{
  PhMark fan = { .kind = PH_MARK_FILL, .under = TRUE, .accent = TRUE, .alpha = LIMITS_ALPHA };
  fan.at[fan.n_at++] = ph_camera_project (arc->camera, arc->handle.root, NULL);
  for (int i = 0; i <= ARC_STEPS; i++)
    fan.at[fan.n_at++] = on_arc (arc, lo + (hi - lo) * i / ARC_STEPS);
  g_array_append_val (marks->marks, fan);
  for (int end = 0; end < 2; end++)
    ph_marks_add_line (marks, fan.at[0], end ? fan.at[fan.n_at - 1] : fan.at[1], PH_DASH_NONE,
                       LIMITS_EDGE_ALPHA, TRUE, TRUE);
}

static double
tick_step (const Arc *arc, double value)
{
  static const double steps[] = { 1, 2, 5, 10, 15 };
  PhPixel a = on_arc (arc, value - 0.5), b = on_arc (arc, value + 0.5);
  float px = hypotf (b.x - a.x, b.y - a.y);
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if ((float)steps[i] * px >= TICK_GAP_PX)
      return steps[i];
  return 30;
}

static void
ticks (PhMarks *marks, const Arc *arc, const PhMarkHand *hand, double lo, double hi)
{
  double step = tick_step (arc, hand->value_deg);
  int n = 0;
  for (double at = ceil (lo / step) * step; at <= hi && n < TICKS_MOST; at += step, n++)
    {
      PhPixel a = on_arc (arc, at - 0.25), b = on_arc (arc, at + 0.25), on = on_arc (arc, at);
      float far = hypotf (b.x - a.x, b.y - a.y);
      if (far <= 0.0f)
        continue;
      PhPixel across = { (b.y - a.y) / far, (a.x - b.x) / far };
      float half = fmod (at, 5 * step) == 0 ? 1.8f * TICK_PX : TICK_PX;
      line (marks, moved (on, across, -half), moved (on, across, half), 0.8);
    }
}

static void
arc (PhMarks *marks, const PhMarkHand *hand)
{
  Arc arc = { .turn = hand->turn, .camera = marks->camera };
  if (!hand->turning || !ph_handle_of (hand->compiled, (size_t)hand->turns, &arc.handle))
    return;
  gboolean limited = !isnan (hand->lo_deg);
  double lo = fmax (hand->value_deg - ARC_DEG, limited ? hand->lo_deg : -180.0);
  double hi = fmin (hand->value_deg + ARC_DEG, limited ? hand->hi_deg : 180.0);
  arc.handle.reach_mm = fmaxf (arc.handle.reach_mm, ARC_LEAST_PX / marks->camera->px_per_mm);
  if (limited && hand->hi_deg > hand->lo_deg)
    limits_fan (marks, &arc, hand->lo_deg, hand->hi_deg);
  if (!(hi > lo))
    return;
  for (int i = 0; i < ARC_STEPS; i++)
    line (marks, on_arc (&arc, lo + (hi - lo) * i / ARC_STEPS),
          on_arc (&arc, lo + (hi - lo) * (i + 1) / ARC_STEPS), 0.5);
  ticks (marks, &arc, hand, lo, hi);
  /* Where it was. */
  line (marks, ph_camera_project (marks->camera, arc.handle.root, NULL),
        on_arc (&arc, hand->start_deg), 0.35);
}

/* Words. */

static void
say_value (PhMarks *marks, const PhMarkHand *hand)
{
  double x = (double)hand->pointer.x, y = (double)hand->pointer.y;
  const PhTextPlace places[] = { { x + POINTER_ASIDE, y - POINTER_ASIDE, 0, 1 },
                                 { x - POINTER_ASIDE, y - POINTER_ASIDE, 1, 1 },
                                 { x + POINTER_ASIDE, y + POINTER_ASIDE, 0, 0 },
                                 { x - POINTER_ASIDE, y + POINTER_ASIDE, 1, 0 } };
  PhTextStyle bold = {
    .bold = TRUE, .accent = TRUE, .scale = 1.25, .reach_px = 90, .care = PH_LABEL_OFF
  };
  PhLabelBox box;
  if (!ph_marks_add_text (marks, hand->value, &bold, places, G_N_ELEMENTS (places), &box)
      || !hand->effect)
    return;
  PhTextStyle plain = { .scale = 1.0, .reach_px = 60, .care = PH_LABEL_OFF };
  const PhTextPlace below[] = { { box.x, box.y + box.height, 0, 0 },
                                { box.x + box.width, box.y + box.height, 1, 0 },
                                { box.x, box.y, 0, 1 },
                                { box.x + box.width, box.y, 1, 1 } };
  ph_marks_add_text (marks, hand->effect, &plain, below, G_N_ELEMENTS (below), NULL);
}

static void
say_hint (PhMarks *marks, const PhMarkHand *hand)
{
  PhTextStyle style = { .accent = TRUE,
                        .scale = 1.0,
                        .wrap_px = (double)marks->camera->width_px - 16,
                        .reach_px = 60,
                        .care = PH_LABEL_NEVER };
  const PhTextPlace places[] = { { 8, 28, 0, 0 },
                                 { 8, (double)marks->camera->height_px - 26, 0, 1 } };
  ph_marks_add_text (marks, hand->hint, &style, places, G_N_ELEMENTS (places), NULL);
}

void
ph_marks_hand (PhMarks *marks)
{
  const PhMarkHand *hand = marks->facts->hand;
  if (!hand)
    return;
  halo (marks, hand);
  arc (marks, hand);
  tip_handle (marks, hand);
  if (!hand->held)
    stack_buttons (marks, hand);
  if (hand->held)
    say_value (marks, hand);
  if (hand->hint)
    say_hint (marks, hand);
}
