/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the open rig's archer teaches it and what it proposes: bubble checks, limits and locks,
 * Level's answers, the next check. Edits are undo steps as in document.h; what is asked is computed
 * on demand, some milliseconds each.
 */
#pragma once

#include "document/document.h"
#include "model/answer.h"
#include "model/checks.h"

G_BEGIN_DECLS

/* Bubble checks. False: refused, error says why, nothing changed. `i` counts from 0; one that is
 * not there (any more) is refused. */
/** Records a reading of the rig as it stands. */
gboolean ph_document_add_check (PhDocument *self, const PhReading *reading, GError **error);
/** Its rig and its sealed prediction stay. */
gboolean ph_document_change_check (PhDocument *self, guint i, const PhReading *reading,
                                   GError **error);
gboolean ph_document_set_check_aside (PhDocument *self, guint i, gboolean aside, GError **error);
gboolean ph_document_delete_check (PhDocument *self, guint i, GError **error);

/* What may change, and how well it is known. */
gboolean ph_document_set_locked (PhDocument *self, const char *part_id, gboolean locked,
                                 GError **error);
/** `key`: "swing_deg", "lift_deg" or "count", one of the part's. */
gboolean ph_document_set_limits (PhDocument *self, const char *part_id, const char *key, double lo,
                                 double hi, GError **error);
/** Back to the program's own limits. */
gboolean ph_document_clear_limits (PhDocument *self, const char *part_id, const char *key,
                                   GError **error);
gboolean ph_document_set_wanted_bubble (PhDocument *self, double deg, GError **error);
/** `part_id` may be "bow". */
gboolean ph_document_set_source (PhDocument *self, const char *part_id, PhSource source,
                                 GError **error);

/* What it proposes. Part indices are those of ph_document_get_rig until the next edit. */
/** A new array of `*n`: free (). */
PhPartStep *ph_document_steps (PhDocument *self, size_t *n);
/** Free with ph_part_answers_clear. */
PhPartAnswers ph_document_level (PhDocument *self, const PhLevelQuestion *question);
/** Does what an answer of ph_document_level says, as one undo step: "level: back bar out 20° →
 * 26°", "side mount to the other side". Refused where the rig is not the one that was asked about,
 * and where the other side has no place for the part. */
gboolean ph_document_apply_answer (PhDocument *self, const PhPartAnswer *answer, GError **error);
/** Why ph_document_apply_answer would refuse it, as a sentence; null: it would not. (transfer full)
 */
char *ph_document_answer_obstacle (PhDocument *self, const PhPartAnswer *answer);
/** Shows what an answer would make of the rig (ph_document_get_shown, with the open rig to compare
 * with) without touching it; null ends that, and so does any edit. One that does not fit the rig
 * ends it too. Told by notify::flipped. */
void ph_document_preview_answer (PhDocument *self, const PhPartAnswer *answer);
PhPartChecks ph_document_next_checks (PhDocument *self);

G_END_DECLS
