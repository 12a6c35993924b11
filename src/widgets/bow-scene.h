/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The draw lists that all views of a document share: built once per change, when the first of them
 * is drawn. A part that was turned by a step is drawn on its way there for a moment; numbers, marks
 * and reports are the document's all the time.
 */
#pragma once

#include <gtk/gtk.h>

#include "document/document.h"
#include "scene/drawlist.h"
#include "widgets/number-ref.h"

G_BEGIN_DECLS

typedef struct
{
  PhDrawList *list;           /* what is looked at */
  PhDrawList *reference;      /* what it is compared with, plain; null: nothing */
  PhDrawList *plain;          /* what is looked at, as plain as the reference; null without one */
  const PhCompiled *compiled; /* of the list: where the drawn parts are */
  guint64 serial;             /* another number whenever the lists are others */
  gboolean easing;            /* a part is on its way */
  gint64 now_us;              /* the frame's time, while easing */
} PhBowScene;

/** The document's own, made for its first view; borrowed, kept with the document. Its lists hold
 * until the document changes and somebody asks again. */
const PhBowScene *ph_bow_scene_of (PhDocument *document);

/** Calls back for the owner whenever the lists are stale though the document did not change. */
void ph_bow_scene_follow (PhDocument *document, GObject *owner, GCallback callback);

/** An angle was just stepped from `from_deg`: draws its way in the frames of `widget`. Without
 * effect where the person wants no animations. */
void ph_bow_scene_ease (PhDocument *document, GtkWidget *widget, const PhNumberRef *ref,
                        double from_deg);

G_END_DECLS
