/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Placing and summing. The sum is a bottom-up tree in an array: with n leaves they stand at
 * n … 2n − 1, node k joins 2k and 2k + 1, and node 1 holds all. Its shape depends on n alone, so a
 * change gives bit for bit what a recompute gives. Memory: 700 bytes a piece.
 */
#include "physics/assembly.h"

#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "physics/central.h"

#define NOBODY (-1)

struct PhAssembly
{
  int n; /* pieces */
  PhPiece *pieces;
  PhPlace *places;
  PhMass *masses; /* of the bow, then of each piece */
  PhMass total;
  PhCentral *tree;  /* 2 (n + 1) nodes; the bow is the first leaf */
  int *first_guest; /* what hangs on a piece, as a list: the first … */
  int *next_guest;  /* … and, on the same host, the next */
};

static const PhFrame bow_frame = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };

static inline PhFrame
frame_on_socket (const PhPiece *piece, const PhFrame *socket)
{
  double swing = piece->swing_rad, lift = piece->lift_rad;
  if (swing == 0 && lift == 0)
    return *socket;
  double sin_swing = 0, cos_swing = 1, sin_lift = 0, cos_lift = 1;
  if (swing != 0)
    {
      sin_swing = sin (swing);
      cos_swing = cos (swing);
    }
  if (lift != 0)
    {
      sin_lift = sin (lift);
      cos_lift = cos (lift);
    }
  return ph_frame_of_axis (
      ph_frame_direction_of (socket, sin_swing, cos_swing, sin_lift, cos_lift));
}

static inline void
place_on_socket (const PhPiece *piece, PhVec3 origin, const PhFrame *host, PhPlace *place)
{
  PhFrame socket = ph_frame_of_axis (ph_frame_apply (host, piece->seat_axis));
  place->root_m = ph_vec3_add (origin, ph_frame_apply (host, piece->seat_at_m));
  place->frame = frame_on_socket (piece, &socket);
}

/* Where piece i stands, its host being placed already. */
static inline void
place_piece (PhAssembly *assembly, int i)
{
  const PhPiece *piece = &assembly->pieces[i];
  const PhPlace *host = piece->host == PH_HOST_BOW ? NULL : &assembly->places[piece->host];
  PhPlace *place = &assembly->places[i];
  switch (piece->seat)
    {
    case PH_SEAT_SOCKET:
      place_on_socket (piece, host ? host->root_m : ph_vec3 (0, 0, 0),
                       host ? &host->frame : &bow_frame, place);
      break;
    case PH_SEAT_END:
      place->root_m = host->end_m;
      place->frame = frame_on_socket (piece, &host->frame);
      break;
    case PH_SEAT_ALONG:
      place->root_m = ph_vec3_add_scaled (host->root_m, host->frame.a, piece->along_m);
      place->frame = host->frame;
      break;
    case PH_SEAT_FREE:
      place->root_m = piece->body.com_m;
      place->frame = bow_frame;
      break;
    }
  place->end_m = ph_piece_has_length_axis (piece)
                     ? ph_vec3_add_scaled (place->root_m, place->frame.a, piece->length_m)
                     : place->root_m;
}

static void
recompute_piece (PhAssembly *assembly, int i)
{
  place_piece (assembly, i);
  const PhPiece *piece = &assembly->pieces[i];
  const PhPlace *place = &assembly->places[i];
  PhCentral *leaf = &assembly->tree[assembly->n + 1 + 1 + i];
  /* The mass centre of what sits freely is given in the bow frame, from P. */
  PhVec3 origin = piece->seat == PH_SEAT_FREE ? ph_vec3 (0, 0, 0) : place->root_m;
  ph_central_of_body (&piece->body, origin, &place->frame, leaf);
  assembly->masses[1 + i] = ph_central_record (leaf);
}

static void
join_node (PhAssembly *assembly, int node)
{
  PhCentral *tree = assembly->tree;
  tree[node] = ph_central_join (&tree[2 * node], &tree[2 * node + 1]);
}

/* Joins anew every node over the leaves of pieces lo … hi. A level that spans two depths of the
   tree is safe: nodes below have the higher numbers and go first. */
static void
join_above (PhAssembly *assembly, int lo, int hi)
{
  int from = assembly->n + 2 + lo, to = assembly->n + 2 + hi;
  while (to > 1)
    {
      from = from > 3 ? from / 2 : 1;
      to /= 2;
      for (int node = to; node >= from; node--)
        join_node (assembly, node);
    }
  assembly->total = ph_central_record (&assembly->tree[1]);
}

void
ph_assembly_recompute (PhAssembly *assembly)
{
  for (int i = 0; i < assembly->n; i++)
    recompute_piece (assembly, i);
  for (int node = assembly->n; node >= 1; node--)
    join_node (assembly, node);
  assembly->total = ph_central_record (&assembly->tree[1]);
}

static void
weigh_bow (PhAssembly *assembly, const PhBowBody *bow)
{
  double m = bow->mass_kg;
  PhVec3 k = bow->gyration_m;
  PhBody body = { m, bow->com_m, { m * k.x * k.x, m * k.y * k.y, m * k.z * k.z } };
  PhCentral *leaf = &assembly->tree[assembly->n + 1];
  ph_central_of_body (&body, ph_vec3 (0, 0, 0), &bow_frame, leaf);
  assembly->masses[0] = ph_central_record (leaf);
}

