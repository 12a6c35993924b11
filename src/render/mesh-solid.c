/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sections of each kind of solid. Round things have as many sides as the detail asks for.
 */
#include <assert.h>
#include <stdlib.h>

#include "base/text.h"
#include "base/units.h"
#include "render/mesh-build.h"

/* Points of a corner arc of a sweep's section: coarse and fine. */
#define CORNER_COARSE 1
#define CORNER_PIERCED 2
#define CORNER_FINE 3
/* So many bands of a sweep are enough: pierced ones need more. */
#define BANDS_COARSE 7
#define BANDS_PIERCED 13
#define BANDS_FINE 24
#define SPHERE_BANDS 8
#define SPHERE_BANDS_COARSE 3
/* In the moving mesh a sphere smaller than this is a mere bead [mm]. */
#define BEAD_MM 6.5f
#define HOLE_SIDES_COARSE 6
#define HOLE_SIDES_FINE 16

static PhSection
round_section (PhPoint middle, PhPoint u, PhPoint v, float radius, PhPoint lean, int sides)
{
  PhSection section;
  for (int i = 0; i < sides; i++)
    {
      float turn = (float)(2.0 * PH_PI) * (float)i / (float)sides;
      PhPoint out = ph_point_add (ph_point_scale (u, cosf (turn)), ph_point_scale (v, sinf (turn)));
      section.at[i] = ph_point_add_scaled (middle, out, radius);
      section.normal[i] = ph_point_unit (ph_point_add (out, lean));
    }
  return section;
}

void
ph_mesh_add_tube (PhMeshBuild *build, const PhTube *tube)
{
  PhPoint along = ph_point_sub (tube->b, tube->a), u, v;
  float length = ph_point_length (along);
  PhPoint axis = ph_point_unit (along);
  ph_point_square (axis, &u, &v);
  /* A cone's normals lean toward its narrow end. */
  float slope = length > 0.0f ? (tube->ra - tube->rb) / length : 0.0f;
  PhPoint lean = ph_point_scale (axis, slope);
  PhSection sections[2] = { round_section (tube->a, u, v, tube->ra, lean, build->sides),
                            round_section (tube->b, u, v, tube->rb, lean, build->sides) };
  ph_mesh_add_skin (build, sections, 2, build->sides);
}

static void
add_box_face (PhMeshBuild *build, PhPoint middle, PhPoint u, PhPoint v, PhPoint normal)
{
  static const float hole[2] = { PH_HOLE_NONE, 0.0f };
  PhPoint corner[4] = { ph_point_sub (ph_point_sub (middle, u), v),
                        ph_point_sub (ph_point_add (middle, u), v),
                        ph_point_add (ph_point_add (middle, u), v),
                        ph_point_add (ph_point_sub (middle, u), v) };
  uint32_t first = (uint32_t)build->mesh->n_vertices;
  for (int i = 0; i < 4; i++)
    ph_mesh_add_vertex (build, corner[i], normal, hole);
  ph_mesh_add_triangle (build, first, first + 1, first + 2);
  ph_mesh_add_triangle (build, first, first + 2, first + 3);
}

/* The edge along half[axis] where the faces toward `u` and `v` meet. */
static void
add_box_edge (PhMeshBuild *build, const PhBox *box, int axis, PhPoint u, PhPoint v)
{
  PhPoint middle = ph_point_add (ph_point_add (box->at, u), v);
  ph_mesh_add_edge (build, PH_EDGE_CREASE, ph_point_sub (middle, box->half[axis]),
                    ph_point_add (middle, box->half[axis]), ph_point_unit (u), ph_point_unit (v));
}

void
ph_mesh_add_box (PhMeshBuild *build, const PhBox *box)
{
  /* (half 0, 1, 2) may be left-handed: then every face is wound the other way. */
  float hand = ph_point_dot (ph_point_cross (box->half[0], box->half[1]), box->half[2]);
  for (int axis = 0; axis < 3; axis++)
    {
      PhPoint n = box->half[axis], u = box->half[(axis + 1) % 3], v = box->half[(axis + 2) % 3];
      for (int side = -1; side <= 1; side += 2)
        {
          PhPoint out = ph_point_scale (n, (float)side);
          bool turned = (hand < 0.0f) != (side < 0);
          add_box_face (build, ph_point_add (box->at, out), turned ? v : u, turned ? u : v,
                        ph_point_unit (out));
        }
      for (int corner = 0; corner < 4; corner++)
        add_box_edge (build, box, axis, ph_point_scale (u, corner & 1 ? 1.0f : -1.0f),
                      ph_point_scale (v, corner & 2 ? 1.0f : -1.0f));
    }
}

/* A ring is a skin whose sections go round its own square profile; it closes on itself, so its lids
   fall inside it, at one place, and are not seen. */
