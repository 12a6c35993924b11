/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Strings: well-formed UTF-8 by the table of The Unicode Standard (table 3-7, from memory) and
 * RFC 3629's own examples, and cuts that keep to characters.
 */
#include "base/text.h"

#include "check.h"

static void
check_utf8 (const char *bytes, size_t size, bool want, size_t want_at)
{
  size_t at = 999;
  CHECK (ph_text_is_utf8 (bytes, size, &at) == want, "«%.*s»", (int)size, bytes);
  if (!want)
    CHECK (at == want_at, "bad byte at %zu, want %zu", at, want_at);
}

static void
well_formed_utf8_is_taken (void)
{
  /* The three examples of RFC 3629 section 7, then the ends of each length. */
  static const char *const texts[] = { "A\xe2\x89\xa2\xce\x91.",
                                       "\xed\x95\x9c\xea\xb5\xad\xec\x96\xb4",
                                       "\xe6\x97\xa5\xe6\x9c\xac\xe8\xaa\x9e",
                                       "\x7f",
                                       "\xc2\x80\xdf\xbf",
                                       "\xe0\xa0\x80\xed\x9f\xbf\xee\x80\x80\xef\xbf\xbf",
                                       "\xf0\x90\x80\x80\xf4\x8f\xbf\xbf",
                                       "" };
  for (size_t i = 0; i < sizeof texts / sizeof *texts; i++)
    check_utf8 (texts[i], strlen (texts[i]), true, 0);
  check_utf8 ("a\0b", 3, true, 0);
}

static void
ill_formed_utf8_is_refused_where_it_breaks (void)
{
  check_utf8 ("ab\x80", 3, false, 2);           /* a continuation alone */
  check_utf8 ("\xc0\xaf", 2, false, 0);         /* overlong */
  check_utf8 ("\xc1\xbf", 2, false, 0);         /* overlong */
  check_utf8 ("\xe0\x9f\xbf", 3, false, 0);     /* overlong */
  check_utf8 ("\xf0\x8f\xbf\xbf", 4, false, 0); /* overlong */
  check_utf8 ("x\xed\xa0\x80", 4, false, 1);    /* surrogate */
  check_utf8 ("\xf4\x90\x80\x80", 4, false, 0); /* over U+10FFFF */
  check_utf8 ("\xf5\x80\x80\x80", 4, false, 0);
  check_utf8 ("é\xe2\x82", 4, false, 2); /* cut off */
  check_utf8 ("\xe2\x28\xa1", 3, false, 0);
  check_utf8 ("\xf0\x9f\x98\x41", 4, false, 0);
  check_utf8 ("\xff", 1, false, 0);
  CHECK (!ph_text_is_utf8 ("\xff", 1, NULL));
}

static void
every_code_point_and_no_other_is_taken (void)
{
  /* All scalar values encoded by hand, surrogates left in: they alone must fail. */
  int wrong = 0;
  for (unsigned c = 0; c < 0x110000; c++)
    {
      char b[4];
      size_t n = c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
      for (size_t i = n; i-- > 1;)
        b[i] = (char)(0x80 | ((c >> (6 * (n - 1 - i))) & 0x3f));
      static const unsigned char lead[] = { 0, 0, 0xc0, 0xe0, 0xf0 };
      b[0] = (char)(lead[n] | (c >> (6 * (n - 1))));
      bool surrogate = c >= 0xd800 && c < 0xe000;
      wrong += ph_text_is_utf8 (b, n, NULL) == surrogate;
    }
  CHECK (wrong == 0, "%d code points judged wrongly", wrong);
}

static void
check_cut (const char *text, size_t most, const char *want)
{
  char *cut = ph_text_cut (text, most);
  CHECK_TEXT (cut, want);
  CHECK (ph_text_length (cut) <= most);
  free (cut);
}

static void
cut_text_keeps_whole_characters_and_one_line (void)
{
  check_cut ("back bar", 80, "back bar");
  check_cut ("back bar", 8, "back bar");
  check_cut ("back bar", 7, "back b…");
  check_cut ("ÄÖÜäöü", 3, "ÄÖ…");
  check_cut ("two\nlines\tand\x7f", 80, "two lines and ");
  check_cut ("a\xc2\x85z", 80, "a z"); /* NEL, a control of two bytes */
  check_cut ("ab", 1, "…");
  check_cut ("ab", 0, "");
  check_cut ("", 0, "");
}

static void
length_counts_characters (void)
{
  CHECK (ph_text_length ("") == 0);
  CHECK (ph_text_length ("12½″ → 日本") == 9);
}

static void
strings_are_copied_printed_and_compared (void)
{
  char *copy = ph_text_dup ("stack");
  CHECK_TEXT (copy, "stack");
  CHECK (ph_text_equal (copy, "stack") && !ph_text_equal (copy, "stac"));
  CHECK (ph_text_equal (NULL, NULL) && !ph_text_equal (copy, NULL) && !ph_text_equal (NULL, ""));
  CHECK (ph_text_dup (NULL) == NULL);
  char *printed = ph_text_printf ("%s-%03d", copy, 7);
  CHECK_TEXT (printed, "stack-007");
  free (printed);
  free (copy);
}

static void
blocks_of_no_size_can_be_freed (void)
{
  unsigned char *zeroed = ph_alloc_zeroed (3, 5);
  for (int i = 0; i < 15; i++)
    CHECK (zeroed[i] == 0);
  zeroed = ph_realloc (zeroed, 100);
  CHECK (zeroed[14] == 0);
  free (zeroed);
  free (ph_alloc (0));
  free (ph_alloc_zeroed (0, 8));
}

int
main (int argc, char **argv)
{
  check_start (argc, argv);
  CASE (well_formed_utf8_is_taken);
  CASE (ill_formed_utf8_is_refused_where_it_breaks);
  CASE (every_code_point_and_no_other_is_taken);
  CASE (cut_text_keeps_whole_characters_and_one_line);
  CASE (length_counts_characters);
  CASE (strings_are_copied_printed_and_compared);
  CASE (blocks_of_no_size_can_be_freed);
  return check_end ();
}
