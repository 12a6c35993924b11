/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One part of a rig as the rig file has it: the file's own units (mm, g, deg), because a number
 * must read back as the very same double; ph_compile_rig makes SI pieces of it for the physics.
 * Signs and frames: physics/frame.h. Which keys belong to which kind, their ranges and defaults:
 * model/fields.h.
 */
#pragma once

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef enum
{
  PH_PART_BAR,
  PH_PART_WEIGHTS,
  PH_PART_DAMPER,
  PH_PART_BRACKET,
  PH_PART_ACCESSORY
} PhPartKind;
#define PH_PART_KINDS 5

/** How well a number is known ("source" in the file). */
typedef enum
{
  PH_SOURCE_UNSTATED, /* absent in the file: counts as catalogue */
  PH_SOURCE_GUESSED,
  PH_SOURCE_CATALOGUE,
  PH_SOURCE_MEASURED
} PhSource;

/** A key this version does not know, kept through load and save as compact JSON text. */
typedef struct
{
  char *key;
  char *json;
} PhExtra;

typedef struct
{
  PhExtra *items;
  size_t n;
} PhExtras;

/** A mount of the bow, or a socket of a bracket (own components of its d, l', t' frame). */
typedef struct
{
  char *id;
  double at_mm[3];
  double axis[3]; /* any length from 1e-6 up, kept as written */
  PhExtras extras;
} PhSocket;

/** What may change (deciding: [lo, hi] in the value's own unit); absent = the program's default. */
typedef struct
{
  bool given;
  double lo, hi;
} PhLimits;

/** A stated standard deviation, under the key and in the unit of the value. */
typedef struct
{
  char *key;
  int n; /* 1 or 3 numbers */
  double v[3];
} PhSd;

typedef struct
{
  bool given;
  double amount;
  char *currency;
} PhPrice;

typedef struct
{
  PhPartKind kind;
  char *id;
  char *name;     /* null: the id serves */
  char *on;       /* as written: "bow", "bow:MOUNT", "PART" (its far end), "PART:SOCKET" */
  uint64_t given; /* bit i: field i of ph_fields_of (PH_OBJECT_PART) stands in the file */
  bool off;       /* listed, not fitted; what hangs on it is off too */
  bool locked;    /* never proposed for change */

  double swing_deg, lift_deg;           /* on its socket; + to the archer's left, + up */
  double mass_g;                        /* all but weights */
  double length_mm;                     /* bar, damper */
  double outer_mm, inner_mm;            /* bar: tube diameters */
  double root_fitting_g, tip_fitting_g; /* bar */
  double fitting_mm;  /* bar; 15 when absent: ph_part_fitting_mm says what counts */
  double modulus_gpa; /* bar; 0 = absent = rigid */
  double count, each_g, each_mm, bore_mm; /* weights; count is whole */
  double diameter_mm;                     /* weights, damper */
  double along_mm;                        /* weights on a bar; NAN = absent: at the far end */
  double com_mm[3];                       /* bracket: own frame, from its root */
  double size_mm[3];                      /* bracket: along, across, up; accessory: x, y, z */
  double at_mm[3];                        /* accessory: mass centre, bow frame */
  double aperture_mm[3];                  /* accessory: bow frame; NAN = absent */
  double vial_deg_per_mark;               /* accessory with a level: tilt that takes the bubble from
                                             one mark to the next; NAN = absent: not calibrated */
  PhSocket *sockets;                      /* bracket */
  size_t n_sockets;

  PhLimits limit_swing, limit_lift, limit_count;
  PhSource source;
  PhSd *sds;
  size_t n_sds;
  PhPrice price;
  PhExtras extras;
  PhExtras limits_extras; /* unknown keys inside "limits" */
  PhExtras price_extras;
} PhPart;

/** A part of that kind with every default in place and no id. */
PhPart ph_part_default (PhPartKind kind);
/** Deep copy; deep free (leaves the struct cleared). */
PhPart ph_part_copy (const PhPart *part);
void ph_part_clear (PhPart *part);

/** The name, or the id where it has none. Borrowed. */
const char *ph_part_name (const PhPart *part);
/** "bar", "weights", "damper", "bracket", "accessory". */
const char *ph_part_kind_word (PhPartKind kind);
bool ph_part_kind_from_word (const char *word, PhPartKind *kind);
/** Mass of the part alone in g: a stack's is count × each. */
double ph_part_mass_g (const PhPart *part);
/** Length root to far face in mm: bar, damper, stack (count × thickness); else 0. */
double ph_part_length_mm (const PhPart *part);

/** Length of each of a bar's fittings in mm: as given; else 15, or the bar's length when that is
 * less, so that a short bar needs no key its user never wrote. */
double ph_part_fitting_mm (const PhPart *part);
/** Whether the part is a stack that lies along a bar instead of on a far end. */
bool ph_part_is_along (const PhPart *part);

/** Sockets or mounts, and stated deviations: deep copies and their end. */
PhSocket *ph_sockets_copy (const PhSocket *sockets, size_t n);
void ph_sockets_free (PhSocket *sockets, size_t n);
PhSd *ph_sds_copy (const PhSd *sds, size_t n);
void ph_sds_free (PhSd *sds, size_t n);
/** States the deviation of a key, in place of one that is stated already; `numbers` is 1 or 3. */
void ph_sds_put (PhSd **sds, size_t *n, const char *key, int numbers, const double *sd);
/** Index of the socket with that id, or −1. */
int ph_sockets_find (const PhSocket *sockets, size_t n, const char *id);

void ph_extras_clear (PhExtras *extras);
PhExtras ph_extras_copy (const PhExtras *extras);
