/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The report's numbers. Two whole rigs are held against values computed apart: a second
 * implementation of the physics pages in numpy/scipy 1.24/1.10 (dense tensors R I Rᵀ, brentq,
 * least_squares, SLSQP for distances), written without this code. The rest are sums and
 * symmetries that any right report has, and single numbers worked out by hand.
 */
#include "model/report.h"

#include "base/units.h"
#include "check.h"
#include "model/edit.h"
#include "rigs.h"

/** The project's own promise for two implementations of its pages. */
#define PAGES 1e-9

static PhReport *
report_of (PhRig *rig)
{
  CHECK (rigs_sound (rig, true));
  PhCompiled *compiled = ph_compile_rig (rig);
  PhReport *report = ph_report_new (rig, compiled);
  ph_compiled_free (compiled);
  return report;
}

static void
check_sym3 (PhSym3 got, const double want[6], double scale)
{
  CHECK_NEAR (got.xx, want[0], scale);
  CHECK_NEAR (got.yy, want[1], scale);
  CHECK_NEAR (got.zz, want[2], scale);
  CHECK_NEAR (got.xy, want[3], scale);
  CHECK_NEAR (got.xz, want[4], scale);
  CHECK_NEAR (got.yz, want[5], scale);
}

static void
example_has_the_numbers_computed_apart (void)
{
  PhRig *rig = rigs_example ();
  PhReport *r = report_of (rig);
  CHECK_REL (r->mass.mass_kg, 2.9735499999999999, PAGES);
  CHECK_REL (r->mass.com_m.x, 0.0678280002830685, PAGES);
  CHECK_REL (r->mass.com_m.y, 0.002081188622051536, PAGES);
  CHECK_REL (r->mass.com_m.z, -0.023320270126670078, PAGES);
  static const double grip[] = { 0.19230737112371699,  0.4290723957223681,  0.24432327549964006,
                                 0.009033113575355477, 0.02661432064046069, 0.006171482174073557 };
  static const double com[] = { 0.19067737108895433,  0.41377504915965596, 0.23063017002341488,
                                0.009452868404980682, 0.02191085651898917, 0.0060271642526696775 };
  static const double nock[] = { 0.20337760841947033, 2.0016517473371898,  1.805832389818708,
                                 0.00494869141346859, 0.16327913744581832, 0.006431399948011813 };
  check_sym3 (r->mass.inertia_grip_kg_m2, grip, PAGES * 0.1);
  check_sym3 (r->mass.inertia_com_kg_m2, com, PAGES * 0.1);
  check_sym3 (r->inertia_nock_kg_m2, nock, PAGES);
  CHECK_REL (r->mass.principal_kg_m2[0], 0.18083666690166145, PAGES);
  CHECK_REL (r->mass.principal_kg_m2[1], 0.23980543656897194, PAGES);
  CHECK_REL (r->mass.principal_kg_m2[2], 0.4144404868013918, PAGES);
  CHECK_REL (r->roll_moment_nm, -0.06056612424858277, PAGES);
  CHECK_REL (r->above_line_m, -0.01896558025333626, PAGES);
  CHECK_REL (r->gravity_stiffness_nm_per_rad, 0.5519306024927844, PAGES);
  CHECK_REL (r->pitch.moment_nm, 1.977902750537947, PAGES);
  CHECK_REL (r->pitch.nock_load_n, 2.9968223492999195, PAGES);
  CHECK_REL (r->pitch.bow_arm_load_n, 32.15738645679992, PAGES);
  CHECK_REL (r->pitch.shoulder_moment_nm, 31.441112944030607, PAGES);
  CHECK_REL (r->pitch.release_pitch_rad_s2, 4.609718010891924, PAGES);
  CHECK_REL (r->cross_coupling, 0.1227820833777751, PAGES);
  ph_report_free (r);
  ph_rig_free (rig);
}

/* least_squares steps by differences, which leaves its K and B good to some 1e-7. */
static void
example_s_hand_is_the_one_fitted_apart (void)
{
  PhRig *rig = rigs_example ();
  PhReport *r = report_of (rig);
  CHECK (r->hand_fitted && r->stable && !r->reason);
  CHECK_REL (r->hand.stiffness_nm_per_rad, 2.02098978717371, 1e-6);
  CHECK_REL (r->hand.bias_nm, -0.03423932777672358, 1e-5);
  CHECK_REL (r->cant_rad, -0.036833230004222554, 1e-5);
  CHECK_NEAR (r->cant_90_rad[1] - r->cant_90_rad[0], 2 * 1.6448536269514722 * r->cant_sd_rad,
              1e-15);
  CHECK_NEAR ((r->cant_90_rad[1] + r->cant_90_rad[0]) / 2, r->cant_rad, 1e-15);
  ph_report_free (r);
  ph_rig_free (rig);
}