void
ph_mesh_add_ring (PhMeshBuild *build, const PhRing *ring)
{
  static const float hole[2] = { PH_HOLE_NONE, 0.0f };
  PhPoint u, v;
  ph_point_square (ring->axis, &u, &v);
  int sides = build->fine ? 36 : 8;
  PhPoint thick = ph_point_scale (ring->axis, ring->half_thick);
  for (int i = 0; i < sides; i++)
    {
      PhPoint out[2], inner[2], outer[2];
      for (int k = 0; k < 2; k++)
        {
          float turn = (float)(2.0 * PH_PI) * (float)(i + k) / (float)sides;
          out[k] = ph_point_add (ph_point_scale (u, cosf (turn)), ph_point_scale (v, sinf (turn)));
          inner[k] = ph_point_add_scaled (ring->at, out[k], ring->inner);
          outer[k] = ph_point_add_scaled (ring->at, out[k], ring->outer);
        }
      uint32_t first = (uint32_t)build->mesh->n_vertices;
      for (int face = 0; face < 4; face++)
        for (int k = 0; k < 2; k++)
          {
            bool flat = face < 2;
            PhPoint sign = ph_point_scale (thick, face % 2 ? -1.0f : 1.0f);
            PhPoint normal = flat ? ph_point_scale (ring->axis, face % 2 ? -1.0f : 1.0f)
                                  : ph_point_scale (out[k], face % 2 ? -1.0f : 1.0f);
            PhPoint rim = face == 3 ? inner[k] : outer[k];
            PhPoint a = flat ? ph_point_add (inner[k], sign) : ph_point_sub (rim, thick);
            PhPoint b = flat ? ph_point_add (outer[k], sign) : ph_point_add (rim, thick);
            ph_mesh_add_vertex (build, a, normal, hole);
            ph_mesh_add_vertex (build, b, normal, hole);
          }
      for (uint32_t face = 0; face < 4; face++)
        {
          uint32_t q = first + 4 * face;
          bool turned = face == 1 || face == 2;
          ph_mesh_add_triangle (build, q, turned ? q + 3 : q + 1, turned ? q + 1 : q + 3);
          ph_mesh_add_triangle (build, q, turned ? q + 2 : q + 3, turned ? q + 3 : q + 2);
        }
      PhPoint mid = ph_point_unit (ph_point_add (out[0], out[1])), in = ph_point_scale (mid, -1.0f);
      for (int side = -1; side <= 1; side += 2)
        {
          PhPoint lift = ph_point_scale (thick, (float)side);
          PhPoint face = ph_point_scale (ring->axis, (float)side);
          ph_mesh_add_edge (build, PH_EDGE_CREASE, ph_point_add (outer[0], lift),
                            ph_point_add (outer[1], lift), face, mid);
          ph_mesh_add_edge (build, PH_EDGE_CREASE, ph_point_add (inner[0], lift),
                            ph_point_add (inner[1], lift), face, in);
        }
    }
}

void
ph_mesh_add_sphere (PhMeshBuild *build, const PhSphere *sphere)
{
  PhSection sections[SPHERE_BANDS + 1];
  bool plain = build->mesh->crowded || (!build->fine && sphere->radius < BEAD_MM);
  int bands = plain ? 2 : build->fine ? SPHERE_BANDS : SPHERE_BANDS_COARSE;
  int sides = plain ? 4 : build->fine ? 16 : 6;
  PhPoint x = ph_point (1.0f, 0.0f, 0.0f), y = ph_point (0.0f, 1.0f, 0.0f);
  for (int k = 0; k <= bands; k++)
    {
      float turn = (float)PH_PI * ((float)k / (float)bands - 0.5f);
      /* The poles keep a trace of a radius: their quads must have a normal. */
      float radius = fmaxf (sphere->radius * cosf (turn), sphere->radius * 0.02f);
      PhPoint middle = sphere->at;
      middle.z += sphere->radius * sinf (turn);
      sections[k] =
          round_section (middle, x, y, radius, ph_point (0.0f, 0.0f, tanf (turn * 0.98f)), sides);
    }
  ph_mesh_add_skin (build, sections, (size_t)bands + 1, sides);
}

/* A rounded rectangle: `arc` points at each corner, the ends of an arc on the straight sides. */
static PhSection
station_section (const PhStation *station, float round, int arc, float place)
{
  PhSection section;
  float depth = station->half_depth, across = station->half_across;
  float radius = round * fminf (depth, across);
  int n = 0;
  for (int corner = 0; corner < 4; corner++)
    for (int k = 0; k < arc; k++)
      {
        /* A corner of one point stands in the middle of its arc. */
        float quarter = (float)corner + (arc > 1 ? (float)k / (float)(arc - 1) : 0.5f);
        float c = cosf (quarter * (float)(PH_PI / 2)), s = sinf (quarter * (float)(PH_PI / 2));
        float sign_out = corner == 0 || corner == 3 ? 1.0f : -1.0f;
        float sign_side = corner < 2 ? 1.0f : -1.0f;
        float out = sign_out * (depth - radius) + radius * c;
        float side = sign_side * (across - radius) + radius * s;
        section.at[n] = ph_point_add_scaled (ph_point_add_scaled (station->at, station->out, out),
                                             station->side, side);
        section.normal[n] =
            ph_point_add (ph_point_scale (station->out, c), ph_point_scale (station->side, s));
        section.hole[0][n] = place;
        section.hole[1][n] = out;
        n++;
      }
  return section;
}

