/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One bracket or bar, with all that hangs on it, put on the other side. Where it sits in the bow's
 * plane only signs turn. Off that plane it moves to a mount or socket at its seat's mirror image,
 * one that is there or a new one, which goes again when the branch comes back: so that twice is the
 * same rig. What sits on another part's far end has no such place and is refused.
 */
#include <assert.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"
#include "base/units.h"
#include "model/compile.h"
#include "model/edit-own.h"
#include "model/edit.h"
#include "model/mirror-own.h"

/* What a seat made here is called after the one it mirrors. */
#define NEW_SUFFIX "-mirrored"
#define ID_MOST 64

/* What rounding may do to a place that was computed [m] and to a direction. */
#define SAME_M 1e-12
#define SAME_AXIS 1e-12

/* Where a part sits and the sockets that its carrier has. */
typedef struct
{
  PhRig *rig;
  size_t part;
  int host;          /* −1: the bow */
  const char *name;  /* of its socket; null: a far end */
  PhVec3 at_m, axis; /* bow frame */
  PhPlace carrier;
} Seat;

static Seat
seat_of (PhRig *rig, size_t i)
{
  static const PhFrame bow_frame = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  Seat seat = { .rig = rig, .part = i, .carrier = { .frame = bow_frame } };
  PhCompiled *compiled = ph_compile_rig (rig);
  seat.host = ph_rig_host (rig, i, &seat.name);
  seat.at_m = ph_assembly_place (compiled->assembly, compiled->piece_of_part[i])->root_m;
  seat.axis = ph_assembly_seat_frame (compiled->assembly, compiled->piece_of_part[i]).a;
  if (seat.host >= 0)
    seat.carrier = *ph_assembly_place (compiled->assembly, compiled->piece_of_part[seat.host]);
  ph_compiled_free (compiled);
  return seat;
}

static bool
is_its_own_image (const Seat *seat)
{
  return fabs (seat->at_m.y) <= SAME_M && fabs (seat->axis.y) <= SAME_AXIS;
}

static PhSocket **
list_of (const Seat *seat, size_t **n)
{
  PhBow *bow = &seat->rig->bow;
  PhPart *host = seat->host < 0 ? NULL : &seat->rig->parts[seat->host];
  *n = host ? &host->n_sockets : &bow->n_mounts;
  return host ? &host->sockets : &bow->mounts;
}

/* Bow frame to the carrier's own components. */
static PhVec3
own_of (const PhFrame *frame, PhVec3 v)
{
  return ph_vec3 (ph_vec3_dot (frame->a, v), ph_vec3_dot (frame->l, v), ph_vec3_dot (frame->t, v));
}

/* The seat's image as a socket of the carrier, without an id. A carrier in the bow's plane keeps
   the digits of what is written. */
static PhSocket
image_of (const Seat *seat)
{
  size_t *n;
  PhSocket *sockets = *list_of (seat, &n);
  const PhSocket *own = &sockets[ph_sockets_find (sockets, *n, seat->name)];
  PhSocket image = { 0 };
  memcpy (image.at_mm, own->at_mm, sizeof image.at_mm);
  memcpy (image.axis, own->axis, sizeof image.axis);
  ph_mirror_turn (&image.at_mm[1]);
  ph_mirror_turn (&image.axis[1]);
  const PhPlace *carrier = &seat->carrier;
  if (carrier->root_m.y == 0 && carrier->frame.a.y == 0)
    return image;
  PhVec3 at = ph_vec3 (seat->at_m.x, -seat->at_m.y, seat->at_m.z);
  PhVec3 from_root = own_of (&carrier->frame, ph_vec3_sub (at, carrier->root_m));
  PhVec3 axis = own_of (&carrier->frame, ph_vec3 (seat->axis.x, -seat->axis.y, seat->axis.z));
  const double at_mm[3] = { ph_to_milli (from_root.x), ph_to_milli (from_root.y),
                            ph_to_milli (from_root.z) };
  const double axis_own[3] = { axis.x, axis.y, axis.z };
  memcpy (image.at_mm, at_mm, sizeof at_mm);
  memcpy (image.axis, axis_own, sizeof axis_own);
  return image;
}

static bool
same_socket (const PhSocket *a, const PhSocket *b)
{
  PhVec3 one = ph_vec3_unit (ph_vec3 (a->axis[0], a->axis[1], a->axis[2]));
  PhVec3 two = ph_vec3_unit (ph_vec3 (b->axis[0], b->axis[1], b->axis[2]));
  bool same = ph_vec3_length (ph_vec3_sub (one, two)) <= 4 * SAME_AXIS;
  for (int c = 0; c < 3; c++)
    same &= fabs (a->at_mm[c] - b->at_mm[c]) <= ph_to_milli (4 * SAME_M);
  return same;
}

static char *
on_of (const Seat *seat, const char *socket)
{
  return ph_text_printf ("%s:%s", seat->host < 0 ? "bow" : seat->rig->parts[seat->host].id, socket);
}

