/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels: none over another, none cut, the wanted place where it is free.
 */
#include "widgets/label-place.h"

#include "check.h"

static unsigned seed = 17;

static double
random_to (double most)
{
  seed = seed * 1664525U + 1013904223U;
  return (double)(seed >> 8) / (double)(1U << 24) * most;
}

static bool
overlap (const PhLabelBox *a, const PhLabelBox *b)
{
  return a->x < b->x + b->width && b->x < a->x + a->width && a->y < b->y + b->height
         && b->y < a->y + a->height;
}

static void
no_label_covers_another_and_none_is_cut (void)
{
  for (int round = 0; round < 300; round++)
    {
      double width = 120 + random_to (800), height = 80 + random_to (500);
      PhLabelPlaces places = ph_label_places (width, height);
      PhLabelBox placed[20];
      size_t n = 0;
      for (int i = 0; i < 20; i++)
        {
          PhLabelBox wanted = { random_to (width), random_to (height), 0, 0 };
          if (ph_label_places_find (&places, 20 + random_to (100), 14 + random_to (20), &wanted, 1,
                                    150, PH_LABEL_OFF, &placed[n]))
            n++;
        }
      CHECK (n >= 3, "some find room");
      for (size_t i = 0; i < n; i++)
        {
          CHECK (placed[i].x >= 0 && placed[i].y >= 0 && placed[i].x + placed[i].width <= width
                 && placed[i].y + placed[i].height <= height);
          for (size_t k = i + 1; k < n; k++)
            CHECK (!overlap (&placed[i], &placed[k]));
        }
    }
}

static void
a_free_wanted_place_is_taken_as_it_is (void)
{
  PhLabelPlaces places = ph_label_places (400, 300);
  PhLabelBox wanted[2] = { { 100, 50, 0, 0 }, { 200, 150, 0, 0 } }, found;
  CHECK (ph_label_places_find (&places, 60, 18, wanted, 2, 0, PH_LABEL_OFF, &found));
  CHECK (found.x == 100 && found.y == 50 && found.width == 60 && found.height == 18);
  CHECK (ph_label_places_find (&places, 60, 18, wanted, 2, 0, PH_LABEL_OFF, &found));
  CHECK (found.x == 200 && found.y == 150, "the second, since the first is taken");
}

static void
a_label_at_the_edge_is_moved_inside (void)
{
  PhLabelPlaces places = ph_label_places (400, 300);
  PhLabelBox wanted = { 390, -20, 0, 0 }, found;
  CHECK (ph_label_places_find (&places, 60, 18, &wanted, 1, 0, PH_LABEL_OFF, &found));
  CHECK (found.x + found.width <= 400 && found.x > 300 && found.y >= 0 && found.y < 10);
}

static void
symbols_are_kept_free (void)
{
  PhLabelPlaces places = ph_label_places (400, 300);
  PhLabelBox symbol = { 100, 100, 16, 16 }, wanted = { 90, 98, 0, 0 }, found;
  ph_label_places_take (&places, symbol);
  CHECK (ph_label_places_find (&places, 60, 18, &wanted, 1, 100, PH_LABEL_OFF, &found));
  CHECK (!overlap (&found, &symbol));
  CHECK (fabs (found.x - 90) + fabs (found.y - 98) < 60, "and it stays near");
}

static void
what_finds_no_room_is_left_out (void)
{
  PhLabelPlaces places = ph_label_places (100, 40);
  PhLabelBox wanted = { 0, 0, 0, 0 }, found;
  CHECK (!ph_label_places_find (&places, 200, 18, &wanted, 1, 500, PH_LABEL_OFF, &found),
         "wider than the view");
  CHECK (ph_label_places_find (&places, 90, 30, &wanted, 1, 500, PH_LABEL_OFF, &found));
  CHECK (!ph_label_places_find (&places, 40, 18, &wanted, 1, 500, PH_LABEL_OFF, &found),
         "no room beside it");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (no_label_covers_another_and_none_is_cut);
  CASE (a_free_wanted_place_is_taken_as_it_is);
  CASE (a_label_at_the_edge_is_moved_inside);
  CASE (symbols_are_kept_free);
  CASE (what_finds_no_room_is_left_out);
  return check_end ();
}
