/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a rig looks like, as a list of solids: the bow from its own few numbers, the parts at their
 * true size and place from the physics. Nothing here enters the physics. Shapes: common practice
 * and our own eye, no source. Built once per change of the rig (tens of microseconds; a rig of 256
 * parts some hundred); moving the camera needs no new list.
 */
#pragma once

#include "model/report.h"
#include "scene/solid.h"

typedef struct
{
  int selected;    /* index in rig->parts, PH_PART_BOW or PH_PART_NONE */
  bool show_arrow; /* the arrow, nock to point */
  bool show_hand;  /* the bow hand and forearm */
  bool plain;      /* for a mere outline: a bar or a stack is one cylinder */
} PhDrawOptions;

/** Nothing selected, neither arrow nor hand, discs apart. */
PhDrawOptions ph_draw_options_default (void);

/** Axle to axle (tip to tip) in mm: the file's, or for the drawing alone a usual one. */
float ph_bow_axle_to_axle (const PhBow *bow);

/** Over this many discs a stack is drawn as one cylinder: nobody counts them any more. */
#define PH_DISCS_MOST 60

typedef struct PhDrawList PhDrawList;

/** `compiled` and `report` must be those of the checked rig; `report` may be null, then no part is
 * hatched. Free with ph_draw_list_free. */
PhDrawList *ph_draw_list_new (const PhRig *rig, const PhCompiled *compiled, const PhReport *report,
                              const PhDrawOptions *options);
void ph_draw_list_free (PhDrawList *list);

size_t ph_draw_list_count (const PhDrawList *list);
const PhItem *ph_draw_list_item (const PhDrawList *list, size_t i);
/** Sections of a sweep, its holes, points of a line. */
const PhStation *ph_draw_list_stations (const PhDrawList *list, const PhItem *sweep);
const PhHole *ph_draw_list_holes (const PhDrawList *list, const PhItem *sweep);
const PhPoint *ph_draw_list_points (const PhDrawList *list, const PhItem *line);

/** Selection is only a mark on the list: it may change without a new one. */
int ph_draw_list_get_selected (const PhDrawList *list);
void ph_draw_list_select (PhDrawList *list, int part);

/** The list as text, one solid a line, numbers to 0.01 mm, whatever the locale: for tests. New
 * string. */
char *ph_draw_list_dump (const PhDrawList *list);

/** "riser", "limb", "cam", … and "tube", "box", …: the words of the dump. */
const char *ph_role_word (PhRole role);
const char *ph_solid_word (PhSolidKind solid);
