/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is drawn against what the physics places: sizes, places, counts, mirroring; nothing hangs in
 * the air; and no bow, however odd its numbers, is drawn with a number that is none.
 */
#include "scene/drawlist.h"

#include <locale.h>
#include <string.h>

#include "check.h"
#include "drawn-rig.h"
#include "physics/clearance.h"

/* Floats of up to 1,000 mm. */
#define TINY_MM 2e-3

static const PhItem *
item_at (const DrawnRig *drawn, size_t i)
{
  return ph_draw_list_item (drawn->list, i);
}

static size_t
count_of (const DrawnRig *drawn, int part, PhRole role)
{
  size_t n = 0;
  for (size_t i = 0; i < ph_draw_list_count (drawn->list); i++)
    n += item_at (drawn, i)->part == part && item_at (drawn, i)->role == role;
  return n;
}

static const PhItem *
first_of (const DrawnRig *drawn, int part, PhRole role)
{
  for (size_t i = 0; i < ph_draw_list_count (drawn->list); i++)
    if (item_at (drawn, i)->part == part && item_at (drawn, i)->role == role)
      return item_at (drawn, i);
  return NULL;
}

static double
apart (PhPoint a, PhPoint b)
{
  return (double)ph_point_length (ph_point_sub (a, b));
}

static void
every_bow_has_its_forms (void)
{
  static const struct
  {
    PhBowKind kind;
    size_t limbs, cams, cables;
  } want[] = { { PH_BOW_COMPOUND, 4, 2, 2 },
               { PH_BOW_RECURVE, 2, 0, 0 },
               { PH_BOW_BAREBOW, 2, 0, 0 } };
  for (size_t i = 0; i < 3; i++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_starter (want[i].kind, PH_BOW_HAND_LEFT));
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_RISER) == 1);
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_GRIP) == 1);
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_STRING) == 1);
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_LIMB) == want[i].limbs);
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_CABLE) == want[i].cables);
      CHECK ((count_of (&drawn, PH_PART_BOW, PH_ROLE_CAM) > 0) == (want[i].cams > 0));
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_ARROW) == 0, "only on demand");
      CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_HAND) == 0);
      drawn_rig_clear (&drawn);
    }
}

/* Back from the riser ever flatter, then up again toward the groove of the string: what makes a
 * recurve (common practice, no source). */
static void
a_recurves_limbs_curl_at_their_tips (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("recurve"));
  const PhItem *limb = first_of (&drawn, PH_PART_BOW, PH_ROLE_LIMB);
  const PhStation *stations = ph_draw_list_stations (drawn.list, limb);
  size_t n = limb->sweep.n, flattest = 0;
  double least = INFINITY, steepness[64];
  for (size_t i = 0; i + 1 < n; i++)
    {
      PhPoint step = ph_point_sub (stations[i + 1].at, stations[i].at);
      steepness[i] = fabs ((double)step.z) / apart (stations[i + 1].at, stations[i].at);
      if (steepness[i] < least)
        {
          least = steepness[i];
          flattest = i;
        }
    }
  CHECK (flattest > n / 2 && flattest < n - 4, "flattest at %zu of %zu", flattest, n);
  CHECK (steepness[0] > 0.9 && least < 0.6 && steepness[n - 2] > 0.8, "%g, %g, %g", steepness[0],
         least, steepness[n - 2]);
  drawn_rig_clear (&drawn);
}

/* The grip's heel stands on the riser: no gap between them in the view from the side. */
static void
the_grip_is_joined_to_the_riser (void)
{
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      const PhItem *grip = first_of (&drawn, PH_PART_BOW, PH_ROLE_GRIP);
      const PhItem *riser = first_of (&drawn, PH_PART_BOW, PH_ROLE_RISER);
      const PhStation *at = ph_draw_list_stations (drawn.list, grip);
      const PhStation *bow = ph_draw_list_stations (drawn.list, riser);
      for (size_t i = 0; i < grip->sweep.n; i++)
        {
          double front = (double)(at[i].at.x + at[i].half_depth), gap = INFINITY;
          for (size_t k = 0; k < riser->sweep.n; k++)
            if (fabsf (bow[k].at.z - at[i].at.z) < 8.0f)
              gap = fmin (gap, (double)(bow[k].at.x - bow[k].half_depth) - front);
          /* The heel's rounding may leave a few millimetres at its very end. */
          CHECK (gap < (i + 3 < grip->sweep.n ? 0.0 : 6.0), "%s: a gap of %g mm at %g",
                 drawn_files[f], gap, (double)at[i].at.z);
        }
      drawn_rig_clear (&drawn);
    }
}

