/*
 * The verification rows through the C door.
 *
 *     rows FILE
 *
 * FILE has one check a line, fields separated by TAB: id, calculation, input as JSON, path in the output,
 * "number" or "text", what must come out, absolute tolerance. Lines that start with # are remarks. Exit code 1
 * when a check fails, when a line cannot be read, or when there is no check at all.
 */
#include <ctype.h>
#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "beamcraft.h"

enum { FIELD_COUNT = 7 };

/* ---- a JSON reader that only walks ------------------------------------------------------------------------ */

static const char *skip_space(const char *at)
{
    while (*at == ' ' || *at == '\t' || *at == '\n' || *at == '\r') {
        ++at;
    }
    return at;
}

/* Behind the text that starts at `at`; NULL when it does not end. */
static const char *skip_text(const char *at)
{
    for (++at; *at != '\0'; ++at) {
        if (*at == '\\' && at[1] != '\0') {
            ++at;
        } else if (*at == '"') {
            return at + 1;
        }
    }
    return NULL;
}

/* Behind the value that starts at `at`; NULL when it does not end. */
static const char *skip_value(const char *at)
{
    int depth = 0;
    at = skip_space(at);
    do {
        if (*at == '\0') {
            return NULL;
        }
        if (*at == '"') {
            at = skip_text(at);
            if (at == NULL) {
                return NULL;
            }
        } else if (*at == '{' || *at == '[') {
            ++depth;
            ++at;
        } else if (*at == '}' || *at == ']') {
            --depth;
            ++at;
        } else if (*at == ',' || *at == ':' || isspace((unsigned char)*at)) {
            ++at;
        } else {
            at += strcspn(at, ",:{}[]\" \t\r\n");
        }
    } while (depth > 0);
    return at;
}

/* The value of the field `name` of the object at `at`; NULL when there is none. */
static const char *field_of(const char *at, const char *name, size_t length)
{
    at = skip_space(at);
    if (*at != '{') {
        return NULL;
    }
    at = skip_space(at + 1);
    while (*at == '"') {
        const char *key = at + 1;
        const char *end = skip_text(at);
        if (end == NULL) {
            return NULL;
        }
        const int found = (size_t)(end - 1 - key) == length && strncmp(key, name, length) == 0;
        at = skip_space(end);
        if (*at != ':') {
            return NULL;
        }
        at = skip_space(at + 1);
        if (found) {
            return at;
        }
        at = skip_value(at);
        if (at == NULL) {
            return NULL;
        }
        at = skip_space(at);
        if (*at == ',') {
            at = skip_space(at + 1);
        }
    }
    return NULL;
}

/* The item `index` of the list at `at`; NULL when there is none. */
static const char *item_of(const char *at, unsigned long index)
{
    at = skip_space(at);
    if (*at != '[') {
        return NULL;
    }
    at = skip_space(at + 1);
    for (; *at != ']' && *at != '\0'; --index) {
        if (index == 0) {
            return at;
        }
        at = skip_value(at);
        if (at == NULL) {
            return NULL;
        }
        at = skip_space(at);
        if (*at == ',') {
            at = skip_space(at + 1);
        }
    }
    return NULL;
}

/* The value at a path such as modes[0].value_n; NULL when there is none. */
static const char *walk(const char *at, const char *path)
{
    while (at != NULL && *path != '\0') {
        if (*path == '[') {
            char *end = NULL;
            const unsigned long index = strtoul(path + 1, &end, 10);
            if (end == path + 1 || *end != ']') {
                return NULL;
            }
            at = item_of(at, index);
            path = end + 1;
        } else {
            const size_t length = strcspn(path, ".[");
            at = field_of(at, path, length);
            path += length;
        }
        if (*path == '.') {
            ++path;
        }
    }
    return at;
}

