/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What Level answers and which check it proposes, in the archer's words: out and in, up and down,
 * discs more and fewer. No toolkit here.
 */
#pragma once

#include "document/document-hand.h"

G_BEGIN_DECLS

/** "Back bar out 6°, to 26°", "Front weights 2 more, to 10", "Back bar with all on it to the other
 * side". `compiled` is that of `rig`, both as they are now. New string. */
char *ph_answer_change_words (const PhRig *rig, const PhCompiled *compiled,
                              const PhPartChange *change);

typedef struct
{
  char *title;  /* the changes: "Back bar out 6°, to 26° and back weights 1 fewer, to 4" */
  char *bubble; /* "bubble 0.1° left" */
  char *chance; /* "82 % sure within 0.5°"; null while the hand is assumed */
  char *how;    /* of the other side, where the part goes to a place with no thread; else null */
  char *costs; /* "+0 g · arm load +0.0 N · front pull +0.00 N·m · roll +1 %, nod ±0 %, …" */
  char *spoken; /* all of it */
} PhAnswerWords;

PhAnswerWords ph_answer_words_of (const PhRig *rig, const PhCompiled *compiled,
                                  const PhPartAnswers *answers, const PhPartAnswer *answer,
                                  PhUnits units);
void ph_answer_words_clear (PhAnswerWords *words);

/** "Read the rig as it is", or "Turn the back bar in to 10°, then read the bubble". New string. */
char *ph_check_task_words (const PhRig *rig, const PhCompiled *compiled, const PhPartCheck *check);
/** The first half alone, as a sentence: "Turn the back bar in to 10°." New string. */
char *ph_check_change_words (const PhRig *rig, const PhCompiled *compiled,
                             const PhPartChange *change);
/** "narrows ±1.1° to ±0.5°"; null where that is not known. New string. */
char *ph_check_gain_words (double now_deg, double then_deg);

G_END_DECLS