static void
odd_rig_has_the_numbers_computed_apart (void)
{
  PhRig *rig = rigs_odd ();
  PhReport *r = report_of (rig);
  CHECK_REL (r->mass.mass_kg, 2.1357499999999994, PAGES);
  CHECK_REL (r->mass.com_m.x, 0.024032057054087192, PAGES);
  CHECK_REL (r->mass.com_m.y, 0.005119471727223561, PAGES);
  CHECK_REL (r->mass.com_m.z, -0.00278479434519454, PAGES);
  static const double grip[] = {
    0.2954515364463218,     0.3325897776330478,   0.03447572816682132,
    -0.0028542184268244963, 0.009166070367458614, 0.0011837142639694975
  };
  static const double nock[] = { 0.29934454640814173,  1.4938498373732725, 1.191842777945226,
                                 -0.01064463054258462, 0.0763256864740481, 0.0016210707336262063 };
  check_sym3 (r->mass.inertia_grip_kg_m2, grip, PAGES * 0.1);
  check_sym3 (r->inertia_nock_kg_m2, nock, PAGES);
  CHECK_REL (r->roll_moment_nm, -0.10705647127236029, PAGES);
  CHECK_REL (r->above_line_m, -0.0014333692040588966, PAGES);
  CHECK (!r->hand_fitted && r->stable);
  CHECK_REL (r->cant_rad, -0.02783145911540025, PAGES);
  CHECK_REL (r->bubble_rad, -0.027787692495497396, PAGES);
  CHECK (isnan (r->cant_90_rad[0]) && isnan (r->cant_90_rad[1]), "no interval for a guess");
  CHECK_REL (r->pitch.bow_arm_load_n, 21.650995806075343, PAGES);
  CHECK_REL (r->pitch.shoulder_moment_nm, 25.496389911203895, PAGES);
  CHECK_REL (r->pitch.release_pitch_rad_s2, 1.5133979460886575, PAGES);
  /* The ring along the bar and the stack beyond the damper, in their places. */
  CHECK (r->n_shares == 9 && r->shares[1].part == 0 && r->shares[4].part == 3);
  CHECK_REL (r->shares[1].com_m.x, 0.28235845385223246, PAGES);
  CHECK_REL (r->shares[1].com_m.y, 0.025570969330160346, PAGES);
  CHECK_REL (r->shares[1].com_m.z, -0.09730916218579429, PAGES);
  CHECK_REL (r->shares[4].com_m.x, 0.08680992229056016, PAGES);
  CHECK_REL (r->shares[5].com_m.y, 0.03, PAGES); /* the bracket across the bow: 18 + 12 mm */
  CHECK_REL (r->shares[6].com_m.x, 0.0284971864443607, PAGES);
  ph_report_free (r);
  ph_rig_free (rig);
}

/* SLSQP stops some 1e-8 short of a distance. */
static void
clearances_are_those_computed_apart (void)
{
  static const double example[] = {
    NAN, 0.231, 0.9818842683810758, NAN, 0.048618315323339635, 0.10333658569197395
  };
  PhRig *rig = rigs_example ();
  PhReport *r = report_of (rig);
  CHECK (r->n_parts == 6);
  for (size_t i = 0; i < r->n_parts; i++)
    CHECK_NEAR (r->part_clearance_m[i], example[i], 1e-7);
  CHECK (r->clearance_part == 4);
  CHECK (r->clearance_m == r->part_clearance_m[4]);
  CHECK (r->notes.n == 0);
  ph_report_free (r);
  rig->bow.brace_height_mm = (double)NAN;
  rig->bow.given &= ~ph_given_bit (PH_OBJECT_BOW, "brace_height_mm");
  r = report_of (rig);
  CHECK (isnan (r->clearance_m) && r->clearance_part == -1, "the string's way is not known");
  ph_report_free (r);
  ph_rig_free (rig);
}

