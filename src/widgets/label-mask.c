/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every solid is a chain of round strokes; then sums over the cells, so that asking about a box is
 * four look-ups however large it is.
 */
#include "widgets/label-mask.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

struct PhLabelMask
{
  int columns, rows;
  int *sums;              /* (columns + 1) × (rows + 1): covered cells above and to the left */
  const PhCamera *camera; /* while it is being made */
};

static int
within (double value, int most)
{
  return value < 0 ? 0 : value > most ? most : (int)value;
}

static void
cover (PhLabelMask *mask, double x, double y, double half)
{
  const double cell = PH_LABEL_CELL_PX;
  int left = within (floor ((x - half) / cell), mask->columns);
  int right = within (floor ((x + half) / cell) + 1, mask->columns);
  int top = within (floor ((y - half) / cell), mask->rows);
  int bottom = within (floor ((y + half) / cell) + 1, mask->rows);
  for (int row = top; row < bottom; row++)
    for (int column = left; column < right; column++)
      mask->sums[(row + 1) * (mask->columns + 1) + column + 1] = 1;
}

/* Only what can be seen is walked along: a zoomed picture has strokes far outside. */
static bool
is_seen (const PhLabelMask *mask, PhPixel a, PhPixel b, float half)
{
  const PhCamera *camera = mask->camera;
  return fmaxf (a.x, b.x) + half > 0.0f && fminf (a.x, b.x) - half < camera->width_px
         && fmaxf (a.y, b.y) + half > 0.0f && fminf (a.y, b.y) - half < camera->height_px;
}

static void
stroke (PhLabelMask *mask, PhPoint from, PhPoint to, float radius_mm)
{
  PhPixel a = ph_camera_project (mask->camera, from, NULL);
  PhPixel b = ph_camera_project (mask->camera, to, NULL);
  float half = radius_mm * mask->camera->px_per_mm;
  if (!is_seen (mask, a, b, half))
    return;
  float far = hypotf (b.x - a.x, b.y - a.y);
  int n = 1 + within ((double)far / (PH_LABEL_CELL_PX / 2.0), 4000);
  for (int i = 0; i <= n; i++)
    {
      float t = (float)i / (float)n;
      cover (mask, (double)(a.x + (b.x - a.x) * t), (double)(a.y + (b.y - a.y) * t), (double)half);
    }
}

/* Along its longest side, as thick as the next. */
static void
add_box (PhLabelMask *mask, const PhBox *box)
{
  float size[3];
  int longest = 0;
  for (int i = 0; i < 3; i++)
    {
      size[i] = ph_point_length (box->half[i]);
      if (size[i] > size[longest])
        longest = i;
    }
  float thick = fmaxf (size[(longest + 1) % 3], size[(longest + 2) % 3]);
  stroke (mask, ph_point_sub (box->at, box->half[longest]),
          ph_point_add (box->at, box->half[longest]), thick);
}

static void
add_item (PhLabelMask *mask, const PhDrawList *list, const PhItem *item)
{
  const PhStation *stations;
  const PhPoint *points;
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      stroke (mask, item->tube.a, item->tube.b, fmaxf (item->tube.ra, item->tube.rb));
      break;
    case PH_SOLID_BOX:
      add_box (mask, &item->box);
      break;
    case PH_SOLID_SWEEP:
      stations = ph_draw_list_stations (list, item);
      for (size_t i = 0; i + 1 < item->sweep.n; i++)
        stroke (mask, stations[i].at, stations[i + 1].at,
                fmaxf (stations[i].half_depth, stations[i].half_across));
      break;
    case PH_SOLID_RING:
      stroke (mask, item->ring.at, item->ring.at, item->ring.outer);
      break;
    case PH_SOLID_SPHERE:
      stroke (mask, item->sphere.at, item->sphere.at, item->sphere.radius);
      break;
    case PH_SOLID_LINE:
      points = ph_draw_list_points (list, item);
      for (size_t i = 0; i + 1 < item->line.n; i++)
        stroke (mask, points[i], points[i + 1], item->line.radius);
      break;
    }
}

PhLabelMask *
ph_label_mask_new (const PhDrawList *list, const PhCamera *camera)
{
  PhLabelMask *mask = ph_alloc_zeroed (1, sizeof *mask);
  mask->columns = 1 + within (ceil ((double)camera->width_px / PH_LABEL_CELL_PX), 4000);
  mask->rows = 1 + within (ceil ((double)camera->height_px / PH_LABEL_CELL_PX), 4000);
  mask->sums =
      ph_alloc_zeroed ((size_t)(mask->columns + 1) * (size_t)(mask->rows + 1), sizeof *mask->sums);
  mask->camera = camera;
  for (size_t i = 0; i < ph_draw_list_count (list); i++)
    if (ph_draw_list_item (list, i)->state != PH_STATE_OFF)
      add_item (mask, list, ph_draw_list_item (list, i));
  mask->camera = NULL;
  int stride = mask->columns + 1;
  for (int row = 1; row <= mask->rows; row++)
    for (int column = 1; column <= mask->columns; column++)
      {
        int *sum = &mask->sums[row * stride + column];
        *sum += sum[-1] + sum[-stride] - sum[-stride - 1];
      }
  return mask;
}

void
ph_label_mask_free (PhLabelMask *mask)
{
  if (!mask)
    return;
  free (mask->sums);
  free (mask);
}

int
ph_label_mask_covered (const PhLabelMask *mask, const PhLabelBox *box)
{
  const double cell = PH_LABEL_CELL_PX;
  int stride = mask->columns + 1;
  int left = within (floor (box->x / cell), mask->columns);
  int right = within (floor ((box->x + box->width) / cell) + 1, mask->columns);
  int top = within (floor (box->y / cell), mask->rows);
  int bottom = within (floor ((box->y + box->height) / cell) + 1, mask->rows);
  return mask->sums[bottom * stride + right] - mask->sums[top * stride + right]
         - mask->sums[bottom * stride + left] + mask->sums[top * stride + left];
}