static void
arrow_and_hand_are_drawn_on_demand (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  PhDrawOptions options = ph_draw_options_default ();
  options.show_arrow = options.show_hand = true;
  drawn_rig_update (&drawn, &options);
  const PhItem *shaft = first_of (&drawn, PH_PART_BOW, PH_ROLE_ARROW);
  CHECK (shaft && shaft->solid == PH_SOLID_LINE);
  const PhPoint *ends = ph_draw_list_points (drawn.list, shaft);
  /* From the nock (−660, 0, 42) through (0, 0, 42 − 3). */
  CHECK_NEAR (apart (ends[0], ph_point (-660, 0, 42)), 0.0, TINY_MM);
  PhPoint way = ph_point_sub (ends[1], ends[0]);
  CHECK_NEAR ((double)(way.z / way.x), -3.0 / 660.0, 1e-6);
  CHECK_NEAR ((double)shaft->line.radius, 3.0, 1e-6);
  CHECK (count_of (&drawn, PH_PART_BOW, PH_ROLE_HAND) > 0);
  drawn_rig_clear (&drawn);
}

static void
string_runs_from_the_nock_to_both_ends_of_the_bow (void)
{
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      const PhItem *string = first_of (&drawn, PH_PART_BOW, PH_ROLE_STRING);
      const PhPoint *p = ph_draw_list_points (drawn.list, string);
      const PhArcher *archer = &drawn.rig->archer;
      float tall = ph_bow_axle_to_axle (&drawn.rig->bow);
      CHECK (string->line.n == 3);
      CHECK_NEAR ((double)p[1].x, -archer->draw_length_mm, TINY_MM);
      CHECK_NEAR ((double)p[1].z, archer->nock_height_mm, TINY_MM);
      /* Tips stand at ±0.43 of tip to tip; on a cam the string leaves a disc of 0.047 about an
       * axle at ±0.435: between 0.38 and 0.49 of axle to axle. */
      CHECK (p[0].z > 0.38f * tall && p[0].z < 0.49f * tall);
      CHECK (p[2].z < -0.38f * tall && p[2].z > -0.49f * tall);
      drawn_rig_clear (&drawn);
    }
}

static void
string_leaves_the_cam_square_to_its_radius (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  const PhPoint *p =
      ph_draw_list_points (drawn.list, first_of (&drawn, PH_PART_BOW, PH_ROLE_STRING));
  for (size_t i = 0, cam = 0; i < ph_draw_list_count (drawn.list) && cam < 2; i++)
    {
      const PhItem *item = item_at (&drawn, i);
      if (item->role != PH_ROLE_CAM || item->solid != PH_SOLID_RING)
        continue;
      PhPoint touch = p[cam == 0 ? 0 : 2], radius = ph_point_sub (touch, item->ring.at);
      CHECK_NEAR ((double)ph_point_length (radius), (double)item->ring.outer, 0.01);
      PhPoint way = ph_point_unit (ph_point_sub (p[1], touch));
      CHECK_NEAR ((double)ph_point_dot (way, ph_point_unit (radius)), 0.0, 1e-4);
      CHECK (radius.x < 0.0f, "on its back, toward the archer");
      cam++;
    }
  drawn_rig_clear (&drawn);
}

static void
bars_stand_where_the_physics_has_them (void)
{
  PhDrawOptions plain = ph_draw_options_default ();
  plain.plain = true;
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      drawn_rig_update (&drawn, &plain);
      for (size_t i = 0; i < drawn.rig->n_parts; i++)
        {
          int piece = drawn.compiled->piece_of_part[i];
          const PhPart *part = &drawn.rig->parts[i];
          if (piece < 0 || part->kind != PH_PART_BAR)
            continue;
          const PhPlace *place = ph_assembly_place (drawn.compiled->assembly, piece);
          const PhItem *tube = first_of (&drawn, (int)i, PH_ROLE_BAR);
          CHECK (tube && tube->solid == PH_SOLID_TUBE, "%s", part->id);
          CHECK_NEAR (apart (tube->tube.a, ph_point_of_m (place->root_m)), 0.0, TINY_MM);
          CHECK_NEAR (apart (tube->tube.b, ph_point_of_m (place->end_m)), 0.0, TINY_MM);
          CHECK_NEAR ((double)tube->tube.ra, part->outer_mm / 2, 1e-4);
        }
      drawn_rig_clear (&drawn);
    }
}

