/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A part's numbers in the archer's words: out and in, up and down, what a tape reads, where it
 * hangs. Left and right are always the archer's. No toolkit here, so that it can be tested alone.
 */
#pragma once

#include "document/direction.h"
#include "document/document.h"

G_BEGIN_DECLS

/** A signed number as a word and a size. */
typedef struct
{
  const char *label; /* translated: "Out to the left" */
  int sign;          /* what is shown = sign × the file's value; ±1 */
  gboolean sideways; /* the file's + is to the archer's left: a slider for it runs right to left */
} PhDirectionWords;

/** A number of that way in words. 0 (to the digit that is shown) has no direction yet: "Out or in";
 * what is then typed without a sign turns outward, left, up or forward. */
PhDirectionWords ph_words_way (PhWay way, double value);

/** What a tape reads at the far end: "tip 116 mm left of the string" and "tip 236 mm below the
 * grip". Null where the part is not fitted. New strings. */
char *ph_words_tape_side (const PhCompiled *compiled, size_t part, PhUnits units);
char *ph_words_tape_height (const PhCompiled *compiled, size_t part, PhUnits units);

/** "28 mm behind, 150 mm below the grip": a point of the bow frame. New string. */
char *ph_words_point (const double at_mm[3], PhUnits units);

/** "catalogue · 12 in, 18 mm". New string. */
char *ph_words_source (const PhPart *part, PhUnits units);
char *ph_words_bow_source (const PhRig *rig);

/** A name inside a sentence: "Front bar" → "front bar", "V bar" and "DX 3" stay. New string. */
char *ph_words_inside (const char *name);

/** A place as in the rig file's `on`: "front bar's end", "bow: rear mount", "side mount: a", "along
 * the front bar". New string. */
char *ph_words_place (const PhRig *rig, const char *on, gboolean along);

/** "between the bow and the front bar": part i and what it hangs on. New string. */
char *ph_words_between (const PhRig *rig, size_t i);

G_END_DECLS