static void
link_guests (PhAssembly *assembly)
{
  for (int i = 0; i < assembly->n; i++)
    assembly->first_guest[i] = NOBODY;
  /* From the last: each goes to the front of its host's list, which so keeps the array's order. */
  for (int i = assembly->n - 1; i >= 0; i--)
    {
      int host = assembly->pieces[i].host;
      assert (host >= PH_HOST_BOW && host < i);
      assert (host != PH_HOST_BOW || assembly->pieces[i].seat == PH_SEAT_SOCKET
              || assembly->pieces[i].seat == PH_SEAT_FREE);
      assembly->next_guest[i] = host == PH_HOST_BOW ? NOBODY : assembly->first_guest[host];
      if (host != PH_HOST_BOW)
        assembly->first_guest[host] = i;
    }
}

PhAssembly *
ph_assembly_new (const PhBowBody *bow, const PhPiece *pieces, int n)
{
  assert (n >= 0);
  size_t count = (size_t)n;
  PhAssembly *assembly = ph_alloc_zeroed (1, sizeof *assembly);
  assembly->n = n;
  assembly->pieces = ph_alloc_zeroed (count, sizeof *assembly->pieces);
  assembly->places = ph_alloc_zeroed (count, sizeof *assembly->places);
  assembly->masses = ph_alloc_zeroed (count + 1, sizeof *assembly->masses);
  assembly->tree = ph_alloc_zeroed (2 * (count + 1), sizeof *assembly->tree);
  assembly->first_guest = ph_alloc_zeroed (count, sizeof *assembly->first_guest);
  assembly->next_guest = ph_alloc_zeroed (count, sizeof *assembly->next_guest);
  if (n > 0)
    memcpy (assembly->pieces, pieces, count * sizeof *pieces);
  link_guests (assembly);
  weigh_bow (assembly, bow);
  ph_assembly_recompute (assembly);
  return assembly;
}

void
ph_assembly_free (PhAssembly *assembly)
{
  if (!assembly)
    return;
  free (assembly->pieces);
  free (assembly->places);
  free (assembly->masses);
  free (assembly->tree);
  free (assembly->first_guest);
  free (assembly->next_guest);
  free (assembly);
}

int
ph_assembly_count (const PhAssembly *assembly)
{
  return assembly->n;
}

const PhPiece *
ph_assembly_piece (const PhAssembly *assembly, int i)
{
  assert (i >= 0 && i < assembly->n);
  return &assembly->pieces[i];
}

const PhPlace *
ph_assembly_place (const PhAssembly *assembly, int i)
{
  assert (i >= 0 && i < assembly->n);
  return &assembly->places[i];
}

PhFrame
ph_assembly_seat_frame (const PhAssembly *assembly, int i)
{
  assert (i >= 0 && i < assembly->n);
  const PhPiece *piece = &assembly->pieces[i];
  assert (piece->seat == PH_SEAT_SOCKET || piece->seat == PH_SEAT_END);
  const PhFrame *host =
      piece->host == PH_HOST_BOW ? &bow_frame : &assembly->places[piece->host].frame;
  return piece->seat == PH_SEAT_SOCKET
             ? ph_frame_of_axis (ph_frame_apply (host, piece->seat_axis))
             : *host;
}

int
ph_assembly_first_guest (const PhAssembly *assembly, int i)
{
  assert (i >= 0 && i < assembly->n);
  return assembly->first_guest[i];
}

int
ph_assembly_next_guest (const PhAssembly *assembly, int i)
{
  assert (i >= 0 && i < assembly->n);
  return assembly->next_guest[i];
}

const PhMass *
ph_assembly_mass (const PhAssembly *assembly, int i)
{
  assert (i >= PH_HOST_BOW && i < assembly->n);
  return &assembly->masses[1 + i];
}

const PhMass *
ph_assembly_total (const PhAssembly *assembly)
{
  return &assembly->total;
}

PhMassProperties
ph_assembly_properties (const PhAssembly *assembly)
{
  return ph_central_properties (&assembly->tree[1]);
}

/* The piece after i in a walk of the subtree under `top`: its first guest, else the next on the
   nearest host that has one; NOBODY at the end. */
static int
next_in_subtree (const PhAssembly *assembly, int top, int i)
{
  if (assembly->first_guest[i] != NOBODY)
    return assembly->first_guest[i];
  while (i != top && assembly->next_guest[i] == NOBODY)
    i = assembly->pieces[i].host;
  return i == top ? NOBODY : assembly->next_guest[i];
}

PhMass
ph_assembly_subtree_mass (const PhAssembly *assembly, int i)
{
  PhMass sum = *ph_assembly_mass (assembly, i);
  for (int k = next_in_subtree (assembly, i, i); k != NOBODY; k = next_in_subtree (assembly, i, k))
    sum = ph_mass_add (sum, assembly->masses[1 + k]);
  return sum;
}

void
ph_assembly_set_piece (PhAssembly *assembly, int i, const PhPiece *piece)
{
  assert (i >= 0 && i < assembly->n);
  PhPiece *own = &assembly->pieces[i];
  assert (piece->host == own->host && piece->seat == own->seat && piece->kind == own->kind);
  *own = *piece;
  int last = i;
  for (int k = i; k != NOBODY; k = next_in_subtree (assembly, i, k))
    {
      recompute_piece (assembly, k);
      last = k > last ? k : last;
    }
  join_above (assembly, i, last);
}
