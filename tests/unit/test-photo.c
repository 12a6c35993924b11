/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The tilt from points on a photo. Points are made by turning complex numbers by a known angle, and
 * the standard deviations are held against seeded clicks that scatter.
 */
#include "physics/photo.h"

#include <complex.h>

#include "base/units.h"
#include "check.h"
#include "physics/cant.h"

#define DEG(x) ph_rad_from_deg (x)

/* A point of the picture: complex numbers with the imaginary axis up, the picture's y runs down. */
static PhPhotoPoint
pixel (double complex z, double sd)
{
  return (PhPhotoPoint){ creal (z), -cimag (z), sd };
}

/* `z` about `about`, turned against the clock as complex numbers turn. */
static double complex
turned (double complex z, double complex about, double deg)
{
  return about + (z - about) * cexp (I * DEG (deg));
}

static PhPhotoReading
read_pair (double string_deg, double edge_deg, bool mirrored)
{
  const double complex middle = 500 - 700 * I, edge_at = 820 - 640 * I;
  const PhPhotoPoint string[2] = { pixel (turned (middle + 400 * I, middle, string_deg), 1.5),
                                   pixel (turned (middle - 300 * I, middle, string_deg), 1.5) };
  /* From below upward: lines have no ends. */
  const PhPhotoPoint edge[2] = { pixel (turned (edge_at - 500 * I, edge_at, edge_deg), 1.5),
                                 pixel (turned (edge_at + 350 * I, edge_at, edge_deg), 1.5) };
  return ph_photo_read_lines (&(PhPhotoLine){ string, 2 }, &(PhPhotoLine){ edge, 2 }, mirrored);
}

/* Trade fact: from behind, a bow whose top limb stands right of its grip leans right, and its
   bubble runs left. Common practice, no source. */
static void
top_limb_to_the_right_is_positive (void)
{
  const PhPhotoPoint string[2] = { { 520, 100, 1 }, { 500, 900, 1 } };
  const PhPhotoPoint edge[2] = { { 700, 100, 1 }, { 700, 900, 1 } };
  PhPhotoLine s = { string, 2 }, e = { edge, 2 };
  PhPhotoReading behind = ph_photo_read_lines (&s, &e, false);
  CHECK (behind.refused == PH_NOT_REFUSED);
  /* 20 px in 800 px: a right-angled triangle. */
  CHECK_NEAR (behind.tilt_rad, asin (20 / sqrt (20 * 20 + 800 * 800)), 1e-15);
  CHECK_NEAR (ph_photo_read_lines (&s, &e, true).tilt_rad, -behind.tilt_rad, 0);
  CHECK (isnan (behind.marks) && isnan (behind.marks_sd));
}

/* Rounding of coordinates of some hundreds: 1e-13 rad. */
static void
turned_points_give_the_angle_back (void)
{
  const double angles[] = { -59.9, -30, -5, -1.2, -0.1, 0, 0.3, 2, 17, 45, 59.9 };
  for (size_t i = 0; i < sizeof angles / sizeof *angles; i++)
    {
      /* Against the clock is to the left: negative. */
      CHECK_NEAR (read_pair (angles[i], 0, false).tilt_rad, DEG (-angles[i]), 1e-13);
      CHECK_NEAR (read_pair (angles[i], 0, true).tilt_rad, DEG (angles[i]), 1e-13);
    }
}

static void
how_the_camera_is_held_does_not_matter (void)
{
  for (int roll = -180; roll <= 180; roll += 15)
    CHECK_NEAR (read_pair (1.7 + roll, roll, false).tilt_rad, DEG (-1.7), 1e-12);
}

/* A camera level and straight behind: the picture of the plumb direction at roll φ about the
   grip–nock line (Rodrigues' formula), against the bubble's asin (cosβ sinφ). */
