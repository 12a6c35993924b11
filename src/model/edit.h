/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a person does to a rig, one gesture a function. Each leaves a checked rig checked: a change
 * that would break it is refused with an issue and leaves the rig as it was. Undo is a whole copy
 * of the rig, kept by the caller.
 */
#pragma once

#include "model/issue.h"
#include "model/rig.h"

/** Sets a numeric field of part i (component 0–2 of a vector, else 0) in the file's unit. The key
 * must be one of the part's kind (asserted). False: refused, `*issues` says why. A key that may be
 * absent is taken away by NAN (along_mm: to the far end; aperture_mm) or 0 (modulus_gpa: rigid);
 * one number of an absent vector makes the others 0. Giving or taking such a key checks the
 * whole rig; any other number costs microseconds. `issues` may be null in every function here. */
bool ph_edit_set_number (PhRig *rig, size_t i, const char *key, int component, double value,
                         PhIssues *issues);
/** The same for the bow and the archer ("draw_length_mm", "mass_g", …; the hand's too:
 * "roll_stiffness_nm_per_rad"). */
bool ph_edit_set_bow_number (PhRig *rig, const char *key, int component, double value,
                             PhIssues *issues);
bool ph_edit_set_archer_number (PhRig *rig, const char *key, double value, PhIssues *issues);

/** A part's name; empty falls back to the id. Over 1,000 characters is refused. */
bool ph_edit_set_name (PhRig *rig, size_t i, const char *name, PhIssues *issues);
bool ph_edit_set_rig_name (PhRig *rig, const char *name, PhIssues *issues);
bool ph_edit_set_rig_notes (PhRig *rig, const char *notes, PhIssues *issues);

/** Fits or takes off. Refused where the socket is taken by another fitted part. */
bool ph_edit_set_off (PhRig *rig, size_t i, bool off, PhIssues *issues);
void ph_edit_set_locked (PhRig *rig, size_t i, bool locked);

/** Adds a copy of `part` on `on` under a fresh id made from its name (and a number after a name
 * that is taken); `*index`, where given, is its place. `along_mm` of a stack is kept where `on` is
 * a bar. */
bool ph_edit_add (PhRig *rig, const PhPart *part, const char *on, size_t *index, PhIssues *issues);

/** Puts a copy of `part` between part i and what that hangs on: it takes the place of part i, which
 * goes, with all that hangs on it, to the copy's socket `socket`, null for its far end. Ids and
 * names as in ph_edit_add; part i keeps its angles. */
bool ph_edit_insert (PhRig *rig, const PhPart *part, size_t i, const char *socket, size_t *index,
                     PhIssues *issues);

/** Removes part i and all that hangs on it. Returns how many went. */
size_t ph_edit_remove (PhRig *rig, size_t i);

/** A rig's fragment: part i and what hangs on it, first that part; for copy and duplicate. */
typedef struct
{
  PhPart *parts;
  size_t n;
} PhFragment;

PhFragment ph_edit_copy (const PhRig *rig, size_t i);
void ph_fragment_clear (PhFragment *fragment);
/** Puts a copy of the fragment on `on`, ids and names made fresh where taken; `*index` is its
 * first part. */
bool ph_edit_paste (PhRig *rig, const PhFragment *fragment, const char *on, size_t *index,
                    PhIssues *issues);
/** Copies part i with what hangs on it: on the first free place like its own (ph_edit_places);
 * where none is free the copy is put there switched off. */
bool ph_edit_duplicate (PhRig *rig, size_t i, size_t *index, PhIssues *issues);

/** Hangs part i elsewhere, with all that hangs on it. A stack along a bar stays along on another
 * bar (at most at its end), and goes to the far end of anything else. */
bool ph_edit_rehang (PhRig *rig, size_t i, const char *on, PhIssues *issues);

/** Where a part of that kind could hang now: new strings in a null-terminated array, free with
 * ph_edit_places_free. `moving` is the part to be re-hung (its own subtree is left out), or −1.
 * Free places only, its own among them when it moves; a place whose part is off counts as free.
 * A bar's id is its far end; "along" it there is always room, and the caller offers that itself. */
char **ph_edit_places (const PhRig *rig, PhPartKind kind, int moving);
void ph_edit_places_free (char **places);

/** Mirrors the rig for the other bow hand (physics: mirroring); twice is the very same rig. The
 * words left and right in the parts' names change places too; ids stay. */
void ph_edit_mirror (PhRig *rig);

/** `key` of an answer of the other side, and of the issue that refuses one. */
#define PH_KEY_MIRROR "mirror"

/** Puts part i, a fitted bar or bracket, with all that hangs on it, where its mirror image in the
 * bow's plane is. Off that plane it hangs on the mount or socket at its seat's mirror image then:
 * one that is there, else a new one, called after the old with "-mirrored", which goes again when
 * the branch comes back and nothing is left on it. Refused on the end of another part, which stays
 * where it is, and where another part sits at that place. */
bool ph_edit_mirror_part (PhRig *rig, size_t i, PhIssues *issues);
/** Whether that would make a mount or socket that is not there. */
bool ph_edit_mirror_makes_seat (const PhRig *rig, size_t i);