static void
part_near_the_string_is_noted_by_its_id (void)
{
  PhRig *rig = rigs_example ();
  rigs_set (&rig->parts[4], "lift_deg", 60);
  rigs_set (&rig->parts[4], "swing_deg", 0);
  PhReport *r = report_of (rig);
  CHECK (r->clearance_m < 0.015);
  bool noted = false;
  for (size_t i = 0; i < r->notes.n; i++)
    noted |= r->notes.items[i].is_note && r->notes.items[i].where == PH_WHERE_PART
             && strcmp (r->notes.items[i].part, rig->parts[r->clearance_part].id) == 0
             && strstr (r->notes.items[i].text, "15 mm");
  CHECK (noted);
  ph_report_free (r);
  ph_rig_free (rig);
}

static void
shares_add_up_to_the_totals (void)
{
  for (int which = 0; which < 2; which++)
    {
      PhRig *rig = which ? rigs_odd () : rigs_example ();
      PhReport *r = report_of (rig);
      double mass = 0, roll = 0, pitch = 0;
      for (size_t i = 0; i < r->n_shares; i++)
        {
          mass += r->shares[i].mass_kg;
          roll += r->shares[i].roll_moment_nm;
          pitch += r->shares[i].pitch_moment_nm;
        }
      /* Sums of ten terms of order 1: a few last bits. */
      CHECK_NEAR (mass, r->mass.mass_kg, 1e-14);
      CHECK_NEAR (roll, r->roll_moment_nm, 1e-14);
      CHECK_NEAR (pitch, r->pitch.moment_nm, 1e-14);
      CHECK (r->shares[0].part == -1, "the bow comes first");
      ph_report_free (r);
      ph_rig_free (rig);
    }
}

static void
part_without_mass_has_no_centre_and_changes_nothing (void)
{
  PhRig *rig = rigs_example (), *more = rigs_example ();
  ph_rig_append (more, rigs_stack ("knob", "back-stack", 0));
  PhReport *r = report_of (rig), *m = report_of (more);
  const PhShare *knob = &m->shares[m->n_shares - 1];
  CHECK (knob->part == 6 && isnan (knob->com_m.x) && isnan (knob->com_m.z));
  CHECK (knob->roll_moment_nm == 0 && !signbit (knob->roll_moment_nm));
  CHECK_REL (m->mass.com_m.y, r->mass.com_m.y, 1e-14);
  CHECK_REL (m->mass.inertia_grip_kg_m2.yy, r->mass.inertia_grip_kg_m2.yy, 1e-14);
  CHECK (isnan (m->part_clearance_m[6]), "a stack of no discs is not counted");
  ph_report_free (r);
  ph_report_free (m);
  ph_rig_free (rig);
  ph_rig_free (more);
}

static void
part_that_is_off_is_as_good_as_gone (void)
{
  PhRig *off = rigs_example (), *gone = rigs_example ();
  off->parts[3].off = true;
  ph_edit_remove (gone, 3);
  PhReport *a = report_of (off), *b = report_of (gone);
  CHECK (a->n_shares == 4 && b->n_shares == 4);
  CHECK (memcmp (&a->mass, &b->mass, sizeof a->mass) == 0);
  CHECK (a->cant_rad == b->cant_rad && a->clearance_m == b->clearance_m);
  ph_report_free (a);
  ph_report_free (b);
  ph_rig_free (off);
  ph_rig_free (gone);
}

static void
weight_moved_outward_pulls_in_proportion (void)
{
  /* 50 g along a level front bar on the bow's plane: 0.05 kg · g · Δx. */
  PhRig *rig = rigs_example ();
  rigs_set (&rig->parts[1], "lift_deg", 0);
  PhPart ring = rigs_stack ("ring", "front-bar", 1);
  rigs_set (&ring, "each_g", 50);
  rigs_set (&ring, "bore_mm", 18);
  rigs_set (&ring, "along_mm", 100);
  ph_rig_append (rig, ring);
  PhReport *near = report_of (rig);
  rigs_set (&rig->parts[6], "along_mm", 400);
  PhReport *far = report_of (rig);
  CHECK_NEAR (far->pitch.moment_nm - near->pitch.moment_nm, 0.05 * PH_GRAVITY * 0.3, 1e-13);
  CHECK_NEAR (far->roll_moment_nm, near->roll_moment_nm, 1e-14);
  ph_report_free (near);
  ph_report_free (far);
  ph_rig_free (rig);
}

