/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A part (and what bow and part have in common) between JSON and the model: shared by rig files,
 * the clipboard and the catalogue.
 */
#pragma once

#include "model/part.h"
#include "store/reader.h"

/** Bits of `given` beyond the table of fields: lists and objects that stand empty in the file and
 * shall again. */
#define PH_GIVEN_LIST (UINT64_C (1) << 63) /* "sockets", "mounts", a check's "draws_deg" */
#define PH_GIVEN_SD (UINT64_C (1) << 62)
#define PH_GIVEN_LIMITS (UINT64_C (1) << 61)
#define PH_GIVEN_CHECKS (UINT64_C (1) << 60) /* "bubble_tests", in hand_given */

/** A part of the object `node`. False: it is no object or its kind is not known; `*part` then has
 * no more than its id and place. `also`: keys besides a part's own that the caller knows, or
 * null. `*part` is the caller's to clear in either case. */
bool ph_part_read (const PhPlace *place, PhJsonNode *node, const char *const *also, PhPart *part);
/** Its tree. The caller owns it. */
PhJsonNode *ph_part_write (const PhPart *part);

/** The id of a part's object for messages: "#N" (from 1) where it has none. */
const char *ph_part_read_label (const PhJsonNode *node, size_t index,
                                char buffer[PH_ISSUE_LABEL_SIZE]);

/** "sockets" or "mounts" (`key`) of an object; absent: none. */
void ph_sockets_read (const PhPlace *place, const PhJsonNode *object, const char *key,
                      PhSocket **sockets, size_t *n, uint64_t *given);
void ph_sockets_write (const PhSocket *sockets, size_t n, const char *key, uint64_t given,
                       PhJsonNode *object);

/** "sd" of an object; absent: none. */
void ph_sds_read (const PhPlace *place, const PhJsonNode *object, PhSd **sds, size_t *n,
                  uint64_t *given);
void ph_sds_write (const PhSd *sds, size_t n, uint64_t given, PhJsonNode *object);