/* Writes the code point as UTF-8; how many bytes. */
static size_t put_utf8(char *out, unsigned long point)
{
    if (point < 0x80) {
        out[0] = (char)point;
        return 1;
    }
    if (point < 0x800) {
        out[0] = (char)(0xC0 | (point >> 6));
        out[1] = (char)(0x80 | (point & 0x3F));
        return 2;
    }
    if (point < 0x10000) {
        out[0] = (char)(0xE0 | (point >> 12));
        out[1] = (char)(0x80 | ((point >> 6) & 0x3F));
        out[2] = (char)(0x80 | (point & 0x3F));
        return 3;
    }
    out[0] = (char)(0xF0 | (point >> 18));
    out[1] = (char)(0x80 | ((point >> 12) & 0x3F));
    out[2] = (char)(0x80 | ((point >> 6) & 0x3F));
    out[3] = (char)(0x80 | (point & 0x3F));
    return 4;
}

static unsigned long four_digits(const char *at)
{
    char digits[5] = {0};
    memcpy(digits, at, 4);
    return strtoul(digits, NULL, 16);
}

/* The text at `at` without its quotes and escapes, for the caller to free; NULL when it is no text. */
static char *text_at(const char *at)
{
    const char *end = *at == '"' ? skip_text(at) : NULL;
    if (end == NULL) {
        return NULL;
    }
    char *text = malloc((size_t)(end - at) + 1);
    if (text == NULL) {
        return NULL;
    }
    size_t length = 0;
    for (++at; at < end - 1; ++at) {
        if (*at != '\\') {
            text[length++] = *at;
            continue;
        }
        ++at;
        switch (*at) {
        case 'n': text[length++] = '\n'; break;
        case 't': text[length++] = '\t'; break;
        case 'r': text[length++] = '\r'; break;
        case 'b': text[length++] = '\b'; break;
        case 'f': text[length++] = '\f'; break;
        case 'u': {
            if (end - 1 - at < 5) {
                free(text);
                return NULL;
            }
            unsigned long point = four_digits(at + 1);
            at += 4;
            if (point >= 0xD800 && point < 0xDC00 && end - 1 - at >= 7 && at[1] == '\\' && at[2] == 'u') {
                point = 0x10000 + ((point - 0xD800) << 10) + (four_digits(at + 3) - 0xDC00);
                at += 6;
            }
            length += put_utf8(text + length, point);
            break;
        }
        default: text[length++] = *at; break;
        }
    }
    text[length] = '\0';
    return text;
}

/* ---- one check -------------------------------------------------------------------------------------------- */

/* What the library says about a refusal, on the error stream. */
static void say_refusal(const char *id, beamcraft_status status, const beamcraft_error *error)
{
    size_t needed = 0;
    fprintf(stderr, "%s: %s\n", id, beamcraft_status_name(status));
    if (beamcraft_error_text(error, NULL, 0, &needed) != BEAMCRAFT_OK) {
        return;
    }
    char *text = malloc(needed);
    if (text != NULL && beamcraft_error_text(error, text, needed, &needed) == BEAMCRAFT_OK) {
        fprintf(stderr, "    %s\n", text);
    }
    free(text);
}

/* The output of a calculation, for the caller to free; NULL when it is refused. */
static char *compute(const char *id, const char *calculation, const char *input)
{
    size_t capacity = 4096;
    for (;;) {
        char *output = malloc(capacity);
        size_t needed = 0;
        beamcraft_error *error = NULL;
        if (output == NULL) {
            return NULL;
        }
        const beamcraft_status status = beamcraft_call_json(
            calculation, strlen(calculation), input, strlen(input), output, capacity, &needed, &error);
        if (status == BEAMCRAFT_OK) {
            beamcraft_error_free(error);
            return output;
        }
        free(output);
        if (status != BEAMCRAFT_E_BUFFER_TOO_SMALL) {
            say_refusal(id, status, error);
            beamcraft_error_free(error);
            return NULL;
        }
        beamcraft_error_free(error);
        capacity = needed;
    }
}

