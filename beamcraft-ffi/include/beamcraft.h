/*
 * beamcraft: computation for hollow, mitred, wall-hung timber-look beams (mantels, floating shelves).
 *
 * This header is the manual of the C interface. It is generated from the library's source; the library is
 * libbeamcraft.so.0 or libbeamcraft.a, found by pkg-config as `beamcraft` and by CMake as `beamcraft::beamcraft`.
 * It needs C99 or later, or C++11 or later.
 *
 * CAUTION. Results on fire, structure, lifting, saws, dust and finishing are computed from the stated rules and
 * inputs only. Local codes, the appliance's listing and licensed practice decide; whoever uses a result is
 * responsible for it.
 *
 * UNITS. Millimetre, newton, MPa (N/mm2), kilogram, litre, degree of angle, percent moisture. The name of a
 * field ends in its unit: _mm _mm2 _mm3 _m2 _n _nmm _mpa _kg _l _deg _pct.
 *
 * STATUS. A function that can fail returns a beamcraft_status: BEAMCRAFT_OK (0) or BEAMCRAFT_E_*. Parameters
 * stand in the order: the object, inputs, outputs (named out_... or `output`), the error object. Nothing is
 * read and written through the same pointer. Outputs are written only on success, with two exceptions:
 * *out_error, and *out_needed of a text buffer that is too small.
 *
 * ERROR OBJECTS. `beamcraft_error **out_error` may be NULL. Otherwise *out_error becomes NULL on success, and on
 * failure an object that the caller owns and frees with beamcraft_error_free. It holds one or more faults, each
 * with its code, the path of the field, what was given, what is allowed and what to change. The status is the
 * code of the first fault. The value of *out_error before the call is not looked at: free an old object first.
 * The library keeps no error state of its own, sets no errno and writes no log (except that, when a defect of
 * the library itself is caught, the language's runtime says so on the standard error stream).
 *
 * OWNERSHIP. What the library returns through a pointer to a handle belongs to the caller and goes back to the
 * function ..._free of its kind, exactly once; ..._free(NULL) does nothing. Everything else belongs to whom it
 * belonged before. The library keeps no pointer of the caller after a call returns. Static texts, returned as
 * `const char *`, live as long as the library is loaded.
 *
 * TEXT IN. UTF-8 as pointer and length in bytes; no closing NUL is needed, and one within the length is part of
 * the text. NULL is refused, also with length 0.
 *
 * TEXT BUFFERS. Text out goes into the caller's buffer: `char *buffer, size_t capacity, size_t *out_needed`.
 * *out_needed becomes the number of bytes that the text needs with its closing NUL. With capacity 0 the call
 * only asks for that size: the buffer is not touched and may be NULL. A buffer that is too small is left as it
 * is and the status is BEAMCRAFT_E_BUFFER_TOO_SMALL. out_needed must not be NULL. Arrays out work the same way,
 * counted in items, without the NUL.
 *
 * NULL. Every pointer is checked. NULL is refused with BEAMCRAFT_E_NULL_POINTER unless a function says
 * otherwise. A pointer that is not NULL must be aligned for its type and point to live memory of the size
 * said. What a call writes must not overlap what it reads or writes otherwise.
 *
 * CHOICES. Enumerations cross as uint32_t with constants. A number that is none of them is an error
 * (BEAMCRAFT_E_UNKNOWN_CHOICE), never guessed at. Outputs may hold constants that a later release adds.
 *
 * GROWTH. Input structs start with struct_size. A program compiled with an older, shorter struct runs with a
 * newer library: what it does not have takes its initial value. A size that the library does not know is
 * refused with BEAMCRAFT_E_STRUCT_SIZE. While BEAMCRAFT_ABI_VERSION is 0, every release may change a layout,
 * and its changelog says so.
 *
 * THREADS. Functions may be called from any number of threads at once; the library has no state that one call
 * could leave to another. A `const` handle is not changed by a call and may be used by many threads at once;
 * it may be freed when no call uses it any more.
 *
 * PANICS. A defect inside the library does not end the host: the call returns BEAMCRAFT_E_PANIC.
 */