static void
a_bar_with_fittings_is_as_long_as_without (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  int bar = ph_rig_find (drawn.rig, "front-bar");
  double length = 0;
  for (size_t i = 0; i < ph_draw_list_count (drawn.list); i++)
    if (item_at (&drawn, i)->part == bar)
      length += apart (item_at (&drawn, i)->tube.a, item_at (&drawn, i)->tube.b);
  CHECK_NEAR (length, 762.0, 3 * TINY_MM);
  CHECK (count_of (&drawn, bar, PH_ROLE_FITTING) == 2);
  drawn_rig_clear (&drawn);
}

static void
every_disc_of_a_stack_can_be_counted (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  int stack = ph_rig_find (drawn.rig, "front-stack");
  CHECK (count_of (&drawn, stack, PH_ROLE_WEIGHT) == 8);
  const PhPart *part = &drawn.rig->parts[stack];
  PhPoint before = { 0 };
  size_t n = 0;
  for (size_t i = 0; i < ph_draw_list_count (drawn.list); i++)
    {
      const PhItem *item = item_at (&drawn, i);
      if (item->part != stack || item->role != PH_ROLE_WEIGHT)
        continue;
      double thick = apart (item->tube.a, item->tube.b);
      CHECK (thick < part->each_mm && thick > 0.8 * part->each_mm, "%g", thick);
      CHECK_NEAR ((double)item->tube.ra, part->diameter_mm / 2, 1e-4);
      if (n++ > 0)
        CHECK_NEAR (apart (ph_point_mix (item->tube.a, item->tube.b, 0.5f), before), part->each_mm,
                    TINY_MM);
      before = ph_point_mix (item->tube.a, item->tube.b, 0.5f);
    }
  PhIssues issues = { 0 };
  ph_edit_set_number (drawn.rig, (size_t)stack, "count", 0, PH_DISCS_MOST + 1, &issues);
  ph_issues_clear (&issues);
  drawn_rig_update (&drawn, NULL);
  CHECK (count_of (&drawn, stack, PH_ROLE_WEIGHT) == 1, "nobody counts that many");
  drawn_rig_clear (&drawn);
}

static void
the_other_hand_is_drawn_as_a_mirror_image (void)
{
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig left = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      PhRig *copy = ph_rig_copy (left.rig);
      ph_edit_mirror (copy);
      DrawnRig right = drawn_rig_of (copy);
      CHECK (ph_draw_list_count (left.list) == ph_draw_list_count (right.list));
      for (size_t i = 0; i < ph_draw_list_count (left.list); i++)
        {
          const PhItem *a = item_at (&left, i), *b = item_at (&right, i);
          PhPoint pa = a->box.at, pb = b->box.at;
          CHECK (a->solid == b->solid && a->role == b->role && a->part == b->part);
          if (a->solid == PH_SOLID_SWEEP)
            {
              pa = ph_draw_list_stations (left.list, a)[a->sweep.n / 2].at;
              pb = ph_draw_list_stations (right.list, b)[b->sweep.n / 2].at;
            }
          else if (a->solid == PH_SOLID_LINE)
            {
              pa = ph_draw_list_points (left.list, a)[1];
              pb = ph_draw_list_points (right.list, b)[1];
            }
          /* The blades of a split limb change places. */
          if (a->role == PH_ROLE_LIMB)
            pb.y = pa.y = 0.0f;
          pb.y = -pb.y;
          double off = apart (pa, pb);
          /* A disc in the bow's plane is its own image, its two faces changing places. */
          if (a->solid == PH_SOLID_TUBE)
            {
              PhPoint end = b->tube.b;
              end.y = -end.y;
              off = fmin (off, apart (pa, end));
            }
          CHECK_NEAR (off, 0.0, TINY_MM);
        }
      drawn_rig_clear (&left);
      drawn_rig_clear (&right);
    }
}