/* Whether the value at `at` is the one expected. */
static int holds(const char *id, const char *path, const char *at, const char *kind, const char *expected,
                 const char *tolerance)
{
    if (strcmp(kind, "text") == 0) {
        char *text = text_at(at);
        const int same = text != NULL && strcmp(text, expected) == 0;
        if (!same) {
            fprintf(stderr, "%s: %s is %s, expected \"%s\"\n", id, path, text == NULL ? "no text" : text, expected);
        }
        free(text);
        return same;
    }
    char *value_end = NULL;
    char *expected_end = NULL;
    char *tolerance_end = NULL;
    const double value = strtod(at, &value_end);
    const double wanted = strtod(expected, &expected_end);
    const double allowed = strtod(tolerance, &tolerance_end);
    if (strcmp(kind, "number") != 0 || value_end == at || expected_end == expected || *expected_end != '\0' ||
        tolerance_end == tolerance || *tolerance_end != '\0') {
        fprintf(stderr, "%s: %s cannot be compared as %s\n", id, path, kind);
        return 0;
    }
    /* Written so that what is not a number fails. */
    if (fabs(value - wanted) <= allowed) {
        return 1;
    }
    fprintf(stderr, "%s: %s is %.17g, expected %.17g within %g\n", id, path, value, wanted, allowed);
    return 0;
}

static int check(char *line)
{
    char *fields[FIELD_COUNT];
    char *rest = line;
    for (int k = 0; k < FIELD_COUNT; ++k) {
        fields[k] = rest;
        rest += strcspn(rest, "\t");
        if (k + 1 < FIELD_COUNT && *rest != '\t') {
            fprintf(stderr, "a line of %d fields instead of %d: %s\n", k + 1, FIELD_COUNT, fields[0]);
            return 0;
        }
        if (*rest == '\t') {
            *rest++ = '\0';
        }
    }
    const char *id = fields[0];
    const char *path = fields[3];
    char *output = compute(id, fields[1], fields[2]);
    if (output == NULL) {
        return 0;
    }
    const char *at = walk(output, path);
    int good = 0;
    if (at == NULL) {
        fprintf(stderr, "%s: no %s in %s\n", id, path, output);
    } else {
        good = holds(id, path, at, fields[4], fields[5], fields[6]);
    }
    free(output);
    return good;
}

/* ---- all of them ------------------------------------------------------------------------------------------ */

/* The next line without its end, in a buffer that grows; 0 at the end of the file. */
static int read_line(FILE *file, char **line, size_t *capacity)
{
    size_t length = 0;
    for (;;) {
        if (length + 2 > *capacity) {
            const size_t larger = *capacity == 0 ? 1024 : *capacity * 2;
            char *moved = realloc(*line, larger);
            if (moved == NULL) {
                return 0;
            }
            *line = moved;
            *capacity = larger;
        }
        const int letter = fgetc(file);
        if (letter == EOF || letter == '\n') {
            (*line)[length] = '\0';
            return letter != EOF || length > 0;
        }
        (*line)[length++] = (char)letter;
    }
}

int main(int count, char **arguments)
{
    if (count != 2) {
        fprintf(stderr, "usage: rows FILE\n");
        return 2;
    }
    FILE *file = fopen(arguments[1], "r");
    if (file == NULL) {
        fprintf(stderr, "%s: %s\n", arguments[1], strerror(errno));
        return 2;
    }
    char *line = NULL;
    size_t capacity = 0;
    unsigned long passed = 0;
    unsigned long failed = 0;
    while (read_line(file, &line, &capacity)) {
        if (line[0] == '\0' || line[0] == '#') {
            continue;
        }
        if (check(line)) {
            ++passed;
        } else {
            ++failed;
        }
    }
    free(line);
    fclose(file);
    printf("verification rows through C: %lu checks passed, %lu failed\n", passed, failed);
    return failed == 0 && passed > 0 ? 0 : 1;
}