#ifndef BEAMCRAFT_H
#define BEAMCRAFT_H

#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif

/* Version of this header. */
#define BEAMCRAFT_VERSION_MAJOR 0
#define BEAMCRAFT_VERSION_MINOR 1
#define BEAMCRAFT_VERSION_PATCH 0
#define BEAMCRAFT_VERSION_STRING "0.1.0"

/* ----------------------------------------------------------------------------
 * Version
 * ---------------------------------------------------------------------------- */

/** Number of the binary interface that this header describes; see beamcraft_abi_version. */
#define BEAMCRAFT_ABI_VERSION 0

/** Version of the library in use, such as "0.1.0"; compare it with BEAMCRAFT_VERSION_STRING, the version of this
 *  header. Never NULL; the text is static. */
const char *beamcraft_version(void);

/** Number of the binary interface of the library in use. A program runs with any library that returns the
 *  BEAMCRAFT_ABI_VERSION it was compiled with. While the number is 0 the interface may still change with any release. */
uint32_t beamcraft_abi_version(void);

/* ----------------------------------------------------------------------------
 * Status
 * ---------------------------------------------------------------------------- */

/** The call did what it says. */
#define BEAMCRAFT_OK 0

/** What every fallible function returns: BEAMCRAFT_OK, or one of the constants BEAMCRAFT_E_*. The number of a code
 *  never changes its meaning; later releases add codes. */
typedef uint32_t beamcraft_status;

/** Short name of a status in snake case, such as "out_of_range"; "unknown_status" for a number this library does not
 *  know. Never NULL; the text is static. */
const char *beamcraft_status_name(beamcraft_status status);

/** One sentence on what a status means, also for a number this library does not know. Never NULL; the text is static. */
const char *beamcraft_status_describe(beamcraft_status status);

/** A number lies outside the range that is allowed for it. */
#define BEAMCRAFT_E_OUT_OF_RANGE 0x0101
/** A number is infinite or not a number. */
#define BEAMCRAFT_E_NOT_FINITE 0x0102
/** A field is given that the input does not have. */
#define BEAMCRAFT_E_UNKNOWN_FIELD 0x0103
/** A required field is not given. */
#define BEAMCRAFT_E_MISSING_FIELD 0x0104
/** A field holds a value of another type than the one required. */
#define BEAMCRAFT_E_WRONG_TYPE 0x0105
/** A field or an id is given more than once. */
#define BEAMCRAFT_E_DUPLICATE_FIELD 0x0106
/** A name (species, calculation, choice) is not in its list. */
#define BEAMCRAFT_E_UNKNOWN_NAME 0x0107
/** A text cannot be read as JSON, as a length or as UTF-8. */
#define BEAMCRAFT_E_MALFORMED 0x0108
/** Two or more values, each allowed, contradict one another. */
#define BEAMCRAFT_E_INCONSISTENT 0x0109
/** The input describes something that this version does not compute. */
#define BEAMCRAFT_E_NOT_SUPPORTED 0x010a
/** The planes leave no solid, or one without volume. */
#define BEAMCRAFT_E_EMPTY_SOLID 0x0201
/** The boards fill the body: no hollow is left inside. */
#define BEAMCRAFT_E_NO_ROOM_INSIDE 0x0202
/** The material has no published value for a property that is needed. */
#define BEAMCRAFT_E_NO_PUBLISHED_VALUE 0x0301
/** The fastener does not reach the member that should hold it. */
#define BEAMCRAFT_E_PENETRATION_TOO_SHORT 0x0401
/** A pointer that must not be NULL is NULL. */
#define BEAMCRAFT_E_NULL_POINTER 0x0e01
/** The size field of a struct is not one this library knows. */
#define BEAMCRAFT_E_STRUCT_SIZE 0x0e02
/** A number is not one of the constants of its enumeration. */
#define BEAMCRAFT_E_UNKNOWN_CHOICE 0x0e03
/** The caller's buffer is too small; the size needed is reported. */
#define BEAMCRAFT_E_BUFFER_TOO_SMALL 0x0e04
/** A result is not a finite number; please report it. */
#define BEAMCRAFT_E_NOT_REPRESENTABLE 0x0f01
/** An unexpected failure inside the library; please report it. */
#define BEAMCRAFT_E_PANIC 0x0f02

