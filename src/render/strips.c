/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * An edge between a face turned to the eye and one turned away is a silhouette; a crease is seen
 * with either of its faces. A few thousand dot products a view and frame.
 */
#include "render/strips.h"

#include <stdlib.h>
#include <string.h>

#include "base/text.h"

#define EDGE_HALF_PX 0.55f
#define CREASE_ALPHA 150
#define OUTLINE_HALF_PX 0.7f
#define HALO_HALF_PX 1.6f
/* A string thinner than this is still seen. */
#define LINE_HALF_LEAST_PX 0.5f

void
ph_strips_add (PhStrips *strips, PhStrip strip)
{
  if (strips->n == strips->room)
    {
      strips->room = strips->room ? 2 * strips->room : 512;
      strips->items = ph_realloc (strips->items, strips->room * sizeof *strips->items);
    }
  strips->items[strips->n++] = strip;
}

void
ph_strips_clear (PhStrips *strips)
{
  strips->n = 0;
}

void
ph_strips_free (PhStrips *strips)
{
  free (strips->items);
  *strips = (PhStrips){ 0 };
}

static PhStrip
strip_of (const PhEdge *edge, const uint8_t colour[3], uint8_t alpha, float half_px,
          PhStripDash dash)
{
  return (PhStrip){ { edge->a.x, edge->a.y, edge->a.z },
                    { edge->b.x, edge->b.y, edge->b.z },
                    { colour[0], colour[1], colour[2], alpha },
                    half_px,
                    (float)dash };
}

/* 0 not seen, 1 a crease between two seen faces, 2 a silhouette. */
static int
seen (const PhEdge *edge, const PhCamera *camera)
{
  PhPoint toward = ph_camera_toward (camera, edge->a);
  bool left = ph_point_dot (edge->left, toward) > 0.0f;
  bool right = ph_point_dot (edge->right, toward) > 0.0f;
  if (left != right)
    return 2;
  return edge->kind == PH_EDGE_CREASE && left ? 1 : 0;
}

static void
add_line (PhStrips *strips, const PhEdge *edge, const PhCamera *camera, const PhStripLook *look)
{
  float half = fmaxf (LINE_HALF_LEAST_PX, edge->radius * camera->px_per_mm);
  const uint8_t *colour = look->is_reference ? look->outline : look->role[edge->role];
  ph_strips_add (strips, strip_of (edge, colour, 255, half,
                                   look->is_reference ? PH_STRIP_DASHES : PH_STRIP_WHOLE));
}

void
ph_strips_of_mesh (PhStrips *strips, PhStrips *halo, const PhMesh *mesh, const PhCamera *camera,
                   const PhStripLook *look)
{
  for (size_t i = 0; i < mesh->n_edges; i++)
    {
      const PhEdge *edge = &mesh->edges[i];
      if (edge->kind == PH_EDGE_LINE)
        {
          add_line (strips, edge, camera, look);
          continue;
        }
      int how = seen (edge, camera);
      if (!how)
        continue;
      bool off = edge->state == PH_STATE_OFF;
      if (how == 2 && (off || look->is_reference))
        ph_strips_add (strips, strip_of (edge, look->outline, 255, OUTLINE_HALF_PX,
                                         off ? PH_STRIP_DOTS : PH_STRIP_DASHES));
      else if (!off && !look->is_reference)
        ph_strips_add (strips, strip_of (edge, look->edge, how == 2 ? 255 : CREASE_ALPHA,
                                         EDGE_HALF_PX, PH_STRIP_WHOLE));
      if (how == 2 && !look->is_reference && edge->part == look->selected)
        ph_strips_add (halo, strip_of (edge, look->accent, 255, HALO_HALF_PX, PH_STRIP_WHOLE));
    }
}
