/* SPDX-FileCopyrightText: The Plumbhold authors
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A tree as text that a person can read and a version control can compare: what fits into a line
 * stays on it, everything else has one entry a line. cJSON_Print has tabs and breaks every object.
 * Each level is tried on one line first and given up at the margin, so that the cost is the text's
 * length times the depth.
 */
#include "store/json.h"

#include <assert.h>
#include <cjson/cJSON.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/text.h"

#define COLUMNS 100

typedef struct
{
  char *text;
  size_t size, room;
  size_t line;   /* where the current line begins */
  size_t margin; /* a trial on one line ends here; 0: no trial */
} Out;

static void
put (Out *out, const char *bytes, size_t n)
{
  if (out->size + n + 1 > out->room)
    {
      out->room = 2 * (out->size + n + 1);
      out->text = ph_realloc (out->text, out->room);
    }
  memcpy (out->text + out->size, bytes, n);
  out->size += n;
  out->text[out->size] = '\0';
}

static void
put_text (Out *out, const char *text)
{
  put (out, text, strlen (text));
}

static void
put_quoted (Out *out, const char *text)
{
  static const char plain[] = "\"\\\b\f\n\r\t", letter[] = "\"\\bfnrt";
  put (out, "\"", 1);
  for (const char *c = text; *c; c++)
    {
      const char *at = strchr (plain, *c);
      char escape[8] = { '\\', at ? letter[at - plain] : 'u', '\0' };
      if (!at && (unsigned char)*c < 0x20)
        snprintf (escape, sizeof escape, "\\u%04x", (unsigned)(unsigned char)*c);
      if (at || (unsigned char)*c < 0x20)
        put_text (out, escape);
      else
        put (out, c, 1);
    }
  put (out, "\"", 1);
}

static void
put_new_line (Out *out, size_t indent)
{
  put (out, "\n", 1);
  out->line = out->size;
  for (size_t i = 0; i < indent; i++)
    put (out, "  ", 2);
}

static void
put_scalar (Out *out, const cJSON *node)
{
  if (cJSON_IsString (node))
    put_quoted (out, node->valuestring);
  else if (cJSON_IsRaw (node))
    put_text (out, node->valuestring);
  else if (cJSON_IsBool (node))
    put_text (out, cJSON_IsTrue (node) ? "true" : "false");
  else
    {
      assert (cJSON_IsNull (node)); /* numbers come as raw text only */
      put_text (out, "null");
    }
}

static void put_value (Out *out, const cJSON *node, size_t indent);

static bool
is_over (const Out *out)
{
  return out->margin && out->size - out->line > out->margin;
}

static void
put_entries (Out *out, const cJSON *node, size_t indent, bool broken)
{
  for (const cJSON *child = node->child; child && !is_over (out); child = child->next)
    {
      if (broken)
        put_new_line (out, indent + 1);
      if (cJSON_IsObject (node))
        {
          put_quoted (out, child->string);
          put_text (out, ": ");
        }
      put_value (out, child, indent + 1);
      if (child->next)
        put_text (out, broken ? "," : ", ");
    }
  if (broken)
    put_new_line (out, indent);
}

static void
put_container (Out *out, const cJSON *node, size_t indent, bool broken)
{
  bool object = cJSON_IsObject (node);
  put_text (out, object ? "{" : "[");
  put_entries (out, node, indent, broken);
  put_text (out, object ? "}" : "]");
}

static void
put_value (Out *out, const cJSON *node, size_t indent)
{
  if (!cJSON_IsObject (node) && !cJSON_IsArray (node))
    {
      put_scalar (out, node);
      return;
    }
  if (out->margin || !node->child)
    {
      put_container (out, node, indent, false);
      return;
    }
  size_t size = out->size;
  bool whole = indent == 0; /* the document itself always stands open */
  if (!whole)
    {
      out->margin = COLUMNS - 1; /* a comma may follow */
      put_container (out, node, indent, false);
      whole = is_over (out);
      out->margin = 0;
    }
  if (!whole)
    return;
  out->size = size;
  put_container (out, node, indent, true);
}

char *
ph_json_print (const PhJsonNode *root, size_t *size)
{
  Out out = { 0 };
  put_value (&out, root, 0);
  put (&out, "\n", 1);
  if (size)
    *size = out.size;
  return out.text;
}