/* ----------------------------------------------------------------------------
 * Errors
 * ---------------------------------------------------------------------------- */

/** Why a call was refused: one or more faults. Never changes, so that any number of threads may read it at once. */
typedef struct beamcraft_error beamcraft_error;

/** Frees an error object. NULL is allowed and does nothing.
 *
 *  Pointers:
 *  `error` is NULL, or came out of a call of this library and was not freed before; nobody uses it any more. */
void beamcraft_error_free(beamcraft_error *error);

/** How many faults there are: at least 1; 0 for NULL.
 *
 *  Pointers:
 *  `error` is NULL or a live error object. */
size_t beamcraft_error_count(const beamcraft_error *error);

/** Code of the fault at `index`, counted from 0.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; `out_code` is NULL or writable. NULL is refused. */
beamcraft_status beamcraft_error_code(const beamcraft_error *error,
                                      size_t index,
                                      beamcraft_status *out_code);

/** Path of the field at fault in the fault at `index`, such as "thickness_a_mm" or "body.legs[0].length_mm"; empty for
 *  the whole input.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; the rest is a text buffer, see the top of the header. */
beamcraft_status beamcraft_error_path(const beamcraft_error *error,
                                      size_t index,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *out_needed);

/** What was given, as text with its unit; empty where nothing was given.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; the rest is a text buffer, see the top of the header. */
beamcraft_status beamcraft_error_given(const beamcraft_error *error,
                                       size_t index,
                                       char *buffer,
                                       size_t capacity,
                                       size_t *out_needed);

/** What would have been allowed, in words.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; the rest is a text buffer, see the top of the header. */
beamcraft_status beamcraft_error_allowed(const beamcraft_error *error,
                                         size_t index,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *out_needed);

/** What to change, in words; may be empty.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; the rest is a text buffer, see the top of the header. */
beamcraft_status beamcraft_error_cure(const beamcraft_error *error,
                                      size_t index,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *out_needed);

/** The fault at `index` as one line: path, what was given, what is allowed, what to change.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; the rest is a text buffer, see the top of the header. */
beamcraft_status beamcraft_error_message(const beamcraft_error *error,
                                         size_t index,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *out_needed);

/** Every fault as text, one line each.
 *
 *  Pointers:
 *  `error` is NULL or a live error object; the rest is a text buffer, see the top of the header. */
beamcraft_status beamcraft_error_text(const beamcraft_error *error,
                                      char *buffer,
                                      size_t capacity,
                                      size_t *out_needed);

/* ----------------------------------------------------------------------------
 * Every calculation by name, with JSON in and out
 * ---------------------------------------------------------------------------- */

/** The schema of what a calculation takes. */
#define BEAMCRAFT_SCHEMA_INPUT 0
/** The schema of what a calculation returns. */
#define BEAMCRAFT_SCHEMA_OUTPUT 1

/** Computes the calculation `name` for a JSON input and gives the JSON of its result: the same bytes for the same input
 *  on every machine, no spaces, fields in the order of the schema. All faults of the input are found at once.
 *
 *  A field whose name ends in `_mm` also takes a shop length as text, such as "7' 3 1/2\"".
 *
 *  The result is computed in each call, also when capacity is 0: a buffer that is large enough from the start saves
 *  half the work.
 *
 *  Pointers:
 *  `name` and `input` are NULL or point to as many bytes of UTF-8 as their lengths say, NULL is refused; the rest is a
 *  text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_call_json(const char *name,
                                     size_t name_length,
                                     const char *input,
                                     size_t input_length,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *out_needed,
                                     beamcraft_error **out_error);

/** How many calculations there are. */
size_t beamcraft_calculation_count(void);

