/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside the mesh: adding vertices, triangles, edges and whole skins of sections.
 */
#pragma once

#include "render/mesh.h"

/** Points of one section of a skin. */
#define PH_SECTION_MOST 32

typedef struct
{
  PhPoint at[PH_SECTION_MOST];
  PhPoint normal[PH_SECTION_MOST];
  float hole[2][PH_SECTION_MOST]; /* as PhVertex.hole; unused where the skin is not pierced */
} PhSection;

typedef struct
{
  PhMesh *mesh;
  size_t vertices_room, indices_room, edges_room, holes_room;
  const PhItem *item; /* whose role, part and state is given to what is added */
  bool fine;
  int sides;      /* of round things */
  bool open[2];   /* the next skin needs no lid at its start, its end: something stands there */
  bool pierced;   /* sections carry hole places */
  float thin_mm;  /* about half the least width of the solid at hand */
  bool unchanged; /* that solid is the open rig's too */
} PhMeshBuild;

uint32_t ph_mesh_add_vertex (PhMeshBuild *build, PhPoint at, PhPoint normal, const float hole[2]);
void ph_mesh_add_triangle (PhMeshBuild *build, uint32_t a, uint32_t b, uint32_t c);
void ph_mesh_add_edge (PhMeshBuild *build, PhEdgeKind kind, PhPoint a, PhPoint b, PhPoint left,
                       PhPoint right);

/** A closed skin over sections of n points each, counter-clockwise seen from the far end, with flat
 * lids at both ends. Two sections at least. */
void ph_mesh_add_skin (PhMeshBuild *build, const PhSection *sections, size_t count, int n);

/** One solid of the list. */
void ph_mesh_add_tube (PhMeshBuild *build, const PhTube *tube);
void ph_mesh_add_box (PhMeshBuild *build, const PhBox *box);
void ph_mesh_add_ring (PhMeshBuild *build, const PhRing *ring);
void ph_mesh_add_sphere (PhMeshBuild *build, const PhSphere *sphere);
void ph_mesh_add_sweep (PhMeshBuild *build, const PhStation *stations, size_t n,
                        const PhHole *holes, size_t n_holes, float round);
void ph_mesh_add_line (PhMeshBuild *build, const PhPoint *points, size_t n, float radius);