static void
the_picture_shows_what_the_bubble_shows (void)
{
  const double beta = atan (40.0 / 700);
  for (double deg = -15; deg <= 15; deg += 2.5)
    {
      double phi = DEG (deg), u[3] = { cos (beta), 0, -sin (beta) }, z[3] = { 0, 0, 1 }, r[3];
      double cross[3] = { u[1] * z[2] - u[2] * z[1], u[2] * z[0] - u[0] * z[2],
                          u[0] * z[1] - u[1] * z[0] };
      for (int c = 0; c < 3; c++)
        r[c] = z[c] * cos (phi) + cross[c] * sin (phi) + u[c] * u[2] * (1 - cos (phi));
      /* From behind, y (to the archer's left) runs to the picture's left. */
      const PhPhotoPoint string[2] = { { 500 - 1000 * r[1], 1500 - 1000 * r[2], 1 },
                                       { 500, 1500, 1 } };
      const PhPhotoPoint edge[2] = { { 900, 300, 1 }, { 900, 1500, 1 } };
      double tilt =
          ph_photo_read_lines (&(PhPhotoLine){ string, 2 }, &(PhPhotoLine){ edge, 2 }, false)
              .tilt_rad;
      /* What the header claims, doubled for the next order. */
      CHECK_NEAR (tilt, asin (cos (beta) * sin (phi)),
                  beta * beta * pow (fabs (phi), 5) / 4 + 1e-13);
    }
}

/* The regression line of the statistics books, for points whose x is exact: slope Sxy/Sxx. Total
   least squares differs from it by the scatter squared over the length squared. */
static void
several_points_are_fitted (void)
{
  const double off[5] = { 0.6, -0.9, 0.2, 0.8, -0.7 };
  PhPhotoPoint points[5];
  double sxx = 0, sxy = 0, mean = 0;
  for (int i = 0; i < 5; i++)
    {
      points[i] = (PhPhotoPoint){ 100 + 200 * i, 300 + 12 * i + off[i], 1 };
      mean += points[i].y / 5;
    }
  for (int i = 0; i < 5; i++)
    {
      double x = points[i].x - 500;
      sxx += x * x;
      sxy += x * (points[i].y - mean);
    }
  PhPhotoFit fit = ph_photo_fit (&(PhPhotoLine){ points, 5 });
  CHECK (fit.refused == PH_NOT_REFUSED);
  CHECK_NEAR (fit.dy / fit.dx, sxy / sxx, 1e-6);
  CHECK_NEAR (fit.x, 500, 1e-10);
  CHECK_NEAR (fit.y, mean, 1e-10);
  /* The points scatter less than 1 px: then their own deviation counts, sd of a slope σ/√Sxx
     (Bevington, Data Reduction and Error Analysis, from memory). */
  CHECK_REL (fit.sd_rad, 1 / sqrt (sxx), 2e-3);
}

/* Two points: σ√2 over their distance. */
static void
two_points_know_their_direction_by_their_distance (void)
{
  const PhPhotoPoint points[2] = { { 0, 0, 2 }, { 300, 400, 2 } };
  CHECK_REL (ph_photo_fit (&(PhPhotoLine){ points, 2 }).sd_rad, 2 * sqrt (2) / 500, 1e-12);
  const PhPhotoPoint uneven[2] = { { 0, 0, 3 }, { 300, 400, 4 } };
  CHECK_REL (ph_photo_fit (&(PhPhotoLine){ uneven, 2 }).sd_rad, 5.0 / 500, 1e-12);
}

static void
points_that_scatter_widen_it_and_a_bend_is_refused (void)
{
  PhPhotoPoint points[3] = { { 0, 0, 1 }, { 300, 3, 1 }, { 600, 0, 1 } };
  PhPhotoLine line = { points, 3 };
  /* Residuals −1, 2, −1: Σ = 6 with one degree of freedom. Sxx = 2·300². */
  CHECK_REL (ph_photo_fit (&line).sd_rad, sqrt (6) / sqrt (2 * 300.0 * 300), 1e-3);
  points[1].y = 6;
  CHECK (ph_photo_fit (&line).refused == PH_REFUSED_CROOKED);
  CHECK (isnan (ph_photo_fit (&line).dx) && isnan (ph_photo_fit (&line).sd_rad));
}

