/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Level over random rigs: an answer that is applied keeps its promise, and the answers are those
 * of a second, plain implementation that tries every whole step of every number and every pair on
 * a rig compiled anew each time.
 */
#include "model/answer.h"

#include "base/units.h"
#include "check.h"
#include "model/checks.h"
#include "model/report.h"
#include "physics/clearance.h"
#include "random-model.h"

/* The second implementation. */

typedef struct
{
  size_t part;
  int key; /* 0 swing, 1 lift, 2 count */
  double lo, hi;
} Knob;

typedef struct
{
  bool ok; /* weighs something, clear of the string, settles */
  double bubble, sd, mass, pull, ixx, iyy, izz;
} Plain;

typedef struct
{
  int knobs[2], steps[2], n;
  double chance, disturbance, bubble;
} PlainAnswer;

typedef struct
{
  PhRig *rig;
  PhHand hand;
  Knob knobs[64];
  int n_knobs;
  double keep; /* clearance */
  Plain now;
  double target, tolerance;
  PlainAnswer answers[4096];
  int n;
} Brute;

static double *
number_of (PhRig *rig, const Knob *knob)
{
  PhPart *part = &rig->parts[knob->part];
  return knob->key == 0 ? &part->swing_deg : knob->key == 1 ? &part->lift_deg : &part->count;
}

static double
clearance_of (const PhCompiled *compiled)
{
  double least = INFINITY;
  for (int i = 0; i < ph_assembly_count (compiled->assembly); i++)
    least = fmin (least, ph_clearance_of (compiled->assembly, i, &compiled->draw));
  return least;
}

static Plain
plain_of (const Brute *brute)
{
  PhCompiled *compiled = ph_compile_rig (brute->rig);
  PhMassProperties mass = ph_assembly_properties (compiled->assembly);
  PhRoll roll = ph_roll_of (mass.mass_kg, mass.com_m, &compiled->draw);
  Plain plain = { .mass = mass.mass_kg, .bubble = NAN };
  double cant;
  if (ph_cant_predict (&roll, brute->hand.stiffness_nm_per_rad, brute->hand.bias_nm, &cant) == PH_OK
      && clearance_of (compiled) >= brute->keep)
    {
      plain.ok = true;
      plain.bubble = asin (roll.cos_beta * sin (cant));
      /* d bubble/d cant by a central difference: nothing of the program's own. */
      double h = 1e-5;
      double slope =
          (asin (roll.cos_beta * sin (cant + h)) - asin (roll.cos_beta * sin (cant - h))) / (2 * h);
      plain.sd = ph_cant_sd (&roll, &brute->hand, cant) * slope;
    }
  plain.pull = mass.mass_kg * 9.80665 * mass.com_m.x;
  plain.ixx = mass.inertia_grip_kg_m2.xx;
  plain.iyy = mass.inertia_grip_kg_m2.yy;
  plain.izz = mass.inertia_grip_kg_m2.zz;
  ph_compiled_free (compiled);
  return plain;
}

static double
normal (double x)
{
  return 0.5 * erfc (-x / sqrt (2));
}

static void
add_knob (Brute *brute, size_t part, int key, const PhLimits *limits, double lo, double hi)
{
  Knob knob = { part, key, limits->given ? limits->lo : lo, limits->given ? limits->hi : hi };
  double now = *number_of (brute->rig, &knob);
  knob.lo = fmin (knob.lo, now);
  knob.hi = fmax (knob.hi, now);
  if (now - 1 >= knob.lo || now + 1 <= knob.hi)
    brute->knobs[brute->n_knobs++] = knob;
}