/* Whether a point lies in a solid grown by `more`. */
static bool
holds (const DrawnRig *drawn, const PhItem *item, PhPoint p, float more)
{
  PhPoint to, a, b;
  float radius;
  switch (item->solid)
    {
    case PH_SOLID_BOX:
      to = ph_point_sub (p, item->box.at);
      for (int k = 0; k < 3; k++)
        if (fabsf (ph_point_dot (to, ph_point_unit (item->box.half[k])))
            > ph_point_length (item->box.half[k]) + more)
          return false;
      return true;
    case PH_SOLID_SPHERE:
      return apart (p, item->sphere.at) <= (double)(item->sphere.radius + more);
    case PH_SOLID_RING:
      to = ph_point_sub (p, item->ring.at);
      radius = ph_point_length (
          ph_point_add_scaled (to, item->ring.axis, -ph_point_dot (to, item->ring.axis)));
      return fabsf (ph_point_dot (to, item->ring.axis)) <= item->ring.half_thick + more
             && radius <= item->ring.outer + more && radius >= item->ring.inner - more;
    case PH_SOLID_TUBE:
      a = item->tube.a;
      b = item->tube.b;
      radius = fmaxf (item->tube.ra, item->tube.rb);
      break;
    case PH_SOLID_SWEEP:
      for (size_t i = 0; i < item->sweep.n; i++)
        {
          const PhStation *s = &ph_draw_list_stations (drawn->list, item)[i];
          PhPoint off = ph_point_sub (p, s->at);
          float out = ph_point_dot (off, s->out), side = ph_point_dot (off, s->side);
          float rest = ph_point_length (ph_point_sub (ph_point_add_scaled (off, s->out, -out),
                                                      ph_point_scale (s->side, side)));
          /* Stations stand some 10 mm apart. */
          if (fabsf (out) <= s->half_depth + more && fabsf (side) <= s->half_across + more
              && rest <= 6.0f)
            return true;
        }
      return false;
    case PH_SOLID_LINE:
    default:
      return false;
    }
  PhPoint way = ph_point_sub (b, a);
  float square = ph_point_dot (way, way);
  float t = square > 0 ? ph_point_dot (ph_point_sub (p, a), way) / square : 0.0f;
  t = fminf (fmaxf (t, 0.0f), 1.0f);
  return apart (p, ph_point_mix (a, b, t)) <= (double)(radius + more);
}

/* Some points that belong to a solid. */
static size_t
samples (const DrawnRig *drawn, const PhItem *item, PhPoint points[32])
{
  size_t n = 0;
  if (item->solid == PH_SOLID_SWEEP)
    for (size_t i = 0; i < 32; i++)
      points[n++] = ph_draw_list_stations (drawn->list, item)[i * (item->sweep.n - 1) / 31].at;
  if (item->solid == PH_SOLID_TUBE)
    for (int i = 0; i <= 8; i++)
      points[n++] = ph_point_mix (item->tube.a, item->tube.b, (float)i / 8.0f);
  if (item->solid == PH_SOLID_BOX)
    for (unsigned i = 0; i < 27; i++)
      {
        PhPoint p = item->box.at;
        for (unsigned k = 0, d = i; k < 3; k++, d /= 3)
          p = ph_point_add_scaled (p, item->box.half[k], (float)(d % 3) - 1.0f);
        points[n++] = p;
      }
  if (item->solid == PH_SOLID_SPHERE)
    points[n++] = item->sphere.at;
  if (item->solid == PH_SOLID_RING)
    {
      PhPoint u, v;
      ph_point_square (item->ring.axis, &u, &v);
      for (int i = 0; i < 16; i++)
        {
          float angle = 0.3926991f * (float)i, r = (item->ring.outer + item->ring.inner) / 2;
          points[n++] = ph_point_add_scaled (
              ph_point_add_scaled (item->ring.at, u, r * cosf (angle)), v, r * sinf (angle));
        }
    }
  return n;
}

static bool
touch (const DrawnRig *drawn, const PhItem *a, const PhItem *b)
{
  PhPoint points[32];
  size_t n = samples (drawn, a, points);
  for (size_t i = 0; i < n; i++)
    if (holds (drawn, b, points[i], 1.5f))
      return true;
  n = samples (drawn, b, points);
  for (size_t i = 0; i < n; i++)
    if (holds (drawn, a, points[i], 1.5f))
      return true;
  return false;
}

/* Spreads from the riser over everything that touches; what is left hangs in the air. */
static void
check_nothing_hangs (const DrawnRig *drawn, const char *name)
{
  size_t n = ph_draw_list_count (drawn->list);
  bool *held = calloc (n, sizeof *held), more = true;
  for (size_t i = 0; i < n; i++)
    held[i] = item_at (drawn, i)->role == PH_ROLE_RISER;
  while (more)
    {
      more = false;
      for (size_t i = 0; i < n; i++)
        for (size_t k = 0; held[i] && k < n; k++)
          if (!held[k] && touch (drawn, item_at (drawn, i), item_at (drawn, k)))
            held[k] = more = true;
    }
  for (size_t i = 0; i < n; i++)
    {
      const PhItem *item = item_at (drawn, i);
      if (item->solid != PH_SOLID_LINE)
        CHECK (held[i], "%s: %s of part %d hangs in the air", name, ph_role_word (item->role),
               item->part);
    }
  free (held);
}

