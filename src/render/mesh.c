/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Growing arrays and the skin: a band of quads between each pair of sections, lids at the ends.
 * Every edge is added once, by the band that it begins or by the lid it bounds.
 */
#include "render/mesh.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "render/mesh-build.h"
#include "render/solid-print.h"

/* More solids than a usual rig has by far. */
#define CROWD 400
/* Radii in the moving mesh. */
#define PIN_MM 5.0f
#define SMALL_MM 12.5f
#define LARGE_MM 25.0f
/* Ends so near to one another, and one so large beside the other, hide each other's lids. */
#define MEETING_MM 2.0f
#define MEETING_SHARE 0.9f

static const float unpierced[2] = { PH_HOLE_NONE, 0.0f };

static void *
room_for (void *block, size_t n, size_t *room, size_t size)
{
  if (n < *room)
    return block;
  *room = *room ? 2 * *room : 1024;
  return ph_realloc (block, *room * size);
}

uint32_t
ph_mesh_add_vertex (PhMeshBuild *build, PhPoint at, PhPoint normal, const float hole[2])
{
  PhMesh *mesh = build->mesh;
  mesh->vertices =
      room_for (mesh->vertices, mesh->n_vertices, &build->vertices_room, sizeof *mesh->vertices);
  float reach = ph_point_length (at);
  unsigned mark = ph_mesh_mark (build->item->part);
  mesh->reach_mm = reach > mesh->reach_mm ? reach : mesh->reach_mm;
  mesh->vertices[mesh->n_vertices] =
      (PhVertex){ .at = at,
                  .normal = normal,
                  .hole = { hole[0], hole[1] },
                  .role = (uint8_t)build->item->role,
                  .hatched = build->item->state == PH_STATE_NEAR,
                  .mark = { (uint8_t)(mark & 0xff), (uint8_t)(mark >> 8) } };
  return (uint32_t)mesh->n_vertices++;
}

void
ph_mesh_add_triangle (PhMeshBuild *build, uint32_t a, uint32_t b, uint32_t c)
{
  PhMesh *mesh = build->mesh;
  if (build->item->state == PH_STATE_OFF)
    return;
  const uint32_t corners[3] = { a, b, c };
  for (int i = 0; i < 3; i++)
    {
      mesh->indices =
          room_for (mesh->indices, mesh->n_indices, &build->indices_room, sizeof *mesh->indices);
      mesh->indices[mesh->n_indices++] = corners[i];
    }
}

void
ph_mesh_add_edge (PhMeshBuild *build, PhEdgeKind kind, PhPoint a, PhPoint b, PhPoint left,
                  PhPoint right)
{
  PhMesh *mesh = build->mesh;
  mesh->edges = room_for (mesh->edges, mesh->n_edges, &build->edges_room, sizeof *mesh->edges);
  mesh->edges[mesh->n_edges++] = (PhEdge){ .a = a,
                                           .b = b,
                                           .left = left,
                                           .right = right,
                                           .radius = build->thin_mm,
                                           .part = build->item->part,
                                           .kind = (uint8_t)kind,
                                           .role = (uint8_t)build->item->role,
                                           .state = (uint8_t)build->item->state,
                                           .unchanged = build->unchanged };
}

static PhPoint
face_normal (PhPoint a, PhPoint b, PhPoint c, PhPoint d)
{
  /* The cross product of a quad's diagonals: right also where one side has shrunk to a point. */
  return ph_point_unit (ph_point_cross (ph_point_sub (c, a), ph_point_sub (d, b)));
}

static PhPoint
quad_normal (const PhSection *near, const PhSection *far, int i, int next)
{
  return face_normal (near->at[i], near->at[next], far->at[next], far->at[i]);
}

static void
add_lid (PhMeshBuild *build, const PhSection *section, int n, PhPoint out, bool far)
{
  uint32_t first = (uint32_t)build->mesh->n_vertices;
  for (int i = 0; i < n; i++)
    ph_mesh_add_vertex (build, section->at[i], out, unpierced);
  for (int i = 1; i + 1 < n; i++)
    {
      uint32_t b = first + (uint32_t)i, c = b + 1;
      ph_mesh_add_triangle (build, first, far ? b : c, far ? c : b);
    }
}

static uint32_t
add_ring_of_vertices (PhMeshBuild *build, const PhSection *section, int n)
{
  uint32_t first = (uint32_t)build->mesh->n_vertices;
  for (int i = 0; i < n; i++)
    {
      const float hole[2] = { section->hole[0][i], section->hole[1][i] };
      ph_mesh_add_vertex (build, section->at[i], section->normal[i],
                          build->pierced ? hole : unpierced);
    }
  return first;
}