static void
find_knobs (Brute *brute)
{
  PhCompiled *compiled = ph_compile_rig (brute->rig);
  for (size_t i = 0; i < brute->rig->n_parts; i++)
    {
      const PhPart *part = &brute->rig->parts[i];
      bool bar = part->kind == PH_PART_BAR, turns = bar || part->kind == PH_PART_BRACKET;
      if (part->locked || part->off)
        continue;
      double x = ph_assembly_place (compiled->assembly, compiled->piece_of_part[i])->frame.a.x;
      if (turns && (x <= 0.7 || part->limit_swing.given))
        add_knob (brute, i, 0, &part->limit_swing, -60, 60);
      if (bar && (x <= 0.7 || part->limit_lift.given))
        add_knob (brute, i, 1, &part->limit_lift, -45, 45);
      if (part->kind == PH_PART_WEIGHTS)
        add_knob (brute, i, 2, &part->limit_count, 0, 12);
    }
  ph_compiled_free (compiled);
}

static double
miss_of (const Brute *brute, const Plain *plain)
{
  return plain->ok ? fabs (plain->bubble - brute->target) : (double)INFINITY;
}

static PlainAnswer
answer_of (const Brute *brute, const Plain *plain)
{
  double lo = brute->target - brute->tolerance, hi = brute->target + brute->tolerance;
  const Plain *now = &brute->now;
  return (PlainAnswer){
    .bubble = plain->bubble,
    .chance = normal ((hi - plain->bubble) / plain->sd) - normal ((lo - plain->bubble) / plain->sd),
    .disturbance = fabs (plain->mass - now->mass) / 0.1 + fabs (plain->pull - now->pull) / 0.2
                   + (fabs (plain->ixx / now->ixx - 1) + fabs (plain->iyy / now->iyy - 1)
                      + fabs (plain->izz / now->izz - 1))
                         / 0.05
  };
}

static bool
in_limits (const Knob *knob, double value)
{
  return value >= knob->lo && value <= knob->hi;
}

/* Tries a knob at every value; answers by the page's rule for singles. Whether one lands. */
static bool
try_single (Brute *brute, int i)
{
  const Knob *knob = &brute->knobs[i];
  double *number = number_of (brute->rig, knob), now = *number;
  static Plain row[401];
  int best = 0;
  double least = miss_of (brute, &brute->now);
  for (int k = -200; k <= 200; k++)
    {
      row[k + 200] = (Plain){ 0 };
      if (!in_limits (knob, now + k))
        continue;
      *number = now + k;
      row[k + 200] = plain_of (brute);
      double miss = miss_of (brute, &row[k + 200]);
      if (miss < least || (miss == least && isfinite (miss) && abs (k) < abs (best)))
        {
          least = miss;
          best = k;
        }
    }
  *number = now;
  const Plain *at = &row[best + 200];
  bool lands = least <= brute->tolerance, passes = false;
  for (int next = best - 1; next <= best + 1; next += 2)
    if (at->ok && row[next + 200].ok)
      passes |= (at->bubble < brute->target) != (row[next + 200].bubble < brute->target);
  if (best == 0 || (!lands && !passes))
    return false;
  PlainAnswer answer = answer_of (brute, at);
  answer.n = 1;
  answer.knobs[0] = i;
  answer.steps[0] = best;
  brute->answers[brute->n++] = answer;
  return lands;
}

static int
steps_of (const PlainAnswer *a)
{
  return abs (a->steps[0]) + (a->n > 1 ? abs (a->steps[1]) : 0);
}

/* Whether a comes before b in a group of alike chances. */
static bool
before (const PlainAnswer *a, const PlainAnswer *b)
{
  if (fabs (a->disturbance - b->disturbance) > 1e-9)
    return a->disturbance < b->disturbance;
  if (steps_of (a) != steps_of (b))
    return steps_of (a) < steps_of (b);
  if (a->knobs[0] != b->knobs[0])
    return a->knobs[0] < b->knobs[0];
  if (a->n != b->n)
    return a->n < b->n;
  if (a->n > 1 && a->knobs[1] != b->knobs[1])
    return a->knobs[1] < b->knobs[1];
  return a->steps[0] != b->steps[0] ? a->steps[0] < b->steps[0] : a->steps[1] < b->steps[1];
}