static void
no_part_hangs_in_the_air (void)
{
  for (size_t f = 0; f < DRAWN_FILES; f++)
    {
      DrawnRig drawn = drawn_rig_of (drawn_rig_load (drawn_files[f]));
      check_nothing_hangs (&drawn, drawn_files[f]);
      drawn_rig_clear (&drawn);
    }
  for (int kind = PH_BOW_COMPOUND; kind <= PH_BOW_BAREBOW; kind++)
    for (int hand = PH_BOW_HAND_LEFT; hand <= PH_BOW_HAND_RIGHT; hand++)
      {
        DrawnRig drawn = drawn_rig_of (drawn_rig_starter ((PhBowKind)kind, (PhBowHand)hand));
        check_nothing_hangs (&drawn, "starter");
        drawn_rig_clear (&drawn);
      }
}

static void
what_is_off_stands_where_it_would_be_and_is_marked (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  int bar = ph_rig_find (drawn.rig, "back-bar"), stack = ph_rig_find (drawn.rig, "back-stack");
  const PhItem before = *first_of (&drawn, bar, PH_ROLE_BAR);
  size_t discs = count_of (&drawn, stack, PH_ROLE_WEIGHT);
  PhIssues issues = { 0 };
  CHECK (ph_edit_set_off (drawn.rig, (size_t)bar, true, &issues));
  drawn_rig_update (&drawn, NULL);
  const PhItem *after = first_of (&drawn, bar, PH_ROLE_BAR);
  CHECK (after && after->state == PH_STATE_OFF && before.state == PH_STATE_NORMAL);
  CHECK_NEAR (apart (after->tube.b, before.tube.b), 0.0, TINY_MM);
  CHECK (count_of (&drawn, stack, PH_ROLE_WEIGHT) == discs, "what hangs on it is drawn too");
  CHECK (first_of (&drawn, stack, PH_ROLE_WEIGHT)->state == PH_STATE_OFF);
  CHECK (first_of (&drawn, ph_rig_find (drawn.rig, "front-bar"), PH_ROLE_BAR)->state
         == PH_STATE_NORMAL);
  ph_issues_clear (&issues);
  drawn_rig_clear (&drawn);
}

static void
only_what_is_too_near_the_string_is_marked_near (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  int bar = ph_rig_find (drawn.rig, "back-bar");
  PhIssues issues = { 0 };
  ph_edit_set_number (drawn.rig, (size_t)bar, "swing_deg", 0, -8, &issues);
  ph_issues_clear (&issues);
  drawn_rig_update (&drawn, NULL);
  size_t near = 0;
  for (size_t i = 0; i < ph_draw_list_count (drawn.list); i++)
    {
      const PhItem *item = item_at (&drawn, i);
      bool want =
          item->part >= 0 && drawn.report->part_clearance_m[item->part] < PH_CLEARANCE_LEAST_M;
      CHECK ((item->state == PH_STATE_NEAR) == want);
      near += want;
    }
  CHECK (near > 0, "the check means something");
  drawn_rig_clear (&drawn);
}

/* "nan" or "inf" would show in the text as a wild whole number: look at the numbers themselves. */
static void
check_finite (const DrawnRig *drawn, const char *what)
{
  for (size_t i = 0; i < ph_draw_list_count (drawn->list); i++)
    {
      const PhItem *item = item_at (drawn, i);
      PhPoint points[32];
      size_t n = samples (drawn, item, points);
      for (size_t k = 0; k < n; k++)
        CHECK (isfinite (points[k].x + points[k].y + points[k].z), "%s: %s", what,
               ph_role_word (item->role));
      for (size_t k = 0; item->solid == PH_SOLID_LINE && k < item->line.n; k++)
        CHECK (isfinite (ph_point_length (ph_draw_list_points (drawn->list, item)[k])), "%s", what);
      for (size_t k = 0; item->solid == PH_SOLID_SWEEP && k < item->sweep.n; k++)
        {
          const PhStation *s = &ph_draw_list_stations (drawn->list, item)[k];
          CHECK (isfinite (ph_point_length (s->at) + ph_point_length (s->out) + s->half_depth
                           + s->half_across),
                 "%s: %s", what, ph_role_word (item->role));
        }
    }
}