/* Clicks that scatter: one seed, Box and Muller's two normals a pair of uniforms. */
static double
normal (unsigned long long *seed)
{
  double u[2];
  for (int i = 0; i < 2; i++)
    {
      *seed = *seed * 6364136223846793005ULL + 1442695040888963407ULL; /* Knuth's MMIX */
      u[i] = ((double)(*seed >> 11) + 0.5) / 9007199254740992.0;
    }
  return sqrt (-2 * log (u[0])) * cos (2 * PH_PI * u[1]);
}

static PhPhotoPoint
clicked (PhPhotoPoint meant, unsigned long long *seed)
{
  meant.x += meant.sd_px * normal (seed);
  meant.y += meant.sd_px * normal (seed);
  return meant;
}

#define DRAWS 40000
/* A standard deviation from 40 000 draws is itself known to 1/√80000 = 0.35 %; four of them, and
   half a per cent for what is beyond the first order. */
#define SD_ALLOWED 0.02

static void
deviation_of_lines_is_that_of_scattering_clicks (void)
{
  const PhPhotoPoint string[3] = { { 505, 120, 4 }, { 500, 500, 3 }, { 494.5, 860, 5 } };
  const PhPhotoPoint edge[2] = { { 810, 200, 4 }, { 811, 700, 4 } };
  unsigned long long seed = 20261125;
  double sum = 0, squares = 0;
  for (int i = 0; i < DRAWS; i++)
    {
      PhPhotoPoint s[3], e[2];
      for (int k = 0; k < 3; k++)
        s[k] = clicked (string[k], &seed);
      for (int k = 0; k < 2; k++)
        e[k] = clicked (edge[k], &seed);
      PhPhotoFit fs = ph_photo_fit (&(PhPhotoLine){ s, 3 });
      PhPhotoFit fe = ph_photo_fit (&(PhPhotoLine){ e, 2 });
      if (fs.refused || fe.refused) /* six in 100 000 scatter as if bent */
        continue;
      double tilt =
          ph_photo_read_lines (&(PhPhotoLine){ s, 3 }, &(PhPhotoLine){ e, 2 }, false).tilt_rad;
      sum += tilt;
      squares += tilt * tilt;
    }
  double mean = sum / DRAWS, sd = sqrt (squares / DRAWS - mean * mean);
  PhPhotoReading reading =
      ph_photo_read_lines (&(PhPhotoLine){ string, 3 }, &(PhPhotoLine){ edge, 2 }, false);
  CHECK_REL (sd, reading.tilt_sd_rad, SD_ALLOWED);
  CHECK_NEAR (mean, reading.tilt_rad, 4 * sd / sqrt (DRAWS) + 1e-5);
}

static const PhPhotoVial vial_seen = { .marks = { { 400, 310, 2 }, { 460, 304, 2.5 } },
                                       .bubble = { { 380, 311, 2 }, { 430, 306, 3 } },
                                       .rad_per_mark = 0.02 };

static void
deviation_of_a_vial_is_that_of_scattering_clicks (void)
{
  unsigned long long seed = 7;
  double sum = 0, squares = 0;
  for (int i = 0; i < DRAWS; i++)
    {
      PhPhotoVial vial = vial_seen;
      for (int k = 0; k < 2; k++)
        {
          vial.marks[k] = clicked (vial.marks[k], &seed);
          vial.bubble[k] = clicked (vial.bubble[k], &seed);
        }
      double marks = ph_photo_read_vial (&vial, false).marks;
      sum += marks;
      squares += marks * marks;
    }
  double mean = sum / DRAWS, sd = sqrt (squares / DRAWS - mean * mean);
  CHECK_REL (sd, ph_photo_read_vial (&vial_seen, false).marks_sd, SD_ALLOWED);
}