/* Takes out the one that comes first of n: selection, as the page says it. */
static PlainAnswer
take_first (PlainAnswer *answers, int *n)
{
  int first = -1;
  double best = -1;
  for (int i = 0; i < *n; i++)
    best = fmax (best, answers[i].chance);
  for (int i = 0; i < *n; i++)
    if (answers[i].chance >= best - 0.1 && (first < 0 || before (&answers[i], &answers[first])))
      first = i;
  PlainAnswer taken = answers[first];
  answers[first] = answers[--*n];
  return taken;
}

static void
try_pair (Brute *brute, int i, int j)
{
  static PlainAnswer found[100000];
  int n = 0;
  const Knob *one = &brute->knobs[i], *two = &brute->knobs[j];
  double *a = number_of (brute->rig, one), *b = number_of (brute->rig, two);
  double from_a = *a, from_b = *b;
  for (int p = -200; p <= 200; p++)
    for (int q = -200; q <= 200; q++)
      {
        if (!p || !q || !in_limits (one, from_a + p) || !in_limits (two, from_b + q))
          continue;
        *a = from_a + p;
        *b = from_b + q;
        Plain plain = plain_of (brute);
        if (miss_of (brute, &plain) > brute->tolerance)
          continue;
        found[n] = answer_of (brute, &plain);
        found[n].n = 2;
        found[n].knobs[0] = i;
        found[n].knobs[1] = j;
        found[n].steps[0] = p;
        found[n++].steps[1] = q;
      }
  *a = from_a;
  *b = from_b;
  if (n > 0)
    brute->answers[brute->n++] = take_first (found, &n);
}

/* Groups: the best chance left and all within 10 points, sorted; and so on. */
static void
put_in_order (Brute *brute)
{
  static PlainAnswer sorted[4096];
  int n = brute->n, done = 0;
  while (n > 0)
    {
      double best = -1;
      for (int i = 0; i < n; i++)
        best = fmax (best, brute->answers[i].chance);
      for (;;)
        {
          int first = -1;
          for (int i = 0; i < n; i++)
            if (brute->answers[i].chance >= best - 0.1
                && (first < 0 || before (&brute->answers[i], &brute->answers[first])))
              first = i;
          if (first < 0)
            break;
          sorted[done++] = brute->answers[first];
          brute->answers[first] = brute->answers[--n];
        }
    }
  memcpy (brute->answers, sorted, (size_t)done * sizeof *sorted);
}

static void
solve (Brute *brute, PhRig *rig, double target_deg, double tolerance_deg)
{
  bool fitted, landed = false;
  *brute = (Brute){ .rig = rig, .keep = -INFINITY };
  brute->target = target_deg * PH_PI / 180;
  brute->tolerance = tolerance_deg * PH_PI / 180;
  CHECK (ph_compile_hand (rig, &brute->hand, &fitted) == PH_OK);
  find_knobs (brute);
  PhCompiled *compiled = ph_compile_rig (rig);
  double clearance = clearance_of (compiled);
  ph_compiled_free (compiled);
  if (!isnan (rig->bow.brace_height_mm))
    brute->keep = clearance < 0.015 ? clearance - 1e-9 : 0.015;
  brute->now = plain_of (brute);
  if (miss_of (brute, &brute->now) <= brute->tolerance)
    return;
  for (int i = 0; i < brute->n_knobs; i++)
    landed |= try_single (brute, i);
  for (int i = 0; i < brute->n_knobs && !landed; i++)
    for (int j = i + 1; j < brute->n_knobs; j++)
      try_pair (brute, i, j);
  put_in_order (brute);
}

