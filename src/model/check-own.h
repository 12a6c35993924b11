/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The pieces of ph_check_rig, for it and for the edits that touch one object only. Each adds
 * errors (notes where it says so) to `issues` and changes nothing.
 */
#pragma once

#include "model/fields.h"
#include "model/issue.h"
#include "model/rig.h"

/** Where a number stands, for its issues. */
typedef struct
{
  PhWhere where;
  const char *part;   /* label, or null */
  const char *prefix; /* "hand.", "hand.bubble_tests[0].", "" */
} PhSite;

/** Missing keys and ranges of one object; `kind_bit` picks a part's kind, else any bit. */
void ph_check_fields (PhObject object, const void *owner, uint64_t given, unsigned kind_bit,
                      const PhSite *site, PhIssues *issues);

/** Numbers of part i with what ties them to each other and to its host: ranges, inner < outer,
 * bore < diameter, fittings, a stack's mass, along_mm. */
void ph_check_part_numbers (const PhRig *rig, size_t i, int host, PhIssues *issues);
/** The rest of part i that needs no other part: id, name, sockets, limits, deviations. */
void ph_check_part_texts (const PhRig *rig, size_t i, PhIssues *issues);

/** Bow and archer with their lists and with what ties them to each other. */
void ph_check_bow (const PhRig *rig, PhIssues *issues);
void ph_check_archer (const PhRig *rig, PhIssues *issues);

/** Ids that repeat, unknown places, cycles, nesting, two fitted parts on one socket. `hosts` as
 * from ph_rig_hosts. */
void ph_check_tree (const PhRig *rig, const int *hosts, PhIssues *issues);
/** That the fitted rig weighs something. The tree must be sound. */
void ph_check_total_mass (const PhRig *rig, PhIssues *issues);

/** Sockets or mounts: ids, positions, axes. `list` is "sockets" or "mounts". */
void ph_check_sockets (const PhSocket *sockets, size_t n, const char *list, const PhSite *site,
                       PhIssues *issues);
/** Deviations: finite, 0 or more, as many numbers as the value; an unknown key is left to the
 * notes. */
void ph_check_sds (PhObject object, unsigned kind_bit, const PhSd *sds, size_t n,
                   const PhSite *site, PhIssues *issues);
/** An id's own form: 1–64 characters, no colon or control character, not "bow". */
void ph_check_id (const char *id, const char *key, const PhSite *site, PhIssues *issues);
/** At most 1,000 characters; null passes. */
void ph_check_length (const char *text, const char *key, const PhSite *site, PhIssues *issues);

#define PH_NAME_MOST 1000
#define PH_ID_MOST 64
#define PH_AXIS_LEAST 1e-6
/** Share of a mass by which its fittings may exceed it in rounding (0.1 g + 0.2 g in 0.3 g). */
#define PH_FITTING_SLACK 1e-12