static void
odd_bows_are_drawn_with_finite_numbers (void)
{
  static const double axles[] = { NAN, 1.0, 40.0, 700.0, 3000.0 };
  static const double draws[] = { 1.0, 660.0, 3000.0 };
  static const double heights[] = { -300.0, 0.0, 300.0 };
  for (int kind = PH_BOW_COMPOUND; kind <= PH_BOW_BAREBOW; kind++)
    for (size_t a = 0; a < 5; a++)
      for (size_t d = 0; d < 3; d++)
        for (size_t h = 0; h < 3; h++)
          {
            PhRig *rig = drawn_rig_starter ((PhBowKind)kind, PH_BOW_HAND_LEFT);
            rig->bow.axle_to_axle_mm = axles[a];
            rig->bow.brace_height_mm = NAN;
            rig->archer.draw_length_mm = draws[d];
            rig->archer.nock_height_mm = heights[h];
            DrawnRig drawn = drawn_rig_of (rig);
            check_finite (&drawn, "odd bow");
            drawn_rig_clear (&drawn);
          }
}

static void
a_bow_without_lengths_is_drawn_at_the_usual_size (void)
{
  PhRig *rig = drawn_rig_load ("demo");
  rig->bow.axle_to_axle_mm = NAN;
  CHECK_NEAR ((double)ph_bow_axle_to_axle (&rig->bow), 900.0, 0.0);
  rig->bow.kind = PH_BOW_RECURVE;
  CHECK_NEAR ((double)ph_bow_axle_to_axle (&rig->bow), 1650.0, 0.0);
  ph_rig_free (rig);
}

static void
the_dump_is_the_same_whatever_the_locale (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  char *plain = ph_draw_list_dump (drawn.list);
  char *old = setlocale (LC_ALL, NULL), *keep = old ? strdup (old) : NULL;
  setlocale (LC_ALL, "de_DE.UTF-8");
  DrawnRig again = drawn_rig_of (drawn_rig_load ("demo"));
  char *german = ph_draw_list_dump (again.list);
  setlocale (LC_ALL, keep ? keep : "C");
  CHECK_TEXT (german, plain);
  CHECK (strchr (plain, ',') == NULL);
  size_t lines = 0;
  for (const char *c = plain; *c; c++)
    lines += *c == '\n';
  CHECK (lines == ph_draw_list_count (drawn.list));
  CHECK (strstr (plain, "bar tube 1: 76.85 0.00 -74.09 801.73") != NULL,
         "the demo's front bar, 8° down from (62, 0, −72)");
  free (keep);
  free (plain);
  free (german);
  drawn_rig_clear (&drawn);
  drawn_rig_clear (&again);
}

static void
the_selection_is_a_mark_on_the_list (void)
{
  DrawnRig drawn = drawn_rig_of (drawn_rig_load ("demo"));
  char *none = ph_draw_list_dump (drawn.list);
  ph_draw_list_select (drawn.list, 1);
  char *bar = ph_draw_list_dump (drawn.list);
  CHECK (strstr (none, "selected") == NULL);
  CHECK (strstr (bar, "bar tube 1 selected:") != NULL);
  CHECK (ph_draw_list_get_selected (drawn.list) == 1);
  free (none);
  free (bar);
  drawn_rig_clear (&drawn);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  ph_math_init ();
  CASE (every_bow_has_its_forms);
  CASE (a_recurves_limbs_curl_at_their_tips);
  CASE (the_grip_is_joined_to_the_riser);
  CASE (arrow_and_hand_are_drawn_on_demand);
  CASE (string_runs_from_the_nock_to_both_ends_of_the_bow);
  CASE (string_leaves_the_cam_square_to_its_radius);
  CASE (bars_stand_where_the_physics_has_them);
  CASE (a_bar_with_fittings_is_as_long_as_without);
  CASE (every_disc_of_a_stack_can_be_counted);
  CASE (the_other_hand_is_drawn_as_a_mirror_image);
  CASE (no_part_hangs_in_the_air);
  CASE (what_is_off_stands_where_it_would_be_and_is_marked);
  CASE (only_what_is_too_near_the_string_is_marked_near);
  CASE (odd_bows_are_drawn_with_finite_numbers);
  CASE (a_bow_without_lengths_is_drawn_at_the_usual_size);
  CASE (the_dump_is_the_same_whatever_the_locale);
  CASE (the_selection_is_a_mark_on_the_list);
  return check_end ();
}