static PhStation
station_between (const PhStation *stations, size_t n, float place)
{
  float at = fmaxf (0.0f, fminf (place, (float)(n - 1)));
  size_t k = (size_t)at;
  k = k + 1 < n ? k : n - 2;
  float t = at - (float)k;
  PhStation mixed = stations[k];
  mixed.at = ph_point_mix (stations[k].at, stations[k + 1].at, t);
  mixed.out = ph_point_unit (ph_point_mix (stations[k].out, stations[k + 1].out, t));
  mixed.half_across += (stations[k + 1].half_across - mixed.half_across) * t;
  return mixed;
}

/* The rim of a hole at one of its sides. */
static PhPoint
hole_rim (const PhStation *stations, size_t n, const PhHole *hole, float turn, float side,
          PhPoint *inward)
{
  PhStation middle = station_between (stations, n, hole->middle);
  PhStation at = station_between (stations, n, hole->middle + hole->half_span * cosf (turn));
  PhPoint rim = ph_point_add_scaled (at.at, at.out, hole->half_open * sinf (turn));
  *inward = ph_point_unit (ph_point_sub (middle.at, rim));
  return ph_point_add_scaled (rim, at.side, side * at.half_across);
}

/* The wall of a hole, seen from inside it, and its two rims. */
static void
add_hole (PhMeshBuild *build, const PhStation *stations, size_t n, const PhHole *hole)
{
  static const float open[2] = { PH_HOLE_NONE, 0.0f };
  int sides = build->fine ? HOLE_SIDES_FINE : HOLE_SIDES_COARSE;
  for (int i = 0; i < sides; i++)
    {
      PhPoint in[2], rim[2][2];
      uint32_t first = (uint32_t)build->mesh->n_vertices;
      for (int k = 0; k < 2; k++)
        for (int side = 0; side < 2; side++)
          {
            float turn = (float)(2.0 * PH_PI) * (float)(i + k) / (float)sides;
            rim[k][side] = hole_rim (stations, n, hole, turn, side ? 1.0f : -1.0f, &in[k]);
            ph_mesh_add_vertex (build, rim[k][side], in[k], open);
          }
      ph_mesh_add_triangle (build, first, first + 1, first + 3);
      ph_mesh_add_triangle (build, first, first + 3, first + 2);
      for (int side = 0; side < 2; side++)
        ph_mesh_add_edge (build, PH_EDGE_CREASE, rim[0][side], rim[1][side], in[0],
                          ph_point_scale (stations[0].side, side ? 1.0f : -1.0f));
    }
}

static void
add_holes (PhMeshBuild *build, const PhStation *stations, size_t n, const PhHole *holes,
           size_t n_holes, float base)
{
  PhMesh *mesh = build->mesh;
  if (!mesh->holes)
    mesh->holes = ph_alloc_zeroed (4 * PH_MESH_HOLES, sizeof *mesh->holes);
  for (size_t i = 0; i < n_holes && mesh->n_holes < PH_MESH_HOLES; i++)
    {
      float *row = mesh->holes + 4 * mesh->n_holes++;
      row[0] = base + holes[i].middle;
      row[1] = holes[i].half_span;
      row[2] = holes[i].half_open;
      add_hole (build, stations, n, &holes[i]);
    }
}

void
ph_mesh_add_sweep (PhMeshBuild *build, const PhStation *stations, size_t n, const PhHole *holes,
                   size_t n_holes, float round)
{
  assert (n >= 2);
  bool pierced = n_holes > 0, fine = build->fine;
  size_t bands = fine ? BANDS_FINE : pierced ? BANDS_PIERCED : BANDS_COARSE, count = 0;
  size_t stride = n <= bands || (fine && pierced) ? 1 : (n + bands - 1) / bands;
  int arc = fine ? CORNER_FINE : pierced ? CORNER_PIERCED : CORNER_COARSE;
  float base = 1000.0f * (float)(build->mesh->n_holes + 1);
  PhSection *sections = ph_alloc ((n / stride + 2) * sizeof *sections);
  for (size_t k = 0; k < n; k = k + stride < n || k + 1 == n ? k + stride : n - 1)
    sections[count++] = station_section (&stations[k], round, arc, base + (float)k);
  build->pierced = pierced;
  ph_mesh_add_skin (build, sections, count, 4 * arc);
  build->pierced = false;
  if (n_holes > 0)
    add_holes (build, stations, n, holes, n_holes, base);
  free (sections);
}

void
ph_mesh_add_line (PhMeshBuild *build, const PhPoint *points, size_t n, float radius)
{
  PhPoint none = ph_point (0.0f, 0.0f, 0.0f);
  for (size_t i = 0; i + 1 < n; i++)
    {
      ph_mesh_add_edge (build, PH_EDGE_LINE, points[i], points[i + 1], none, none);
      build->mesh->edges[build->mesh->n_edges - 1].radius = radius;
      float reach = fmaxf (ph_point_length (points[i]), ph_point_length (points[i + 1]));
      build->mesh->reach_mm = fmaxf (build->mesh->reach_mm, reach);
    }
}
