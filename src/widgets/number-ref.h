/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which number of a rig a row of the form shows: enough to read it, to write it through the
 * document, and to try a change of it on a copy. No toolkit here, so that it can be tested alone.
 */
#pragma once

#include "document/direction.h"
#include "document/document.h"

G_BEGIN_DECLS

typedef enum
{
  PH_NUMBER_PART,       /* a field of a part */
  PH_NUMBER_BOW,        /* a field of the bow */
  PH_NUMBER_ARCHER,     /* a field of the archer */
  PH_NUMBER_SOCKET,     /* where a mount of the bow or a socket of a bracket is [mm] */
  PH_NUMBER_END_COUNT,  /* the discs of the stack at a bar's end; 0 where there is no stack */
  PH_NUMBER_STATED_DRAW /* the trade's draw length [mm] */
} PhNumberOf;

/** The trade's stated draw length less the true one: 1 3/4 in (rig format, physics section 1). */
#define PH_STATED_DRAW_MORE_MM 44.45

typedef struct
{
  PhNumberOf of;
  char *part;      /* id; null for bow and archer, and for a mount of the bow */
  const char *key; /* as in the rig file, static; null for the last three kinds */
  char *socket;    /* PH_NUMBER_SOCKET: its id; else null */
  int component;   /* of a vector, 0–2; else 0 */
} PhNumberRef;

/** `part` is copied. Clear with ph_number_ref_clear. */
PhNumberRef ph_number_ref (PhNumberOf of, const char *part, const char *key, int component);
PhNumberRef ph_number_ref_socket (const char *part, const char *socket, int component);
PhNumberRef ph_number_ref_copy (const PhNumberRef *ref);
void ph_number_ref_clear (PhNumberRef *ref);

/** The value in the file's unit; NAN where the rig does not have it (any more). */
double ph_number_ref_read (const PhNumberRef *ref, const PhRig *rig);

PhQuantity ph_number_ref_quantity (const PhNumberRef *ref);

/** Whether the number has a direction (an angle, a point from the grip), and then which. */
gboolean ph_number_ref_way (const PhNumberRef *ref, const PhRig *rig, const PhCompiled *compiled,
                            PhWay *way);

/** Writes through the document, in one gesture where none runs. False: refused, with the reason. */
gboolean ph_number_ref_write (const PhNumberRef *ref, PhDocument *document, double value,
                              GError **error);

/** The same on a copy of a rig, for trying. False: it would be refused; drop the copy. */
gboolean ph_number_ref_apply (const PhNumberRef *ref, PhRig *rig, double value);

/** Index of the stack that hangs at the end of that bar, straight or behind a damper; −1. A fitted
 * one before one that is off. */
int ph_end_stack (const PhRig *rig, int bar);

/** Whether a stack hangs at that bar's end or one could. */
gboolean ph_end_stack_possible (const PhRig *rig, int bar);

G_END_DECLS