static void
compare (const Brute *brute, const PhPartAnswers *ours, int which)
{
  static const char *const keys[] = { "swing_deg", "lift_deg", "count" };
  CHECK ((int)ours->n == brute->n, "rig %d: %zu answers, by brute force %d", which, ours->n,
         brute->n);
  for (int i = 0; i < brute->n && i < (int)ours->n; i++)
    {
      const PlainAnswer *want = &brute->answers[i];
      const PhPartAnswer *got = &ours->answers[i];
      CHECK (got->n_changes == want->n, "rig %d answer %d", which, i);
      for (int c = 0; c < want->n && c < got->n_changes; c++)
        {
          const Knob *knob = &brute->knobs[want->knobs[c]];
          CHECK (got->changes[c].part == (int)knob->part, "rig %d answer %d", which, i);
          CHECK_TEXT (got->changes[c].key, keys[knob->key]);
          CHECK_NEAR (got->changes[c].from, *number_of (brute->rig, knob), 0);
          CHECK_NEAR (got->changes[c].to - got->changes[c].from, want->steps[c], 1e-12);
        }
      CHECK_NEAR (got->outcome.bubble_rad, want->bubble, 1e-12);
      /* The difference quotient of the other side carries ten digits. */
      CHECK_NEAR (got->chance, want->chance, 1e-9);
      CHECK_NEAR (got->disturbance, want->disturbance, 1e-10);
    }
}

/* Six sharp readings of other rigs in one hand: then chances are more than a few per cent, and
   groups of them matter. */
static void
teach (PhRig *rig, unsigned long long *state)
{
  size_t n;
  for (int i = 0; i < 6; i++)
    {
      rigs_add_check (rig, rig_random (state, 2500, 4000),
                      RIGS_3 (60, rig_random (state, -12, 12), rig_random (state, -60, 0)),
                      rig->archer.draw_length_mm, rig->archer.nock_height_mm, 0);
      PhBubbleCheck *checks = ph_compile_checks (rig, &n, NULL);
      PhCheck *last = &rig->archer.checks[rig->archer.n_checks - 1];
      last->sd_deg = 0.03;
      last->given |= ph_given_bit (PH_OBJECT_CHECK, "sd_deg");
      last->bubble_deg = ph_deg_from_rad (ph_check_predict (&checks[n - 1], 2.5, 0.05));
      free (checks);
    }
}

static void
answers_are_those_of_brute_force (void)
{
  static Brute brute;
  RandomModel random = { .state = 11, .narrow_deg = 5 };
  int singles = 0, pairs = 0, chains = 0;
  for (int i = 0; i < 70; i++)
    {
      PhRig *rig = random_model_rig (&random);
      if (!rig)
        continue;
      if (i % 2)
        {
          while (rig->archer.n_checks > 0)
            ph_edit_delete_check (rig, 0);
          teach (rig, &random.state);
        }
      /* Mostly too fine for one number alone, but within reach of two. */
      double target = ph_checks_predict_deg (rig) + rig_random (&random.state, -1.5, 1.5);
      double tolerance = i % 4 ? rig_random (&random.state, 0.003, 0.02) : 0.3;
      if (isnan (target))
        target = 0;
      PhLevelQuestion question = { PH_LEVEL_ALL, target, tolerance };
      PhPartAnswers ours = ph_part_answers_of (rig, &question);
      solve (&brute, rig, target, tolerance);
      compare (&brute, &ours, i);
      for (size_t a = 0; a < ours.n; a++)
        {
          singles += ours.answers[a].n_changes == 1;
          pairs += ours.answers[a].n_changes == 2;
          chains += ours.answers[a].n_changes == 2
                    && ph_rig_hangs_on (rig, (size_t)ours.answers[a].changes[1].part,
                                        (size_t)ours.answers[a].changes[0].part);
        }
      ph_part_answers_clear (&ours);
      ph_rig_free (rig);
    }
  printf ("# %d singles, %d pairs, %d of them on one chain\n", singles, pairs, chains);
  CHECK (singles > 20 && pairs > 100 && chains > 20);
}

