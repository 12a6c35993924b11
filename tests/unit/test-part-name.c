/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Names of parts that are added, by where they stand.
 */
#include "widgets/part-name.h"

#include "check.h"

static void
says (char *name, const char *wanted)
{
  CHECK (strcmp (name, wanted) == 0, "«%s», not «%s»", name, wanted);
  g_free (name);
}

static void
a_bar_beside_is_named_by_its_side_without_its_length (void)
{
  says (ph_name_on_side ("Side rod 10 in", 1), "Left side rod");
  says (ph_name_on_side ("Side rod 10 in", -1), "Right side rod");
  says (ph_name_on_side ("Back bar 12 in, slim", 1), "Left back bar");
  says (ph_name_on_side ("Bar 28½ in", -1), "Right bar");
}

static void
what_is_in_the_middle_or_says_a_side_keeps_its_name (void)
{
  says (ph_name_on_side ("Back bar 12 in", 0), "Back bar 12 in");
  says (ph_name_on_side ("Right back bar", 1), "Right back bar");
  says (ph_name_on_side ("Leftover bar", 1), "Left leftover bar");
}

static void
weights_are_named_by_their_bar (void)
{
  says (ph_name_of_weights_on ("Left side rod"), "Left side rod weights");
  says (ph_name_of_weights_on ("Front bar 30 in"), "Front bar weights");
  says (ph_name_of_weights_on (NULL), "Weights");
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (a_bar_beside_is_named_by_its_side_without_its_length);
  CASE (what_is_in_the_middle_or_says_a_side_keeps_its_name);
  CASE (weights_are_named_by_their_bar);
  return check_end ();
}