/** Name of the calculation at `index`, counted from 0; the order is fixed within a release.
 *
 *  Pointers:
 *  A text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_calculation_name(size_t index,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** What the calculation at `index` answers, in one line.
 *
 *  Pointers:
 *  A text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_calculation_purpose(size_t index,
                                               char *buffer,
                                               size_t capacity,
                                               size_t *out_needed,
                                               beamcraft_error **out_error);

/** JSON Schema (draft 2020-12) of what the calculation at `index` takes or returns: fields, units, ranges, defaults.
 *  `side` is BEAMCRAFT_SCHEMA_INPUT or BEAMCRAFT_SCHEMA_OUTPUT.
 *
 *  Pointers:
 *  A text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_calculation_schema(size_t index,
                                              uint32_t side,
                                              char *buffer,
                                              size_t capacity,
                                              size_t *out_needed,
                                              beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: numbers and choices in structs, nothing allocated on success.
 *
 * Each calculation has an input struct, an init function that sets its size and initial values, an output
 * struct and the call itself:
 *
 *     beamcraft_mitre_pair_input input;
 *     beamcraft_mitre_pair_output output;
 *     beamcraft_mitre_pair_input_init(&input);
 *     input.thickness_a_mm = 20.0;
 *     input.thickness_b_mm = 20.0;
 *     status = beamcraft_mitre_pair(&input, &output, NULL);
 *
 * Every input must go through its init function, once; then fields are set and calls made in any order. A
 * field without an initial value starts as a value that is refused, so that none is forgotten. Fields named
 * reserved stay 0. An optional field counts only with its GIVEN constant in `given`, as in
 * `input.given |= BEAMCRAFT_..._GIVEN_...`. The init function accepts NULL and does nothing; the call refuses
 * NULL for input and output. The output is written only on success, whole. Input and output must be aligned as
 * their types are and must not overlap; both belong to the caller, who may place them anywhere.
 * ---------------------------------------------------------------------------- */

/* ----------------------------------------------------------------------------
 * Typed calls: shell
 * ---------------------------------------------------------------------------- */

/** Two boards that meet along a mitred edge. */
typedef struct beamcraft_mitre_pair_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of board a, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees; above 180 an inside
   *  corner. Range 10 to 350. Initially 90.0. */
  double corner_deg;
} beamcraft_mitre_pair_input;

/** The mitre that brings both show faces together. */
typedef struct beamcraft_mitre_pair_output {
  /** Angle between the seam and the show face of board a, degrees. */
  double angle_a_deg;
  /** Angle between the seam and the show face of board b, degrees. */
  double angle_b_deg;
  /** Blade tilt from square for board a, degrees; negative when the long point lies on the inner face. */
  double tilt_a_deg;
  /** Blade tilt from square for board b, degrees; negative when the long point lies on the inner face. */
  double tilt_b_deg;
  /** Length of the seam across the section, the same on both boards, mm. */
  double seam_mm;
  /** How much the inner face of board a is shorter than its show face at this edge, mm; negative when
   *  longer. */
  double setback_a_mm;
  /** How much the inner face of board b is shorter than its show face at this edge, mm; negative when
   *  longer. */
  double setback_b_mm;
} beamcraft_mitre_pair_output;

/** Sets up an input of beamcraft_mitre_pair: its size and its initial values. Does nothing for NULL. */
void beamcraft_mitre_pair_input_init(beamcraft_mitre_pair_input *out_input);

/** Blade tilts and seam of the mitre between two boards of any thickness at any corner angle. */
beamcraft_status beamcraft_mitre_pair(const beamcraft_mitre_pair_input *input,
                                      beamcraft_mitre_pair_output *output,
                                      beamcraft_error **out_error);

#ifdef __cplusplus
}  /* extern "C" */
#endif

#endif  /* BEAMCRAFT_H */