/* The part at that place, those that are off counted or not; −1: none. */
static int
sitter_on (const Seat *seat, const char *socket, bool off_too)
{
  char *on = on_of (seat, socket);
  int found = -1;
  for (size_t i = 0; i < seat->rig->n_parts && found < 0; i++)
    {
      const PhPart *part = &seat->rig->parts[i];
      if (i != seat->part && (off_too || !part->off) && strcmp (part->on, on) == 0)
        found = (int)i;
    }
  free (on);
  return found;
}

static char *
fresh_socket_id (const PhSocket *sockets, size_t n, const char *base)
{
  char *cut = strlen (base) + strlen (NEW_SUFFIX) <= ID_MOST ? ph_text_dup (base) : NULL;
  char *id = ph_text_printf ("%s" NEW_SUFFIX, cut ? cut : "socket");
  for (int k = 2; ph_sockets_find (sockets, n, id) >= 0; k++)
    {
      free (id);
      id = ph_text_printf ("mirrored-%d", k);
    }
  free (cut);
  return id;
}

/* The socket at the seat's image that nobody sits on, made where there is none; null: someone sits
   on each. Borrowed. */
static const char *
free_image (const Seat *seat, int *sitter)
{
  size_t *n;
  PhSocket **sockets = list_of (seat, &n);
  PhSocket image = image_of (seat);
  bool found = false;
  for (size_t i = 0; i < *n; i++)
    if (same_socket (&(*sockets)[i], &image))
      {
        int taken = sitter_on (seat, (*sockets)[i].id, false);
        if (taken < 0)
          return (*sockets)[i].id;
        *sitter = taken;
        found = true;
      }
  if (found)
    return NULL;
  image.id = fresh_socket_id (*sockets, *n, seat->name);
  *sockets = ph_realloc (*sockets, (*n + 1) * sizeof **sockets);
  (*sockets)[(*n)++] = image;
  return image.id;
}

/* A seat that was made here for the way there goes on the way back, when nothing is left on it. */
static void
drop_left (const Seat *seat, const char *left, const char *base)
{
  size_t *n;
  PhSocket **sockets = list_of (seat, &n);
  char *made = ph_text_printf ("%s" NEW_SUFFIX, base);
  bool ours = strcmp (left, made) == 0 && sitter_on (seat, left, true) < 0;
  free (made);
  if (!ours)
    return;
  size_t at = (size_t)ph_sockets_find (*sockets, *n, left);
  free ((*sockets)[at].id);
  ph_extras_clear (&(*sockets)[at].extras);
  memmove (*sockets + at, *sockets + at + 1, (*n - at - 1) * sizeof **sockets);
  (*n)--;
}

/* Hangs the part on its seat's image. */
static bool
move_seat (Seat *seat, PhIssues *issues)
{
  PhPart *part = &seat->rig->parts[seat->part];
  if (!seat->name)
    {
      const char *host = ph_part_name (&seat->rig->parts[seat->host]);
      ph_issues_add (issues, PH_WHERE_PART, part->id, PH_KEY_MIRROR, false,
                     "%s hangs on the end of %s, which stays where it is; put %s on the other "
                     "side, or hang this elsewhere",
                     ph_part_name (part), host, host);
      return false;
    }
  int sitter = -1;
  const char *image = free_image (seat, &sitter);
  if (!image)
    {
      ph_issues_add (issues, PH_WHERE_PART, part->id, PH_KEY_MIRROR, false,
                     "%s sits at the place on the other side; take it off first",
                     ph_part_name (&seat->rig->parts[sitter]));
      return false;
    }
  char *left = ph_text_dup (seat->name), *base = ph_text_dup (image);
  free (part->on);
  part->on = on_of (seat, image);
  seat->name = NULL; /* it pointed into what was freed */
  drop_left (seat, left, base);
  free (left);
  free (base);
  return true;
}

bool
ph_edit_mirror_part (PhRig *rig, size_t i, PhIssues *issues)
{
  assert (i < rig->n_parts && ph_rig_is_fitted (rig, i));
  assert (rig->parts[i].kind == PH_PART_BAR || rig->parts[i].kind == PH_PART_BRACKET);
  PhRig *draft = ph_rig_copy (rig);
  PhAcross *across = ph_across_of (draft);
  Seat seat = seat_of (draft, i);
  bool moved = is_its_own_image (&seat) || move_seat (&seat, issues);
  for (size_t k = 0; moved && k < draft->n_parts; k++)
    if (ph_rig_hangs_on (draft, k, i))
      ph_mirror_part (&draft->parts[k], across[k]);
  free (across);
  if (moved)
    return ph_edit_commit (rig, draft, issues);
  ph_rig_free (draft);
  return false;
}

bool
ph_edit_mirror_makes_seat (const PhRig *rig, size_t i)
{
  PhRig *other = ph_rig_copy (rig);
  bool makes = false;
  if (ph_edit_mirror_part (other, i, NULL))
    {
      const char *name;
      int host = ph_rig_host (other, i, &name);
      const PhSocket *sockets = host < 0 ? rig->bow.mounts : rig->parts[host].sockets;
      size_t n = host < 0 ? rig->bow.n_mounts : rig->parts[host].n_sockets;
      makes = name && ph_sockets_find (sockets, n, name) < 0;
    }
  ph_rig_free (other);
  return makes;
}