static void
check_promise (const PhRig *rig, const PhPartAnswer *answer)
{
  PhRig *changed = ph_rig_copy (rig);
  PhIssues issues = { 0 };
  CHECK (ph_edit_apply_answer (changed, answer, &issues));
  ph_issues_clear (&issues);
  PhCompiled *compiled = ph_compile_rig (changed);
  PhReport *report = ph_report_new (changed, compiled);
  const PhOutcome *promise = &answer->outcome;
  CHECK_NEAR (ph_deg_from_rad (promise->bubble_rad), ph_deg_from_rad (report->bubble_rad), 1e-9);
  CHECK_REL (promise->mass_kg, report->mass.mass_kg, 1e-12);
  CHECK_NEAR (promise->front_pull_nm, report->pitch.moment_nm, 1e-11);
  CHECK_REL (promise->arm_load_n, report->pitch.bow_arm_load_n, 1e-12);
  CHECK_REL (promise->inertia_grip_kg_m2.x, report->mass.inertia_grip_kg_m2.xx, 1e-11);
  CHECK_REL (promise->inertia_grip_kg_m2.y, report->mass.inertia_grip_kg_m2.yy, 1e-11);
  CHECK_REL (promise->inertia_grip_kg_m2.z, report->mass.inertia_grip_kg_m2.zz, 1e-11);
  ph_report_free (report);
  ph_compiled_free (compiled);
  ph_rig_free (changed);
}

static void
applied_answer_keeps_its_promise (void)
{
  RandomModel random = { .state = 3 };
  int rigs = 0, answers = 0, lighter = 0;
  for (int i = 0; i < 300; i++)
    {
      PhRig *rig = random_model_rig (&random);
      if (!rig)
        continue;
      rigs++;
      double tolerance = i % 2 ? PH_LEVEL_TOLERANCE_DEG : 0.002;
      PhLevelQuestion question = { PH_LEVEL_ALL, NAN, tolerance };
      PhPartAnswers level = ph_part_answers_of (rig, &question);
      for (size_t a = 0; a < level.n; a++)
        check_promise (rig, &level.answers[a]);
      answers += (int)level.n;
      question = (PhLevelQuestion){ PH_LEVEL_LIGHTER, NAN, 3 };
      PhPartAnswers less = ph_part_answers_of (rig, &question);
      for (size_t a = 0; a < less.n; a++)
        {
          check_promise (rig, &less.answers[a]);
          CHECK (less.answers[a].outcome.mass_kg < less.now.mass_kg);
          CHECK (a == 0
                 || less.answers[a].outcome.mass_kg >= less.answers[a - 1].outcome.mass_kg - 1e-9);
          CHECK (fabs (ph_deg_from_rad (less.answers[a].outcome.bubble_rad) - less.target_deg)
                 <= 3 + 1e-9);
        }
      lighter += (int)less.n;
      ph_part_answers_clear (&level);
      ph_part_answers_clear (&less);
      ph_rig_free (rig);
    }
  printf ("# %d rigs, %d answers, %d lighter ones\n", rigs, answers, lighter);
  CHECK (rigs >= 100 && answers > 1000 && lighter > 100);
}

static void
rig_is_bit_for_bit_as_it_was (void)
{
  RandomModel random = { .state = 8, .narrow_deg = 4 };
  for (int i = 0; i < 20; i++)
    {
      PhRig *rig = random_model_rig (&random);
      if (!rig)
        continue;
      PhReady ready = ph_ready_of (rig);
      PhMass before = *ph_assembly_total (ready.task.assembly);
      PhWant want = { 0.02, 1e-4 };
      PhLevel level = ph_level_of (&ready.task, &want);
      PhMass after = *ph_assembly_total (ready.task.assembly);
      CHECK (memcmp (&before, &after, sizeof before) == 0);
      ph_level_clear (&level);
      ph_ready_clear (&ready);
      ph_rig_free (rig);
    }
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (answers_are_those_of_brute_force);
  CASE (applied_answer_keeps_its_promise);
  CASE (rig_is_bit_for_bit_as_it_was);
  return check_end ();
}