/* A vial of complex numbers: the bubble is put along it and then all is turned. */
static PhPhotoVial
vial_at (double marks_to_the_right, double turn_deg)
{
  const double complex middle = 640 - 480 * I;
  const double complex at = middle + 50 * marks_to_the_right;
  PhPhotoVial vial = { .rad_per_mark = DEG (1.5) };
  vial.marks[0] = pixel (turned (middle - 25, middle, turn_deg), 1);
  vial.marks[1] = pixel (turned (middle + 25, middle, turn_deg), 1);
  vial.bubble[0] = pixel (turned (at - 20, middle, turn_deg), 1);
  vial.bubble[1] = pixel (turned (at + 20, middle, turn_deg), 1);
  return vial;
}

/* Trade fact: a bubble on the left says that the top limb leans right, which is positive. Common
   practice, no source. */
static void
bubble_on_the_left_is_positive (void)
{
  for (double turn = -40; turn <= 40; turn += 10)
    for (double marks = -2.8; marks < 3; marks += 0.7)
      {
        PhPhotoVial vial = vial_at (-marks, turn);
        PhPhotoReading reading = ph_photo_read_vial (&vial, false);
        CHECK (reading.refused == PH_NOT_REFUSED, "%g marks, turned %g°", marks, turn);
        CHECK_NEAR (reading.marks, marks, 1e-12);
        CHECK_NEAR (reading.tilt_rad, DEG (1.5 * marks), 1e-13);
        CHECK_NEAR (ph_photo_read_vial (&vial, true).tilt_rad, DEG (-1.5 * marks), 1e-13);
      }
}

static void
either_end_may_be_clicked_first (void)
{
  PhPhotoVial vial = vial_at (-0.8, 3);
  PhPhotoReading first = ph_photo_read_vial (&vial, false);
  PhPhotoVial swapped = { { vial.marks[1], vial.marks[0] },
                          { vial.bubble[1], vial.bubble[0] },
                          vial.rad_per_mark,
                          vial.rad_per_mark_sd };
  PhPhotoReading second = ph_photo_read_vial (&swapped, false);
  CHECK_NEAR (first.tilt_rad, second.tilt_rad, 1e-16);
  CHECK_REL (first.marks_sd, second.marks_sd, 1e-12);
}

/* A product's relative deviations add in squares (Bevington, from memory). */
static void
what_a_mark_is_worth_counts_with_its_own_deviation (void)
{
  PhPhotoVial vial = vial_at (-2.5, 0);
  double exact = ph_photo_read_vial (&vial, false).tilt_sd_rad;
  vial.rad_per_mark_sd = DEG (0.2);
  PhPhotoReading reading = ph_photo_read_vial (&vial, false);
  double relative = hypot (reading.marks_sd / reading.marks, 0.2 / 1.5);
  CHECK_REL (reading.tilt_sd_rad, reading.tilt_rad * relative, 1e-12);
  CHECK (reading.tilt_sd_rad > 2 * exact);
  vial.rad_per_mark_sd = NAN; /* not stated */
  CHECK_NEAR (ph_photo_read_vial (&vial, false).tilt_sd_rad, exact, 0);
}

static void
a_mark_of_unknown_worth_gives_marks_but_no_degrees (void)
{
  PhPhotoVial vial = vial_at (-0.8, 0);
  vial.rad_per_mark = NAN;
  PhPhotoReading reading = ph_photo_read_vial (&vial, false);
  CHECK (reading.refused == PH_NOT_REFUSED);
  CHECK_NEAR (reading.marks, 0.8, 1e-12);
  CHECK (isnan (reading.tilt_rad) && isnan (reading.tilt_sd_rad));
}

static void
what_cannot_be_a_vial_is_refused (void)
{
  PhPhotoVial vial = vial_at (3.2, 0);
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_BESIDE_VIAL);
  vial = vial_at (0, 0);
  vial.bubble[0].y += 60; /* beside the vial */
  vial.bubble[1].y += 60;
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_BESIDE_VIAL);
  vial = vial_at (0, 46);
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_VIAL_STEEP);
  vial = vial_at (0, 0);
  vial.marks[1] = vial.marks[0];
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_COINCIDE);
  vial.marks[1].x += 5;
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_VIAL_SMALL);
  vial = vial_at (0, 0);
  vial.bubble[1].x = INFINITY;
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_NOT_FINITE);
  vial = vial_at (-2, 0);
  vial.rad_per_mark = DEG (31);
  CHECK (ph_photo_read_vial (&vial, false).refused == PH_REFUSED_NOT_FINITE);
  CHECK (isnan (ph_photo_read_vial (&vial, false).tilt_rad));
}

