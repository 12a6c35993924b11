/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draw lists that all views of a document share: built once per change, when the first of them
 * is drawn.
 */
#pragma once

#include "document/document.h"
#include "scene/drawlist.h"

G_BEGIN_DECLS

typedef struct
{
  PhDrawList *list;      /* what is looked at */
  PhDrawList *reference; /* what it is compared with, plain; null: nothing */
  PhDrawList *plain;     /* what is looked at, as plain as the reference; null without one */
  guint64 serial;        /* another number whenever the lists are others */
} PhBowScene;

/** The document's own, made for its first view; borrowed, kept with the document. Its lists hold
 * until the document changes and somebody asks again. */
const PhBowScene *ph_bow_scene_of (PhDocument *document);

G_END_DECLS
