/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A scanner that checks what cJSON lets pass (01, +1, control characters, a NUL in a string, bad
 * UTF-8, lone surrogates) and hands it what it can read: cJSON 1.7 copies at most 63 characters of
 * a number, so that a longer one is written anew here, correctly rounded. The words NaN and
 * Infinity, which other programs' JSON writers emit, go on as a number that is not finite: the
 * reader then names part and key, which a scanner cannot.
 */
#include "store/json-scan.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "base/number.h"
#include "base/text.h"

/* Longer numbers are rewritten; %.17g needs 24, so that nothing a program wrote is touched. */
#define LONG_NUMBER 40
/* What cJSON's strtod makes an infinity of. */
#define TOO_LARGE "1e999"

typedef struct
{
  const char *bytes;
  size_t size, at;
  size_t copied; /* bytes before this have been put into `out` */
  PhJsonScan out;
  size_t tokens_room;
  char open[PH_JSON_DEPTH_MOST]; /* '{' or '[' for each one that is open */
  size_t depth;
  PhIssues *issues;
} Scanner;

/* Adds the error and answers false, so that callers can end with it. */
static bool
fail_at (Scanner *s, size_t at, const char *text)
{
  size_t line = 1, column = 1;
  for (size_t i = 0; i < at && i < s->size; i++)
    if (s->bytes[i] == '\n')
      {
        line++;
        column = 1;
      }
    else if (((unsigned char)s->bytes[i] & 0xC0) != 0x80)
      column++;
  ph_issues_add (s->issues, PH_WHERE_FILE, NULL, NULL, false, "line %zu, column %zu: %s", line,
                 column, text);
  return false;
}

static bool
fail (Scanner *s, const char *text)
{
  if (s->at >= s->size)
    return fail_at (s, s->size, "the file ends too early: it may have been cut off");
  return fail_at (s, s->at, text);
}

static int
peek (const Scanner *s)
{
  return s->at < s->size ? (unsigned char)s->bytes[s->at] : -1;
}

static void
skip_space (Scanner *s)
{
  while (s->at < s->size && s->bytes[s->at] && strchr (" \t\r\n", s->bytes[s->at]))
    s->at++;
}

static bool
is_digit (int c)
{
  return c >= '0' && c <= '9';
}

