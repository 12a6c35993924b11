/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A draw list as triangles and edges, before any OpenGL: smooth normals for the light, edges with
 * the normals of both their faces so that silhouettes can be found for any camera. Built once per
 * change of the rig, some hundred microseconds; moving a camera needs no new mesh.
 */
#pragma once

#include <stdint.h>

#include "scene/drawlist.h"

typedef enum
{
  PH_DETAIL_MOVING, /* at most some 3,000 triangles for a bow with its rig */
  PH_DETAIL_STILL   /* up to some 15,000 */
} PhDetail;

typedef struct
{
  PhPoint at;
  PhPoint normal;  /* unit, outward */
  float hole[2];   /* where a sweep may be pierced: stations (+ 1000 × sweep), mm along out */
  uint8_t role;    /* PhRole */
  uint8_t hatched; /* too near the string */
  uint8_t mark[2]; /* of the part, low byte first: ph_mesh_mark */
} PhVertex;

/** `hole[0]` of what is never pierced. */
#define PH_HOLE_NONE -1000.0f

typedef enum
{
  PH_EDGE_SMOOTH, /* between two faces of one skin: seen only as a silhouette */
  PH_EDGE_CREASE, /* a rim: seen wherever one of its faces is */
  PH_EDGE_LINE    /* a string: always seen, `radius` thick, its own colour */
} PhEdgeKind;

typedef struct
{
  PhPoint a, b;
  PhPoint left, right; /* outward normals of the two faces; not of a line */
  float radius;        /* a line's; else of what it bounds, about half its least width [mm] */
  int part;
  uint8_t kind, role, state;
  bool unchanged; /* of a reference: the open rig has the very same solid */
} PhEdge;

typedef struct
{
  PhVertex *vertices;
  size_t n_vertices;
  uint32_t *indices; /* three a triangle, seen from outside counter-clockwise */
  size_t n_indices;
  PhEdge *edges;
  size_t n_edges;
  float *holes; /* four each: middle (+ 1000 × sweep), half span, half open, 0 */
  size_t n_holes;
  bool crowded;   /* so many solids that each is drawn as plainly as can be */
  float reach_mm; /* no vertex is farther from the grip */
} PhMesh;

/** At most so many holes pierce a mesh; the rest stay closed. */
#define PH_MESH_HOLES 32

/** Which solids of a list: a bow changes seldom, its parts with every move. */
typedef enum
{
  PH_MESH_BOW,
  PH_MESH_PARTS,
  PH_MESH_ALL
} PhMeshShare;

/** What is off gives edges but no triangles. Edges of solids that are in `same` too (may be null)
 * as they are in `list` are marked unchanged. Free with ph_mesh_free. */
PhMesh *ph_mesh_new (const PhDrawList *list, PhMeshShare share, PhDetail detail,
                     const PhDrawList *same);
void ph_mesh_free (PhMesh *mesh);

/** A number of that share of a list: the same for the same solids, roles and states, another for
 * others (but by a chance of 2⁻⁶⁴). */
uint64_t ph_mesh_fingerprint (const PhDrawList *list, PhMeshShare share);

/** A part as two bytes: never 0, so that PH_PART_NONE matches none. */
static inline unsigned
ph_mesh_mark (int part)
{
  return (unsigned)(part + 2) & 0xffffU;
}