static void
add_band (PhMeshBuild *build, const PhSection *near, const PhSection *far, uint32_t first_near,
          uint32_t first_far, int n)
{
  for (int i = 0; i < n; i++)
    {
      int next = (i + 1) % n, before = (i + n - 1) % n;
      uint32_t a = first_near + (uint32_t)i, b = first_near + (uint32_t)next;
      uint32_t c = first_far + (uint32_t)next, d = first_far + (uint32_t)i;
      ph_mesh_add_triangle (build, a, b, c);
      ph_mesh_add_triangle (build, a, c, d);
      ph_mesh_add_edge (build, PH_EDGE_SMOOTH, near->at[i], far->at[i],
                        quad_normal (near, far, before, i), quad_normal (near, far, i, next));
    }
}

/* The edges round section k: a crease at an end, else between two bands. */
static void
add_round_edges (PhMeshBuild *build, const PhSection *sections, size_t count, size_t k, int n,
                 PhPoint out)
{
  bool end = k == 0 || k + 1 == count;
  for (int i = 0; i < n; i++)
    {
      int next = (i + 1) % n;
      const PhSection *at = &sections[k];
      PhPoint before = k > 0 ? quad_normal (at - 1, at, i, next) : out;
      PhPoint after = k + 1 < count ? quad_normal (at, at + 1, i, next) : out;
      ph_mesh_add_edge (build, end ? PH_EDGE_CREASE : PH_EDGE_SMOOTH, at->at[i], at->at[next],
                        before, after);
    }
}

static PhPoint
middle_of (const PhSection *section, int n)
{
  PhPoint sum = section->at[0];
  for (int i = 1; i < n; i++)
    sum = ph_point_add (sum, section->at[i]);
  return ph_point_scale (sum, 1.0f / (float)n);
}

void
ph_mesh_add_skin (PhMeshBuild *build, const PhSection *sections, size_t count, int n)
{
  assert (count >= 2 && n >= 3 && n <= PH_SECTION_MOST);
  PhPoint start =
      ph_point_unit (ph_point_sub (middle_of (&sections[0], n), middle_of (&sections[1], n)));
  PhPoint end = ph_point_unit (
      ph_point_sub (middle_of (&sections[count - 1], n), middle_of (&sections[count - 2], n)));
  uint32_t near = add_ring_of_vertices (build, &sections[0], n);
  for (size_t k = 0; k + 1 < count; k++)
    {
      uint32_t far = add_ring_of_vertices (build, &sections[k + 1], n);
      add_band (build, &sections[k], &sections[k + 1], near, far, n);
      near = far;
    }
  /* Where two skins meet the rim is drawn once, by the one that ends there. */
  for (size_t k = build->open[0] ? 1 : 0; k < count; k++)
    add_round_edges (build, sections, count, k, n, k == 0 ? start : end);
  if (!build->open[0])
    add_lid (build, &sections[0], n, start, false);
  if (!build->open[1])
    add_lid (build, &sections[count - 1], n, end, true);
}

static void
add_item (PhMeshBuild *build, const PhDrawList *list, const PhItem *item)
{
  build->item = item;
  build->pierced = false;
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      ph_mesh_add_tube (build, &item->tube);
      break;
    case PH_SOLID_BOX:
      ph_mesh_add_box (build, &item->box);
      break;
    case PH_SOLID_SWEEP:
      ph_mesh_add_sweep (build, ph_draw_list_stations (list, item), item->sweep.n,
                         ph_draw_list_holes (list, item), item->sweep.n_holes, item->sweep.round);
      break;
    case PH_SOLID_RING:
      ph_mesh_add_ring (build, &item->ring);
      break;
    case PH_SOLID_SPHERE:
      ph_mesh_add_sphere (build, &item->sphere);
      break;
    case PH_SOLID_LINE:
      ph_mesh_add_line (build, ph_draw_list_points (list, item), item->line.n, item->line.radius);
      break;
    }
}

/* Holes and flat solids as they stand: how thin it looks at its thinnest, about. */
static float
thinness (const PhDrawList *list, const PhItem *item)
{
  const PhBox *box = &item->box;
  const PhStation *station;
  switch (item->solid)
    {
    case PH_SOLID_TUBE:
      return fminf (fmaxf (item->tube.ra, item->tube.rb),
                    0.5f * ph_point_length (ph_point_sub (item->tube.b, item->tube.a)));
    case PH_SOLID_BOX:
      return fminf (ph_point_length (box->half[0]),
                    fminf (ph_point_length (box->half[1]), ph_point_length (box->half[2])));
    case PH_SOLID_SWEEP:
      station = ph_draw_list_stations (list, item) + item->sweep.n / 2;
      return fminf (station->half_depth, station->half_across);
    case PH_SOLID_RING:
      return 0.5f * (item->ring.outer - item->ring.inner);
    case PH_SOLID_SPHERE:
      return item->sphere.radius;
    case PH_SOLID_LINE:
      break;
    }
  return item->line.radius;
}