static void
what_cannot_be_two_lines_is_refused (void)
{
  PhPhotoPoint string[2] = { { 500, 100, 1 }, { 500, 900, 1 } };
  PhPhotoPoint edge[2] = { { 700, 100, 1 }, { 700, 900, 1 } };
  PhPhotoLine s = { string, 2 }, e = { edge, 2 };
  edge[1] = (PhPhotoPoint){ 700.5, 100, 1 };
  CHECK (ph_photo_read_lines (&s, &e, false).refused == PH_REFUSED_COINCIDE);
  edge[1] = (PhPhotoPoint){ 700, 139, 1 };
  CHECK (ph_photo_read_lines (&s, &e, false).refused == PH_REFUSED_SHORT);
  edge[1] = (PhPhotoPoint){ 700, 141, 1 };
  CHECK (ph_photo_read_lines (&s, &e, false).refused == PH_NOT_REFUSED);
  edge[1] = (PhPhotoPoint){ 1500, 140, 1 };
  CHECK (ph_photo_read_lines (&s, &e, false).refused == PH_REFUSED_TOO_STEEP);
  CHECK (isnan (ph_photo_read_lines (&s, &e, false).tilt_rad));
  string[0].x = NAN;
  CHECK (ph_photo_read_lines (&s, &e, false).refused == PH_REFUSED_NOT_FINITE);
}

static void
no_less_than_a_tenth_of_a_degree_is_claimed (void)
{
  const PhPhotoPoint string[2] = { { 500, 100, 0.5 }, { 500, 3900, 0.5 } };
  const PhPhotoPoint edge[2] = { { 700, 100, 0.5 }, { 700, 3900, 0.5 } };
  PhPhotoReading lines =
      ph_photo_read_lines (&(PhPhotoLine){ string, 2 }, &(PhPhotoLine){ edge, 2 }, false);
  CHECK_NEAR (lines.tilt_sd_rad, DEG (0.1), 1e-15);
  PhPhotoVial vial = vial_at (0, 0);
  vial.rad_per_mark = DEG (0.1);
  CHECK_NEAR (ph_photo_read_vial (&vial, false).tilt_sd_rad, DEG (0.1), 1e-15);
}

static void
a_click_is_known_better_the_larger_the_picture_is_shown (void)
{
  CHECK_NEAR (ph_photo_click_sd (1), 1.5, 0);
  CHECK_REL (ph_photo_click_sd (0.25), 6, 1e-15);
  CHECK_REL (ph_photo_click_sd (2), 0.75, 1e-15);
  CHECK_NEAR (ph_photo_click_sd (16), 0.5, 0); /* no edge is sharper than that */
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (top_limb_to_the_right_is_positive);
  CASE (turned_points_give_the_angle_back);
  CASE (how_the_camera_is_held_does_not_matter);
  CASE (the_picture_shows_what_the_bubble_shows);
  CASE (several_points_are_fitted);
  CASE (two_points_know_their_direction_by_their_distance);
  CASE (points_that_scatter_widen_it_and_a_bend_is_refused);
  CASE (deviation_of_lines_is_that_of_scattering_clicks);
  CASE (deviation_of_a_vial_is_that_of_scattering_clicks);
  CASE (bubble_on_the_left_is_positive);
  CASE (either_end_may_be_clicked_first);
  CASE (what_a_mark_is_worth_counts_with_its_own_deviation);
  CASE (a_mark_of_unknown_worth_gives_marks_but_no_degrees);
  CASE (what_cannot_be_a_vial_is_refused);
  CASE (what_cannot_be_two_lines_is_refused);
  CASE (no_less_than_a_tenth_of_a_degree_is_claimed);
  CASE (a_click_is_known_better_the_larger_the_picture_is_shown);
  return check_end ();
}
