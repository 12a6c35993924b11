/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A whole rig: archer, bow and parts, as the rig file has them (mm, g, deg, N). Plain data that
 * owns its memory; parts stand in file order. A rig in hand may be unchecked: ph_check_rig says.
 */
#pragma once

#include "model/part.h"

typedef enum
{
  PH_BOW_COMPOUND,
  PH_BOW_RECURVE,
  PH_BOW_BAREBOW
} PhBowKind;

/** The hand that holds the bow. */
typedef enum
{
  PH_BOW_HAND_LEFT,
  PH_BOW_HAND_RIGHT
} PhBowHand;

typedef struct
{
  char *date;       /* as written; null = absent */
  double mass_g;    /* of the rig that was held */
  double com_mm[3]; /* its mass centre from P */
  double draw_length_mm;
  double nock_height_mm;
  double bubble_deg; /* positive when the top limb tips right */
  double sd_deg;
  char *note;
  bool aside;        /* kept, listed, not used */
  double *draws_deg; /* the single draws behind bubble_deg */
  size_t n_draws;
  double predicted_deg;    /* sealed before the reading; NAN = absent */
  char *predicted_at;      /* ISO 8601; null = absent */
  double predicted_90_deg; /* sealed with it: half of the bubble's 90 % interval, the reading's own
                              scatter apart; NAN = absent: the hand was only assumed */
  uint64_t given;          /* bit i: field i of ph_fields_of (PH_OBJECT_CHECK) */
  PhExtras extras;
} PhCheck;

typedef struct
{
  PhBowHand bow_hand;
  double stature_mm, body_mass_g;
  double draw_length_mm, nock_height_mm, holding_weight_n;
  double wanted_bubble_deg;
  double roll_stiffness_nm_per_rad, roll_bias_nm; /* "hand": used while no check is */
  PhCheck *checks;                                /* "hand": "bubble_tests" */
  size_t n_checks;
  bool by_mirror;         /* mirroring alone gave bow_hand its bit, to be taken back by the next */
  bool present_by_mirror; /* the same of `present` */
  bool present;           /* "archer" stands in the file */
  bool hand_present;      /* "hand" stands in it */
  uint64_t given;         /* fields of PH_OBJECT_ARCHER */
  uint64_t hand_given;    /* fields of PH_OBJECT_HAND */
  PhExtras extras, hand_extras;
} PhArcher;

typedef struct
{
  PhBowKind kind;
  double mass_g;
  double com_mm[3];       /* from P, bow frame */
  double gyration_mm[3];  /* about axes through the mass centre parallel to x, y, z */
  double axle_to_axle_mm; /* NAN = absent; recurve: tip to tip, strung */
  double brace_height_mm; /* NAN = absent */
  PhSocket *mounts;
  size_t n_mounts;
  PhSource source;
  PhSd *sds;
  size_t n_sds;
  uint64_t given; /* fields of PH_OBJECT_BOW */
  PhExtras extras;
} PhBow;

typedef struct
{
  char *name;  /* null = absent: the file's own name serves */
  char *notes; /* null = absent */
  char *book;  /* null = absent; a path beside the rig */
  PhArcher archer;
  PhBow bow;
  PhPart *parts;
  size_t n_parts;
  PhExtras extras;
} PhRig;

#define PH_RIG_PARTS_MOST 256
#define PH_RIG_NESTING_MOST 16

/** An empty compound rig with every default of the file format and a bow without mass: for the
 * loader to fill. Free with ph_rig_free. */
PhRig *ph_rig_new (void);
PhRig *ph_rig_copy (const PhRig *rig);
void ph_rig_free (PhRig *rig);

/** A bubble check with its defaults; deep copy; deep free. */
PhCheck ph_check_default (void);
PhCheck ph_check_copy (const PhCheck *check);
void ph_check_clear (PhCheck *check);

/** The holding weight that counts: as given, else 65 N, on a recurve or barebow 160 N. */
double ph_rig_holding_weight_n (const PhRig *rig);

/** Index of the part with that id, or −1. */
int ph_rig_find (const PhRig *rig, const char *id);

/** What part i hangs on: index of the host part, or −1 for the bow (or for a host that is not
 * there). `*socket`, where given, is the text after the colon, or null; borrowed. */
int ph_rig_host (const PhRig *rig, size_t i, const char **socket);

/** ph_rig_host of every part at once: a new array. */
int *ph_rig_hosts (const PhRig *rig);

/** Whether part i is fitted: neither it nor anything it hangs on is off. */
bool ph_rig_is_fitted (const PhRig *rig, size_t i);

/** The same of every part at once, `hosts` from ph_rig_hosts: a new array. */
bool *ph_rig_fitted (const PhRig *rig, const int *hosts);

/** Whether part i is `ancestor` or hangs on it, however far out. */
bool ph_rig_hangs_on (const PhRig *rig, size_t i, size_t ancestor);

/** Nesting of part i: 1 on the bow, one more on each host; 0 where a cycle has no end. */
int ph_rig_nesting (const PhRig *rig, size_t i);

/** Takes over `part` at the end of the list / drops part i alone. */
void ph_rig_append (PhRig *rig, PhPart part);
void ph_rig_drop (PhRig *rig, size_t i);

/** Whether two rigs would be written as the same file. */
bool ph_rig_equal (const PhRig *a, const PhRig *b);