/* A letter, digit or sign right after a value means that the value was not what it seemed. */
static bool
is_word (int c)
{
  return is_digit (c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')
         || (c > 0 && strchr ("+-._", c));
}

static void
copy_up_to (Scanner *s, size_t end)
{
  memcpy (s->out.text + s->out.size, s->bytes + s->copied, end - s->copied);
  s->out.size += end - s->copied;
  s->copied = end;
}

/* Notes the token from `start` to here, and puts `instead` into the copy where cJSON needs it. */
static void
add_token (Scanner *s, size_t start, bool finite, const char *instead)
{
  if (s->out.n_tokens == s->tokens_room)
    {
      s->tokens_room = s->tokens_room ? 2 * s->tokens_room : 64;
      s->out.tokens = ph_realloc (s->out.tokens, s->tokens_room * sizeof *s->out.tokens);
    }
  char *text = ph_alloc (s->at - start + 1);
  memcpy (text, s->bytes + start, s->at - start);
  text[s->at - start] = '\0';
  s->out.tokens[s->out.n_tokens++] = (PhJsonToken){ text, finite };
  s->out.n_not_finite += !finite;
  if (!instead)
    return;
  copy_up_to (s, start);
  memcpy (s->out.text + s->out.size, instead, strlen (instead));
  s->out.size += strlen (instead);
  s->copied = s->at;
}

static bool
scan_digits (Scanner *s)
{
  size_t start = s->at;
  while (is_digit (peek (s)))
    s->at++;
  return s->at > start;
}

/* "-" may be followed by a word: Infinity. */
static bool
scan_not_finite (Scanner *s)
{
  static const char *const words[] = { "NaN", "Infinity", "inf" };
  size_t start = s->at, word = s->at + (peek (s) == '-');
  for (size_t i = 0; i < sizeof words / sizeof *words; i++)
    {
      size_t n = strlen (words[i]);
      if (s->size - word < n || strncasecmp (s->bytes + word, words[i], n) != 0
          || (word + n < s->size && is_word ((unsigned char)s->bytes[word + n])))
        continue;
      s->at = word + n;
      add_token (s, start, false, TOO_LARGE);
      return true;
    }
  return false;
}

/* Whether the token is a finite double, and how cJSON shall see it (null: as it stands). */
static bool
judge_number (const char *token, size_t length, char buffer[PH_NUMBER_SIZE], const char **instead)
{
  char *copy = ph_alloc (length + 1);
  memcpy (copy, token, length);
  copy[length] = '\0';
  void *before = ph_number_locale_plain ();
  double value = strtod (copy, NULL);
  ph_number_locale_restore (before);
  free (copy);
  *instead = NULL;
  if (!isfinite (value))
    *instead = TOO_LARGE;
  else if (length > LONG_NUMBER)
    *instead = ph_number_print (value, buffer);
  return isfinite (value);
}

static bool
scan_number (Scanner *s)
{
  size_t start = s->at;
  if (scan_not_finite (s))
    return true;
  s->at += peek (s) == '-';
  bool zero = peek (s) == '0';
  size_t digits = s->at;
  if (!scan_digits (s))
    return fail (s, "a minus sign needs digits after it");
  if (zero && s->at - digits > 1)
    return fail_at (s, start, "a number may not begin with 0: leave the leading zeros out");
  if (peek (s) == '.')
    {
      s->at++;
      if (!scan_digits (s))
        return fail (s, "a decimal point needs digits after it");
    }
  if (peek (s) == 'e' || peek (s) == 'E')
    {
      s->at++;
      s->at += peek (s) == '+' || peek (s) == '-';
      if (!scan_digits (s))
        return fail (s, "an exponent needs digits");
    }
  if (is_word (peek (s)))
    return fail (s, "this is no number: write it like 12, -0.5 or 1e3");
  char buffer[PH_NUMBER_SIZE];
  const char *instead;
  bool finite = judge_number (s->bytes + start, s->at - start, buffer, &instead);
  add_token (s, start, finite, instead);
  return true;
}

static int
hex_value (int c)
{
  if (is_digit (c))
    return c - '0';
  if (c >= 'a' && c <= 'f')
    return c - 'a' + 10;
  return c >= 'A' && c <= 'F' ? c - 'A' + 10 : -1;
}

/* The four digits of \uXXXX, or −1; `s->at` stands on the first. */
static int
scan_hex (Scanner *s)
{
  int value = 0;
  for (int i = 0; i < 4; i++, s->at++)
    {
      int digit = hex_value (peek (s));
      if (digit < 0)
        return -1;
      value = 16 * value + digit;
    }
  return value;
}

static bool
scan_unicode_escape (Scanner *s, size_t start)
{
  static const char *const lone = "half a surrogate pair: \\uD800 to \\uDFFF stand only in pairs";
  int unit = scan_hex (s);
  if (unit < 0)
    return fail (s, "\\u needs four hexadecimal digits");
  if (unit == 0)
    return fail_at (s, start, "a text may not hold the character NUL (\\u0000)");
  if (unit >= 0xDC00 && unit <= 0xDFFF)
    return fail_at (s, start, lone);
  if (unit < 0xD800 || unit > 0xDBFF)
    return true;
  if (s->size - s->at < 6 || s->bytes[s->at] != '\\' || s->bytes[s->at + 1] != 'u')
    return fail_at (s, start, lone);
  s->at += 2;
  int low = scan_hex (s);
  return (low >= 0xDC00 && low <= 0xDFFF) || fail_at (s, start, lone);
}

static bool
scan_escape (Scanner *s)
{
  size_t start = s->at++;
  int c = peek (s);
  if (c > 0 && strchr ("\"\\/bfnrt", c))
    {
      s->at++;
      return true;
    }
  if (c != 'u')
    return fail (s, "an unknown escape: after a backslash stands one of \" \\ / b f n r t u");
  s->at++;
  return scan_unicode_escape (s, start);
}

static bool
scan_string (Scanner *s)
{
  size_t start = s->at++;
  for (;;)
    {
      int c = peek (s);
      if (c < 0)
        return fail_at (s, start, "this text has no closing quote: the file may have been cut off");
      if (c == '"')
        break;
      if (c < 0x20)
        return fail (s, c ? "a control character inside a text: write it as an escape such as \\n"
                          : "a NUL byte inside a text");
      if (c != '\\')
        s->at++;
      else if (!scan_escape (s))
        return false;
    }
  s->at++;
  return true;
}

static bool
scan_word (Scanner *s)
{
  static const char *const words[] = { "true", "false", "null" };
  if (scan_not_finite (s))
    return true;
  for (size_t i = 0; i < 3; i++)
    {
      size_t n = strlen (words[i]);
      if (s->size - s->at < n || memcmp (s->bytes + s->at, words[i], n) != 0)
        continue;
      s->at += n;
      return !is_word (peek (s)) || fail (s, "something stands right behind a word");
    }
  return fail (s, "no JSON value begins here: expected a number, a text in double quotes, true, "
                  "false, null, { or [");
}

/* "key": */
static bool
scan_key (Scanner *s)
{
  skip_space (s);
  if (peek (s) != '"')
    return fail (s,
                 peek (s) == '}' ? "a comma before } must go" : "expected a key in double quotes");
  if (!scan_string (s))
    return false;
  skip_space (s);
  if (peek (s) != ':')
    return fail (s, "expected a colon after the key");
  s->at++;
  return true;
}

/* After { or [: `*empty` says that it was closed at once. */
static bool
open_container (Scanner *s, bool *empty)
{
  char c = s->bytes[s->at];
  if (s->depth == PH_JSON_DEPTH_MOST)
    return fail (s, "objects and arrays stand more than 200 deep in one another");
  s->at++;
  s->open[s->depth++] = c;
  skip_space (s);
  *empty = peek (s) == (c == '{' ? '}' : ']');
  if (!*empty)
    return c == '[' || scan_key (s);
  s->at++;
  s->depth--;
  return true;
}

/* One value, or the opening of a container whose first value comes next (`*opened`). */
static bool
scan_value (Scanner *s, bool *opened)
{
  *opened = false;
  skip_space (s);
  int c = peek (s);
  if (c == '{' || c == '[')
    {
      bool empty = false;
      if (!open_container (s, &empty))
        return false;
      *opened = !empty;
      return true;
    }
  if (c == '"')
    return scan_string (s);
  if (is_digit (c) || c == '-')
    return scan_number (s);
  if (c == '+' || c == '.')
    return fail (s,
                 "a number begins with a digit or a minus sign: write 1, not +1, and 0.5, not .5");
  if (c == ']' && s->at > 0)
    return fail (s, "a comma before ] must go");
  return scan_word (s);
}

/* After a value: closes what ends here. `*more`: a comma was met, another value follows. */
static bool
scan_after_value (Scanner *s, bool *more)
{
  *more = false;
  while (s->depth)
    {
      bool object = s->open[s->depth - 1] == '{';
      skip_space (s);
      int c = peek (s);
      if (c == ',')
        {
          s->at++;
          *more = true;
          return !object || scan_key (s);
        }
      if (c != (object ? '}' : ']'))
        return fail (s, object ? "expected a comma or } here" : "expected a comma or ] here");
      s->at++;
      s->depth--;
    }
  return true;
}

static bool
scan_document (Scanner *s)
{
  for (bool more = true; more;)
    {
      bool opened = true;
      while (opened)
        if (!scan_value (s, &opened))
          return false;
      if (!scan_after_value (s, &more))
        return false;
    }
  skip_space (s);
  return s->at == s->size || fail (s, "something follows after the end of the JSON value");
}

static bool
check_bytes (Scanner *s)
{
  size_t bad;
  if (s->size >= 3 && memcmp (s->bytes, "\xEF\xBB\xBF", 3) == 0)
    return fail_at (s, 0, "the file begins with a byte-order mark: save it as UTF-8 without one");
  if (!ph_text_is_utf8 (s->bytes, s->size, &bad))
    return fail_at (s, bad, "these bytes are not UTF-8: save the file as UTF-8");
  skip_space (s);
  if (s->at < s->size)
    return true;
  ph_issues_add (s->issues, PH_WHERE_FILE, NULL, NULL, false,
                 s->size ? "holds nothing but blanks; a JSON object is needed"
                         : "is empty; a JSON object is needed");
  return false;
}

bool
ph_json_scan (const char *bytes, size_t size, PhJsonScan *scan, PhIssues *issues)
{
  Scanner s = { .bytes = bytes, .size = size, .issues = issues };
  /* A rewritten token grows by at most two characters ("inf" to "1e999"). */
  s.out.text = ph_alloc (2 * size + 1);
  if (!check_bytes (&s) || !scan_document (&s))
    {
      ph_json_scan_clear (&s.out);
      return false;
    }
  copy_up_to (&s, size);
  s.out.text[s.out.size] = '\0';
  *scan = s.out;
  return true;
}

void
ph_json_scan_clear (PhJsonScan *scan)
{
  for (size_t i = 0; i < scan->n_tokens; i++)
    free (scan->tokens[i].text);
  free (scan->tokens);
  free (scan->text);
  *scan = (PhJsonScan){ 0 };
}