static void
front_back_and_side_ounces_add_up (void)
{
  PhRig *rig = rigs_example ();
  PhReport *r = report_of (rig);
  CHECK_REL (r->front_g, 8 * 28.35, 1e-14);
  CHECK_REL (r->side_g, 5 * 28.35, 1e-14); /* 122 mm off the plane */
  CHECK (r->back_g == 0);
  ph_report_free (r);
  rigs_set (&rig->parts[4], "swing_deg", 2); /* now some 25 mm off it */
  r = report_of (rig);
  CHECK (fabs (r->shares[6].com_m.y) < 0.06);
  CHECK_REL (r->back_g, 5 * 28.35, 1e-14);
  CHECK (r->side_g == 0);
  ph_report_free (r);
  ph_rig_free (rig);
}

static void
flexible_bars_bend_as_beams (void)
{
  PhRig *rig = rigs_example ();
  PhReport *r = report_of (rig);
  CHECK (r->n_bars == 1 && r->bars[0].part == 1);
  /* Roark, table 8.1, cases 1a and 2a: P L³/(3EI) + w L⁴/(8EI), times the cosine of 8°. */
  double ei = 100e9 * PH_PI / 64 * (pow (0.018, 4) - pow (0.016, 4)), l = 0.762;
  double down = PH_GRAVITY * cos (8 * PH_PI / 180);
  double tip = (0.025 + 8 * 0.02835) * down, own = 0.105 / l * down;
  CHECK_REL (r->bars[0].beam.droop_m, tip * l * l * l / (3 * ei) + own * pow (l, 4) / (8 * ei),
             1e-12);
  CHECK_REL (r->bars[0].beam.slope_rad, tip * l * l / (2 * ei) + own * l * l * l / (6 * ei), 1e-12);
  /* Rayleigh with the fittings and weights as a tip mass, 0.05 % high at most (n is 2.4). */
  double mass = 0.025 + 8 * 0.02835 + 33. / 140 * 0.105;
  CHECK_REL (r->bars[0].beam.clamped_hz, sqrt (3 * ei / (l * l * l * mass)) / (2 * PH_PI), 5e-4);
  ph_report_free (r);
  ph_rig_free (rig);
}

static void
heavy_side_is_the_one_it_leans_to (void)
{
  PhRig *rig = rigs_example ();
  PhReport *r = report_of (rig);
  CHECK (ph_report_heavy_side (r) == -1 && r->roll_moment_nm < 0);
  ph_report_free (r);
  rigs_set (&rig->parts[4], "swing_deg", -20);
  r = report_of (rig);
  CHECK (ph_report_heavy_side (r) == 1 && r->roll_moment_nm > 0);
  ph_report_free (r);
  while (rig->n_parts)
    ph_rig_drop (rig, 0);
  rig->bow.com_mm[1] = 0;
  r = report_of (rig);
  CHECK (ph_report_heavy_side (r) == 0 && !signbit (r->roll_moment_nm));
  ph_report_free (r);
  ph_rig_free (rig);
}

static void
rig_that_topples_has_a_reason_and_no_number (void)
{
  /* Three kilograms standing 400 mm above the grip, a little to the left, in a weak hand. */
  PhRig *rig = rigs_example ();
  while (rig->n_parts)
    ph_rig_drop (rig, 0);
  rigs_set_bow (rig, 3000, RIGS_3 (0, 10, 400), RIGS_3 (290, 295, 60));
  rig->archer.checks[0].aside = true;
  rigs_set_archer (rig, "roll_stiffness_nm_per_rad", 0.5);
  PhReport *r = report_of (rig);
  CHECK (!r->stable && r->reason != NULL);
  CHECK_TEXT (r->reason, "this rig topples rather than settles");
  CHECK (isnan (r->cant_rad) && isnan (r->bubble_rad) && isnan (r->cant_sd_rad));
  CHECK (isfinite (r->roll_moment_nm) && r->gravity_stiffness_nm_per_rad < 0);
  ph_report_free (r);
  ph_rig_free (rig);
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (example_has_the_numbers_computed_apart);
  CASE (example_s_hand_is_the_one_fitted_apart);
  CASE (odd_rig_has_the_numbers_computed_apart);
  CASE (clearances_are_those_computed_apart);
  CASE (part_near_the_string_is_noted_by_its_id);
  CASE (shares_add_up_to_the_totals);
  CASE (part_without_mass_has_no_centre_and_changes_nothing);
  CASE (part_that_is_off_is_as_good_as_gone);
  CASE (weight_moved_outward_pulls_in_proportion);
  CASE (front_back_and_side_ounces_add_up);
  CASE (flexible_bars_bend_as_beams);
  CASE (heavy_side_is_the_one_it_leans_to);
  CASE (rig_that_topples_has_a_reason_and_no_number);
  return check_end ();
}