/* Of the moving mesh: what is small needs fewer, a cam would show its corners. */
static int
sides_of (const PhItem *item, bool fine, bool crowded)
{
  float radius = item->solid == PH_SOLID_TUBE   ? fmaxf (item->tube.ra, item->tube.rb)
                 : item->solid == PH_SOLID_RING ? item->ring.outer
                                                : 0.0f;
  if (fine)
    return crowded ? 12 : 24;
  if (crowded)
    return radius > LARGE_MM ? 10 : 4;
  /* Discs are many, and lie one against the other. */
  bool many = item->role == PH_ROLE_WEIGHT || item->role == PH_ROLE_DAMPER;
  return radius > LARGE_MM ? 10 : radius > SMALL_MM && !many ? 8 : radius > PIN_MM ? 6 : 4;
}

static bool
meets (const PhItem *item, const PhItem *other, bool far)
{
  if (other->solid != PH_SOLID_TUBE || other->part != item->part || other->state != item->state)
    return false;
  PhPoint at = far ? item->tube.b : item->tube.a;
  float radius = MEETING_SHARE * (far ? item->tube.rb : item->tube.ra);
  return (ph_point_length (ph_point_sub (other->tube.a, at)) < MEETING_MM
          && other->tube.ra >= radius)
         || (ph_point_length (ph_point_sub (other->tube.b, at)) < MEETING_MM
             && other->tube.rb >= radius);
}

/* Whether a tube's end stands against the one before or after it in the list: disc upon disc. */
static bool
is_met (const PhDrawList *list, size_t i, bool far)
{
  const PhItem *item = ph_draw_list_item (list, i);
  if (item->solid != PH_SOLID_TUBE)
    return false;
  return (i > 0 && meets (item, ph_draw_list_item (list, i - 1), far))
         || (i + 1 < ph_draw_list_count (list)
             && meets (item, ph_draw_list_item (list, i + 1), far));
}

/* The rod within a stack: its discs hide it but for the slits between them. */
static bool
is_hidden_rod (const PhDrawList *list, size_t i)
{
  const PhItem *item = ph_draw_list_item (list, i);
  if (item->role != PH_ROLE_FITTING || i + 1 == ph_draw_list_count (list))
    return false;
  const PhItem *next = ph_draw_list_item (list, i + 1);
  return next->role == PH_ROLE_WEIGHT && next->part == item->part;
}

/* No lids and, since it is called thin, no lines. */
static void
make_plain (PhMeshBuild *build)
{
  build->sides = 4;
  build->open[0] = build->open[1] = true;
  build->thin_mm = 1.0f;
}

static bool
belongs (const PhItem *item, PhMeshShare share)
{
  return share == PH_MESH_ALL || (item->part == PH_PART_BOW) == (share == PH_MESH_BOW);
}

PhMesh *
ph_mesh_new (const PhDrawList *list, PhMeshShare share, PhDetail detail, const PhDrawList *same)
{
  PhMesh *mesh = ph_alloc_zeroed (1, sizeof *mesh);
  PhMeshBuild build = { .mesh = mesh };
  mesh->crowded = ph_draw_list_count (list) > CROWD;
  for (size_t i = 0; i < ph_draw_list_count (list); i++)
    {
      const PhItem *item = ph_draw_list_item (list, i);
      if (!belongs (item, share))
        continue;
      build.fine = detail == PH_DETAIL_STILL;
      build.sides = sides_of (item, build.fine, mesh->crowded);
      /* A boss begins within the riser and ends in its knuckle. */
      build.open[0] = !build.fine && (item->role == PH_ROLE_BOSS || is_met (list, i, false));
      build.open[1] = !build.fine && is_met (list, i, true);
      build.thin_mm = thinness (list, item);
      if (!build.fine && is_hidden_rod (list, i))
        make_plain (&build);
      build.unchanged = same && ph_solid_is_in (list, item, same, i);
      add_item (&build, list, item);
    }
  return mesh;
}

uint64_t
ph_mesh_fingerprint (const PhDrawList *list, PhMeshShare share)
{
  uint64_t print = PH_PRINT_START;
  for (size_t i = 0; i < ph_draw_list_count (list); i++)
    {
      const PhItem *item = ph_draw_list_item (list, i);
      if (!belongs (item, share))
        continue;
      const int facts[] = { (int)item->role, (int)item->state, item->part };
      print = ph_print_bytes (print, facts, sizeof facts);
      print = ph_print_bytes (print, &(uint64_t){ ph_solid_print (list, item) }, sizeof print);
    }
  return print;
}

void
ph_mesh_free (PhMesh *mesh)
{
  if (!mesh)
    return;
  free (mesh->vertices);
  free (mesh->indices);
  free (mesh->edges);
  free (mesh->holes);
  free (mesh);
}
