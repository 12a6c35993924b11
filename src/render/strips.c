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
#define HALO_HALF_PX 2.6f
/* An edge is no wider than this share of what it bounds, half to half. */
#define EDGE_SHARE 0.16f
#define EDGE_HALF_LEAST_PX 0.18f
/* Half the least width of what is a small thing. */
#define SMALL_MM 5.5f
#define FACING_LEAST 1e-3f
#define REFERENCE_ALPHA 166
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
  /* A face seen from its very edge is not seen: both rims of a disc are silhouettes then. */
  bool left = ph_point_dot (edge->left, toward) > FACING_LEAST;
  bool right = ph_point_dot (edge->right, toward) > FACING_LEAST;
  if (left != right)
    return 2;
  return edge->kind == PH_EDGE_CREASE && left ? 1 : 0;
}

static void
add_line (PhStrips *strips, const PhEdge *edge, const PhCamera *camera, const PhStripLook *look)
{
  float half = fmaxf (LINE_HALF_LEAST_PX, edge->radius * camera->px_per_mm);
  bool selected = edge->part == look->selected, off = edge->state == PH_STATE_OFF;
  const uint8_t *colour = selected ? look->colours->accent : look->colours->role[edge->role];
  if (!look->is_reference)
    ph_strips_add (strips,
                   strip_of (edge, colour, 255, half, off ? PH_STRIP_DOTS : PH_STRIP_WHOLE));
}

/* Of a reference's bow only the great forms: dashes about every bolt would hide what they are there
 * for. */
static bool
tells_a_rig (const PhEdge *edge)
{
  return edge->part >= 0 || edge->role == PH_ROLE_RISER || edge->role == PH_ROLE_LIMB;
}

static void
add_reference (PhStrips *strips, const PhEdge *edge, int how, const PhStripLook *look)
{
  if (how == 2 && edge->state != PH_STATE_OFF && tells_a_rig (edge)
      && !(edge->unchanged && look->leans_alike))
    ph_strips_add (strips, strip_of (edge, look->colours->outline, REFERENCE_ALPHA, OUTLINE_HALF_PX,
                                     PH_STRIP_DASHES));
}

static void
add_edge (PhStrips *strips, PhStrips *halo, const PhEdge *edge, int how, const PhCamera *camera,
          const PhStripLook *look)
{
  bool off = edge->state == PH_STATE_OFF, selected = edge->part == look->selected;
  const PhRenderColours *colours = look->colours;
  float half = fminf (EDGE_HALF_PX, EDGE_SHARE * edge->radius * camera->px_per_mm);
  half = fmaxf (half, EDGE_HALF_LEAST_PX);
  if (how == 2 && off)
    ph_strips_add (strips, strip_of (edge, selected ? colours->accent : colours->outline, 255,
                                     OUTLINE_HALF_PX, PH_STRIP_DOTS));
  else if (!off)
    ph_strips_add (strips, strip_of (edge, colours->edge, how == 2 ? 230 : CREASE_ALPHA, half,
                                     PH_STRIP_WHOLE));
  if (how == 2 && selected && !off)
    ph_strips_add (halo, strip_of (edge, colours->accent, 255, HALO_HALF_PX, PH_STRIP_WHOLE));
}

/* Pins and screws go without their lines while things move, and every part where there is a crowd
 * of them. */
static bool
goes_without (const PhMesh *mesh, const PhEdge *edge, const PhStripLook *look)
{
  bool small = edge->radius < SMALL_MM && edge->role != PH_ROLE_WEIGHT && edge->role != PH_ROLE_BAR;
  return (small || (mesh->crowded && (edge->part >= 0 || edge->role == PH_ROLE_BOSS)))
         && edge->state != PH_STATE_OFF && edge->part != look->selected;
}

void
ph_strips_of_mesh (PhStrips *strips, PhStrips *halo, const PhMesh *mesh, const PhCamera *camera,
                   const PhStripLook *look)
{
  for (size_t i = 0; i < mesh->n_edges; i++)
    {
      const PhEdge *edge = &mesh->edges[i];
      int how = edge->kind == PH_EDGE_LINE ? 0 : seen (edge, camera);
      if (look->plain && (how == 1 || (how == 2 && goes_without (mesh, edge, look))))
        continue;
      if (edge->kind == PH_EDGE_LINE)
        add_line (strips, edge, camera, look);
      else if (how && look->is_reference)
        add_reference (strips, edge, how, look);
      else if (how)
        add_edge (strips, halo, edge, how, camera, look);
    }
}
