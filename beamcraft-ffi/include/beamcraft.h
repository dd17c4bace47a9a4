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
/** A feature takes no wood out of the panel it is cut into. */
#define BEAMCRAFT_E_EMPTY_CUT 0x0210
/** A feature takes away the whole of a panel or of its show face. */
#define BEAMCRAFT_E_NOTHING_LEFT 0x0211
/** The material has no published value for a property that is needed. */
#define BEAMCRAFT_E_NO_PUBLISHED_VALUE 0x0301
/** The fastener does not reach the member that should hold it. */
#define BEAMCRAFT_E_PENETRATION_TOO_SHORT 0x0401
/** The parts of a cross-section leave no area, or none around its own centroid. */
#define BEAMCRAFT_E_NO_SECTION 0x0501
/** The supports do not hold the part: it can fall or turn freely. */
#define BEAMCRAFT_E_UNSTABLE 0x0502
/** A pointer that must not be NULL is NULL. */
#define BEAMCRAFT_E_NULL_POINTER 0x0e01
/** The size field of a struct is not one this library knows. */
#define BEAMCRAFT_E_STRUCT_SIZE 0x0e02
/** A number is not one of the constants of its enumeration. */
#define BEAMCRAFT_E_UNKNOWN_CHOICE 0x0e03
/** The caller's buffer is too small; the size needed is reported. */
#define BEAMCRAFT_E_BUFFER_TOO_SMALL 0x0e04
/** A column has neither one value nor as many as there are rows. */
#define BEAMCRAFT_E_COLUMN_LENGTH 0x0e10
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

/** Path of the field at fault in the fault at `index`, such as `thickness_a_mm` or `body.legs[0].length_mm`; empty for
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
/** Lengths of a drawing in millimetres. */
#define BEAMCRAFT_DRAWING_METRIC 0
/** Lengths of a drawing in inches. */
#define BEAMCRAFT_DRAWING_INCHES 1

/** What a search tells while it runs: steps spent and steps that may be spent; the best value found and the bound proven
 *  so far, NaN before there is one. `user_data` is the pointer given to the call. Returns 0 to go on; anything else
 *  stops the search. It is called on the caller's thread, must not unwind and must not call back into the same search. */
typedef uint32_t (*beamcraft_progress)(void *user_data,
                                       uint64_t steps,
                                       uint64_t budget,
                                       double value,
                                       double bound);

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

/** As [`beamcraft_call_json`] for a calculation that searches, cut_list_bars or cut_list_boards: tells `progress` how far it
 *  has come, some times a second; when that says stop, the result is the best found so far, and says so in its `end`.
 *
 *  The search runs in each call, also when capacity is 0: give a buffer that is large enough from the start.
 *
 *  Pointers:
 *  As [`beamcraft_call_json`]; `progress` is NULL or a function that may be called with `user_data` until this call returns. */
beamcraft_status beamcraft_call_json_with_progress(const char *name,
                                                   size_t name_length,
                                                   const char *input,
                                                   size_t input_length,
                                                   beamcraft_progress progress,
                                                   void *user_data,
                                                   char *buffer,
                                                   size_t capacity,
                                                   size_t *out_needed,
                                                   beamcraft_error **out_error);

/** Computes the calculation `name` for a JSON input and draws its result as an SVG sheet: plan (the cross section, lengths
 *  as the spec says), sawn_body (the panels pulled apart), yearly_movement (twelve months), tolerance_stack (histograms of the
 *  gaps, mm), fastener_group (the force on each fastener).
 *
 *  `lengths` is BEAMCRAFT_DRAWING_METRIC or BEAMCRAFT_DRAWING_INCHES.
 *
 *  Pointers:
 *  As [`beamcraft_call_json`]. */
beamcraft_status beamcraft_drawing_svg(const char *name,
                                       size_t name_length,
                                       const char *input,
                                       size_t input_length,
                                       uint32_t lengths,
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
 * Tables of materials: every figure with its source
 * ---------------------------------------------------------------------------- */

/** Species of wood: averages of clear wood. */
#define BEAMCRAFT_MATERIALS_SPECIES 0
/** Strength classes of structural timber: characteristic values. */
#define BEAMCRAFT_MATERIALS_STRENGTH_CLASSES 1
/** Sheet goods and glued products. */
#define BEAMCRAFT_MATERIALS_PANELS 2
/** Species combinations of the NDS: specific gravity assigned to graded lumber. */
#define BEAMCRAFT_MATERIALS_NDS_COMBINATIONS 3

/** How many materials a table has, one of BEAMCRAFT_MATERIALS_*.
 *
 *  Pointers:
 *  `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_material_count(uint32_t table,
                                          size_t *out_count,
                                          beamcraft_error **out_error);

/** Name of the material at `index`, counted from 0; the order is fixed within a release. Sheet goods have one row for
 *  each thickness that is published.
 *
 *  Pointers:
 *  A text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_material_name(uint32_t table,
                                         size_t index,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *out_needed,
                                         beamcraft_error **out_error);

/** Place of the material of a name: common or botanical name of a species, a class, a panel, a combination or its short
 *  form. A name that fits several, or none, is refused with those that fit or the closest one.
 *
 *  Pointers:
 *  `name` is NULL or points to `name_length` bytes of UTF-8, NULL is refused; `out_index` is NULL or writable; NULL is
 *  refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_material_find(uint32_t table,
                                         const char *name,
                                         size_t name_length,
                                         size_t *out_index,
                                         beamcraft_error **out_error);

/** Everything about the material at `index` as a flat JSON object: figures with their units in the names, each with its
 *  source and whether it was seen there or recalled. What is not published is left out.
 *
 *  Pointers:
 *  A text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_material_json(uint32_t table,
                                         size_t index,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *out_needed,
                                         beamcraft_error **out_error);

/** One number about the material at `index` by the name it has in beamcraft_material_json, such as "density_12_kg_m3".
 *  BEAMCRAFT_E_NO_PUBLISHED_VALUE where nothing is published, BEAMCRAFT_E_WRONG_TYPE where it is a text.
 *
 *  Pointers:
 *  `column` is NULL or points to `column_length` bytes of UTF-8, NULL is refused; `out_value` is NULL or writable; NULL
 *  is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_material_number(uint32_t table,
                                           size_t index,
                                           const char *column,
                                           size_t column_length,
                                           double *out_value,
                                           beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Columns: a calculation over many rows in one call
 * ---------------------------------------------------------------------------- */

/** The code of nothing in a column of choices or counts: an optional value that a row does not have, a row that is
 *  refused, a fault that belongs to no single field. */
#define BEAMCRAFT_ABSENT UINT32_MAX

/** An input field of a call over columns. The library reads the values in place and keeps no pointer. */
typedef struct beamcraft_column_input {
  /** Name of the field, UTF-8. */
  const char *name;
  /** Bytes of the name. */
  size_t name_length;
  /** Values of a field of numbers; NULL for a field of choices or counts. NaN where an optional field has no value. */
  const double *numbers;
  /** Values of a field of choices (their constants) or counts; NULL for a field of numbers. BEAMCRAFT_ABSENT where an
   *  optional field has no value. */
  const uint32_t *codes;
  /** How many values there are: one for each row, or 1 for all of them. */
  size_t count;
} beamcraft_column_input;

/** An output field that is wanted of a call over columns. */
typedef struct beamcraft_column_output {
  /** Name of the field, UTF-8. */
  const char *name;
  /** Bytes of the name. */
  size_t name_length;
  /** Place for a field of numbers, one for each row; NULL for a field of choices or counts. A row that is refused
   *  becomes NaN, and so does an optional output that the row does not have. */
  double *numbers;
  /** Place for a field of choices or counts, one for each row; NULL for a field of numbers. A row that is refused
   *  becomes BEAMCRAFT_ABSENT, and so does an optional output that the row does not have. */
  uint32_t *codes;
} beamcraft_column_output;

/** Computes the calculation `name` for `row_count` rows at once. Every calculation with a typed call takes columns; the
 *  results are the same bits as those of the typed call, with any number of threads.
 *
 *  `inputs` are the input fields in any order; a field with an initial value may be left out. `outputs` are the output
 *  fields that are wanted. `row_status` (NULL if not wanted) becomes BEAMCRAFT_OK or a BEAMCRAFT_E_* for each row,
 *  `row_fault_field` (NULL if not wanted) the place of the field at fault among the fields of the input struct, counted
 *  from 0, or BEAMCRAFT_ABSENT. `out_refused` (NULL if not wanted) becomes the number of rows that were refused: they do
 *  not make the call fail and leave the other rows alone. The call fails when names, kinds or lengths do not fit; then
 *  nothing is written. `threads` is 1 to 64; more than one is worth it above some ten thousand rows.
 *
 *  Arrays must not overlap, except inputs with one another; what does is refused with BEAMCRAFT_E_INCONSISTENT. With
 *  more than one thread the arrays are read and written by threads of the library until the call returns.
 *
 *  Pointers:
 *  `name` and the names of the fields are NULL or point to as many bytes of UTF-8 as their lengths say, NULL is refused.
 *  `inputs` and `outputs` are NULL or point to as many structs as their counts say; NULL is refused unless the count is 0.
 *  Every array is NULL, or aligned and readable for `count` values (inputs) or writable for `row_count` values (outputs,
 *  `row_status`, `row_fault_field`). `out_refused` and `out_error` are NULL or writable. */
beamcraft_status beamcraft_columns(const char *name,
                                   size_t name_length,
                                   size_t row_count,
                                   const beamcraft_column_input *inputs,
                                   size_t input_count,
                                   const beamcraft_column_output *outputs,
                                   size_t output_count,
                                   uint32_t threads,
                                   uint32_t *row_status,
                                   uint32_t *row_fault_field,
                                   size_t *out_refused,
                                   beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * The whole job: from a spec to a plan
 * ---------------------------------------------------------------------------- */

/** A whole job: panels, saw settings, cleat, checks, findings. Never changes, so that any number of threads may read it
 *  at once. */
typedef struct beamcraft_plan beamcraft_plan;

/** Plans a whole job from a spec in JSON, the document that starts with "beamcraft_spec": 1. A job that does not work
 *  is planned all the same, and its findings say why; only a spec that cannot be read or contradicts itself is refused,
 *  with every fault.
 *
 *  Pointers:
 *  `spec` is NULL or points to `spec_length` bytes; `out_plan` is NULL or writable; NULL is refused. `out_error` is NULL
 *  or writable. The plan belongs to the caller and goes back to beamcraft_plan_free. */
beamcraft_status beamcraft_plan_new(const char *spec,
                                    size_t spec_length,
                                    beamcraft_plan **out_plan,
                                    beamcraft_error **out_error);

/** Frees a plan. NULL is allowed and does nothing.
 *
 *  Pointers:
 *  `plan` is NULL, or came out of this library and was not freed before; nobody uses it any more. */
void beamcraft_plan_free(beamcraft_plan *plan);

/** The whole plan as JSON, byte for byte what beamcraft_call_json gives for "plan" and the same spec.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_json(const beamcraft_plan *plan,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *out_needed,
                                     beamcraft_error **out_error);

/** Cross section of the body as it hangs, as an SVG drawing (UTF-8) at a stated scale.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_section_svg(const beamcraft_plan *plan,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** The whole plan as one HTML page (UTF-8) that needs nothing else: findings, drawing, panels, cuts, checks, cautions.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_report_html(const beamcraft_plan *plan,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** Mass of what is lifted: panels, frame pieces and the beam's half of the cleat, kg; finish, glue and screws are left
 *  out. Lift and hang with a second person.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_mass_kg` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_mass_kg(const beamcraft_plan *plan,
                                        double *out_mass_kg,
                                        beamcraft_error **out_error);

/** Centre of gravity of what is lifted: three numbers, from the left end of the front, from the front face and from the
 *  underside, mm.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_centre_mm` is NULL or has room for three numbers; NULL is refused; `out_error` is
 *  NULL or writable. */
beamcraft_status beamcraft_plan_centre_mm(const beamcraft_plan *plan,
                                          double *out_centre_mm,
                                          beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Panels of a plan: solids, triangles, files and drawings
 * ---------------------------------------------------------------------------- */

/** A piece of wood. */
#define BEAMCRAFT_PIECE_ADDED 0
/** A piece that is taken out of the wood. */
#define BEAMCRAFT_PIECE_REMOVED 1

/** Sizes of a panel. The show face is the one that is seen; long points lie on it wherever the bevel is positive. */
typedef struct beamcraft_panel_size {
  /** Extent of the show face along the grain, from long point to long point, mm. */
  double show_length_mm;
  /** Extent of the show face across the grain, from long point to long point, mm. */
  double show_width_mm;
  /** Extent of the inner face along the grain, mm. */
  double inner_length_mm;
  /** Extent of the inner face across the grain, mm. */
  double inner_width_mm;
  /** Thickness, mm. */
  double thickness_mm;
  /** Length of the square-edged blank that holds the panel, along the grain, mm. */
  double blank_length_mm;
  /** Width of the square-edged blank that holds the panel, across the grain, mm. */
  double blank_width_mm;
  /** Volume of the wood, mm³. */
  double volume_mm3;
} beamcraft_panel_size;

/** One edge of a panel. */
typedef struct beamcraft_panel_edge {
  /** Angle between the two outer faces, inside the body, degrees. */
  double corner_deg;
  /** Blade tilt from square, degrees; positive when the long point lies on the show face. */
  double tilt_deg;
  /** Angle of the edge in the face from a rip along, or a square cut across, the grain, degrees; positive when the panel
   *  is longer at its far edge (cross-cut) or wider at its far end (rip). */
  double gauge_deg;
  /** Length of the edge on the show face, mm. */
  double show_length_mm;
  /** Length of the edge on the inner face, mm. */
  double inner_length_mm;
  /** Tag that the edge has among the faces of the panel's first piece, see beamcraft_plan_piece_tags. */
  uint32_t tag;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_panel_edge;

/** All panels as a binary STL file in mm, one closed surface for each piece; an array buffer of bytes.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panels_stl(const beamcraft_plan *plan,
                                           uint8_t *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** All panels as a STEP file (AP214) in mm, one named solid a panel; a text buffer.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panels_step(const beamcraft_plan *plan,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** Show face of every panel and the section as a DXF file (R12) in mm; a text buffer.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panels_dxf(const beamcraft_plan *plan,
                                           char *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** All panels as a binary glTF 2.0 file in metres, one named node a panel; an array buffer of bytes.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panels_gltf(const beamcraft_plan *plan,
                                            uint8_t *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** How many panels there are.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_count(const beamcraft_plan *plan,
                                            size_t *out_count,
                                            beamcraft_error **out_error);

/** Name of a panel, that of its show face, such as "front" or "leg2.left_end". It comes from the input and stays the same when
 *  sizes change. `panel` counts from 0.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_id(const beamcraft_plan *plan,
                                         size_t panel,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *out_needed,
                                         beamcraft_error **out_error);

/** Sizes of a panel.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_size` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_size(const beamcraft_plan *plan,
                                           size_t panel,
                                           beamcraft_panel_size *out_size,
                                           beamcraft_error **out_error);

/** How many edges a panel has.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_edge_count(const beamcraft_plan *plan,
                                           size_t panel,
                                           size_t *out_count,
                                           beamcraft_error **out_error);

/** Name of an edge of a panel: the two faces that meet there, such as "front|top".
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_edge_id(const beamcraft_plan *plan,
                                        size_t panel,
                                        size_t edge,
                                        char *buffer,
                                        size_t capacity,
                                        size_t *out_needed,
                                        beamcraft_error **out_error);

/** How a panel ends at one of its edges.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_edge` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_edge(const beamcraft_plan *plan,
                                     size_t panel,
                                     size_t edge,
                                     beamcraft_panel_edge *out_edge,
                                     beamcraft_error **out_error);

/** How many convex pieces a panel is made of: the first is the board with all its edges cut, the others are added to it
 *  or taken out of it.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_piece_count(const beamcraft_plan *plan,
                                            size_t panel,
                                            size_t *out_count,
                                            beamcraft_error **out_error);

/** Whether a piece is wood or taken out of it: BEAMCRAFT_PIECE_ADDED or BEAMCRAFT_PIECE_REMOVED.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_sign` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_piece_sign(const beamcraft_plan *plan,
                                           size_t panel,
                                           size_t piece,
                                           uint32_t *out_sign,
                                           beamcraft_error **out_error);

/** Corner points of a piece, three numbers each, mm, in the axes of the body: x from the left end of the front along the
 *  length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_piece_vertices(const beamcraft_plan *plan,
                                               size_t panel,
                                               size_t piece,
                                               double *buffer,
                                               size_t capacity,
                                               size_t *out_needed,
                                               beamcraft_error **out_error);

/** Faces of a piece: for each face the number of its corners, then the places of its corners among the points of
 *  beamcraft_plan_piece_vertices, counter-clockwise seen from outside.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_piece_faces(const beamcraft_plan *plan,
                                            size_t panel,
                                            size_t piece,
                                            uint32_t *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** Tags of the faces of a piece, in the order of beamcraft_plan_piece_faces. On the first piece of a panel 0 is the show
 *  face, 1 the inner face, and the others are the tags of its edges.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_piece_tags(const beamcraft_plan *plan,
                                           size_t panel,
                                           size_t piece,
                                           uint32_t *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** Corner points of the triangles of a panel, three numbers each, mm, in the axes of the body: x from the left end of the
 *  front along the length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_vertices(const beamcraft_plan *plan,
                                               size_t panel,
                                               double *buffer,
                                               size_t capacity,
                                               size_t *out_needed,
                                               beamcraft_error **out_error);

/** The wood of a panel as triangles: for each three places among the points of beamcraft_plan_panel_vertices,
 *  counter-clockwise seen from outside. Pieces that are taken out of the panel are left out; where there are any, the wood
 *  is given as convex parts, each a closed surface. Capacity counts numbers, not triangles.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_triangles(const beamcraft_plan *plan,
                                                size_t panel,
                                                uint32_t *buffer,
                                                size_t capacity,
                                                size_t *out_needed,
                                                beamcraft_error **out_error);

/** Which face of the panel each triangle belongs to, in the order of beamcraft_plan_panel_triangles: 0 the show face, 1 the
 *  inner face, the tag of an edge, or another number on what is left where a piece was taken out.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_triangle_tags(const beamcraft_plan *plan,
                                                    size_t panel,
                                                    uint32_t *buffer,
                                                    size_t capacity,
                                                    size_t *out_needed,
                                                    beamcraft_error **out_error);

/** How many drawings of a plan there are.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_drawing_count(const beamcraft_plan *plan,
                                              size_t *out_count,
                                              beamcraft_error **out_error);

/** Name of a drawing: "section", "exploded", and for every panel such as "front" the sheet "panel_front" and the sketches
 *  of the saw "set_ups_front", with "_1", "_2" behind them where they take more than one sheet. `drawing` counts from 0.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_drawing_name(const beamcraft_plan *plan,
                                             size_t drawing,
                                             char *buffer,
                                             size_t capacity,
                                             size_t *out_needed,
                                             beamcraft_error **out_error);

/** A drawing by its name as SVG (UTF-8), a sheet of paper with its size in millimetres. A name that the plan has no
 *  drawing of is refused, and the error lists those it has.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `name` is NULL or points to `name_length` bytes; the rest is a text buffer, see the top
 *  of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_drawing_svg(const beamcraft_plan *plan,
                                            const char *name,
                                            size_t name_length,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * A body of any form with the cuts of its panels
 * ---------------------------------------------------------------------------- */

/** A hollow body of any form with its panels and their cuts. Never changes, so that any number of threads may read it at
 *  once. */
typedef struct beamcraft_body beamcraft_body;

/** Makes a body of any form with the cuts of its panels from JSON: the input of "sawn_body". What the saw does not reach
 *  is a finding in its JSON; only an input that cannot be read or describes no body is refused, with every fault.
 *
 *  Pointers:
 *  `spec` is NULL or points to `spec_length` bytes; `out_body` is NULL or writable; NULL is refused. `out_error` is NULL
 *  or writable. The body belongs to the caller and goes back to beamcraft_body_free. */
beamcraft_status beamcraft_body_new(const char *spec,
                                    size_t spec_length,
                                    beamcraft_body **out_body,
                                    beamcraft_error **out_error);

/** Frees a body. NULL is allowed and does nothing.
 *
 *  Pointers:
 *  `body` is NULL, or came out of this library and was not freed before; nobody uses it any more. */
void beamcraft_body_free(beamcraft_body *body);

/** The body with its panels, cuts, findings and cautions as JSON, byte for byte what beamcraft_call_json gives for
 *  "sawn_body" and the same input.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_json(const beamcraft_body *body,
                                     char *buffer,
                                     size_t capacity,
                                     size_t *out_needed,
                                     beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Panels of a body: solids, triangles, files and drawings
 * ---------------------------------------------------------------------------- */

/** All panels as a binary STL file in mm, one closed surface for each piece; an array buffer of bytes.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panels_stl(const beamcraft_body *body,
                                           uint8_t *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** All panels as a STEP file (AP214) in mm, one named solid a panel; a text buffer.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panels_step(const beamcraft_body *body,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** Show face of every panel and the section as a DXF file (R12) in mm; a text buffer.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panels_dxf(const beamcraft_body *body,
                                           char *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** All panels as a binary glTF 2.0 file in metres, one named node a panel; an array buffer of bytes.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panels_gltf(const beamcraft_body *body,
                                            uint8_t *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** How many panels there are.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panel_count(const beamcraft_body *body,
                                            size_t *out_count,
                                            beamcraft_error **out_error);

/** Name of a panel, that of its show face, such as "front" or "leg2.left_end". It comes from the input and stays the same when
 *  sizes change. `panel` counts from 0.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panel_id(const beamcraft_body *body,
                                         size_t panel,
                                         char *buffer,
                                         size_t capacity,
                                         size_t *out_needed,
                                         beamcraft_error **out_error);

/** Sizes of a panel.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_size` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panel_size(const beamcraft_body *body,
                                           size_t panel,
                                           beamcraft_panel_size *out_size,
                                           beamcraft_error **out_error);

/** How many edges a panel has.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_edge_count(const beamcraft_body *body,
                                           size_t panel,
                                           size_t *out_count,
                                           beamcraft_error **out_error);

/** Name of an edge of a panel: the two faces that meet there, such as "front|top".
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_edge_id(const beamcraft_body *body,
                                        size_t panel,
                                        size_t edge,
                                        char *buffer,
                                        size_t capacity,
                                        size_t *out_needed,
                                        beamcraft_error **out_error);

/** How a panel ends at one of its edges.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_edge` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_edge(const beamcraft_body *body,
                                     size_t panel,
                                     size_t edge,
                                     beamcraft_panel_edge *out_edge,
                                     beamcraft_error **out_error);

/** How many convex pieces a panel is made of: the first is the board with all its edges cut, the others are added to it
 *  or taken out of it.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_piece_count(const beamcraft_body *body,
                                            size_t panel,
                                            size_t *out_count,
                                            beamcraft_error **out_error);

/** Whether a piece is wood or taken out of it: BEAMCRAFT_PIECE_ADDED or BEAMCRAFT_PIECE_REMOVED.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_sign` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_piece_sign(const beamcraft_body *body,
                                           size_t panel,
                                           size_t piece,
                                           uint32_t *out_sign,
                                           beamcraft_error **out_error);

/** Corner points of a piece, three numbers each, mm, in the axes of the body: x from the left end of the front along the
 *  length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_piece_vertices(const beamcraft_body *body,
                                               size_t panel,
                                               size_t piece,
                                               double *buffer,
                                               size_t capacity,
                                               size_t *out_needed,
                                               beamcraft_error **out_error);

/** Faces of a piece: for each face the number of its corners, then the places of its corners among the points of
 *  beamcraft_body_piece_vertices, counter-clockwise seen from outside.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_piece_faces(const beamcraft_body *body,
                                            size_t panel,
                                            size_t piece,
                                            uint32_t *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/** Tags of the faces of a piece, in the order of beamcraft_body_piece_faces. On the first piece of a panel 0 is the show
 *  face, 1 the inner face, and the others are the tags of its edges.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_piece_tags(const beamcraft_body *body,
                                           size_t panel,
                                           size_t piece,
                                           uint32_t *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** Corner points of the triangles of a panel, three numbers each, mm, in the axes of the body: x from the left end of the
 *  front along the length, y from the front face to the wall, z up from the underside. Capacity counts numbers, not points.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panel_vertices(const beamcraft_body *body,
                                               size_t panel,
                                               double *buffer,
                                               size_t capacity,
                                               size_t *out_needed,
                                               beamcraft_error **out_error);

/** The wood of a panel as triangles: for each three places among the points of beamcraft_body_panel_vertices,
 *  counter-clockwise seen from outside. Pieces that are taken out of the panel are left out; where there are any, the wood
 *  is given as convex parts, each a closed surface. Capacity counts numbers, not triangles.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panel_triangles(const beamcraft_body *body,
                                                size_t panel,
                                                uint32_t *buffer,
                                                size_t capacity,
                                                size_t *out_needed,
                                                beamcraft_error **out_error);

/** Which face of the panel each triangle belongs to, in the order of beamcraft_body_panel_triangles: 0 the show face, 1 the
 *  inner face, the tag of an edge, or another number on what is left where a piece was taken out.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_panel_triangle_tags(const beamcraft_body *body,
                                                    size_t panel,
                                                    uint32_t *buffer,
                                                    size_t capacity,
                                                    size_t *out_needed,
                                                    beamcraft_error **out_error);

/** How many drawings of a body there are.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_drawing_count(const beamcraft_body *body,
                                              size_t *out_count,
                                              beamcraft_error **out_error);

/** Name of a drawing: "section", "exploded", and for every panel such as "front" the sheet "panel_front" and the sketches
 *  of the saw "set_ups_front", with "_1", "_2" behind them where they take more than one sheet. `drawing` counts from 0.
 *
 *  Pointers:
 *  `body` is NULL or a live body; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_drawing_name(const beamcraft_body *body,
                                             size_t drawing,
                                             char *buffer,
                                             size_t capacity,
                                             size_t *out_needed,
                                             beamcraft_error **out_error);

/** A drawing by its name as SVG (UTF-8), a sheet of paper with its size in millimetres. A name that the body has no
 *  drawing of is refused, and the error lists those it has.
 *
 *  Pointers:
 *  `body` is NULL or a live body; `name` is NULL or points to `name_length` bytes; the rest is a text buffer, see the top
 *  of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_body_drawing_svg(const beamcraft_body *body,
                                            const char *name,
                                            size_t name_length,
                                            char *buffer,
                                            size_t capacity,
                                            size_t *out_needed,
                                            beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * What a plan says about itself: findings, checks, cautions
 * ---------------------------------------------------------------------------- */

/** Bit of demand in `given` of beamcraft_check. */
#define BEAMCRAFT_CHECK_GIVEN_DEMAND 1
/** Bit of capacity in `given` of beamcraft_check. */
#define BEAMCRAFT_CHECK_GIVEN_CAPACITY 2
/** Bit of utilisation in `given` of beamcraft_check. */
#define BEAMCRAFT_CHECK_GIVEN_UTILISATION 4
/** What is checked, in words. */
#define BEAMCRAFT_CHECK_TEXT_NAME 0
/** The part checked. */
#define BEAMCRAFT_CHECK_TEXT_SUBJECT 1
/** Unit of demand and capacity. */
#define BEAMCRAFT_CHECK_TEXT_UNIT 2
/** The governing mode; may be empty. */
#define BEAMCRAFT_CHECK_TEXT_MODE 3
/** The rule and its place. */
#define BEAMCRAFT_CHECK_TEXT_CLAUSE 4
/** What was assumed, or why there is no answer; may be empty. */
#define BEAMCRAFT_CHECK_TEXT_REMARK 5
/** One or two sentences. */
#define BEAMCRAFT_FINDING_TEXT_MESSAGE 0
/** What would help; may be empty. */
#define BEAMCRAFT_FINDING_TEXT_CURE 1
/** The part concerned. */
#define BEAMCRAFT_FINDING_TEXT_SUBJECT 2
/** The rule behind it; may be empty. */
#define BEAMCRAFT_FINDING_TEXT_CLAUSE 3

/** Numbers of one check. */
typedef struct beamcraft_check {
  /** Which of the optional fields have a value: a sum of BEAMCRAFT_CHECK_GIVEN_*. */
  uint64_t given;
  /** Demand, in the unit of the check. Optional. */
  double demand;
  /** Capacity, in the unit of the check. Optional. */
  double capacity;
  /** Demand over capacity; 1 is the limit. Optional. */
  double utilisation;
  /** What the check says. One of BEAMCRAFT_OUTCOME_*. Only BEAMCRAFT_OUTCOME_MET is a pass. */
  uint32_t outcome;
  /** What it rests on. One of BEAMCRAFT_BASIS_*. */
  uint32_t basis;
} beamcraft_check;

/** How many findings there are, worst first.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_finding_count(const beamcraft_plan *plan,
                                              size_t *out_count,
                                              beamcraft_error **out_error);

/** How much a finding matters: one of BEAMCRAFT_GRADE_*. With BEAMCRAFT_GRADE_STOP the job does not work as planned.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_grade` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_finding_grade(const beamcraft_plan *plan,
                                              size_t finding,
                                              uint32_t *out_grade,
                                              beamcraft_error **out_error);

/** What a finding is about: one of BEAMCRAFT_FINDING_CODE_*.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_code` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_finding_code(const beamcraft_plan *plan,
                                             size_t finding,
                                             uint32_t *out_code,
                                             beamcraft_error **out_error);

/** One text of a finding. `part` is one of BEAMCRAFT_FINDING_TEXT_*.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_finding_text(const beamcraft_plan *plan,
                                             size_t finding,
                                             uint32_t part,
                                             char *buffer,
                                             size_t capacity,
                                             size_t *out_needed,
                                             beamcraft_error **out_error);

/** How many checks there are.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_check_count(const beamcraft_plan *plan,
                                            size_t *out_count,
                                            beamcraft_error **out_error);

/** Numbers of a check: demand, capacity, utilisation, what it says and what it rests on.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_check` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_check(const beamcraft_plan *plan,
                                      size_t check,
                                      beamcraft_check *out_check,
                                      beamcraft_error **out_error);

/** One text of a check. `part` is one of BEAMCRAFT_CHECK_TEXT_*.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_check_text(const beamcraft_plan *plan,
                                           size_t check,
                                           uint32_t part,
                                           char *buffer,
                                           size_t capacity,
                                           size_t *out_needed,
                                           beamcraft_error **out_error);

/** How many standing cautions go with the plan. Show them wherever its results are shown.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_caution_count(const beamcraft_plan *plan,
                                              size_t *out_count,
                                              beamcraft_error **out_error);

/** Text of a standing caution.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is a text buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_caution_text(const beamcraft_plan *plan,
                                             size_t caution,
                                             char *buffer,
                                             size_t capacity,
                                             size_t *out_needed,
                                             beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Choices: numbers of every enumeration used below
 * ---------------------------------------------------------------------------- */

/* How far a figure of a source was checked. */
/** 0: Read in the publication or in a public extract of it. */
#define BEAMCRAFT_EVIDENCE_SEEN 0
/** 1: Recalled; to be confirmed before it is relied upon. */
#define BEAMCRAFT_EVIDENCE_RECALLED 1
/** 2: A fact of the trade without a published source. */
#define BEAMCRAFT_EVIDENCE_COMMON_PRACTICE 2
/** 3: Follows from geometry or equilibrium, shown in the docs. */
#define BEAMCRAFT_EVIDENCE_DERIVED 3

/* The volume that a specific gravity is stated for; the mass is ovendry in all of them. */
/** 0: Volume when green: the basic specific gravity. */
#define BEAMCRAFT_GRAVITY_BASIS_GREEN 0
/** 1: Volume at 12 % moisture content: the value of the strength tables. */
#define BEAMCRAFT_GRAVITY_BASIS_TWELVE_PERCENT 1
/** 2: Volume when ovendry: the value of the NDS. */
#define BEAMCRAFT_GRAVITY_BASIS_OVENDRY 2

/* Whether a point lies in the handbook's table, which was computed with the equation. */
/** 0: −1.1 °C to 132.2 °C and 5 % to 95 % relative humidity. */
#define BEAMCRAFT_SORPTION_TABLE_WITHIN 0
/** 1: Colder or drier than the table: the equation is extended. */
#define BEAMCRAFT_SORPTION_TABLE_EXTENDED 1

/* What air below freezing is saturated over. */
/** 0: Supercooled water, as weather services state humidity and dew point at every temperature. */
#define BEAMCRAFT_SATURATION_SURFACE_WATER 0
/** 1: Ice, as the tables of building services do below freezing; the dew point is then the frost point. */
#define BEAMCRAFT_SATURATION_SURFACE_ICE 1

/* How much a finding matters. */
/** 0: Good to know. */
#define BEAMCRAFT_GRADE_NOTE 0
/** 1: Works only with care, or cannot be decided from what was given. */
#define BEAMCRAFT_GRADE_CAUTION 1
/** 2: Does not work as planned. */
#define BEAMCRAFT_GRADE_STOP 2

/* What a finding is about. The text form is the same through every door. */
/** 0: a bevel lies beyond the saw's tilt range */
#define BEAMCRAFT_FINDING_CODE_BEYOND_TILT 0
/** 1: a piece lies between the fence and a blade that leans towards it */
#define BEAMCRAFT_FINDING_CODE_TRAPPED_PIECE 1
/** 2: an edge already bevelled rides the fence on its long point */
#define BEAMCRAFT_FINDING_CODE_LONG_POINT_RIDES_FENCE 2
/** 3: the wall half crosses fewer than two studs */
#define BEAMCRAFT_FINDING_CODE_STUDS_MISSED 3
/** 4: a screw does not reach deep enough into what should hold it */
#define BEAMCRAFT_FINDING_CODE_SCREW_TOO_SHORT 4
/** 5: a screw comes out of, or too near, the far side of what it is driven into */
#define BEAMCRAFT_FINDING_CODE_SCREW_TOO_LONG 5
/** 6: a demand exceeds the capacity */
#define BEAMCRAFT_FINDING_CODE_CHECK_FAILS 6
/** 7: the seat holds only with the help of friction */
#define BEAMCRAFT_FINDING_CODE_HELD_BY_FRICTION_ONLY 7
/** 8: the body would climb off the cleat under its load */
#define BEAMCRAFT_FINDING_CODE_CLIMBS_OFF 8
/** 9: something above leaves less room than the body needs to be lifted over the wall half */
#define BEAMCRAFT_FINDING_CODE_NO_HEADROOM 9
/** 10: the cleat does not fit into the hollow */
#define BEAMCRAFT_FINDING_CODE_CLEAT_DOES_NOT_FIT 10
/** 11: no room is left for frame pieces */
#define BEAMCRAFT_FINDING_CODE_FRAME_DOES_NOT_FIT 11
/** 12: the body runs into something on the wall */
#define BEAMCRAFT_FINDING_CODE_MEETS_OBSTRUCTION 12
/** 13: the body is closer to the opening than a cited rule allows */
#define BEAMCRAFT_FINDING_CODE_TOO_CLOSE_TO_HEAT 13
/** 14: the appliance's own listing decides the clearance and was not given */
#define BEAMCRAFT_FINDING_CODE_LISTING_GOVERNS 14
/** 15: something asked for lies outside the published methods used */
#define BEAMCRAFT_FINDING_CODE_NOT_COVERED 15
/** 16: the mass is more than one person should be asked to lift */
#define BEAMCRAFT_FINDING_CODE_HEAVY_LIFT 16
/** 17: two parts are glued together that move differently with moisture */
#define BEAMCRAFT_FINDING_CODE_CROSS_GRAIN_FIGHT 17
/** 18: an end without a panel shows the inside of the body */
#define BEAMCRAFT_FINDING_CODE_OPEN_END_SHOWS_INSIDE 18
/** 19: a glue line bears held-back movement, or stands in warmth that its glue may not bear */
#define BEAMCRAFT_FINDING_CODE_GLUE_LINE 19
/** 20: a seam is pulled open by the seasons, or its glue has to hold it */
#define BEAMCRAFT_FINDING_CODE_SEAM_MOVES 20
/** 21: the saw as given leaves visible gaps in more seams than wanted */
#define BEAMCRAFT_FINDING_CODE_SEAM_GAPS 21
/** 22: a part is wider than the way that it is to be carried through */
#define BEAMCRAFT_FINDING_CODE_DOES_NOT_PASS 22
/** 23: a groove, recess or hole comes out on a face that it was not cut from */
#define BEAMCRAFT_FINDING_CODE_BREAKS_THROUGH 23
/** 24: a cut lies outside what the described saw reaches */
#define BEAMCRAFT_FINDING_CODE_BEYOND_SAW 24
/** 25: a driver with its bit does not fit where a screw is to be driven */
#define BEAMCRAFT_FINDING_CODE_DRIVER_HAS_NO_ROOM 25
/** 26: the seams of one glue-up take longer than the open time of the glue */
#define BEAMCRAFT_FINDING_CODE_GLUE_SETS_TOO_SOON 26
/** 27: a licensed trade, or the maker of a thing near the body, must decide this */
#define BEAMCRAFT_FINDING_CODE_NEEDS_SPECIALIST 27
/** 28: the wall is not what screws or a straight back edge want */
#define BEAMCRAFT_FINDING_CODE_UNEVEN_WALL 28

/* How the fastener's axis lies to the fibres of the member that holds it. */
/** 0: Driven into side grain, across the fibres. */
#define BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN 0
/** 1: Driven into end grain, along the fibres. */
#define BEAMCRAFT_FASTENER_DIRECTION_END_GRAIN 1

/* Whether bearing strengths are rounded as the standard's table prints them. */
/** 0: The formula as it is. */
#define BEAMCRAFT_BEARING_ROUNDING_UNROUNDED 0
/** 1: To the nearest 50 psi, as Table 12.3.3 prints it and the tabulated lateral values use it. */
#define BEAMCRAFT_BEARING_ROUNDING_NEAREST_50_PSI 1

/* The range of diameters that decides the bearing formula. */
/** 0: Below 1/4 in: one bearing strength in every direction. */
#define BEAMCRAFT_DOWEL_SIZE_RANGE_BELOW_QUARTER_INCH 0
/** 1: 1/4 in to 1 in: the bearing strength depends on the direction and across the grain on the diameter. */
#define BEAMCRAFT_DOWEL_SIZE_RANGE_QUARTER_INCH_AND_MORE 1

/* The steel group of a fastener in the table of bending yield strengths. */
/** 0: Wood screw, common, box or sinker nail, spike; lag screw below 3/8 in: low to medium carbon steel. */
#define BEAMCRAFT_BENDING_YIELD_FASTENER_LOW_CARBON 0
/** 1: Bolt or drift pin; lag screw of 3/8 in and more. */
#define BEAMCRAFT_BENDING_YIELD_FASTENER_BOLT 1
/** 2: Nail of hardened steel, such as a post-frame ring shank nail. */
#define BEAMCRAFT_BENDING_YIELD_FASTENER_HARDENED_NAIL 2

/* What a dowel bears on. */
/** 0: Solid or glued laminated wood: its strength follows from the specific gravity, see `dowel_bearing`. */
#define BEAMCRAFT_DOWEL_MATERIAL_WOOD 0
/** 1: Plywood of Structural I or Marine grade, specific gravity 0.50. */
#define BEAMCRAFT_DOWEL_MATERIAL_PLYWOOD_STRUCTURAL_1 1
/** 2: Plywood of any other grade, specific gravity 0.42. */
#define BEAMCRAFT_DOWEL_MATERIAL_PLYWOOD_OTHER 2
/** 3: Oriented strand board of any grade, specific gravity 0.50. */
#define BEAMCRAFT_DOWEL_MATERIAL_ORIENTED_STRAND_BOARD 3
/** 4: Medium-density fibreboard: the standard publishes no value. */
#define BEAMCRAFT_DOWEL_MATERIAL_MEDIUM_DENSITY_FIBREBOARD 4
/** 5: Particleboard: the standard publishes no value. */
#define BEAMCRAFT_DOWEL_MATERIAL_PARTICLEBOARD 5
/** 6: Steel plate ASTM A36, at least 1/4 in thick. */
#define BEAMCRAFT_DOWEL_MATERIAL_STEEL_PLATE_A36 6
/** 7: Sheet steel ASTM A653 grade 33, 3 gage (0.239 in) and thinner. */
#define BEAMCRAFT_DOWEL_MATERIAL_SHEET_STEEL_A653 7
/** 8: Concrete of at least 2500 psi (17.2 MPa) compressive strength, as main member. */
#define BEAMCRAFT_DOWEL_MATERIAL_CONCRETE 8
/** 9: Masonry: the standard publishes no value. */
#define BEAMCRAFT_DOWEL_MATERIAL_MASONRY 9

/* Which row of the table of reduction terms applies. */
/** 0: Below 1/4 in: K_D in every mode. */
#define BEAMCRAFT_REDUCTION_RULE_BELOW_QUARTER_INCH 0
/** 1: Thread of 1/4 in and more nominal, root below 1/4 in: K_D K_θ in every mode (note 1). */
#define BEAMCRAFT_REDUCTION_RULE_SMALL_ROOT_OF_LARGE_THREAD 1
/** 2: 1/4 in to 1 in: 4, 3.6 and 3.2 times K_θ by mode. */
#define BEAMCRAFT_REDUCTION_RULE_QUARTER_INCH_AND_MORE 2

/* The way in which a dowel joint in single shear gives in. */
/** 0: Mode I_m: the main member is crushed along its whole bearing length. */
#define BEAMCRAFT_YIELD_MODE_IM 0
/** 1: Mode I_s: the side member is crushed along its whole bearing length. */
#define BEAMCRAFT_YIELD_MODE_IS 1
/** 2: Mode II: the dowel stays straight and turns in both members. */
#define BEAMCRAFT_YIELD_MODE_II 2
/** 3: Mode III_m: the dowel turns in the main member and bends at one hinge in the side member. */
#define BEAMCRAFT_YIELD_MODE_IIIM 3
/** 4: Mode III_s: the dowel turns in the side member and bends at one hinge in the main member. */
#define BEAMCRAFT_YIELD_MODE_IIIS 4
/** 5: Mode IV: the dowel bends at two hinges, one in each member. */
#define BEAMCRAFT_YIELD_MODE_IV 5

/* The way in which a dowel joint in double shear gives in. */
/** 0: Mode I_m: the main member is crushed along its whole bearing length. */
#define BEAMCRAFT_DOUBLE_SHEAR_MODE_IM 0
/** 1: Mode I_s: both side members are crushed along their whole bearing length. */
#define BEAMCRAFT_DOUBLE_SHEAR_MODE_IS 1
/** 2: Mode III_s: the dowel turns in the side members and bends at a hinge for each of them in the main member. */
#define BEAMCRAFT_DOUBLE_SHEAR_MODE_IIIS 2
/** 3: Mode IV: the dowel bends at two hinges in each shear plane. */
#define BEAMCRAFT_DOUBLE_SHEAR_MODE_IV 3

/* A kind of dowel fastener driven into wood. */
/** 0: Wood screw with cut or rolled thread. */
#define BEAMCRAFT_DOWEL_FASTENER_WOOD_SCREW 0
/** 1: Lag screw. */
#define BEAMCRAFT_DOWEL_FASTENER_LAG_SCREW 1
/** 2: Smooth nail or spike, bright or galvanised. */
#define BEAMCRAFT_DOWEL_FASTENER_SMOOTH_NAIL 2
/** 3: Smooth nail of stainless steel. */
#define BEAMCRAFT_DOWEL_FASTENER_SMOOTH_STAINLESS_NAIL 3
/** 4: Nail with a ringed shank. */
#define BEAMCRAFT_DOWEL_FASTENER_RING_SHANK_NAIL 4

/* What the standard says about withdrawal from the grain that the fastener stands in. */
/** 0: Side grain: the full value. */
#define BEAMCRAFT_END_GRAIN_RULE_SIDE_GRAIN 0
/** 1: End grain with a reduced value: lag screws, factor 0.75. */
#define BEAMCRAFT_END_GRAIN_RULE_END_GRAIN_REDUCED 1
/** 2: End grain where the standard lets the fastener carry no withdrawal. */
#define BEAMCRAFT_END_GRAIN_RULE_END_GRAIN_NOT_PERMITTED 2

/* What a check says. */
/** 0: The demand does not exceed the capacity. */
#define BEAMCRAFT_OUTCOME_MET 0
/** 1: The demand exceeds the capacity. */
#define BEAMCRAFT_OUTCOME_NOT_MET 1
/** 2: No published rule covers the case. */
#define BEAMCRAFT_OUTCOME_NOT_COVERED 2
/** 3: A rule exists, but what it needs was not given. */
#define BEAMCRAFT_OUTCOME_NOT_DETERMINED 3

/* Which part of the pull-through equation applies. */
/** 0: Side member up to 2.5 head diameters thick: the value grows with the thickness. */
#define BEAMCRAFT_PULL_THROUGH_RANGE_THIN_SIDE_MEMBER 0
/** 1: Thicker side member: more thickness adds nothing. */
#define BEAMCRAFT_PULL_THROUGH_RANGE_THICK_SIDE_MEMBER 1

/* Which equation joins the two loads. */
/** 0: Wood screws and lag screws: squared sine and cosine (NDS Eq. 12.4-1). */
#define BEAMCRAFT_COMBINED_LOAD_RULE_SCREWS 0
/** 1: Nails and spikes: sine and cosine in first power (NDS Eq. 12.4-2), the more careful one. */
#define BEAMCRAFT_COMBINED_LOAD_RULE_NAILS 1

/* How long the governing load acts in sum over the life of the joint. */
/** 0: For good: own weight, goods stored on a shelf; 0.9. */
#define BEAMCRAFT_LOAD_DURATION_PERMANENT 0
/** 1: Ten years in sum: ordinary live load; 1.0. */
#define BEAMCRAFT_LOAD_DURATION_TEN_YEARS 1
/** 2: Two months in sum: snow; 1.15. */
#define BEAMCRAFT_LOAD_DURATION_TWO_MONTHS 2
/** 3: Seven days in sum: construction; 1.25. */
#define BEAMCRAFT_LOAD_DURATION_SEVEN_DAYS 3
/** 4: Ten minutes in sum: wind, earthquake; 1.6. */
#define BEAMCRAFT_LOAD_DURATION_TEN_MINUTES 4
/** 5: A blow; 2.0 for members, but connections never take more than 1.6. */
#define BEAMCRAFT_LOAD_DURATION_IMPACT 5

/* Whether the wood counts as dry. */
/** 0: At most 19 % moisture. */
#define BEAMCRAFT_MEMBER_MOISTURE_DRY 0
/** 1: More than 19 % moisture. */
#define BEAMCRAFT_MEMBER_MOISTURE_WET 1

/* Highest temperature that the joint meets for long. */
/** 0: Up to 100 °F (38 °C). */
#define BEAMCRAFT_TEMPERATURE_BAND_UP_TO_100_F 0
/** 1: Above 100 °F up to 125 °F (52 °C). */
#define BEAMCRAFT_TEMPERATURE_BAND_UP_TO_125_F 1
/** 2: Above 125 °F up to 150 °F (66 °C). */
#define BEAMCRAFT_TEMPERATURE_BAND_UP_TO_150_F 2

/* How the fasteners of one joint stand, which matters when wet wood dries in the joint. */
/** 0: Several rows, or a row across the grain: shrinkage can split the wood between the fasteners. */
#define BEAMCRAFT_FASTENER_ARRANGEMENT_SEVERAL_ROWS 0
/** 1: One fastener, one row along the grain, or a splice plate of its own for every row. */
#define BEAMCRAFT_FASTENER_ARRANGEMENT_ONE_FASTENER_OR_ROW 1

/* How a nail is driven. */
/** 0: Straight; also every fastener that is not a nail. */
#define BEAMCRAFT_NAIL_DRIVING_STRAIGHT 0
/** 1: Toe-nailed, at about 30° through the edge of a member. */
#define BEAMCRAFT_NAIL_DRIVING_TOE_NAILED 1

/* What the row of fasteners joins, which decides its load/slip modulus. */
/** 0: Wood to wood: 180 000 D^1.5 lbf/in. */
#define BEAMCRAFT_SLIP_JOINT_WOOD_TO_WOOD 0
/** 1: Wood to metal: 270 000 D^1.5 lbf/in. */
#define BEAMCRAFT_SLIP_JOINT_WOOD_TO_METAL 1

/* Which way a fastener pushes in the member whose distances are checked. */
/** 0: Across its axis, towards the member's end: the member is in tension. */
#define BEAMCRAFT_SPACING_LOAD_TOWARDS_END 0
/** 1: Across its axis, away from the member's end: the member is in compression. */
#define BEAMCRAFT_SPACING_LOAD_AWAY_FROM_END 1
/** 2: Along its axis only. */
#define BEAMCRAFT_SPACING_LOAD_WITHDRAWAL_ONLY 2

/* How easily the member splits, as the table of end distances tells it. */
/** 0: Softwood. */
#define BEAMCRAFT_END_DISTANCE_WOOD_SOFTWOOD 0
/** 1: Hardwood. */
#define BEAMCRAFT_END_DISTANCE_WOOD_HARDWOOD 1

/* Whether the fasteners of a group stand on common lines or are shifted against one another. */
/** 0: On common lines: they can split the wood together. */
#define BEAMCRAFT_ROW_STAGGER_IN_LINE 0
/** 1: Staggered. Eurocode 5: those of a row along the grain stand off its line by one diameter or more in turn. American
 *  standard: neighbouring rows are shifted against each other by half the spacing. */
#define BEAMCRAFT_ROW_STAGGER_STAGGERED 1

/* Whether holes are bored for thin fasteners. */
/** 0: Holes are bored. */
#define BEAMCRAFT_BORED_HOLES_BORED 0
/** 1: Driven without holes. */
#define BEAMCRAFT_BORED_HOLES_NOT_BORED 1

/* What lies on the wood, for the recommended distances of thin fasteners. */
/** 0: Wood side member. */
#define BEAMCRAFT_SIDE_PLATE_WOOD 0
/** 1: Steel side plate. */
#define BEAMCRAFT_SIDE_PLATE_STEEL 1

/* Where the distances come from. */
/** 0: Required by the standard, for fasteners of 1/4 in and more (NDS 12.5.1). */
#define BEAMCRAFT_SPACING_RULE_REQUIRED 0
/** 1: Recommended by its commentary, for thinner ones (NDS Commentary Tables C12.1.5.7, C12.1.6.6). */
#define BEAMCRAFT_SPACING_RULE_RECOMMENDED 1

/* Whether a hole must be bored. */
/** 0: The standard asks for a hole. */
#define BEAMCRAFT_LEAD_HOLE_NEED_REQUIRED 0
/** 1: The standard lets the screw be driven without one. */
#define BEAMCRAFT_LEAD_HOLE_NEED_NOT_REQUIRED 1

/* A wood screw size by its gauge number, or the user's own. */
/** 0: No. 6, 0.138 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_6 0
/** 1: No. 7, 0.151 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_7 1
/** 2: No. 8, 0.164 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_8 2
/** 3: No. 9, 0.177 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_9 3
/** 4: No. 10, 0.190 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_10 4
/** 5: No. 12, 0.216 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_12 5
/** 6: No. 14, 0.242 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_14 6
/** 7: No. 16, 0.268 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_16 7
/** 8: No. 18, 0.294 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_18 8
/** 9: No. 20, 0.320 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_20 9
/** 10: No. 24, 0.372 in. */
#define BEAMCRAFT_SCREW_SIZE_NO_24 10
/** 11: Not in the table: nominal, root and head diameter are given. */
#define BEAMCRAFT_SCREW_SIZE_OWN 11

/* The check of a screw joint that uses most of its capacity. */
/** 0: Lateral load alone. */
#define BEAMCRAFT_SCREW_JOINT_CHECK_LATERAL 0
/** 1: Withdrawal load alone. */
#define BEAMCRAFT_SCREW_JOINT_CHECK_WITHDRAWAL 1
/** 2: Head pulling through the side member. */
#define BEAMCRAFT_SCREW_JOINT_CHECK_PULL_THROUGH 2
/** 3: Lateral and withdrawal load at once. */
#define BEAMCRAFT_SCREW_JOINT_CHECK_COMBINED 3

/* How loads and capacities are compared. */
/** 0: Allowable stress design: loads as they are, capacities with the load duration factor. */
#define BEAMCRAFT_NDS_DESIGN_ASD 0
/** 1: Load and resistance factor design: factored loads, capacities with format, resistance and time effect factor. */
#define BEAMCRAFT_NDS_DESIGN_LRFD 1

/* Time effect of a factored load combination (NDS 2018 Appendix N, Table N3, recalled; connections are never given more
 * than 1). */
/** 0: Dead load alone, 1.4 D; 0.6. */
#define BEAMCRAFT_TIME_EFFECT_DEAD_ONLY 0
/** 1: Live load from storage governs; 0.7. */
#define BEAMCRAFT_TIME_EFFECT_STORAGE 1
/** 2: Live load from occupancy, roof live load or snow governs; 0.8. */
#define BEAMCRAFT_TIME_EFFECT_OCCUPANCY_OR_SNOW 2
/** 3: Wind, earthquake or impact governs; 1.0. */
#define BEAMCRAFT_TIME_EFFECT_SHORT_OR_IMPACT 3

/* Service class: how moist the air is over the year (2.3.1.3). */
/** 0: Heated room: air mostly below 65 % at 20 °C, most softwood at 12 % moisture or less. */
#define BEAMCRAFT_EC5_SERVICE_CLASS_SERVICE_CLASS_1 0
/** 1: Covered but unheated: air mostly below 85 %, most softwood at 20 % moisture or less. */
#define BEAMCRAFT_EC5_SERVICE_CLASS_SERVICE_CLASS_2 1
/** 2: Wetter than that. */
#define BEAMCRAFT_EC5_SERVICE_CLASS_SERVICE_CLASS_3 2

/* Material of a member. */
/** 0: Solid or glued laminated timber of softwood. */
#define BEAMCRAFT_EC5_MATERIAL_SOFTWOOD 0
/** 1: Solid or glued laminated timber of hardwood. */
#define BEAMCRAFT_EC5_MATERIAL_HARDWOOD 1
/** 2: Laminated veneer lumber. */
#define BEAMCRAFT_EC5_MATERIAL_LVL 2
/** 3: Plywood of a class allowed in the service class. */
#define BEAMCRAFT_EC5_MATERIAL_PLYWOOD 3
/** 4: Oriented strand board, grade 3 or 4. */
#define BEAMCRAFT_EC5_MATERIAL_OSB_3_4 4
/** 5: Oriented strand board of grade 2, or particleboard P4 or P5. */
#define BEAMCRAFT_EC5_MATERIAL_OSB_2_PARTICLEBOARD 5
/** 6: Hardboard. */
#define BEAMCRAFT_EC5_MATERIAL_HARDBOARD 6
/** 7: Medium density fibreboard MDF.LA. */
#define BEAMCRAFT_EC5_MATERIAL_MDF_LA 7

/* A dowel-type fastener as the standard groups them. */
/** 0: Smooth round nail. */
#define BEAMCRAFT_EC5_FASTENER_ROUND_NAIL 0
/** 1: Smooth square or grooved nail. */
#define BEAMCRAFT_EC5_FASTENER_SQUARE_NAIL 1
/** 2: Nail with a profiled shank: ringed or threaded; an "other nail" of the standard. */
#define BEAMCRAFT_EC5_FASTENER_THREADED_NAIL 2
/** 3: Screw. */
#define BEAMCRAFT_EC5_FASTENER_SCREW 3
/** 4: Bolt with washers. */
#define BEAMCRAFT_EC5_FASTENER_BOLT 4
/** 5: Smooth steel dowel without head. */
#define BEAMCRAFT_EC5_FASTENER_DOWEL 5

/* Whether a hole is bored before the fastener is driven. */
/** 0: Driven without a hole. */
#define BEAMCRAFT_EC5_HOLE_UNDRILLED 0
/** 1: Driven into a bored hole. */
#define BEAMCRAFT_EC5_HOLE_PREDRILLED 1

/* The equation that gave an embedment strength. */
/** 0: Nail without predrilling (8.15). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_NAIL_UNDRILLED 0
/** 1: Nail in a predrilled hole (8.16). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_NAIL_PREDRILLED 1
/** 2: Bolt, dowel or thick nail in timber (8.31 to 8.33). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_BOLT_IN_TIMBER 2
/** 3: Nail in plywood (8.20). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_NAIL_IN_PLYWOOD 3
/** 4: Nail in hardboard (8.21). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_NAIL_IN_HARDBOARD 4
/** 5: Nail in particleboard or OSB (8.22). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_NAIL_IN_PARTICLEBOARD 5
/** 6: Bolt in plywood (8.36). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_BOLT_IN_PLYWOOD 6
/** 7: Bolt in particleboard or OSB (8.37). */
#define BEAMCRAFT_EC5_EMBEDMENT_RULE_BOLT_IN_PARTICLEBOARD 7

/* What decides the diameter of a screw in the equations. */
/** 0: The smooth shank, as thick as the thread, reaches at least 4 d into the point-side member. */
#define BEAMCRAFT_EC5_SCREW_DIAMETER_RULE_SMOOTH_SHANK 0
/** 1: Otherwise: 1.1 times the thread root. */
#define BEAMCRAFT_EC5_SCREW_DIAMETER_RULE_THREAD_ROOT 1

/* The way in which a joint in single shear gives in. */
/** 0: Mode a: the head-side member is crushed along its whole length. */
#define BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_A 0
/** 1: Mode b: the point-side member is crushed along its whole length. */
#define BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_B 1
/** 2: Mode c: the fastener stays straight and turns in both members. */
#define BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_C 2
/** 3: Mode d: the fastener turns in the head-side member and bends in the point-side member. */
#define BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_D 3
/** 4: Mode e: the fastener turns in the point-side member and bends in the head-side member. */
#define BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_E 4
/** 5: Mode f: the fastener bends in both members. */
#define BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_F 5

/* The way in which a symmetric joint in double shear gives in. */
/** 0: Mode g: the outer members are crushed along their whole thickness. */
#define BEAMCRAFT_EC5_DOUBLE_SHEAR_MODE_G 0
/** 1: Mode h: the middle member is crushed along its whole thickness. */
#define BEAMCRAFT_EC5_DOUBLE_SHEAR_MODE_H 1
/** 2: Mode j: the fastener turns in the outer members and bends in the middle one. */
#define BEAMCRAFT_EC5_DOUBLE_SHEAR_MODE_J 2
/** 3: Mode k: the fastener bends in the outer and in the middle members. */
#define BEAMCRAFT_EC5_DOUBLE_SHEAR_MODE_K 3

/* How a steel plate holds the fastener. */
/** 0: Thin, up to half the diameter: the fastener may turn in the hole. */
#define BEAMCRAFT_EC5_PLATE_CLASS_THIN 0
/** 1: Between: interpolated. */
#define BEAMCRAFT_EC5_PLATE_CLASS_BETWEEN 1
/** 2: Thick, the diameter and more with a tight hole: the fastener is clamped. */
#define BEAMCRAFT_EC5_PLATE_CLASS_THICK 2

/* Mode of a single-shear joint of timber and a steel plate. */
/** 0: Mode a, thin plate: the fastener turns in the timber. */
#define BEAMCRAFT_EC5_STEEL_MODE_A 0
/** 1: Mode b, thin plate: one hinge in the timber. */
#define BEAMCRAFT_EC5_STEEL_MODE_B 1
/** 2: Mode c, thick plate: the timber is crushed along its whole thickness. */
#define BEAMCRAFT_EC5_STEEL_MODE_C 2
/** 3: Mode d, thick plate: the fastener turns in the timber, hinge at the plate. */
#define BEAMCRAFT_EC5_STEEL_MODE_D 3
/** 4: Mode e, thick plate: hinges in the timber and at the plate. */
#define BEAMCRAFT_EC5_STEEL_MODE_E 4

/* Mode of a joint with a steel plate in the middle. */
/** 0: Mode f: the timber is crushed along its whole thickness. */
#define BEAMCRAFT_EC5_STEEL_CENTRAL_MODE_F 0
/** 1: Mode g: the fastener turns in the timber, hinge at the plate. */
#define BEAMCRAFT_EC5_STEEL_CENTRAL_MODE_G 1
/** 2: Mode h: hinges in the timber and at the plate. */
#define BEAMCRAFT_EC5_STEEL_CENTRAL_MODE_H 2

/* Mode of a timber member between two steel plates. */
/** 0: Mode j, thin plates: the timber is crushed along its whole thickness. */
#define BEAMCRAFT_EC5_STEEL_OUTER_MODE_J 0
/** 1: Mode k, thin plates: hinges in the timber. */
#define BEAMCRAFT_EC5_STEEL_OUTER_MODE_K 1
/** 2: Mode l, thick plates: the timber is crushed along its whole thickness. */
#define BEAMCRAFT_EC5_STEEL_OUTER_MODE_L 2
/** 3: Mode m, thick plates: hinges in the timber and at the plates. */
#define BEAMCRAFT_EC5_STEEL_OUTER_MODE_M 3

/* Where the withdrawal strength of a screw comes from. */
/** 0: The equation of the standard for screws of 6 to 12 mm (8.38 to 8.40). */
#define BEAMCRAFT_EC5_WITHDRAWAL_RULE_EQUATION 0
/** 1: A declared strength (8.40a). */
#define BEAMCRAFT_EC5_WITHDRAWAL_RULE_DECLARED 1

/* How moist the timber is when the nails are driven. */
/** 0: Dry, as in service. */
#define BEAMCRAFT_EC5_NAIL_TIMBER_DRY 0
/** 1: Near fibre saturation, and drying under load: two thirds of the strength. */
#define BEAMCRAFT_EC5_NAIL_TIMBER_DRIES_UNDER_LOAD 1

/* The end of a nail that gives in. */
/** 0: The shank at the point is drawn out. */
#define BEAMCRAFT_EC5_AXIAL_PART_POINT 0
/** 1: The head is drawn through. */
#define BEAMCRAFT_EC5_AXIAL_PART_HEAD 1

/* What gives in when a bolt is pulled. */
/** 0: The bolt's steel. */
#define BEAMCRAFT_EC5_WASHER_PART_BOLT 0
/** 1: The wood under the washer. */
#define BEAMCRAFT_EC5_WASHER_PART_WASHER 1

/* Which equation joins the two loads. */
/** 0: Smooth nails: the shares are added (8.27). */
#define BEAMCRAFT_EC5_COMBINED_RULE_LINEAR 0
/** 1: Other nails and screws: the squares of the shares are added (8.28). */
#define BEAMCRAFT_EC5_COMBINED_RULE_QUADRATIC 1

/* What the timber is joined to. */
/** 0: Timber. */
#define BEAMCRAFT_EC5_JOINT_PARTNER_TIMBER 0
/** 1: A steel plate: nails may stand at 0.7 of the spacing. */
#define BEAMCRAFT_EC5_JOINT_PARTNER_STEEL 1
/** 2: A wood panel: nails may stand at 0.85 of the spacing. */
#define BEAMCRAFT_EC5_JOINT_PARTNER_PANEL 2

/* The table that gave the distances. */
/** 0: Nails and screws to 6 mm, without holes, up to 420 kg/m³ (Table 8.2). */
#define BEAMCRAFT_EC5_SPACING_TABLE_NAIL_LIGHT 0
/** 1: The same, above 420 up to 500 kg/m³ (Table 8.2). */
#define BEAMCRAFT_EC5_SPACING_TABLE_NAIL_DENSE 1
/** 2: Nails and screws to 6 mm, predrilled (Table 8.2). */
#define BEAMCRAFT_EC5_SPACING_TABLE_NAIL_PREDRILLED 2
/** 3: Bolts and screws above 6 mm (Table 8.4). */
#define BEAMCRAFT_EC5_SPACING_TABLE_BOLT 3
/** 4: Dowels (Table 8.5). */
#define BEAMCRAFT_EC5_SPACING_TABLE_DOWEL 4

/* The timber that a screw under a pull stands in. */
/** 0: Timber, or the wide face of LVL. */
#define BEAMCRAFT_EC5_AXIAL_SCREW_FACE_TIMBER 0
/** 1: The edge face of LVL, where the layers are seen. */
#define BEAMCRAFT_EC5_AXIAL_SCREW_FACE_LVL_EDGE 1

/* What the timber is joined to, as the table of slip moduli asks. */
/** 0: Timber or a panel: the geometric mean of both densities counts. */
#define BEAMCRAFT_EC5_SLIP_PARTNER_WOOD 0
/** 1: Steel or concrete: the density of the timber counts, and the modulus doubles (7.1(3)). */
#define BEAMCRAFT_EC5_SLIP_PARTNER_STEEL_OR_CONCRETE 1

/* Load-duration class (2.3.1.2); with several loads the shortest decides. */
/** 0: More than ten years: own weight. */
#define BEAMCRAFT_EC5_LOAD_DURATION_PERMANENT 0
/** 1: Six months to ten years: storage. */
#define BEAMCRAFT_EC5_LOAD_DURATION_LONG_TERM 1
/** 2: One week to six months: imposed floor load. */
#define BEAMCRAFT_EC5_LOAD_DURATION_MEDIUM_TERM 2
/** 3: Less than one week. */
#define BEAMCRAFT_EC5_LOAD_DURATION_SHORT_TERM 3
/** 4: A gust, a blow. */
#define BEAMCRAFT_EC5_LOAD_DURATION_INSTANTANEOUS 4

/* What a check rests on. */
/** 0: A published rule. */
#define BEAMCRAFT_BASIS_CLAUSE 0
/** 1: Statics or geometry, shown in the theory pages. */
#define BEAMCRAFT_BASIS_DERIVED 1
/** 2: The user's number, or a default with its reason. */
#define BEAMCRAFT_BASIS_CHOSEN 2

/* A series of lengths that screws are sold in. */
/** 0: Inches: by eighths to 1 in, by quarters to 3 in, by halves to 5 in, then 6, 7, 8, 10 and 12 in. */
#define BEAMCRAFT_SOLD_LENGTH_SERIES_INCH 0
/** 1: Millimetres: by 5 to 50 (from 20), by 10 to 100, by 20 to 240, then 260, 280 and 300. */
#define BEAMCRAFT_SOLD_LENGTH_SERIES_METRIC 1

/* How the board that the pocket screw enters stands to the board with the pocket. */
/** 0: Its face lies on the end of the board with the pocket: the point comes nearest to its far face. */
#define BEAMCRAFT_POCKET_MATE_FACE 0
/** 1: It runs on in line, show faces flush: the point comes nearest to the show face. */
#define BEAMCRAFT_POCKET_MATE_IN_LINE 1

/* How the body rests on its seat. */
/** 0: The bevel draws the body in harder than the foot alone needs: it also presses on the wall near its top. */
#define BEAMCRAFT_SEAT_REGIME_SITS_AND_PRESSES_TOP 0
/** 1: The bevel alone, without friction, gives the pull that the foot needs. */
#define BEAMCRAFT_SEAT_REGIME_SITS 1
/** 2: Only friction keeps the body from climbing up and off: not to be relied upon. */
#define BEAMCRAFT_SEAT_REGIME_HELD_BY_FRICTION_ONLY 2
/** 3: The pull exceeds all that the seat can give: the body climbs up and off. */
#define BEAMCRAFT_SEAT_REGIME_CLIMBS_OFF 3
/** 4: The weight acts behind the contact: it draws the foot off, and the body leans on the wall near its top. */
#define BEAMCRAFT_SEAT_REGIME_TIPS_INWARD 4

/* Whether friction sets an upper limit to the pull of the seat. */
/** 0: Bevel and friction angle together stay below 90°: the pull has an upper limit. */
#define BEAMCRAFT_SEAT_LOCK_LIMITED 0
/** 1: Bevel and friction angle together reach 90°: the seat jams before it slides, whatever the pull. */
#define BEAMCRAFT_SEAT_LOCK_LOCKED 1

/* A standing caution that travels with the results it belongs to. */
/** 0: Local law, the appliance's listing and its instructions decide how close wood may come to heat; figures here are a screen, not an approval. */
#define BEAMCRAFT_CAUTION_FIRE 0
/** 1: Holds only for the stated materials, fasteners, studs and loads; where people could hang on it, the wall is bearing or masonry, or the site is seismic, a licensed engineer or the local authority decides. */
#define BEAMCRAFT_CAUTION_STRUCTURE 1
/** 2: Lift and hang with a second person; standing on a ladder with a load is outside every published lifting method. */
#define BEAMCRAFT_CAUTION_LIFTING 2
/** 3: Guard and riving knife in place, insert that fits the tilt, fence and gauge never together without a stop block; make test cuts in scrap. */
#define BEAMCRAFT_CAUTION_SAW 3
/** 4: Wood dust harms lungs and can burn; extract at the tool and wear a mask suited to the species. */
#define BEAMCRAFT_CAUTION_DUST 4
/** 5: Rags with drying oil heat up by themselves and can ignite: spread them out singly outdoors or keep them under water in a closed metal container. */
#define BEAMCRAFT_CAUTION_RAGS 5
/** 6: Ventilate and keep away from every flame, pilot light and fireplace; let the finish cure fully, by its maker's time, before the first fire. */
#define BEAMCRAFT_CAUTION_SOLVENTS 6
/** 7: Movement and stresses are averages and bounds, not a proof that a joint holds: boards differ, wood and glue creep, and common wood glue softens in sustained warmth, as over a hearth. */
#define BEAMCRAFT_CAUTION_HELD_MOVEMENT 7
/** 8: Detect cables and pipes before drilling into a wall. */
#define BEAMCRAFT_CAUTION_SERVICES 8

/* The edge about which the wall half would tilt. */
/** 0: The lower edge presses on the wall. */
#define BEAMCRAFT_STRIP_PIVOT_LOWER_EDGE 0
/** 1: The pull acts so low that the upper edge presses on the wall. */
#define BEAMCRAFT_STRIP_PIVOT_UPPER_EDGE 1

/* Direction of the load on a bracket. */
/** 0: Along the wall, such as a weight: it shears the bolts. */
#define BEAMCRAFT_BRACKET_LOAD_ALONG_WALL 0
/** 1: Away from the wall, parallel to the bolts: it pulls all of them. */
#define BEAMCRAFT_BRACKET_LOAD_AWAY_FROM_WALL 1

/* Which face lies up and which way the blade leans; the kept piece lies between the fence and the blade. */
/** 0: Show face up, blade leaning away from the fence: for a bevel with its long point on the show face. */
#define BEAMCRAFT_RIP_SET_UP_SHOW_FACE_UP_BLADE_AWAY 0
/** 1: Show face down, blade leaning towards the fence: for a bevel with its long point on the show face. */
#define BEAMCRAFT_RIP_SET_UP_SHOW_FACE_DOWN_BLADE_TOWARDS 1
/** 2: Show face up, blade leaning towards the fence: for a bevel with its long point on the inner face. */
#define BEAMCRAFT_RIP_SET_UP_SHOW_FACE_UP_BLADE_TOWARDS 2
/** 3: Show face down, blade leaning away from the fence: for a bevel with its long point on the inner face. */
#define BEAMCRAFT_RIP_SET_UP_SHOW_FACE_DOWN_BLADE_AWAY 3

/* Which piece lies between the fence and a blade that leans towards it. */
/** 0: None: the blade is square or leans away from the fence. */
#define BEAMCRAFT_TRAPPED_PIECE_NONE 0
/** 1: The kept piece: it can bind and be thrown back. */
#define BEAMCRAFT_TRAPPED_PIECE_KEPT_PIECE 1

/* How the edge that rides the fence meets it. */
/** 0: Square: the whole edge rides the fence. */
#define BEAMCRAFT_RIDING_EDGE_SQUARE 0
/** 1: The long point rides up: the fence must be higher than the board is thick. */
#define BEAMCRAFT_RIDING_EDGE_LONG_POINT_UP 1
/** 2: The long point rides down on the table: it must not creep under the fence. */
#define BEAMCRAFT_RIDING_EDGE_LONG_POINT_DOWN 2

/* How the board goes over the saw. */
/** 0: Flat on the table, as for any bevel with its long point on the show face. */
#define BEAMCRAFT_BOARD_SET_UP_FLAT 0
/** 1: Flat on the table, turned over: the long point lies on the inner face. */
#define BEAMCRAFT_BOARD_SET_UP_OTHER_FACE_DOWN 1
/** 2: On edge against a tall fence, the blade at the complement of the bevel. */
#define BEAMCRAFT_BOARD_SET_UP_ON_EDGE_AGAINST_TALL_FENCE 2
/** 3: Flat on a wedge that leans the board by what the blade lacks. */
#define BEAMCRAFT_BOARD_SET_UP_JIG_WEDGE 3

/* How a board was sawn, by its growth rings on the end. */
/** 0: Rings along the face: ring angle 0. */
#define BEAMCRAFT_BOARD_CUT_FLAT_SAWN 0
/** 1: Rings slanting: ring angle 45, the middle of what is sold as rift (common practice). */
#define BEAMCRAFT_BOARD_CUT_RIFT_SAWN 1
/** 2: Rings square to the face: ring angle 90. */
#define BEAMCRAFT_BOARD_CUT_QUARTER_SAWN 2
/** 3: A ring angle measured on the end of the board. */
#define BEAMCRAFT_BOARD_CUT_RING_ANGLE 3

/* Which of the handbook's two equations was used. */
/** 0: Movement coefficients, while both moisture contents lie within 6 % to 14 %. */
#define BEAMCRAFT_MOVEMENT_METHOD_COEFFICIENT 0
/** 1: Shrinkage from green to ovendry, elsewhere. */
#define BEAMCRAFT_MOVEMENT_METHOD_SHRINKAGE 1

/* Where a seam opens that is held at its corner. */
/** 0: It stays closed, within a billionth of a degree. */
#define BEAMCRAFT_SEAM_OPENING_CLOSED 0
/** 1: At the heel, inside the body or the frame. */
#define BEAMCRAFT_SEAM_OPENING_HEEL 1
/** 2: At the toe, on the show edge. */
#define BEAMCRAFT_SEAM_OPENING_TOE 2

/* Where the two halves touch. */
/** 0: Over the whole seat, within a billionth of a degree. */
#define BEAMCRAFT_SEAT_CONTACT_WHOLE_SEAT 0
/** 1: At the front edge, on the point of the wall half: the seat opens towards the wall. */
#define BEAMCRAFT_SEAT_CONTACT_FRONT_EDGE 1
/** 2: At the wall: the seat opens towards the room. */
#define BEAMCRAFT_SEAT_CONTACT_WALL_EDGE 2

/* Which face of the board lies up at the saw. */
/** 0: Show face up: the fence sets the inner width, so that errors of thickness and tilt reach the show width. */
#define BEAMCRAFT_CUT_SIDE_SHOW_FACE_UP 0
/** 1: Show face down: the fence sets the show width itself; thickness does not matter to it. */
#define BEAMCRAFT_CUT_SIDE_SHOW_FACE_DOWN 1

/* What holds the two boards of a seam in place. */
/** 0: Nothing but the clamps: the boards slide together until they touch, the corner angle kept; only angles open it. */
#define BEAMCRAFT_SEAM_HOLD_DRAWN_TIGHT 0
/** 1: The show faces stand where they should (taped flat, folded, or against an outer form): sizes count too. */
#define BEAMCRAFT_SEAM_HOLD_HELD_BY_SHOW_FACES 1
/** 2: The inner faces sit on a frame: sizes count, and a thicker board stands out further. */
#define BEAMCRAFT_SEAM_HOLD_HELD_BY_INNER_FRAME 2

/* Where a seam stands open. */
/** 0: Nowhere. */
#define BEAMCRAFT_OPEN_EDGE_CLOSED 0
/** 1: At the show edge, where it is seen; the boards touch at the heel. */
#define BEAMCRAFT_OPEN_EDGE_SHOW_EDGE 1
/** 2: Inside the body; the show edge is closed. */
#define BEAMCRAFT_OPEN_EDGE_INSIDE 2
/** 3: At both edges: the boards do not touch. */
#define BEAMCRAFT_OPEN_EDGE_BOTH_EDGES 3

/* How the two edges of a seam come by their tilt. */
/** 0: One setting for both: their errors are equal and add up in full. */
#define BEAMCRAFT_TILT_SETTING_ONE_FOR_BOTH 0
/** 1: Set anew for each, or the scatter is from cut to cut: the errors are independent. */
#define BEAMCRAFT_TILT_SETTING_EACH_ANEW 1

/* Whether any saw would do. */
/** 0: A saw as exact as stated reaches the share. */
#define BEAMCRAFT_ACCURACY_REACH_REACHABLE 0
/** 1: Even a perfect saw does not: the other errors, or a deliberate under-tilt, use up the gap. */
#define BEAMCRAFT_ACCURACY_REACH_OUT_OF_REACH 1

/* Class of general tolerances. */
/** 0: Class f. */
#define BEAMCRAFT_TOLERANCE_CLASS_FINE 0
/** 1: Class m. */
#define BEAMCRAFT_TOLERANCE_CLASS_MEDIUM 1
/** 2: Class c. */
#define BEAMCRAFT_TOLERANCE_CLASS_COARSE 2
/** 3: Class v. */
#define BEAMCRAFT_TOLERANCE_CLASS_VERY_COARSE 3

/* Grade of woodwork. */
/** 0: The lowest grade. */
#define BEAMCRAFT_JOINT_GRADE_ECONOMY 0
/** 1: What most woodwork is specified at. */
#define BEAMCRAFT_JOINT_GRADE_CUSTOM 1
/** 2: For feature pieces. */
#define BEAMCRAFT_JOINT_GRADE_PREMIUM 2

/* Where and between what a joint is made. */
/** 0: Mitred or butted in the shop, for use indoors. */
#define BEAMCRAFT_JOINT_PLACE_SHOP_INTERIOR 0
/** 1: Flat wood to wood on site. */
#define BEAMCRAFT_JOINT_PLACE_SITE_FLAT 1
/** 2: Shaped wood to wood on site. */
#define BEAMCRAFT_JOINT_PLACE_SITE_SHAPED 2
/** 3: Wood to another material on site. */
#define BEAMCRAFT_JOINT_PLACE_SITE_OTHER_MATERIAL 3

/* How a total dry film stands to the usual ceiling of 127 µm for sprayed furniture finishes. */
/** 0: Not above the ceiling. */
#define BEAMCRAFT_FILM_CEILING_WITHIN 0
/** 1: Above the ceiling: the film risks going brittle and wrinkling. */
#define BEAMCRAFT_FILM_CEILING_ABOVE 1

/* How a board is tallied for sale. */
/** 0: Hardwood by surface measure: actual width, whole feet of length, rounded to a whole square foot a board, times the
 *  thickness. */
#define BEAMCRAFT_TALLY_RULE_HARDWOOD_SURFACE_MEASURE 0
/** 1: Softwood by nominal width and thickness, length in even feet, rounded to a hundredth of a board foot. */
#define BEAMCRAFT_TALLY_RULE_SOFTWOOD_NOMINAL 1
/** 2: Nothing rounded; metric practice, and the honest figure for comparing prices. */
#define BEAMCRAFT_TALLY_RULE_EXACT 2

/* How long lifting goes on, with its recovery. */
/** 0: Up to 1 h, then recovery at least as long. */
#define BEAMCRAFT_LIFT_DURATION_SHORT 0
/** 1: More than 1 h up to 2 h, then recovery of 0.3 times the work. */
#define BEAMCRAFT_LIFT_DURATION_MODERATE 1
/** 2: More than 2 h up to 8 h. */
#define BEAMCRAFT_LIFT_DURATION_LONG 2

/* How well the hands hold the load. */
/** 0: Handles or cut-outs on a handy container. */
#define BEAMCRAFT_HAND_COUPLING_GOOD 0
/** 1: A handy container without good handles. */
#define BEAMCRAFT_HAND_COUPLING_FAIR 1
/** 2: Bulky, long or hard to hold, such as a beam. */
#define BEAMCRAFT_HAND_COUPLING_POOR 2

/* The two printed forms of the equation; their constants are not exact conversions of each other. */
/** 0: 23 kg, centimetres. */
#define BEAMCRAFT_LIFTING_FORM_METRIC 0
/** 1: 51 lb, inches. */
#define BEAMCRAFT_LIFTING_FORM_US_CUSTOMARY 1

/* Where the lift stands. */
/** 0: Index up to 1, the aim of the method. */
#define BEAMCRAFT_LIFT_STANDING_WITHIN_AIM 0
/** 1: Index above 1 up to 3: redesign the lift. */
#define BEAMCRAFT_LIFT_STANDING_ABOVE_AIM 1
/** 2: Index above 3: some experts see raised risk for nearly everybody. */
#define BEAMCRAFT_LIFT_STANDING_FAR_ABOVE_AIM 2
/** 3: The method gives no weight for this lift: supports or a hoist. */
#define BEAMCRAFT_LIFT_STANDING_OUTSIDE_METHOD 3

/* The limit of the method that the lift lies beyond. */
/** 0: None: the method applies. */
#define BEAMCRAFT_LIFT_LIMIT_WITHIN 0
/** 1: The hands reach farther out than 63 cm (25 in). */
#define BEAMCRAFT_LIFT_LIMIT_REACH 1
/** 2: The hands are higher than 175 cm (70 in). */
#define BEAMCRAFT_LIFT_LIMIT_HAND_HEIGHT 2
/** 3: The hands travel more than 175 cm (70 in). */
#define BEAMCRAFT_LIFT_LIMIT_TRAVEL 3
/** 4: The turn is more than 135°. */
#define BEAMCRAFT_LIFT_LIMIT_TURN 4
/** 5: The rate is beyond Table 5. */
#define BEAMCRAFT_LIFT_LIMIT_RATE 5

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
 * Typed calls: wood
 * ---------------------------------------------------------------------------- */

/** Bit of volumetric_shrinkage_pct in `given` of beamcraft_wood_density_input. */
#define BEAMCRAFT_WOOD_DENSITY_INPUT_GIVEN_VOLUMETRIC_SHRINKAGE_PCT 1

/** A wood and its moisture content. */
typedef struct beamcraft_wood_density_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Specific gravity: ovendry mass over the volume that `basis` names, relative to water. Range 0.05 to
   *  1.5. */
  double specific_gravity;
  /** The volume that the specific gravity is stated for. One of BEAMCRAFT_GRAVITY_BASIS_*. */
  uint32_t basis;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Moisture content, % of the ovendry mass. Range 0 to 30. */
  double moisture_pct;
  /** Shrinkage of the volume from green to ovendry, % of the green volume; estimated from the specific
   *  gravity when left out. Range 0 to 40. Optional. */
  double volumetric_shrinkage_pct;
  /** Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4). Range 20 to 35. Initially
   *  30.0. */
  double fibre_saturation_pct;
} beamcraft_wood_density_input;

/** Specific gravity in each basis, and density. */
typedef struct beamcraft_wood_density_output {
  /** Density with its water at the moisture content given, kg/m³. */
  double density_kg_m3;
  /** Specific gravity: ovendry mass over the volume at the moisture content given. */
  double specific_gravity_at_moisture;
  /** Basic specific gravity: ovendry mass over green volume. */
  double specific_gravity_green;
  /** Specific gravity: ovendry mass over volume at 12 % moisture content. */
  double specific_gravity_12;
  /** Specific gravity: ovendry mass over ovendry volume. */
  double specific_gravity_ovendry;
  /** Shrinkage of the volume from green to ovendry, given or estimated, % of the green volume. */
  double total_shrinkage_pct;
  /** Shrinkage of the volume from green to the moisture content given, % of the green volume. */
  double shrinkage_pct;
} beamcraft_wood_density_output;

/** Sets up an input of beamcraft_wood_density: its size and its initial values. Does nothing for NULL. */
void beamcraft_wood_density_input_init(beamcraft_wood_density_input *out_input);

/** Density and specific gravity of wood at a moisture content. */
beamcraft_status beamcraft_wood_density(const beamcraft_wood_density_input *input,
                                        beamcraft_wood_density_output *output,
                                        beamcraft_error **out_error);

/** Air that wood lies in. */
typedef struct beamcraft_equilibrium_moisture_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Temperature of the wood and the air at it, °C. Range -20 to 132.2. */
  double temperature_c;
  /** Relative humidity of the air, %. Range 0 to 95. */
  double relative_humidity_pct;
} beamcraft_equilibrium_moisture_input;

/** Moisture content that wood comes to, with its two parts. */
typedef struct beamcraft_equilibrium_moisture_output {
  /** Equilibrium moisture content, % of the ovendry mass. */
  double moisture_pct;
  /** Part held as dissolved water, first term of the equation, %. */
  double dissolved_pct;
  /** Part held as hydrates, second term of the equation, %. */
  double hydrated_pct;
  /** Whether the point lies in the handbook's table. One of BEAMCRAFT_SORPTION_TABLE_*. */
  uint32_t table;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_equilibrium_moisture_output;

/** Sets up an input of beamcraft_equilibrium_moisture: its size and its initial values. Does nothing for NULL. */
void beamcraft_equilibrium_moisture_input_init(beamcraft_equilibrium_moisture_input *out_input);

/** Moisture content that wood comes to in air of a temperature and humidity. */
beamcraft_status beamcraft_equilibrium_moisture(const beamcraft_equilibrium_moisture_input *input,
                                                beamcraft_equilibrium_moisture_output *output,
                                                beamcraft_error **out_error);

/** Moisture content of wood whose air is asked for. */
typedef struct beamcraft_humidity_for_moisture_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Temperature of the wood and the air at it, °C. Range -20 to 132.2. */
  double temperature_c;
  /** Moisture content that the wood is to keep, %. Range 0 to 30. */
  double moisture_pct;
} beamcraft_humidity_for_moisture_input;

/** Humidity that keeps wood at its moisture content. */
typedef struct beamcraft_humidity_for_moisture_output {
  /** Relative humidity, %. */
  double relative_humidity_pct;
  /** Equilibrium moisture content at 95 % relative humidity and this temperature, the most that can be
   *  asked for, %. */
  double greatest_moisture_pct;
} beamcraft_humidity_for_moisture_output;

/** Sets up an input of beamcraft_humidity_for_moisture: its size and its initial values. Does nothing for NULL. */
void beamcraft_humidity_for_moisture_input_init(beamcraft_humidity_for_moisture_input *out_input);

/** Relative humidity that keeps wood at a moisture content. */
beamcraft_status beamcraft_humidity_for_moisture(const beamcraft_humidity_for_moisture_input *input,
                                                 beamcraft_humidity_for_moisture_output *output,
                                                 beamcraft_error **out_error);

/** Air of a temperature and humidity. */
typedef struct beamcraft_moist_air_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Temperature of the air, °C. Range -60 to 100. */
  double temperature_c;
  /** Relative humidity, %. Range 0.1 to 100. */
  double relative_humidity_pct;
  /** What humidity and dew point below freezing refer to; water, as weather services do (WMO-No. 8,
   *  recalled). One of BEAMCRAFT_SATURATION_SURFACE_*. Initially BEAMCRAFT_SATURATION_SURFACE_WATER. */
  uint32_t surface;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_moist_air_input;

/** Vapour in air. */
typedef struct beamcraft_moist_air_output {
  /** Saturation pressure at the temperature, Pa. */
  double saturation_pressure_pa;
  /** Vapour pressure, Pa. */
  double vapour_pressure_pa;
  /** Dew point (frost point when it is stated over ice and lies below freezing), °C. */
  double dew_point_c;
} beamcraft_moist_air_output;

/** Sets up an input of beamcraft_moist_air: its size and its initial values. Does nothing for NULL. */
void beamcraft_moist_air_input_init(beamcraft_moist_air_input *out_input);

/** Saturation pressure, vapour pressure and dew point of air. */
beamcraft_status beamcraft_moist_air(const beamcraft_moist_air_input *input,
                                     beamcraft_moist_air_output *output,
                                     beamcraft_error **out_error);

/** Outdoor air that comes into a heated room. */
typedef struct beamcraft_heated_air_humidity_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Outdoor temperature, °C. Range -60 to 60. */
  double outdoor_temperature_c;
  /** Outdoor dew point, °C. Range -60 to 60. */
  double outdoor_dew_point_c;
  /** Temperature that the room is heated to, °C; a room without cooling is never colder than outdoors.
   *  Range -20 to 60. */
  double room_temperature_c;
  /** Vapour pressure that people, plants, cooking or a humidifier add indoors, Pa; none when left out,
   *  the driest case. Range 0 to 3000. Initially 0.0. */
  double vapour_gain_pa;
  /** What the dew point below freezing refers to; water, as weather services do (WMO-No. 8, recalled).
   *  One of BEAMCRAFT_SATURATION_SURFACE_*. Initially BEAMCRAFT_SATURATION_SURFACE_WATER. */
  uint32_t surface;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_heated_air_humidity_input;

/** Humidity of a room that is aired from outdoors. */
typedef struct beamcraft_heated_air_humidity_output {
  /** Vapour pressure outdoors, Pa. */
  double outdoor_vapour_pressure_pa;
  /** Relative humidity outdoors, over the same surface as the dew point, %. */
  double outdoor_relative_humidity_pct;
  /** Temperature indoors: the room's, or the outdoor temperature where that is higher, °C. */
  double indoor_temperature_c;
  /** Vapour pressure indoors, Pa. */
  double indoor_vapour_pressure_pa;
  /** Saturation pressure indoors over water, Pa. */
  double indoor_saturation_pressure_pa;
  /** Relative humidity indoors, %. */
  double relative_humidity_pct;
  /** Moisture content that wood comes to indoors, %. */
  double moisture_pct;
} beamcraft_heated_air_humidity_output;

/** Sets up an input of beamcraft_heated_air_humidity: its size and its initial values. Does nothing for NULL. */
void beamcraft_heated_air_humidity_input_init(beamcraft_heated_air_humidity_input *out_input);

/** Humidity indoors, and moisture content of wood there, from outdoor temperature and dew point. */
beamcraft_status beamcraft_heated_air_humidity(const beamcraft_heated_air_humidity_input *input,
                                               beamcraft_heated_air_humidity_output *output,
                                               beamcraft_error **out_error);

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

/** Two sides of the same slope and thickness that meet at a corner. */
typedef struct beamcraft_compound_mitre_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Slope of the sides from horizontal, degrees; 0 is a flat frame, 90 an upright box. Range 0 to 90. */
  double slope_deg;
  /** Corner angle between neighbouring sides in plan, measured inside, degrees; 180 − 360/N for N equal
   *  sides. Range 10 to 350. Initially 90.0. */
  double corner_deg;
} beamcraft_compound_mitre_input;

/** Settings for a board that lies flat on the saw. */
typedef struct beamcraft_compound_mitre_output {
  /** Mitre gauge angle from a square cut, degrees; negative at an inside corner. */
  double gauge_deg;
  /** Blade tilt from square for a mitred corner, degrees; negative at an inside corner. */
  double tilt_deg;
  /** Angle between the two side faces, measured inside, degrees. */
  double dihedral_deg;
  /** Blade tilt from square for a butted corner, degrees; the gauge angle is the same. */
  double butt_tilt_deg;
} beamcraft_compound_mitre_output;

/** Sets up an input of beamcraft_compound_mitre: its size and its initial values. Does nothing for NULL. */
void beamcraft_compound_mitre_input_init(beamcraft_compound_mitre_input *out_input);

/** Gauge angle and blade tilt of a compound mitre between equal sloping sides, or of a sprung moulding. */
beamcraft_status beamcraft_compound_mitre(const beamcraft_compound_mitre_input *input,
                                          beamcraft_compound_mitre_output *output,
                                          beamcraft_error **out_error);

/** Two sides of any slope and thickness that meet at a corner. */
typedef struct beamcraft_splayed_corner_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Slope of side a from horizontal, degrees; 90 is upright. Range 0.1 to 90. */
  double slope_a_deg;
  /** Slope of side b from horizontal, degrees; 90 is upright. Range 0.1 to 90. */
  double slope_b_deg;
  /** Corner angle between the sides in plan, measured inside, degrees. Range 10 to 350. Initially 90.0. */
  double corner_deg;
  /** Thickness of side a, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of side b, mm. Range 1 to 150. */
  double thickness_b_mm;
} beamcraft_splayed_corner_input;

/** Settings for both sides of a splayed corner, each flat on the saw. */
typedef struct beamcraft_splayed_corner_output {
  /** Angle between the two side faces, measured inside, degrees. */
  double dihedral_deg;
  /** Mitre gauge angle of side a from a square cut, degrees; positive when the side is longer at its
   *  upper edge. */
  double gauge_a_deg;
  /** Mitre gauge angle of side b from a square cut, degrees; positive when the side is longer at its
   *  upper edge. */
  double gauge_b_deg;
  /** Blade tilt of side a from square, degrees; negative when the long point lies on the inner face. */
  double tilt_a_deg;
  /** Blade tilt of side b from square, degrees; negative when the long point lies on the inner face. */
  double tilt_b_deg;
} beamcraft_splayed_corner_output;

/** Sets up an input of beamcraft_splayed_corner: its size and its initial values. Does nothing for NULL. */
void beamcraft_splayed_corner_input_init(beamcraft_splayed_corner_input *out_input);

/** Gauge angles and blade tilts where two sides of different slope or thickness meet in a mitre. */
beamcraft_status beamcraft_splayed_corner(const beamcraft_splayed_corner_input *input,
                                          beamcraft_splayed_corner_output *output,
                                          beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: fasten
 * ---------------------------------------------------------------------------- */

/** Wood that a dowel bears on. */
typedef struct beamcraft_dowel_bearing_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Specific gravity of the wood, from oven-dry mass and volume. Range 0.05 to 1.5. */
  double specific_gravity;
  /** Nominal diameter of the dowel, also for threaded fasteners, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Angle between the load and the grain, degrees; 0 along the grain, the stronger direction. Range 0 to
   *  90. */
  double angle_to_grain_deg;
  /** Whether the dowel lies across or along the fibres; across by default, as a screw through a face
   *  does. One of BEAMCRAFT_FASTENER_DIRECTION_*. Initially BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN. */
  uint32_t direction;
  /** Whether strengths are rounded to 50 psi like the standard's table; by default not. One of
   *  BEAMCRAFT_BEARING_ROUNDING_*. Initially BEAMCRAFT_BEARING_ROUNDING_UNROUNDED. */
  uint32_t rounding;
} beamcraft_dowel_bearing_input;

/** Bearing strength of wood under a dowel. */
typedef struct beamcraft_dowel_bearing_output {
  /** Range of diameters that decided the formula (NDS Table 12.3.3). One of BEAMCRAFT_DOWEL_SIZE_RANGE_*. */
  uint32_t size_range;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Bearing strength along the grain, MPa. */
  double parallel_mpa;
  /** Bearing strength across the grain, MPa. */
  double perpendicular_mpa;
  /** Bearing strength at the angle of the load (NDS Eq. 12.3-11; in end grain the strength across,
   *  12.3.3.4), MPa. */
  double at_angle_mpa;
} beamcraft_dowel_bearing_output;

/** Sets up an input of beamcraft_dowel_bearing: its size and its initial values. Does nothing for NULL. */
void beamcraft_dowel_bearing_input_init(beamcraft_dowel_bearing_input *out_input);

/** Bearing strength of wood under a dowel, along, across and at an angle to the grain. */
beamcraft_status beamcraft_dowel_bearing(const beamcraft_dowel_bearing_input *input,
                                         beamcraft_dowel_bearing_output *output,
                                         beamcraft_error **out_error);

/** A fastener whose bending yield strength is looked up. */
typedef struct beamcraft_bending_yield_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Steel group of the fastener. One of BEAMCRAFT_BENDING_YIELD_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Nominal diameter, mm. Range 1 to 25.4. */
  double diameter_mm;
} beamcraft_bending_yield_input;

/** Bending yield strength of a fastener. */
typedef struct beamcraft_bending_yield_output {
  /** Bending yield strength, MPa. */
  double bending_yield_mpa;
  /** Largest diameter of the band that the strength belongs to, mm. */
  double band_up_to_mm;
  /** How far this row of the table was checked. One of BEAMCRAFT_EVIDENCE_*. */
  uint32_t evidence;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_bending_yield_output;

/** Sets up an input of beamcraft_bending_yield: its size and its initial values. Does nothing for NULL. */
void beamcraft_bending_yield_input_init(beamcraft_bending_yield_input *out_input);

/** Bending yield strength of a nail, screw or bolt by its diameter. */
beamcraft_status beamcraft_bending_yield(const beamcraft_bending_yield_input *input,
                                         beamcraft_bending_yield_output *output,
                                         beamcraft_error **out_error);

/** Bit of specific_gravity in `given` of beamcraft_dowel_bearing_material_output. */
#define BEAMCRAFT_DOWEL_BEARING_MATERIAL_OUTPUT_GIVEN_SPECIFIC_GRAVITY 1

/** A material other than wood that a dowel bears on. */
typedef struct beamcraft_dowel_bearing_material_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Material. One of BEAMCRAFT_DOWEL_MATERIAL_*. */
  uint32_t material;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Nominal diameter of the dowel, mm. Range 1 to 25.4. */
  double diameter_mm;
} beamcraft_dowel_bearing_material_input;

/** Bearing strength of a material under a dowel, the same in every direction. */
typedef struct beamcraft_dowel_bearing_material_output {
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Bearing strength, MPa. */
  double bearing_mpa;
  /** Specific gravity that the table gives the panel; absent for steel and concrete. Only with
   *  BEAMCRAFT_DOWEL_BEARING_MATERIAL_OUTPUT_GIVEN_SPECIFIC_GRAVITY in `given`. */
  double specific_gravity;
  /** How far this value was checked. One of BEAMCRAFT_EVIDENCE_*. */
  uint32_t evidence;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_dowel_bearing_material_output;

/** Sets up an input of beamcraft_dowel_bearing_material: its size and its initial values. Does nothing for NULL. */
void beamcraft_dowel_bearing_material_input_init(beamcraft_dowel_bearing_material_input *out_input);

/** Bearing strength of a wood-based panel, steel or concrete under a dowel. */
beamcraft_status beamcraft_dowel_bearing_material(const beamcraft_dowel_bearing_material_input *input,
                                                  beamcraft_dowel_bearing_material_output *output,
                                                  beamcraft_error **out_error);

/** Bit of nominal_diameter_mm in `given` of beamcraft_dowel_shear_input. */
#define BEAMCRAFT_DOWEL_SHEAR_INPUT_GIVEN_NOMINAL_DIAMETER_MM 1

/** A dowel through a side member into a main member. */
typedef struct beamcraft_dowel_shear_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Diameter in the yield equations (NDS 12.3.7): the thread root where threads bear, else the full
   *  shank, mm. Range 1 to 25.4. */
  double yield_diameter_mm;
  /** Nominal diameter, mm; left out it is the yield diameter, as for nails and bolts. Range 1 to 25.4.
   *  Optional. */
  double nominal_diameter_mm;
  /** Bending yield strength of the dowel, MPa. Range 0.01 to 2000. */
  double bending_yield_mpa;
  /** Dowel bearing strength of the main member at the angle of the load, MPa. Range 0.01 to 2000. */
  double main_bearing_mpa;
  /** Dowel bearing strength of the side member at the angle of the load, MPa. Range 0.01 to 2000. */
  double side_bearing_mpa;
  /** Bearing length in the main member, mm; half the tapered tip taken off where it counts (NDS
   *  12.3.5.3). Range 0.1 to 1000. */
  double main_length_mm;
  /** Bearing length in the side member, mm. Range 0.1 to 1000. */
  double side_length_mm;
  /** Gap between the members, such as a wall lining that is not counted on, mm; by default they touch.
   *  Range 0 to 500. Initially 0.0. */
  double gap_mm;
  /** Largest angle between the load and the grain of either member, degrees. Range 0 to 90. */
  double max_angle_to_grain_deg;
} beamcraft_dowel_shear_input;

/** Lateral capacity of one dowel in single shear, every mode shown. */
typedef struct beamcraft_dowel_shear_output {
  /** Row of the table of reduction terms (NDS Table 12.3.1B). One of BEAMCRAFT_REDUCTION_RULE_*. */
  uint32_t reduction_rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Factor K_D for small diameters; 1 where the table does not use it. */
  double k_d;
  /** Factor K_theta for the angle to the grain; 1 where the table does not use it. */
  double k_theta;
  /** Reduction term R_d of the modes I. */
  double reduction_i;
  /** Reduction term R_d of the mode II. */
  double reduction_ii;
  /** Reduction term R_d of the modes III and IV. */
  double reduction_iii_iv;
  /** Yield load of mode I_m, before reduction (NDS Eq. 12.3-1; TR12 Table 1-1), N. */
  double im_yield_n;
  /** Yield load of mode I_s, before reduction (NDS Eq. 12.3-2; TR12 Table 1-1), N. */
  double is_yield_n;
  /** Yield load of mode II, before reduction (NDS Eq. 12.3-3; TR12 Table 1-1), N. */
  double ii_yield_n;
  /** Yield load of mode III_m, before reduction (NDS Eq. 12.3-4; TR12 Table 1-1), N. */
  double iiim_yield_n;
  /** Yield load of mode III_s, before reduction (NDS Eq. 12.3-5; TR12 Table 1-1), N. */
  double iiis_yield_n;
  /** Yield load of mode IV, before reduction (NDS Eq. 12.3-6; TR12 Table 1-1), N. */
  double iv_yield_n;
  /** Reference design value of mode I_m, N. */
  double im_n;
  /** Reference design value of mode I_s, N. */
  double is_n;
  /** Reference design value of mode II, N. */
  double ii_n;
  /** Reference design value of mode III_m, N. */
  double iiim_n;
  /** Reference design value of mode III_s, N. */
  double iiis_n;
  /** Reference design value of mode IV, N. */
  double iv_n;
  /** Mode with the least reference design value. One of BEAMCRAFT_YIELD_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Reference lateral design value Z: the least of the modes, before any adjustment factor, N. */
  double reference_n;
} beamcraft_dowel_shear_output;

/** Sets up an input of beamcraft_dowel_shear: its size and its initial values. Does nothing for NULL. */
void beamcraft_dowel_shear_input_init(beamcraft_dowel_shear_input *out_input);

/** Lateral capacity of one dowel in single shear by every yield mode, with or without a gap between the
 *  members. */
beamcraft_status beamcraft_dowel_shear(const beamcraft_dowel_shear_input *input,
                                       beamcraft_dowel_shear_output *output,
                                       beamcraft_error **out_error);

/** Bit of nominal_diameter_mm in `given` of beamcraft_dowel_double_shear_input. */
#define BEAMCRAFT_DOWEL_DOUBLE_SHEAR_INPUT_GIVEN_NOMINAL_DIAMETER_MM 1

/** A dowel through a main member between two equal side members. */
typedef struct beamcraft_dowel_double_shear_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Diameter in the yield equations (NDS 12.3.7): the thread root where threads bear, else the full
   *  shank, mm. Range 1 to 25.4. */
  double yield_diameter_mm;
  /** Nominal diameter, mm; left out it is the yield diameter, as for nails and bolts. Range 1 to 25.4.
   *  Optional. */
  double nominal_diameter_mm;
  /** Bending yield strength of the dowel, MPa. Range 0.01 to 2000. */
  double bending_yield_mpa;
  /** Dowel bearing strength of the main member at the angle of the load, MPa. Range 0.01 to 2000. */
  double main_bearing_mpa;
  /** Dowel bearing strength of the side members at the angle of the load, MPa. Range 0.01 to 2000. */
  double side_bearing_mpa;
  /** Bearing length in the main member, which the dowel crosses whole, mm. Range 0.1 to 1000. */
  double main_length_mm;
  /** Bearing length in each side member; of unequal ones the lesser, mm. Range 0.1 to 1000. */
  double side_length_mm;
  /** Gap in each shear plane, mm; by default the members touch. Range 0 to 500. Initially 0.0. */
  double gap_mm;
  /** Largest angle between the load and the grain of any member, degrees. Range 0 to 90. */
  double max_angle_to_grain_deg;
} beamcraft_dowel_double_shear_input;

/** Lateral capacity of one dowel in double shear, every mode shown; loads of both shear planes
 *  together. */
typedef struct beamcraft_dowel_double_shear_output {
  /** Row of the table of reduction terms (NDS Table 12.3.1B). One of BEAMCRAFT_REDUCTION_RULE_*. */
  uint32_t reduction_rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Factor K_D for small diameters; 1 where the table does not use it. */
  double k_d;
  /** Factor K_theta for the angle to the grain; 1 where the table does not use it. */
  double k_theta;
  /** Reduction term R_d of the modes I. */
  double reduction_i;
  /** Reduction term R_d of the modes III and IV. */
  double reduction_iii_iv;
  /** Yield load of mode I_m, before reduction (NDS Eq. 12.3-7), N. */
  double im_yield_n;
  /** Yield load of mode I_s, before reduction (NDS Eq. 12.3-8), N. */
  double is_yield_n;
  /** Yield load of mode III_s, before reduction (NDS Eq. 12.3-9; TR12 Table 1-1), N. */
  double iiis_yield_n;
  /** Yield load of mode IV, before reduction (NDS Eq. 12.3-10; TR12 Table 1-1), N. */
  double iv_yield_n;
  /** Reference design value of mode I_m, N. */
  double im_n;
  /** Reference design value of mode I_s, N. */
  double is_n;
  /** Reference design value of mode III_s, N. */
  double iiis_n;
  /** Reference design value of mode IV, N. */
  double iv_n;
  /** Mode with the least reference design value. One of BEAMCRAFT_DOUBLE_SHEAR_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Reference lateral design value Z of both planes: the least of the modes, before any adjustment
   *  factor, N. */
  double reference_n;
} beamcraft_dowel_double_shear_output;

/** Sets up an input of beamcraft_dowel_double_shear: its size and its initial values. Does nothing for NULL. */
void beamcraft_dowel_double_shear_input_init(beamcraft_dowel_double_shear_input *out_input);

/** Lateral capacity of one dowel in double shear by every yield mode, with or without gaps. */
beamcraft_status beamcraft_dowel_double_shear(const beamcraft_dowel_double_shear_input *input,
                                              beamcraft_dowel_double_shear_output *output,
                                              beamcraft_error **out_error);

/** Bit of nominal_diameter_mm in `given` of beamcraft_dowel_shear_hollow_input. */
#define BEAMCRAFT_DOWEL_SHEAR_HOLLOW_INPUT_GIVEN_NOMINAL_DIAMETER_MM 1

/** A dowel through a side member into a main member, each solid or of two equal walls with a void
 *  between them. */
typedef struct beamcraft_dowel_shear_hollow_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Diameter in the yield equations (NDS 12.3.7): the thread root where threads bear, else the full
   *  shank, mm. Range 1 to 25.4. */
  double yield_diameter_mm;
  /** Nominal diameter, mm; left out it is the yield diameter, as for nails and bolts. Range 1 to 25.4.
   *  Optional. */
  double nominal_diameter_mm;
  /** Bending yield strength of the dowel, MPa. Range 0.01 to 2000. */
  double bending_yield_mpa;
  /** Dowel bearing strength of the main member at the angle of the load, MPa. Range 0.01 to 2000. */
  double main_bearing_mpa;
  /** Dowel bearing strength of the side member at the angle of the load, MPa. Range 0.01 to 2000. */
  double side_bearing_mpa;
  /** Bearing length in the main member, in both walls together, mm. Range 0.1 to 1000. */
  double main_length_mm;
  /** Void between the walls of the main member, mm; by default none. Range 0 to 500. Initially 0.0. */
  double main_void_mm;
  /** Bearing length in the side member, in both walls together, mm. Range 0.1 to 1000. */
  double side_length_mm;
  /** Void between the walls of the side member, mm; by default none. Range 0 to 500. Initially 0.0. */
  double side_void_mm;
  /** Gap between the members, such as a wall lining that is not counted on, mm; by default they touch.
   *  Range 0 to 500. Initially 0.0. */
  double gap_mm;
  /** Largest angle between the load and the grain of either member, degrees. Range 0 to 90. */
  double max_angle_to_grain_deg;
} beamcraft_dowel_shear_hollow_input;

/** Lateral capacity of one dowel between members that may be hollow, every mode shown. */
typedef struct beamcraft_dowel_shear_hollow_output {
  /** Reduction term R_d of the modes I (NDS Table 12.3.1B). */
  double reduction_i;
  /** Reduction term R_d of the mode II. */
  double reduction_ii;
  /** Reduction term R_d of the modes III and IV. */
  double reduction_iii_iv;
  /** Yield load of mode I_m, before reduction, N. */
  double im_yield_n;
  /** Yield load of mode I_s, before reduction, N. */
  double is_yield_n;
  /** Yield load of mode II, before reduction, N. */
  double ii_yield_n;
  /** Yield load of mode III_m, before reduction, N. */
  double iiim_yield_n;
  /** Yield load of mode III_s, before reduction, N. */
  double iiis_yield_n;
  /** Yield load of mode IV, before reduction, N. */
  double iv_yield_n;
  /** Reference design value of mode I_m, N. */
  double im_n;
  /** Reference design value of mode I_s, N. */
  double is_n;
  /** Reference design value of mode II, N. */
  double ii_n;
  /** Reference design value of mode III_m, N. */
  double iiim_n;
  /** Reference design value of mode III_s, N. */
  double iiis_n;
  /** Reference design value of mode IV, N. */
  double iv_n;
  /** Mode with the least reference design value. One of BEAMCRAFT_YIELD_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Reference lateral design value Z: the least of the modes, before any adjustment factor, N. */
  double reference_n;
} beamcraft_dowel_shear_hollow_output;

/** Sets up an input of beamcraft_dowel_shear_hollow: its size and its initial values. Does nothing for NULL. */
void beamcraft_dowel_shear_hollow_input_init(beamcraft_dowel_shear_hollow_input *out_input);

/** Lateral capacity of one dowel in single shear through or into a hollow member by every yield mode. */
beamcraft_status beamcraft_dowel_shear_hollow(const beamcraft_dowel_shear_hollow_input *input,
                                              beamcraft_dowel_shear_hollow_output *output,
                                              beamcraft_error **out_error);

/** Bit of penetration_mm in `given` of beamcraft_fastener_withdrawal_input. */
#define BEAMCRAFT_FASTENER_WITHDRAWAL_INPUT_GIVEN_PENETRATION_MM 1

/** A fastener pulled out of wood. */
typedef struct beamcraft_fastener_withdrawal_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Kind of fastener. One of BEAMCRAFT_DOWEL_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Specific gravity of the wood that holds it, from oven-dry mass and volume. Range 0.05 to 1.5. */
  double specific_gravity;
  /** Nominal diameter, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Length that holds in the main member, mm: thread with its tip (wood screw), thread without tip (lag
   *  screw), shank (smooth nail), ringed shank (ring shank nail). Range 0.1 to 1000. */
  double holding_length_mm;
  /** Penetration into the main member, mm: tip counted for wood screws and nails, not for lag screws;
   *  left out it is the holding length. Range 0.1 to 1000. Optional. */
  double penetration_mm;
  /** Grain that the fastener stands in; side grain by default, as in the face of a stud. One of
   *  BEAMCRAFT_FASTENER_DIRECTION_*. Initially BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN. */
  uint32_t direction;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_fastener_withdrawal_input;

/** Withdrawal capacity of one fastener. */
typedef struct beamcraft_fastener_withdrawal_output {
  /** Reference withdrawal value W in side grain (NDS Eq. 12.2-1 to 12.2-5), N per mm of holding length. */
  double side_grain_n_per_mm;
  /** What the standard says about the grain (NDS 12.2.1.3, 12.2.2.2, 12.2.3.2). One of
   *  BEAMCRAFT_END_GRAIN_RULE_*. */
  uint32_t grain_rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Factor for the grain: 1 in side grain, 0.75 for lag screws in end grain, 0 where it is not
   *  permitted. */
  double grain_factor;
  /** Reference withdrawal value of the whole holding length, before any adjustment factor, N. */
  double reference_n;
  /** Least penetration that the standard asks for (NDS 12.1.4.6, 12.1.5.6, 12.1.6.4), mm. */
  double required_penetration_mm;
  /** Whether the penetration is at least that. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t penetration;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_fastener_withdrawal_output;

/** Sets up an input of beamcraft_fastener_withdrawal: its size and its initial values. Does nothing for NULL. */
void beamcraft_fastener_withdrawal_input_init(beamcraft_fastener_withdrawal_input *out_input);

/** Withdrawal capacity of a wood screw, lag screw or nail, with its least penetration and the end-grain
 *  rule. */
beamcraft_status beamcraft_fastener_withdrawal(const beamcraft_fastener_withdrawal_input *input,
                                               beamcraft_fastener_withdrawal_output *output,
                                               beamcraft_error **out_error);

/** A fastener head pulled through its side member. */
typedef struct beamcraft_head_pull_through_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Specific gravity of the side member, from oven-dry mass and volume. Range 0.05 to 1.5. */
  double specific_gravity;
  /** Diameter of the head, mm. Range 1 to 100. */
  double head_diameter_mm;
  /** Net thickness of the side member under the head, mm; a counterbore taken off. Range 0.1 to 1000. */
  double net_side_thickness_mm;
} beamcraft_head_pull_through_input;

/** Pull-through capacity of one fastener head. */
typedef struct beamcraft_head_pull_through_output {
  /** Part of the equation that applies. One of BEAMCRAFT_PULL_THROUGH_RANGE_*. */
  uint32_t thickness_range;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Thickness that counts: the net thickness, at most 2.5 head diameters, mm. */
  double counted_thickness_mm;
  /** Reference pull-through value W_H (NDS Eq. 12.2-6), before any adjustment factor, N. */
  double reference_n;
} beamcraft_head_pull_through_output;

/** Sets up an input of beamcraft_head_pull_through: its size and its initial values. Does nothing for NULL. */
void beamcraft_head_pull_through_input_init(beamcraft_head_pull_through_input *out_input);

/** Capacity of a round fastener head against pulling through its side member. */
beamcraft_status beamcraft_head_pull_through(const beamcraft_head_pull_through_input *input,
                                             beamcraft_head_pull_through_output *output,
                                             beamcraft_error **out_error);

/** A fastener loaded across and along its axis. */
typedef struct beamcraft_combined_lateral_withdrawal_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Equation that joins the loads. One of BEAMCRAFT_COMBINED_LOAD_RULE_*. */
  uint32_t rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Adjusted lateral capacity Z', N. Range 0.001 to 10000000. */
  double lateral_capacity_n;
  /** Adjusted withdrawal capacity W'p of the whole holding length, N; the head pull-through W_H' where
   *  that is less. Range 0.001 to 10000000. */
  double withdrawal_capacity_n;
  /** Load across the axis, N. Range 0 to 10000000. */
  double lateral_n;
  /** Load along the axis, pulling out, N. Range 0 to 10000000. */
  double withdrawal_n;
} beamcraft_combined_lateral_withdrawal_input;

/** Capacity at the angle of the resultant. */
typedef struct beamcraft_combined_lateral_withdrawal_output {
  /** Resultant of both loads, N. */
  double resultant_n;
  /** Angle between the resultant and the wood surface, degrees; 0 for a purely lateral load. */
  double angle_deg;
  /** Adjusted capacity Z'_alpha at that angle, N. */
  double capacity_n;
  /** Resultant over capacity; 1 is the limit. */
  double utilisation;
} beamcraft_combined_lateral_withdrawal_output;

/** Sets up an input of beamcraft_combined_lateral_withdrawal: its size and its initial values. Does nothing for NULL. */
void beamcraft_combined_lateral_withdrawal_input_init(beamcraft_combined_lateral_withdrawal_input *out_input);

/** Capacity of a screw or nail under lateral and withdrawal load at once. */
beamcraft_status beamcraft_combined_lateral_withdrawal(const beamcraft_combined_lateral_withdrawal_input *input,
                                                       beamcraft_combined_lateral_withdrawal_output *output,
                                                       beamcraft_error **out_error);

/** A joint whose adjustment factors are looked up. */
typedef struct beamcraft_connection_factors_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener. One of BEAMCRAFT_DOWEL_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Nominal diameter, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Load duration; permanent by default, the least factor, as for goods that stay on a shelf. One of
   *  BEAMCRAFT_LOAD_DURATION_*. Initially BEAMCRAFT_LOAD_DURATION_PERMANENT. */
  uint32_t load_duration;
  /** Moisture of the wood when the joint is made; dry by default, as indoor joinery is. One of
   *  BEAMCRAFT_MEMBER_MOISTURE_*. Initially BEAMCRAFT_MEMBER_MOISTURE_DRY. */
  uint32_t fabrication_moisture;
  /** Moisture of the wood in service; dry by default, as in a heated room. One of
   *  BEAMCRAFT_MEMBER_MOISTURE_*. Initially BEAMCRAFT_MEMBER_MOISTURE_DRY. */
  uint32_t service_moisture;
  /** Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more. One
   *  of BEAMCRAFT_TEMPERATURE_BAND_*. Initially BEAMCRAFT_TEMPERATURE_BAND_UP_TO_100_F. */
  uint32_t temperature;
  /** How the fasteners stand; several rows by default, the lower factor when wet wood dries. One of
   *  BEAMCRAFT_FASTENER_ARRANGEMENT_*. Initially BEAMCRAFT_FASTENER_ARRANGEMENT_SEVERAL_ROWS. */
  uint32_t arrangement;
  /** Grain of the main member that the fastener stands in; side grain by default, as in the face of a
   *  stud. One of BEAMCRAFT_FASTENER_DIRECTION_*. Initially BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN. */
  uint32_t direction;
  /** How a nail is driven; straight by default. One of BEAMCRAFT_NAIL_DRIVING_*. Initially
   *  BEAMCRAFT_NAIL_DRIVING_STRAIGHT. */
  uint32_t nail_driving;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_connection_factors_input;

/** Adjustment factors of a joint, and their products. */
typedef struct beamcraft_connection_factors_output {
  /** Load duration factor C_D (NDS 11.3.2, Table 2.3.2). */
  double c_d;
  /** Wet service factor C_M of lateral values (NDS Table 11.3.3). */
  double c_m_lateral;
  /** Wet service factor C_M of withdrawal values (NDS Table 11.3.3). */
  double c_m_withdrawal;
  /** Wet service factor C_M of head pull-through values (NDS Table 11.3.3). */
  double c_m_pull_through;
  /** Temperature factor C_t (NDS Table 11.3.4). */
  double c_t;
  /** End grain factor C_eg of lateral values (NDS 12.5.2.2). */
  double c_eg_lateral;
  /** End grain factor C_eg of withdrawal values (NDS 12.5.2.1); 0 where the standard permits no
   *  withdrawal. */
  double c_eg_withdrawal;
  /** Toe-nail factor C_tn of lateral values (NDS 12.5.4.2). */
  double c_tn_lateral;
  /** Toe-nail factor C_tn of withdrawal values (NDS 12.5.4.1). */
  double c_tn_withdrawal;
  /** Product of the factors of lateral values. */
  double lateral;
  /** Product of the factors of withdrawal values but C_eg, which `fastener_withdrawal` has already
   *  applied. */
  double withdrawal;
  /** Product of the factors of head pull-through values. */
  double pull_through;
} beamcraft_connection_factors_output;

/** Sets up an input of beamcraft_connection_factors: its size and its initial values. Does nothing for NULL. */
void beamcraft_connection_factors_input_init(beamcraft_connection_factors_input *out_input);

/** Adjustment factors of a connection for load duration, moisture, temperature, end grain and
 *  toe-nailing. */
beamcraft_status beamcraft_connection_factors(const beamcraft_connection_factors_input *input,
                                              beamcraft_connection_factors_output *output,
                                              beamcraft_error **out_error);

/** Bit of slip_modulus_n_per_mm in `given` of beamcraft_group_action_factor_input. */
#define BEAMCRAFT_GROUP_ACTION_FACTOR_INPUT_GIVEN_SLIP_MODULUS_N_PER_MM 1

/** A row of fasteners in the direction of the load. */
typedef struct beamcraft_group_action_factor_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Nominal diameter of the fasteners, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Number of fasteners in the row. Range 1 to 1000. */
  uint32_t fastener_count;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Centre spacing of the fasteners in the row, mm. Range 10 to 10000. */
  double spacing_mm;
  /** What the row joins; wood to wood by default, the lower modulus. One of BEAMCRAFT_SLIP_JOINT_*.
   *  Initially BEAMCRAFT_SLIP_JOINT_WOOD_TO_WOOD. */
  uint32_t joint;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Load/slip modulus of one fastener, N/mm; left out it is that of the joint. Range 1 to 1000000.
   *  Optional. */
  double slip_modulus_n_per_mm;
  /** Modulus of elasticity of the main member, MPa. Range 100 to 300000. */
  double main_modulus_mpa;
  /** Gross area of the main member across the load, mm²; for a load across its grain, thickness times the
   *  width of the row group (NDS 11.3.6.3). Range 1 to 10000000. */
  double main_area_mm2;
  /** Modulus of elasticity of the side members, MPa. Range 100 to 300000. */
  double side_modulus_mpa;
  /** Sum of the gross areas of the side members across the load, mm². Range 1 to 10000000. */
  double side_area_mm2;
} beamcraft_group_action_factor_input;

/** Group action factor of a row, with its working. */
typedef struct beamcraft_group_action_factor_output {
  /** Load/slip modulus gamma of one fastener, N/mm. */
  double slip_modulus_n_per_mm;
  /** Ratio R_EA of the lesser to the greater axial stiffness of the members. */
  double stiffness_ratio;
  /** Term u of NDS Eq. 11.3-1. */
  double u;
  /** Term m of NDS Eq. 11.3-1. */
  double m;
  /** Group action factor C_g; 1 for fasteners below 1/4 in and for one fastener. */
  double c_g;
  /** Number of fasteners that share a load evenly and carry as much: n C_g. */
  double effective_count;
} beamcraft_group_action_factor_output;

/** Sets up an input of beamcraft_group_action_factor: its size and its initial values. Does nothing for NULL. */
void beamcraft_group_action_factor_input_init(beamcraft_group_action_factor_input *out_input);

/** Group action factor of a row of dowels, from the stretch of the members. */
beamcraft_status beamcraft_group_action_factor(const beamcraft_group_action_factor_input *input,
                                               beamcraft_group_action_factor_output *output,
                                               beamcraft_error **out_error);

/** Bit of loaded_edge_mm in `given` of beamcraft_geometry_factor_input. */
#define BEAMCRAFT_GEOMETRY_FACTOR_INPUT_GIVEN_LOADED_EDGE_MM 1
/** Bit of row_pitch_mm in `given` of beamcraft_geometry_factor_input. */
#define BEAMCRAFT_GEOMETRY_FACTOR_INPUT_GIVEN_ROW_PITCH_MM 2
/** Bit of between_rows_mm in `given` of beamcraft_geometry_factor_input. */
#define BEAMCRAFT_GEOMETRY_FACTOR_INPUT_GIVEN_BETWEEN_ROWS_MM 4
/** Bit of row_spread_mm in `given` of beamcraft_geometry_factor_input. */
#define BEAMCRAFT_GEOMETRY_FACTOR_INPUT_GIVEN_ROW_SPREAD_MM 8

/** The distances of a fastener or a group of them in one member. */
typedef struct beamcraft_geometry_factor_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Nominal diameter of the fasteners, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Which way the fasteners push. One of BEAMCRAFT_SPACING_LOAD_*. */
  uint32_t load;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Angle between the load and the grain of this member, degrees; 0 along the grain. Range 0 to 90. */
  double angle_to_grain_deg;
  /** Softwood or hardwood; softwood by default, which asks for more. One of
   *  BEAMCRAFT_END_DISTANCE_WOOD_*. Initially BEAMCRAFT_END_DISTANCE_WOOD_SOFTWOOD. */
  uint32_t wood;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Distance along the grain from the nearest fastener to the end of the member, mm. Range 0 to 100000. */
  double end_distance_mm;
  /** Distance across the grain to the edge that the load does not push on, mm. Range 0 to 100000. */
  double edge_distance_mm;
  /** Distance across the grain to the edge that the load pushes on, mm; needed when the load has a part
   *  across the grain. Range 0 to 100000. Optional. */
  double loaded_edge_mm;
  /** Centre spacing in a row along the load, mm; left out for one fastener in a row. Range 0 to 100000.
   *  Optional. */
  double row_pitch_mm;
  /** Whether the rows are shifted against each other; matters below 1/4 in only. In line by default,
   *  which asks for more. One of BEAMCRAFT_ROW_STAGGER_*. Initially BEAMCRAFT_ROW_STAGGER_IN_LINE. */
  uint32_t stagger;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Distance between rows, mm; left out for one row. Range 0 to 100000. Optional. */
  double between_rows_mm;
  /** Distance between the outer rows across the grain, mm; left out for one row. Range 0 to 100000.
   *  Optional. */
  double row_spread_mm;
  /** Bearing length l: the lesser of the length in the main member and that in all side members, mm.
   *  Range 0.1 to 1000. */
  double bearing_length_mm;
  /** Whether holes are bored; matters below 1/4 in only. Not bored by default, which asks for more. One
   *  of BEAMCRAFT_BORED_HOLES_*. Initially BEAMCRAFT_BORED_HOLES_NOT_BORED. */
  uint32_t holes;
  /** Side member; matters below 1/4 in only. Wood by default, which asks for more. One of
   *  BEAMCRAFT_SIDE_PLATE_*. Initially BEAMCRAFT_SIDE_PLATE_WOOD. */
  uint32_t side;
} beamcraft_geometry_factor_input;

/** Distances asked for, whether they are kept, and the geometry factor. */
typedef struct beamcraft_geometry_factor_output {
  /** Where the distances come from. One of BEAMCRAFT_SPACING_RULE_*. */
  uint32_t rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** End distance for the full capacity (NDS Table 12.5.1A), mm. */
  double end_full_mm;
  /** Least end distance, mm. */
  double end_least_mm;
  /** Whether the end distance is at least the least one. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t end_distance;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Share of the capacity that the end distance leaves. */
  double end_factor;
  /** Spacing in a row for the full capacity (NDS Table 12.5.1B), mm. */
  double pitch_full_mm;
  /** Least spacing in a row, mm. */
  double pitch_least_mm;
  /** Whether the spacing in a row is at least the least one; met with one fastener in a row. One of
   *  BEAMCRAFT_OUTCOME_*. */
  uint32_t row_pitch;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Share of the capacity that the spacing in a row leaves. */
  double pitch_factor;
  /** Edge distance asked for at the edge that is not pushed on (NDS Table 12.5.1C), mm. */
  double edge_least_mm;
  /** Whether that edge distance is kept. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t edge_distance;
  /** Kept for later: 0. */
  uint32_t reserved_4;
  /** Edge distance asked for at the edge that is pushed on (NDS Table 12.5.1C), mm; 0 for a load along
   *  the grain. */
  double loaded_edge_least_mm;
  /** Whether that edge distance is kept; met for a load along the grain. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t loaded_edge;
  /** Kept for later: 0. */
  uint32_t reserved_5;
  /** Distance between rows asked for (NDS Table 12.5.1D), mm. */
  double between_rows_least_mm;
  /** Whether the distance between rows is kept; met with one row. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t between_rows;
  /** Whether the outer rows are at most 5 in apart across the grain (NDS 12.5.1.3); met with one row. One
   *  of BEAMCRAFT_OUTCOME_*. */
  uint32_t row_spread;
  /** Geometry factor C_delta: the lesser of the two shares; 0 where a least distance of them is not kept. */
  double c_delta;
  /** Whether every distance is kept. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** Kept for later: 0. */
  uint32_t reserved_6;
} beamcraft_geometry_factor_output;

/** Sets up an input of beamcraft_geometry_factor: its size and its initial values. Does nothing for NULL. */
void beamcraft_geometry_factor_input_init(beamcraft_geometry_factor_input *out_input);

/** Spacing, edge and end distances of dowels against the standard, and the geometry factor. */
beamcraft_status beamcraft_geometry_factor(const beamcraft_geometry_factor_input *input,
                                           beamcraft_geometry_factor_output *output,
                                           beamcraft_error **out_error);

/** A wood screw and the wood that it is driven into. */
typedef struct beamcraft_lead_hole_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Specific gravity of the wood that is bored, from oven-dry mass and volume. Range 0.05 to 1.5. */
  double specific_gravity;
  /** Nominal diameter of the screw, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Diameter at the thread root, mm. Range 1 to 25.4. */
  double root_diameter_mm;
} beamcraft_lead_hole_input;

/** Holes for one wood screw. */
typedef struct beamcraft_lead_hole_output {
  /** Hole for the shank of a screw loaded laterally (NDS 12.1.5.3), mm. */
  double lateral_shank_hole_mm;
  /** Hole for the thread of a screw loaded laterally (NDS 12.1.5.3), mm. */
  double lateral_thread_hole_mm;
  /** Whether a screw loaded in withdrawal needs a hole (NDS 12.1.5.2). One of BEAMCRAFT_LEAD_HOLE_NEED_*. */
  uint32_t withdrawal_thread_hole;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Hole for the thread of a screw loaded in withdrawal (NDS 12.1.5.2), mm; 0 where none is required. */
  double withdrawal_thread_hole_mm;
} beamcraft_lead_hole_output;

/** Sets up an input of beamcraft_lead_hole: its size and its initial values. Does nothing for NULL. */
void beamcraft_lead_hole_input_init(beamcraft_lead_hole_input *out_input);

/** Diameters of the holes to bore for a wood screw, by the density of the wood. */
beamcraft_status beamcraft_lead_hole(const beamcraft_lead_hole_input *input,
                                     beamcraft_lead_hole_output *output,
                                     beamcraft_error **out_error);

/** A lag screw or a nail and the wood that it is driven into. */
typedef struct beamcraft_bored_hole_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener: a lag screw or a nail. One of BEAMCRAFT_DOWEL_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Specific gravity of the wood that is bored, from oven-dry mass and volume. Range 0.05 to 1.5. */
  double specific_gravity;
  /** Nominal diameter, that of the shank, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
} beamcraft_bored_hole_input;

/** Holes for one lag screw or nail. */
typedef struct beamcraft_bored_hole_output {
  /** Clearance hole for the unthreaded shank of a lag screw, as deep as the shank is long (NDS 12.1.4.2),
   *  mm; 0 for nails. */
  double shank_hole_mm;
  /** Smallest hole for the thread of a lag screw, over at least the thread length (NDS 12.1.4.2), mm; 0
   *  for nails, which may be driven without. */
  double least_hole_mm;
  /** Largest hole for the thread of a lag screw (NDS 12.1.4.2), or for a nail (NDS 12.1.6.2), mm. */
  double most_hole_mm;
} beamcraft_bored_hole_output;

/** Sets up an input of beamcraft_bored_hole: its size and its initial values. Does nothing for NULL. */
void beamcraft_bored_hole_input_init(beamcraft_bored_hole_input *out_input);

/** Diameters of the holes to bore for a lag screw or a nail, by the density of the wood. */
beamcraft_status beamcraft_bored_hole(const beamcraft_bored_hole_input *input,
                                      beamcraft_bored_hole_output *output,
                                      beamcraft_error **out_error);

/** Bit of nominal_diameter_mm in `given` of beamcraft_screw_joint_input. */
#define BEAMCRAFT_SCREW_JOINT_INPUT_GIVEN_NOMINAL_DIAMETER_MM 1
/** Bit of root_diameter_mm in `given` of beamcraft_screw_joint_input. */
#define BEAMCRAFT_SCREW_JOINT_INPUT_GIVEN_ROOT_DIAMETER_MM 2
/** Bit of head_diameter_mm in `given` of beamcraft_screw_joint_input. */
#define BEAMCRAFT_SCREW_JOINT_INPUT_GIVEN_HEAD_DIAMETER_MM 4
/** Bit of thread_length_mm in `given` of beamcraft_screw_joint_input. */
#define BEAMCRAFT_SCREW_JOINT_INPUT_GIVEN_THREAD_LENGTH_MM 8
/** Bit of tip_length_mm in `given` of beamcraft_screw_joint_input. */
#define BEAMCRAFT_SCREW_JOINT_INPUT_GIVEN_TIP_LENGTH_MM 16
/** Bit of bending_yield_mpa in `given` of beamcraft_screw_joint_input. */
#define BEAMCRAFT_SCREW_JOINT_INPUT_GIVEN_BENDING_YIELD_MPA 32

/** One wood screw through a side member and a gap into a main member, with its loads. */
typedef struct beamcraft_screw_joint_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Screw size; `own` takes the three diameters from the fields below. One of BEAMCRAFT_SCREW_SIZE_*. */
  uint32_t size;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Nominal diameter, mm; left out it is that of the size. Range 1 to 25.4. Optional. */
  double nominal_diameter_mm;
  /** Diameter at the thread root, mm; left out it is that of the size. Range 1 to 25.4. Optional. */
  double root_diameter_mm;
  /** Diameter of the head, mm; left out it is that of the size. Range 1 to 100. Optional. */
  double head_diameter_mm;
  /** Length that enters the wood: from the face of a countersunk head, from under a round one, mm. Range
   *  5 to 1000. */
  double screw_length_mm;
  /** Length of the thread with its tip, mm; left out it is the larger of 4 D and two thirds of the length
   *  (NDS Table L3). Range 0.1 to 1000. Optional. */
  double thread_length_mm;
  /** Length of the tapered tip, mm; left out it is 2 D (NDS 12.3.5.3). Range 0 to 500. Optional. */
  double tip_length_mm;
  /** Bending yield strength of the screw, MPa; left out it is the table's (NDS Table I1). Range 0.01 to
   *  2000. Optional. */
  double bending_yield_mpa;
  /** Specific gravity of the side member. Range 0.05 to 1.5. */
  double side_specific_gravity;
  /** Thickness of the side member, mm. Range 0.1 to 1000. */
  double side_thickness_mm;
  /** Angle between the lateral load and the grain of the side member, degrees. Range 0 to 90. */
  double side_angle_to_grain_deg;
  /** Depth by which the head is sunk below the face of the side member, mm; by default it is flush. Range
   *  0 to 500. Initially 0.0. */
  double head_recess_mm;
  /** Gap between the members, such as a wall lining, mm; by default they touch. Range 0 to 500. Initially
   *  0.0. */
  double gap_mm;
  /** Specific gravity of the main member. Range 0.05 to 1.5. */
  double main_specific_gravity;
  /** Thickness of the main member along the screw, mm. Range 0.1 to 1000. */
  double main_thickness_mm;
  /** Angle between the lateral load and the grain of the main member, degrees; 0 for a weight on an
   *  upright stud. Range 0 to 90. */
  double main_angle_to_grain_deg;
  /** Grain of the main member that the screw stands in; side grain by default, as in the face of a stud.
   *  One of BEAMCRAFT_FASTENER_DIRECTION_*. Initially BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN. */
  uint32_t main_direction;
  /** Whether bearing strengths are rounded to 50 psi like the standard's table; by default not. One of
   *  BEAMCRAFT_BEARING_ROUNDING_*. Initially BEAMCRAFT_BEARING_ROUNDING_UNROUNDED. */
  uint32_t rounding;
  /** Load duration; permanent by default, the least factor, as for goods that stay on a shelf. One of
   *  BEAMCRAFT_LOAD_DURATION_*. Initially BEAMCRAFT_LOAD_DURATION_PERMANENT. */
  uint32_t load_duration;
  /** Moisture of the wood when the joint is made; dry by default, as indoor joinery is. One of
   *  BEAMCRAFT_MEMBER_MOISTURE_*. Initially BEAMCRAFT_MEMBER_MOISTURE_DRY. */
  uint32_t fabrication_moisture;
  /** Moisture of the wood in service; dry by default, as in a heated room. One of
   *  BEAMCRAFT_MEMBER_MOISTURE_*. Initially BEAMCRAFT_MEMBER_MOISTURE_DRY. */
  uint32_t service_moisture;
  /** Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more. One
   *  of BEAMCRAFT_TEMPERATURE_BAND_*. Initially BEAMCRAFT_TEMPERATURE_BAND_UP_TO_100_F. */
  uint32_t temperature;
  /** How the screws of the joint stand; several rows by default, the lower factor when wet wood dries.
   *  One of BEAMCRAFT_FASTENER_ARRANGEMENT_*. Initially BEAMCRAFT_FASTENER_ARRANGEMENT_SEVERAL_ROWS. */
  uint32_t arrangement;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Lateral load on this screw, N. Range 0 to 10000000. */
  double lateral_n;
  /** Withdrawal load on this screw, N. Range 0 to 10000000. */
  double withdrawal_n;
} beamcraft_screw_joint_input;

/** One wood screw joint with its whole working. */
typedef struct beamcraft_screw_joint_output {
  /** Nominal diameter, mm. */
  double nominal_diameter_mm;
  /** Diameter at the thread root, used in the yield equations (NDS 12.3.7), mm. */
  double root_diameter_mm;
  /** Diameter of the head, mm. */
  double head_diameter_mm;
  /** Length of the thread with its tip, mm. */
  double thread_length_mm;
  /** Length of the tapered tip, mm. */
  double tip_length_mm;
  /** Depth of the tip behind the near face of the main member, mm. */
  double penetration_mm;
  /** Least penetration: 6 D, tip counted (NDS 12.1.5.6), mm. */
  double required_penetration_mm;
  /** Whether the main member holds at least that much of the screw. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t penetration;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** How far the tip comes out of the far face of the main member, mm; negative while wood remains. */
  double breakthrough_mm;
  /** Whether the tip stays inside the main member. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t stays_inside;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Bearing length in the side member, mm. */
  double side_bearing_length_mm;
  /** Bearing length in the main member, half the tapered tip taken off (NDS 12.3.5.3), mm. */
  double main_bearing_length_mm;
  /** Length of thread, tip counted, inside the main member, mm. */
  double thread_in_main_mm;
  /** Bearing strength of the side member at the angle of the load (NDS Table 12.3.3), MPa. */
  double side_bearing_mpa;
  /** Bearing strength of the main member at the angle of the load (NDS Table 12.3.3), MPa. */
  double main_bearing_mpa;
  /** Bending yield strength of the screw (NDS Table I1 unless given), MPa. */
  double bending_yield_mpa;
  /** Row of the table of reduction terms (NDS Table 12.3.1B). One of BEAMCRAFT_REDUCTION_RULE_*. */
  uint32_t reduction_rule;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Factor K_D for small diameters; 1 where the table does not use it. */
  double k_d;
  /** Factor K_theta for the angle to the grain; 1 where the table does not use it. */
  double k_theta;
  /** Reduction term R_d of the governing mode. */
  double reduction;
  /** Reference design value of mode I_m, N. */
  double im_n;
  /** Reference design value of mode I_s, N. */
  double is_n;
  /** Reference design value of mode II, N. */
  double ii_n;
  /** Reference design value of mode III_m, N. */
  double iiim_n;
  /** Reference design value of mode III_s, N. */
  double iiis_n;
  /** Reference design value of mode IV, N. */
  double iv_n;
  /** Mode with the least reference design value. One of BEAMCRAFT_YIELD_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_4;
  /** Reference lateral design value Z (TR12 with a gap, NDS 12.3.1 without), N. */
  double reference_lateral_n;
  /** Reference withdrawal value W (NDS Eq. 12.2-2), N per mm of thread. */
  double withdrawal_n_per_mm;
  /** Reference withdrawal value of the thread in the main member, N; 0 in end grain, where none is
   *  permitted. */
  double reference_withdrawal_n;
  /** Reference head pull-through value W_H (NDS Eq. 12.2-6), N. */
  double reference_pull_through_n;
  /** Load duration factor C_D (NDS 11.3.2). */
  double c_d;
  /** Wet service factor C_M of the lateral value (NDS Table 11.3.3). */
  double c_m_lateral;
  /** Wet service factor C_M of the withdrawal and pull-through values (NDS Table 11.3.3). */
  double c_m_withdrawal;
  /** Temperature factor C_t (NDS Table 11.3.4). */
  double c_t;
  /** End grain factor C_eg of the lateral value (NDS 12.5.2.2). */
  double c_eg_lateral;
  /** Adjusted lateral capacity Z', N. */
  double lateral_capacity_n;
  /** Adjusted withdrawal capacity W'p, N; 0 in end grain, where none is permitted. */
  double withdrawal_capacity_n;
  /** Adjusted head pull-through capacity W_H', N. */
  double pull_through_capacity_n;
  /** Capacity along the axis that stands beside the lateral load: the lesser of thread and head, N; 0 in
   *  end grain. */
  double axial_capacity_n;
  /** Resultant of the loads, N. */
  double resultant_n;
  /** Angle between the resultant and the wood surface, degrees. */
  double angle_deg;
  /** Adjusted capacity Z'_alpha at that angle (NDS Eq. 12.4-1), N. */
  double combined_capacity_n;
  /** Lateral load over Z'. */
  double lateral_utilisation;
  /** Withdrawal load over W'p. */
  double withdrawal_utilisation;
  /** Withdrawal load over W_H'. */
  double pull_through_utilisation;
  /** Resultant over Z'_alpha. */
  double combined_utilisation;
  /** Check with the largest utilisation. One of BEAMCRAFT_SCREW_JOINT_CHECK_*. */
  uint32_t governing_check;
  /** Kept for later: 0. */
  uint32_t reserved_5;
  /** Largest of the four utilisations; 1 is the limit. */
  double utilisation;
  /** Whether no utilisation exceeds 1, the penetration suffices and the tip stays inside. One of
   *  BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** Kept for later: 0. */
  uint32_t reserved_6;
} beamcraft_screw_joint_output;

/** Sets up an input of beamcraft_screw_joint: its size and its initial values. Does nothing for NULL. */
void beamcraft_screw_joint_input_init(beamcraft_screw_joint_input *out_input);

/** Capacity and use of one wood screw through a side member and a gap into a main member. */
beamcraft_status beamcraft_screw_joint(const beamcraft_screw_joint_input *input,
                                       beamcraft_screw_joint_output *output,
                                       beamcraft_error **out_error);

/** Bit of root_diameter_mm in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_ROOT_DIAMETER_MM 1
/** Bit of head_diameter_mm in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_HEAD_DIAMETER_MM 2
/** Bit of thread_length_mm in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_THREAD_LENGTH_MM 4
/** Bit of tip_length_mm in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_TIP_LENGTH_MM 8
/** Bit of bending_yield_mpa in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_BENDING_YIELD_MPA 16
/** Bit of steel_tension_n in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_STEEL_TENSION_N 32
/** Bit of side_specific_gravity in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_SIDE_SPECIFIC_GRAVITY 64
/** Bit of side_bearing_mpa in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_SIDE_BEARING_MPA 128
/** Bit of main_specific_gravity in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_MAIN_SPECIFIC_GRAVITY 256
/** Bit of main_bearing_mpa in `given` of beamcraft_dowel_joint_nds_input. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_INPUT_GIVEN_MAIN_BEARING_MPA 512
/** Bit of reference_pull_through_n in `given` of beamcraft_dowel_joint_nds_output. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_OUTPUT_GIVEN_REFERENCE_PULL_THROUGH_N 1
/** Bit of asd_pull_through_n in `given` of beamcraft_dowel_joint_nds_output. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_OUTPUT_GIVEN_ASD_PULL_THROUGH_N 2
/** Bit of lrfd_pull_through_n in `given` of beamcraft_dowel_joint_nds_output. */
#define BEAMCRAFT_DOWEL_JOINT_NDS_OUTPUT_GIVEN_LRFD_PULL_THROUGH_N 4

/** One nail, wood screw or lag screw through a side member and a gap into a main member, with its
 *  loads. */
typedef struct beamcraft_dowel_joint_nds_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Kind of fastener. One of BEAMCRAFT_DOWEL_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Nominal diameter, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Diameter at the thread root, mm; needed for screws, left out for nails. Range 1 to 25.4. Optional. */
  double root_diameter_mm;
  /** Diameter of the round head or washer, mm; left out the pull-through of the head is not determined.
   *  Range 1 to 100. Optional. */
  double head_diameter_mm;
  /** Length from under the head to the point, from the face of a countersunk head, mm. Range 5 to 1000. */
  double length_mm;
  /** Length of thread or rings, tip counted, mm; left out: wood screw max(4 D, 2 L/3) (NDS Table L3), lag
   *  screw L/2 + 1/2 in up to 6 in and 1/4 in less than L at most (NDS Table L2), smooth nail the whole
   *  length; ring shank nails need it. Range 0.1 to 1000. Optional. */
  double thread_length_mm;
  /** Length of the tapered tip, mm; left out it is 2 D, for a lag screw that of NDS Table L2. Range 0 to
   *  500. Optional. */
  double tip_length_mm;
  /** Bending yield strength, MPa; left out it is the table's for low to medium carbon steel (NDS Table
   *  I1). Range 0.01 to 2000. Optional. */
  double bending_yield_mpa;
  /** Allowable tension of the steel at the thread root, N, as declared for the fastener; left out it is
   *  not looked at. Range 0.001 to 10000000. Optional. */
  double steel_tension_n;
  /** Material of the side member; wood by default. One of BEAMCRAFT_DOWEL_MATERIAL_*. Initially
   *  BEAMCRAFT_DOWEL_MATERIAL_WOOD. */
  uint32_t side_material;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Specific gravity of a wooden side member. Range 0.05 to 1.5. Optional. */
  double side_specific_gravity;
  /** Bearing strength of the side member as tested, MPa; left out it follows from the material. Range
   *  0.01 to 2000. Optional. */
  double side_bearing_mpa;
  /** Thickness of the side member, mm. Range 0.1 to 1000. */
  double side_thickness_mm;
  /** Angle between the lateral load and the grain of a wooden side member, degrees. Range 0 to 90. */
  double side_angle_to_grain_deg;
  /** Depth by which the head is sunk below the face of the side member, mm; by default it is flush. Range
   *  0 to 500. Initially 0.0. */
  double head_recess_mm;
  /** Gap between the members, such as a wall lining, mm; by default they touch. Range 0 to 500. Initially
   *  0.0. */
  double gap_mm;
  /** Material of the main member; wood by default. One of BEAMCRAFT_DOWEL_MATERIAL_*. Initially
   *  BEAMCRAFT_DOWEL_MATERIAL_WOOD. */
  uint32_t main_material;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Specific gravity of a wooden main member. Range 0.05 to 1.5. Optional. */
  double main_specific_gravity;
  /** Bearing strength of the main member as tested, MPa; left out it follows from the material. Range
   *  0.01 to 2000. Optional. */
  double main_bearing_mpa;
  /** Thickness of the main member along the fastener, mm. Range 0.1 to 1000. */
  double main_thickness_mm;
  /** Angle between the lateral load and the grain of a wooden main member, degrees. Range 0 to 90. */
  double main_angle_to_grain_deg;
  /** Grain of the main member that the fastener stands in; side grain by default, as in the face of a
   *  stud. One of BEAMCRAFT_FASTENER_DIRECTION_*. Initially BEAMCRAFT_FASTENER_DIRECTION_SIDE_GRAIN. */
  uint32_t main_direction;
  /** Whether bearing strengths are rounded to 50 psi like the standard's table; by default not. One of
   *  BEAMCRAFT_BEARING_ROUNDING_*. Initially BEAMCRAFT_BEARING_ROUNDING_UNROUNDED. */
  uint32_t rounding;
  /** How a nail is driven; straight by default. One of BEAMCRAFT_NAIL_DRIVING_*. Initially
   *  BEAMCRAFT_NAIL_DRIVING_STRAIGHT. */
  uint32_t nail_driving;
  /** Allowable stress or load and resistance factor design; allowable stress by default. One of
   *  BEAMCRAFT_NDS_DESIGN_*. Initially BEAMCRAFT_NDS_DESIGN_ASD. */
  uint32_t design;
  /** Load duration for allowable stress design; permanent by default, the least factor, as for goods that
   *  stay on a shelf. One of BEAMCRAFT_LOAD_DURATION_*. Initially BEAMCRAFT_LOAD_DURATION_PERMANENT. */
  uint32_t load_duration;
  /** Time effect for load and resistance factor design; dead load alone by default, the least factor. One
   *  of BEAMCRAFT_TIME_EFFECT_*. Initially BEAMCRAFT_TIME_EFFECT_DEAD_ONLY. */
  uint32_t time_effect;
  /** Moisture of the wood when the joint is made; dry by default, as indoor joinery is. One of
   *  BEAMCRAFT_MEMBER_MOISTURE_*. Initially BEAMCRAFT_MEMBER_MOISTURE_DRY. */
  uint32_t fabrication_moisture;
  /** Moisture of the wood in service; dry by default, as in a heated room. One of
   *  BEAMCRAFT_MEMBER_MOISTURE_*. Initially BEAMCRAFT_MEMBER_MOISTURE_DRY. */
  uint32_t service_moisture;
  /** Temperature of the joint; by default up to 100 °F, as in a room. Beside a hearth it may be more. One
   *  of BEAMCRAFT_TEMPERATURE_BAND_*. Initially BEAMCRAFT_TEMPERATURE_BAND_UP_TO_100_F. */
  uint32_t temperature;
  /** How the fasteners of the joint stand; several rows by default, the lower factor when wet wood dries.
   *  One of BEAMCRAFT_FASTENER_ARRANGEMENT_*. Initially BEAMCRAFT_FASTENER_ARRANGEMENT_SEVERAL_ROWS. */
  uint32_t arrangement;
  /** Group action factor C_g from `group_action_factor`; 1 by default, as it is below 1/4 in. Range 0.01
   *  to 1. Initially 1.0. */
  double c_g;
  /** Geometry factor C_delta from `geometry_factor`; 1 by default, as it is below 1/4 in or with full
   *  distances. Range 0.01 to 1. Initially 1.0. */
  double c_delta;
  /** Lateral load on this fastener, N; factored for load and resistance factor design. Range 0 to
   *  10000000. */
  double lateral_n;
  /** Withdrawal load on this fastener, N; factored for load and resistance factor design. Range 0 to
   *  10000000. */
  double withdrawal_n;
} beamcraft_dowel_joint_nds_input;

/** One joint of a nail, wood screw or lag screw with its whole working. */
typedef struct beamcraft_dowel_joint_nds_output {
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Diameter in the yield equations: the thread root of screws, the shank of nails (NDS 12.3.7), mm. */
  double yield_diameter_mm;
  /** Length of thread, rings or holding shank, mm. */
  double thread_length_mm;
  /** Length of the tapered tip, mm. */
  double tip_length_mm;
  /** Depth of the point behind the near face of the main member, mm; of a toe-nail across that face. */
  double penetration_mm;
  /** Penetration that counts: without the tip for lag screws, mm. */
  double counted_penetration_mm;
  /** Least penetration: 4 D lag screws, 6 D others (NDS 12.1.4.6, 12.1.5.6, 12.1.6.4), mm. */
  double required_penetration_mm;
  /** Whether the main member holds at least that much. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t penetration;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** How far the point comes out of the far face of the main member, mm; negative while wood remains. */
  double breakthrough_mm;
  /** Whether the point stays inside the main member. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t stays_inside;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Bearing length in the side member, mm. */
  double side_bearing_length_mm;
  /** Bearing length in the main member, half the tapered tip taken off (NDS 12.3.5.3), mm. */
  double main_bearing_length_mm;
  /** Length that holds against withdrawal in the main member, mm; 0 when the thread does not reach it. */
  double holding_length_mm;
  /** Bearing strength of the side member at the angle of the load, MPa. */
  double side_bearing_mpa;
  /** Bearing strength of the main member at the angle of the load, MPa. */
  double main_bearing_mpa;
  /** Bending yield strength of the fastener, MPa. */
  double bending_yield_mpa;
  /** Row of the table of reduction terms (NDS Table 12.3.1B). One of BEAMCRAFT_REDUCTION_RULE_*. */
  uint32_t reduction_rule;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Factor K_D for small diameters; 1 where the table does not use it. */
  double k_d;
  /** Factor K_theta for the angle to the grain; 1 where the table does not use it. */
  double k_theta;
  /** Reduction term R_d of the governing mode. */
  double reduction;
  /** Reference design value of mode I_m, N. */
  double im_n;
  /** Reference design value of mode I_s, N. */
  double is_n;
  /** Reference design value of mode II, N. */
  double ii_n;
  /** Reference design value of mode III_m, N. */
  double iiim_n;
  /** Reference design value of mode III_s, N. */
  double iiis_n;
  /** Reference design value of mode IV, N. */
  double iv_n;
  /** Mode with the least reference design value. One of BEAMCRAFT_YIELD_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_4;
  /** Reference lateral design value Z (TR12 with a gap, NDS 12.3.1 without), N. */
  double reference_lateral_n;
  /** Reference withdrawal value of the holding length (NDS 12.2), N; 0 where the standard permits or
   *  publishes none. */
  double reference_withdrawal_n;
  /** Reference head pull-through value W_H (NDS Eq. 12.2-6), N; absent without a head or a wooden side
   *  member. Only with BEAMCRAFT_DOWEL_JOINT_NDS_OUTPUT_GIVEN_REFERENCE_PULL_THROUGH_N in `given`. */
  double reference_pull_through_n;
  /** Load duration factor C_D (NDS 11.3.2). */
  double c_d;
  /** Wet service factor C_M of the lateral value (NDS Table 11.3.3). */
  double c_m_lateral;
  /** Wet service factor C_M of the withdrawal value (NDS Table 11.3.3). */
  double c_m_withdrawal;
  /** Wet service factor C_M of the pull-through value (NDS Table 11.3.3). */
  double c_m_pull_through;
  /** Temperature factor C_t (NDS Table 11.3.4). */
  double c_t;
  /** Group action factor C_g (NDS 11.3.6), as given. */
  double c_g;
  /** Geometry factor C_delta (NDS 12.5.1), as given. */
  double c_delta;
  /** End grain factor C_eg of the lateral value (NDS 12.5.2.2). */
  double c_eg_lateral;
  /** Toe-nail factor C_tn of the lateral value (NDS 12.5.4.2). */
  double c_tn_lateral;
  /** Toe-nail factor C_tn of the withdrawal value (NDS 12.5.4.1). */
  double c_tn_withdrawal;
  /** Format conversion factor K_F of load and resistance factor design (NDS Table N1). */
  double k_f;
  /** Resistance factor phi_z (NDS Table N2). */
  double phi;
  /** Time effect factor lambda (NDS Table N3). */
  double time_effect_factor;
  /** Lateral capacity of allowable stress design, N. */
  double asd_lateral_n;
  /** Lateral capacity of load and resistance factor design, N. */
  double lrfd_lateral_n;
  /** Withdrawal capacity of allowable stress design, N. */
  double asd_withdrawal_n;
  /** Withdrawal capacity of load and resistance factor design, N. */
  double lrfd_withdrawal_n;
  /** Pull-through capacity of allowable stress design, N; absent as its reference value. Only with
   *  BEAMCRAFT_DOWEL_JOINT_NDS_OUTPUT_GIVEN_ASD_PULL_THROUGH_N in `given`. */
  double asd_pull_through_n;
  /** Pull-through capacity of load and resistance factor design, N; absent as its reference value. Only
   *  with BEAMCRAFT_DOWEL_JOINT_NDS_OUTPUT_GIVEN_LRFD_PULL_THROUGH_N in `given`. */
  double lrfd_pull_through_n;
  /** Capacity along the axis that stands beside the lateral load: the least of withdrawal, head and steel
   *  of the chosen design, as far as they are known, N. */
  double axial_capacity_n;
  /** Lateral load over the lateral capacity of the chosen design. */
  double lateral_utilisation;
  /** Withdrawal load over the withdrawal capacity of the chosen design. */
  double withdrawal_utilisation;
  /** Withdrawal load over the pull-through capacity; 0 where that is absent. */
  double pull_through_utilisation;
  /** Withdrawal load over the declared tension of the steel; 0 where none is declared. */
  double steel_utilisation;
  /** Both loads at once over the capacity at their angle (NDS Eq. 12.4-1 screws, 12.4-2 nails), with the
   *  axial capacity in place of the withdrawal alone. */
  double combined_utilisation;
  /** Largest of the five utilisations; 1 is the limit. */
  double utilisation;
  /** Whether the head was checked against pulling through: not determined without a head diameter, not
   *  covered with a side member other than wood. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t pull_through;
  /** Whether the steel was checked in tension (NDS 12.2.1.4, 12.2.2.5): not determined without a declared
   *  value. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t steel_tension;
  /** Whether no utilisation exceeds 1, the penetration suffices and the point stays inside; not
   *  determined when a withdrawal load meets a head or a side member without a pull-through value. One of
   *  BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** Kept for later: 0. */
  uint32_t reserved_5;
} beamcraft_dowel_joint_nds_output;

/** Sets up an input of beamcraft_dowel_joint_nds: its size and its initial values. Does nothing for NULL. */
void beamcraft_dowel_joint_nds_input_init(beamcraft_dowel_joint_nds_input *out_input);

/** Capacity and use of one nail, wood screw or lag screw between members of wood, panel, steel or
 *  concrete. */
beamcraft_status beamcraft_dowel_joint_nds(const beamcraft_dowel_joint_nds_input *input,
                                           beamcraft_dowel_joint_nds_output *output,
                                           beamcraft_error **out_error);

/** A fastener whose lateral value was read from a table. */
typedef struct beamcraft_short_penetration_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener. One of BEAMCRAFT_DOWEL_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Nominal diameter, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Penetration into the main member, mm: tip counted for wood screws and nails, not for lag screws.
   *  Range 0.1 to 1000. */
  double penetration_mm;
  /** Lateral value of the table, N. Range 0 to 10000000. */
  double tabulated_n;
} beamcraft_short_penetration_input;

/** A tabulated lateral value made good for a short penetration. */
typedef struct beamcraft_short_penetration_output {
  /** Penetration that the table rests on: 8 D lag screws, 10 D others, mm. */
  double full_penetration_mm;
  /** Least penetration: 4 D lag screws, 6 D others, mm. */
  double required_penetration_mm;
  /** Share of the tabulated value that is left, at most 1. */
  double factor;
  /** Lateral value for this penetration, before any adjustment factor, N. */
  double reference_n;
} beamcraft_short_penetration_output;

/** Sets up an input of beamcraft_short_penetration: its size and its initial values. Does nothing for NULL. */
void beamcraft_short_penetration_input_init(beamcraft_short_penetration_input *out_input);

/** Factor of a tabulated lateral value for a penetration shorter than the table's. */
beamcraft_status beamcraft_short_penetration(const beamcraft_short_penetration_input *input,
                                             beamcraft_short_penetration_output *output,
                                             beamcraft_error **out_error);

/** Bit of panel_thickness_mm in `given` of beamcraft_ec5_embedment_input. */
#define BEAMCRAFT_EC5_EMBEDMENT_INPUT_GIVEN_PANEL_THICKNESS_MM 1

/** Wood or panel that a dowel bears on. */
typedef struct beamcraft_ec5_embedment_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Kind of fastener. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Whether the hole is predrilled; only nails and thin screws ask. One of BEAMCRAFT_EC5_HOLE_*. */
  uint32_t hole;
  /** Material of the member. One of BEAMCRAFT_EC5_MATERIAL_*. */
  uint32_t material;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Characteristic density, kg/m3. Range 100 to 1500. */
  double density_kg_m3;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Angle between force and grain, degrees; matters only to the rules for bolts in timber. Range 0 to
   *  90. */
  double angle_to_grain_deg;
  /** Thickness of the panel, mm; needed in hardboard, particleboard and OSB. Range 0.1 to 1000. Optional. */
  double panel_thickness_mm;
} beamcraft_ec5_embedment_input;

/** Characteristic embedment strength. */
typedef struct beamcraft_ec5_embedment_output {
  /** Equation that applies. One of BEAMCRAFT_EC5_EMBEDMENT_RULE_*. */
  uint32_t rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Strength along the grain; in a panel and under a thin nail the same in every direction, MPa. */
  double parallel_mpa;
  /** Factor k_90 by which the strength across the grain is less (8.33); 1 where the direction does not
   *  matter. */
  double k_90;
  /** Strength at the angle of the force, f_h,k (8.31), MPa. */
  double at_angle_mpa;
} beamcraft_ec5_embedment_output;

/** Sets up an input of beamcraft_ec5_embedment: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_embedment_input_init(beamcraft_ec5_embedment_input *out_input);

/** Eurocode 5: embedment strength of timber or a panel under a nail, screw, bolt or dowel. */
beamcraft_status beamcraft_ec5_embedment(const beamcraft_ec5_embedment_input *input,
                                         beamcraft_ec5_embedment_output *output,
                                         beamcraft_error **out_error);

/** A fastener whose yield moment is computed. */
typedef struct beamcraft_ec5_yield_moment_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter: of a nail, bolt or dowel; side of a square nail; effective diameter of a screw, mm. Range
   *  1 to 25.4. */
  double diameter_mm;
  /** Tensile strength of the steel or wire, f_u,k, MPa; 600 and more for nails. Range 0.01 to 2000. */
  double tensile_strength_mpa;
} beamcraft_ec5_yield_moment_input;

/** Characteristic yield moment of a fastener. */
typedef struct beamcraft_ec5_yield_moment_output {
  /** Factor of the equation: 0.3 for round sections, 0.45 for square and grooved nails. */
  double shape_factor;
  /** Yield moment M_y,Rk (8.14, 8.30), N·mm. */
  double yield_moment_nmm;
} beamcraft_ec5_yield_moment_output;

/** Sets up an input of beamcraft_ec5_yield_moment: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_yield_moment_input_init(beamcraft_ec5_yield_moment_input *out_input);

/** Eurocode 5: yield moment of a nail, screw, bolt or dowel. */
beamcraft_status beamcraft_ec5_yield_moment(const beamcraft_ec5_yield_moment_input *input,
                                            beamcraft_ec5_yield_moment_output *output,
                                            beamcraft_error **out_error);

/** Bit of shank_diameter_mm in `given` of beamcraft_ec5_screw_diameter_input. */
#define BEAMCRAFT_EC5_SCREW_DIAMETER_INPUT_GIVEN_SHANK_DIAMETER_MM 1

/** A screw loaded across its axis. */
typedef struct beamcraft_ec5_screw_diameter_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Outer diameter of the thread, mm. Range 1 to 25.4. */
  double thread_diameter_mm;
  /** Diameter at the thread root, mm. Range 1 to 25.4. */
  double root_diameter_mm;
  /** Diameter of the smooth shank, mm; left out for a screw threaded to its head. Range 1 to 25.4.
   *  Optional. */
  double shank_diameter_mm;
  /** How far the smooth shank reaches into the member at the point, mm. Range 0 to 100000. */
  double shank_in_point_member_mm;
} beamcraft_ec5_screw_diameter_input;

/** Diameter of a screw in the equations for lateral load. */
typedef struct beamcraft_ec5_screw_diameter_output {
  /** What decides. One of BEAMCRAFT_EC5_SCREW_DIAMETER_RULE_*. */
  uint32_t rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Effective diameter d_ef, mm; up to 6 mm the rules for nails apply, above it those for bolts. */
  double effective_diameter_mm;
} beamcraft_ec5_screw_diameter_output;

/** Sets up an input of beamcraft_ec5_screw_diameter: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_screw_diameter_input_init(beamcraft_ec5_screw_diameter_input *out_input);

/** Eurocode 5: effective diameter of a screw under lateral load. */
beamcraft_status beamcraft_ec5_screw_diameter(const beamcraft_ec5_screw_diameter_input *input,
                                              beamcraft_ec5_screw_diameter_output *output,
                                              beamcraft_error **out_error);

/** The Johansen part of a mode and what pulls against it. */
typedef struct beamcraft_ec5_rope_effect_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Lateral capacity by the Johansen part alone, N. Range 0 to 10000000. */
  double johansen_n;
  /** Characteristic capacity along the axis, F_ax,Rk, the lower of both ends, N; 0 when it is not known.
   *  Range 0 to 10000000. */
  double axial_capacity_n;
} beamcraft_ec5_rope_effect_input;

/** Rope effect of a fastener. */
typedef struct beamcraft_ec5_rope_effect_output {
  /** A quarter of the capacity along the axis, N. */
  double quarter_n;
  /** Most that may be added, as a share of the Johansen part. */
  double cap_share;
  /** Most that may be added, N. */
  double cap_n;
  /** What is added: the lesser of both, N. */
  double rope_n;
  /** Johansen part and rope effect together, N. */
  double total_n;
} beamcraft_ec5_rope_effect_output;

/** Sets up an input of beamcraft_ec5_rope_effect: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_rope_effect_input_init(beamcraft_ec5_rope_effect_input *out_input);

/** Eurocode 5: what the pull along a bent fastener adds to its lateral capacity. */
beamcraft_status beamcraft_ec5_rope_effect(const beamcraft_ec5_rope_effect_input *input,
                                           beamcraft_ec5_rope_effect_output *output,
                                           beamcraft_error **out_error);

/** A fastener through a head-side into a point-side member. */
typedef struct beamcraft_ec5_single_shear_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener; limits the rope effect. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Characteristic yield moment M_y,Rk, N·mm. Range 1 to 100000000. */
  double yield_moment_nmm;
  /** Embedment strength of the head-side member f_h,1,k at the angle of the force, MPa. Range 0.01 to
   *  2000. */
  double head_side_mpa;
  /** Embedment strength of the point-side member f_h,2,k at the angle of the force, MPa. Range 0.01 to
   *  2000. */
  double point_side_mpa;
  /** Thickness of the head-side member t_1, mm. Range 0.1 to 1000. */
  double head_side_mm;
  /** Penetration into the point-side member t_2, mm. Range 0.1 to 1000. */
  double point_side_mm;
  /** Characteristic capacity along the axis F_ax,Rk, the lower of both members, N; by default 0, no rope
   *  effect, as the standard asks where it is not known. Range 0 to 10000000. Initially 0.0. */
  double axial_capacity_n;
} beamcraft_ec5_single_shear_input;

/** Characteristic lateral capacity of one fastener in single shear, every mode shown. */
typedef struct beamcraft_ec5_single_shear_output {
  /** Ratio of the embedment strengths, beta = f_h,2,k / f_h,1,k (8.8). */
  double beta;
  /** Johansen part of mode c, N. */
  double c_johansen_n;
  /** Johansen part of mode d, N. */
  double d_johansen_n;
  /** Johansen part of mode e, N. */
  double e_johansen_n;
  /** Johansen part of mode f, N. */
  double f_johansen_n;
  /** Most that the rope effect may add, as a share of the Johansen part (8.2.2(2)). */
  double rope_cap_share;
  /** Mode a (8.6), N. */
  double a_n;
  /** Mode b (8.6), N. */
  double b_n;
  /** Mode c with rope effect (8.6), N. */
  double c_n;
  /** Mode d with rope effect (8.6), N. */
  double d_n;
  /** Mode e with rope effect (8.6), N. */
  double e_n;
  /** Mode f with rope effect (8.6), N. */
  double f_n;
  /** Mode with the least capacity. One of BEAMCRAFT_EC5_SINGLE_SHEAR_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Characteristic lateral capacity F_v,Rk, the least of the modes, N. */
  double capacity_n;
} beamcraft_ec5_single_shear_output;

/** Sets up an input of beamcraft_ec5_single_shear: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_single_shear_input_init(beamcraft_ec5_single_shear_input *out_input);

/** Eurocode 5: lateral capacity of a fastener in single shear between timber members, by every mode. */
beamcraft_status beamcraft_ec5_single_shear(const beamcraft_ec5_single_shear_input *input,
                                            beamcraft_ec5_single_shear_output *output,
                                            beamcraft_error **out_error);

/** A fastener through three members, the outer two alike. */
typedef struct beamcraft_ec5_double_shear_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener; limits the rope effect. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Characteristic yield moment M_y,Rk, N·mm. Range 1 to 100000000. */
  double yield_moment_nmm;
  /** Embedment strength of the outer members f_h,1,k at the angle of the force, MPa. Range 0.01 to 2000. */
  double outer_mpa;
  /** Embedment strength of the middle member f_h,2,k at the angle of the force, MPa. Range 0.01 to 2000. */
  double middle_mpa;
  /** Thickness of an outer member, the smaller of both and of the penetration at the point, t_1, mm.
   *  Range 0.1 to 1000. */
  double outer_mm;
  /** Thickness of the middle member t_2, mm. Range 0.1 to 1000. */
  double middle_mm;
  /** Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect. Range 0 to
   *  10000000. Initially 0.0. */
  double axial_capacity_n;
} beamcraft_ec5_double_shear_input;

/** Characteristic lateral capacity per shear plane of one fastener in double shear, every mode shown. */
typedef struct beamcraft_ec5_double_shear_output {
  /** Ratio of the embedment strengths, beta = f_h,2,k / f_h,1,k (8.8). */
  double beta;
  /** Johansen part of mode j per shear plane, N. */
  double j_johansen_n;
  /** Johansen part of mode k per shear plane, N. */
  double k_johansen_n;
  /** Most that the rope effect may add, as a share of the Johansen part (8.2.2(2)). */
  double rope_cap_share;
  /** Mode g per shear plane (8.7), N. */
  double g_n;
  /** Mode h per shear plane (8.7), N. */
  double h_n;
  /** Mode j per shear plane with rope effect (8.7), N. */
  double j_n;
  /** Mode k per shear plane with rope effect (8.7), N. */
  double k_n;
  /** Mode with the least capacity. One of BEAMCRAFT_EC5_DOUBLE_SHEAR_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Characteristic lateral capacity F_v,Rk per shear plane, the least of the modes, N. */
  double per_plane_n;
  /** Both shear planes together, N. */
  double capacity_n;
} beamcraft_ec5_double_shear_output;

/** Sets up an input of beamcraft_ec5_double_shear: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_double_shear_input_init(beamcraft_ec5_double_shear_input *out_input);

/** Eurocode 5: lateral capacity of a fastener in double shear between timber members, by every mode. */
beamcraft_status beamcraft_ec5_double_shear(const beamcraft_ec5_double_shear_input *input,
                                            beamcraft_ec5_double_shear_output *output,
                                            beamcraft_error **out_error);

/** A fastener through a steel plate into timber. */
typedef struct beamcraft_ec5_steel_single_shear_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener; limits the rope effect. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Characteristic yield moment M_y,Rk, N·mm. Range 1 to 100000000. */
  double yield_moment_nmm;
  /** Embedment strength of the timber f_h,k at the angle of the force, MPa. Range 0.01 to 2000. */
  double embedment_mpa;
  /** Thickness of the timber or penetration into it t_1, mm. Range 0.1 to 1000. */
  double timber_mm;
  /** Thickness of the plate, mm. Range 0.1 to 100. */
  double plate_mm;
  /** Hole diameter less fastener diameter, mm; from a tenth of the diameter on the plate counts as thin.
   *  Range 0 to 500. */
  double hole_clearance_mm;
  /** Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect. Range 0 to
   *  10000000. Initially 0.0. */
  double axial_capacity_n;
} beamcraft_ec5_steel_single_shear_input;

/** Characteristic lateral capacity of one fastener between a steel plate and timber, every mode shown. */
typedef struct beamcraft_ec5_steel_single_shear_output {
  /** How the plate holds the fastener (8.2.3(1)). One of BEAMCRAFT_EC5_PLATE_CLASS_*. */
  uint32_t plate_class;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Share of the thick plate's value in the result, 0 to 1. */
  double thick_share;
  /** Mode a, thin plate (8.9), N. */
  double a_n;
  /** Mode b, thin plate, with rope effect (8.9), N. */
  double b_n;
  /** Mode c, thick plate (8.10), N. */
  double c_n;
  /** Mode d, thick plate, with rope effect (8.10), N. */
  double d_n;
  /** Mode e, thick plate, with rope effect (8.10), N. */
  double e_n;
  /** Governing mode if the plate were thin. One of BEAMCRAFT_EC5_STEEL_MODE_*. */
  uint32_t thin_mode;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Capacity if the plate were thin, N. */
  double thin_n;
  /** Governing mode if the plate were thick. One of BEAMCRAFT_EC5_STEEL_MODE_*. */
  uint32_t thick_mode;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Capacity if the plate were thick, N. */
  double thick_n;
  /** Characteristic lateral capacity F_v,Rk of this plate, N. */
  double capacity_n;
} beamcraft_ec5_steel_single_shear_output;

/** Sets up an input of beamcraft_ec5_steel_single_shear: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_steel_single_shear_input_init(beamcraft_ec5_steel_single_shear_input *out_input);

/** Eurocode 5: lateral capacity of a fastener between a steel plate and timber, thin or thick. */
beamcraft_status beamcraft_ec5_steel_single_shear(const beamcraft_ec5_steel_single_shear_input *input,
                                                  beamcraft_ec5_steel_single_shear_output *output,
                                                  beamcraft_error **out_error);

/** A fastener through two timber members with a steel plate between them. */
typedef struct beamcraft_ec5_steel_central_plate_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener; limits the rope effect. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Characteristic yield moment M_y,Rk, N·mm. Range 1 to 100000000. */
  double yield_moment_nmm;
  /** Embedment strength of the timber f_h,1,k at the angle of the force, MPa. Range 0.01 to 2000. */
  double embedment_mpa;
  /** Thickness of the thinner timber member t_1, mm. Range 0.1 to 1000. */
  double timber_mm;
  /** Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect. Range 0 to
   *  10000000. Initially 0.0. */
  double axial_capacity_n;
} beamcraft_ec5_steel_central_plate_input;

/** Characteristic lateral capacity per shear plane of one fastener through a steel plate in the middle. */
typedef struct beamcraft_ec5_steel_central_plate_output {
  /** Mode f per shear plane (8.11), N. */
  double f_n;
  /** Mode g per shear plane with rope effect (8.11), N. */
  double g_n;
  /** Mode h per shear plane with rope effect (8.11), N. */
  double h_n;
  /** Mode with the least capacity. One of BEAMCRAFT_EC5_STEEL_CENTRAL_MODE_*. */
  uint32_t governing_mode;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Characteristic lateral capacity F_v,Rk per shear plane, N. */
  double per_plane_n;
  /** Both shear planes together, N. */
  double capacity_n;
} beamcraft_ec5_steel_central_plate_output;

/** Sets up an input of beamcraft_ec5_steel_central_plate: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_steel_central_plate_input_init(beamcraft_ec5_steel_central_plate_input *out_input);

/** Eurocode 5: lateral capacity of a fastener through two timber members with a steel plate between
 *  them. */
beamcraft_status beamcraft_ec5_steel_central_plate(const beamcraft_ec5_steel_central_plate_input *input,
                                                   beamcraft_ec5_steel_central_plate_output *output,
                                                   beamcraft_error **out_error);

/** A fastener through a timber member between two steel plates. */
typedef struct beamcraft_ec5_steel_outer_plates_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener; limits the rope effect. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Characteristic yield moment M_y,Rk, N·mm. Range 1 to 100000000. */
  double yield_moment_nmm;
  /** Embedment strength of the timber f_h,2,k at the angle of the force, MPa. Range 0.01 to 2000. */
  double embedment_mpa;
  /** Thickness of the timber t_2, mm. Range 0.1 to 1000. */
  double timber_mm;
  /** Thickness of a plate, mm. Range 0.1 to 100. */
  double plate_mm;
  /** Hole diameter less fastener diameter, mm; from a tenth of the diameter on the plates count as thin.
   *  Range 0 to 500. */
  double hole_clearance_mm;
  /** Characteristic capacity along the axis F_ax,Rk, N; by default 0, no rope effect. Range 0 to
   *  10000000. Initially 0.0. */
  double axial_capacity_n;
} beamcraft_ec5_steel_outer_plates_input;

/** Characteristic lateral capacity per shear plane of one fastener through timber between two steel
 *  plates. */
typedef struct beamcraft_ec5_steel_outer_plates_output {
  /** How the plates hold the fastener (8.2.3(1)). One of BEAMCRAFT_EC5_PLATE_CLASS_*. */
  uint32_t plate_class;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Share of the thick plates' value in the result, 0 to 1. */
  double thick_share;
  /** Modes j and l, bearing of the timber, per shear plane (8.12, 8.13), N. */
  double j_l_n;
  /** Mode k, thin plates, per shear plane with rope effect (8.12), N. */
  double k_n;
  /** Mode m, thick plates, per shear plane with rope effect (8.13), N. */
  double m_n;
  /** Governing mode if the plates were thin. One of BEAMCRAFT_EC5_STEEL_OUTER_MODE_*. */
  uint32_t thin_mode;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Capacity per shear plane if the plates were thin, N. */
  double thin_n;
  /** Governing mode if the plates were thick. One of BEAMCRAFT_EC5_STEEL_OUTER_MODE_*. */
  uint32_t thick_mode;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Capacity per shear plane if the plates were thick, N. */
  double thick_n;
  /** Characteristic lateral capacity F_v,Rk per shear plane of these plates, N. */
  double per_plane_n;
  /** Both shear planes together, N. */
  double capacity_n;
} beamcraft_ec5_steel_outer_plates_output;

/** Sets up an input of beamcraft_ec5_steel_outer_plates: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_steel_outer_plates_input_init(beamcraft_ec5_steel_outer_plates_input *out_input);

/** Eurocode 5: lateral capacity of a fastener through timber between two steel plates. */
beamcraft_status beamcraft_ec5_steel_outer_plates(const beamcraft_ec5_steel_outer_plates_input *input,
                                                  beamcraft_ec5_steel_outer_plates_output *output,
                                                  beamcraft_error **out_error);

/** Bit of declared_mpa in `given` of beamcraft_ec5_screw_withdrawal_input. */
#define BEAMCRAFT_EC5_SCREW_WITHDRAWAL_INPUT_GIVEN_DECLARED_MPA 1
/** Bit of declared_density_kg_m3 in `given` of beamcraft_ec5_screw_withdrawal_input. */
#define BEAMCRAFT_EC5_SCREW_WITHDRAWAL_INPUT_GIVEN_DECLARED_DENSITY_KG_M3 2

/** Screws pulled out of wood. */
typedef struct beamcraft_ec5_screw_withdrawal_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Outer diameter of the thread d, mm. Range 1 to 25.4. */
  double thread_diameter_mm;
  /** Diameter at the thread root d_1, mm. Range 1 to 25.4. */
  double root_diameter_mm;
  /** Thread in the point-side member l_ef, mm. Range 0.1 to 1000. */
  double thread_length_mm;
  /** Characteristic density of the wood, kg/m3. Range 100 to 1500. */
  double density_kg_m3;
  /** Angle between the screw's axis and the grain, degrees; 90 in side grain. Range 0 to 90. */
  double axis_to_grain_deg;
  /** Number of screws that act together; by default 1. Range 1 to 10000. Initially 1. */
  uint32_t count;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Declared withdrawal strength f_ax,k, MPa; left out the equation of the standard is used. Range 0.01
   *  to 2000. Optional. */
  double declared_mpa;
  /** Density that the declared strength belongs to, kg/m3; left out the strength holds for the wood as it
   *  is. Range 100 to 1500. Optional. */
  double declared_density_kg_m3;
} beamcraft_ec5_screw_withdrawal_input;

/** Characteristic withdrawal capacity of screws. */
typedef struct beamcraft_ec5_screw_withdrawal_output {
  /** Where the strength comes from. One of BEAMCRAFT_EC5_WITHDRAWAL_RULE_*. */
  uint32_t rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Withdrawal strength f_ax,k across the grain (8.39 or declared), MPa. */
  double withdrawal_mpa;
  /** Factor k_d for thin screws (8.40); 1 for a declared strength. */
  double k_d;
  /** Factor for the angle of the axis to the grain, 1 / (1.2 cos² + sin²) (8.38). */
  double angle_factor;
  /** Factor for the density, (rho_k / rho_a)^0.8 (8.40a); 1 where it does not apply. */
  double density_factor;
  /** Effective number n^0.9 (8.41). */
  double effective_number;
  /** Capacity of one screw, N. */
  double per_screw_n;
  /** Capacity F_ax,k,Rk of all together, N. */
  double capacity_n;
  /** Least thread in the point-side member, 6 d (8.7.2(3)), mm. */
  double required_thread_mm;
  /** Whether the thread in the member is at least that. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t penetration;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_ec5_screw_withdrawal_output;

/** Sets up an input of beamcraft_ec5_screw_withdrawal: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_screw_withdrawal_input_init(beamcraft_ec5_screw_withdrawal_input *out_input);

/** Eurocode 5: withdrawal capacity of screws along their axis. */
beamcraft_status beamcraft_ec5_screw_withdrawal(const beamcraft_ec5_screw_withdrawal_input *input,
                                                beamcraft_ec5_screw_withdrawal_output *output,
                                                beamcraft_error **out_error);

/** Bit of declared_mpa in `given` of beamcraft_ec5_nail_withdrawal_input. */
#define BEAMCRAFT_EC5_NAIL_WITHDRAWAL_INPUT_GIVEN_DECLARED_MPA 1
/** Bit of declared_head_mpa in `given` of beamcraft_ec5_nail_withdrawal_input. */
#define BEAMCRAFT_EC5_NAIL_WITHDRAWAL_INPUT_GIVEN_DECLARED_HEAD_MPA 2

/** A nail pulled along its axis. */
typedef struct beamcraft_ec5_nail_withdrawal_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Kind of nail. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Diameter d, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Diameter of the head d_h, mm. Range 1 to 100. */
  double head_diameter_mm;
  /** Penetration at the point, of a ringed nail the ringed part, t_pen, mm. Range 0.1 to 1000. */
  double penetration_mm;
  /** Thickness of the member under the head t, mm. Range 0.1 to 1000. */
  double head_side_mm;
  /** Characteristic density of the wood at the point, kg/m3. Range 100 to 1500. */
  double density_kg_m3;
  /** Characteristic density of the wood under the head, kg/m3. Range 100 to 1500. */
  double head_side_density_kg_m3;
  /** Moisture of the timber when the nail is driven; dry by default, as indoor joinery is. One of
   *  BEAMCRAFT_EC5_NAIL_TIMBER_*. Initially BEAMCRAFT_EC5_NAIL_TIMBER_DRY. */
  uint32_t timber;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Declared withdrawal strength f_ax,k, MPa; left out that of smooth nails is used. Range 0.01 to 2000.
   *  Optional. */
  double declared_mpa;
  /** Declared pull-through strength f_head,k, MPa; left out that of smooth nails is used. Range 0.01 to
   *  2000. Optional. */
  double declared_head_mpa;
} beamcraft_ec5_nail_withdrawal_input;

/** Characteristic capacity of a nail along its axis. */
typedef struct beamcraft_ec5_nail_withdrawal_output {
  /** Withdrawal strength f_ax,k (8.25 or declared), MPa. */
  double withdrawal_mpa;
  /** Pull-through strength f_head,k (8.26 or declared), MPa. */
  double head_mpa;
  /** Withdrawal capacity per mm of penetration, f_ax,k d, N per mm. */
  double withdrawal_n_per_mm;
  /** Factor for timber that dries under load (8.3.2(8)). */
  double drying_factor;
  /** Factor for a short penetration (8.3.2(7)); 0 below the least penetration. */
  double penetration_factor;
  /** Capacity at the point, all factors in, N. */
  double point_n;
  /** Capacity at the head, with the shank in the member under it where the nail is smooth, all factors
   *  in, N. */
  double head_n;
  /** End that gives in first. One of BEAMCRAFT_EC5_AXIAL_PART_*. */
  uint32_t governing_part;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Capacity F_ax,Rk along the axis, N. */
  double capacity_n;
  /** Least penetration: 8 d for smooth nails, 6 d for others (8.3.1.2), mm. */
  double required_penetration_mm;
  /** Whether the penetration is at least that. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t penetration;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_ec5_nail_withdrawal_output;

/** Sets up an input of beamcraft_ec5_nail_withdrawal: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_nail_withdrawal_input_init(beamcraft_ec5_nail_withdrawal_input *out_input);

/** Eurocode 5: capacity of a nail along its axis, at the point and at the head. */
beamcraft_status beamcraft_ec5_nail_withdrawal(const beamcraft_ec5_nail_withdrawal_input *input,
                                               beamcraft_ec5_nail_withdrawal_output *output,
                                               beamcraft_error **out_error);

/** Bit of declared_mpa in `given` of beamcraft_ec5_head_pull_through_input. */
#define BEAMCRAFT_EC5_HEAD_PULL_THROUGH_INPUT_GIVEN_DECLARED_MPA 1
/** Bit of declared_density_kg_m3 in `given` of beamcraft_ec5_head_pull_through_input. */
#define BEAMCRAFT_EC5_HEAD_PULL_THROUGH_INPUT_GIVEN_DECLARED_DENSITY_KG_M3 2

/** Heads drawn into the member under them. */
typedef struct beamcraft_ec5_head_pull_through_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Diameter of the head or of the washer under it d_h, mm. Range 1 to 100. */
  double head_diameter_mm;
  /** Characteristic density of the member under the head, kg/m3. Range 100 to 1500. */
  double density_kg_m3;
  /** Number of screws that act together; by default 1. Range 1 to 10000. Initially 1. */
  uint32_t count;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Declared pull-through strength f_head,k, MPa; left out that of smooth nails is used, a low value.
   *  Range 0.01 to 2000. Optional. */
  double declared_mpa;
  /** Density that the declared strength belongs to, kg/m3; left out the strength holds for the wood as it
   *  is. Range 100 to 1500. Optional. */
  double declared_density_kg_m3;
} beamcraft_ec5_head_pull_through_input;

/** Characteristic pull-through capacity of heads. */
typedef struct beamcraft_ec5_head_pull_through_output {
  /** Pull-through strength f_head,k (8.26 or declared), MPa. */
  double head_mpa;
  /** Factor for the density, (rho_k / rho_a)^0.8 (8.40b); 1 where it does not apply. */
  double density_factor;
  /** Effective number n^0.9 (8.41). */
  double effective_number;
  /** Capacity of one head, N. */
  double per_head_n;
  /** Capacity of all together, N. */
  double capacity_n;
} beamcraft_ec5_head_pull_through_output;

/** Sets up an input of beamcraft_ec5_head_pull_through: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_head_pull_through_input_init(beamcraft_ec5_head_pull_through_input *out_input);

/** Eurocode 5: capacity of screw heads against being drawn through the member under them. */
beamcraft_status beamcraft_ec5_head_pull_through(const beamcraft_ec5_head_pull_through_input *input,
                                                 beamcraft_ec5_head_pull_through_output *output,
                                                 beamcraft_error **out_error);

/** A bolt pulled along its axis. */
typedef struct beamcraft_ec5_washer_pull_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Tensile capacity of the bolt, N. Range 0 to 10000000. */
  double bolt_tension_n;
  /** Area of the washer that bears on the wood, hole taken off, mm2. Range 1 to 1000000. */
  double washer_area_mm2;
  /** Compressive strength of the wood across the grain f_c,90,k, MPa. Range 0.01 to 2000. */
  double compression_across_mpa;
} beamcraft_ec5_washer_pull_input;

/** Characteristic capacity of a bolt along its axis. */
typedef struct beamcraft_ec5_washer_pull_output {
  /** Capacity of the wood under the washer, N. */
  double washer_n;
  /** What gives in first. One of BEAMCRAFT_EC5_WASHER_PART_*. */
  uint32_t governing_part;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Capacity F_ax,Rk, N. */
  double capacity_n;
} beamcraft_ec5_washer_pull_output;

/** Sets up an input of beamcraft_ec5_washer_pull: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_washer_pull_input_init(beamcraft_ec5_washer_pull_input *out_input);

/** Eurocode 5: capacity of a bolt along its axis, its steel or the wood under the washer. */
beamcraft_status beamcraft_ec5_washer_pull(const beamcraft_ec5_washer_pull_input *input,
                                           beamcraft_ec5_washer_pull_output *output,
                                           beamcraft_error **out_error);

/** A fastener loaded across and along its axis. */
typedef struct beamcraft_ec5_combined_load_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener; decides the equation. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Design load along the axis F_ax,Ed, N. Range 0 to 10000000. */
  double axial_n;
  /** Design load across the axis F_v,Ed, N. Range 0 to 10000000. */
  double lateral_n;
  /** Design capacity along the axis F_ax,Rd, N. Range 0.001 to 10000000. */
  double axial_capacity_n;
  /** Design capacity across the axis F_v,Rd, N. Range 0.001 to 10000000. */
  double lateral_capacity_n;
} beamcraft_ec5_combined_load_input;

/** Use of a fastener under both loads. */
typedef struct beamcraft_ec5_combined_load_output {
  /** Equation that applies. One of BEAMCRAFT_EC5_COMBINED_RULE_*. */
  uint32_t rule;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Axial load over its capacity. */
  double axial_share;
  /** Lateral load over its capacity. */
  double lateral_share;
  /** Left side of the equation; 1 is the limit. */
  double interaction;
  /** Factor by which both loads are used: the interaction for the linear equation, its root for the
   *  quadratic one. */
  double utilisation;
} beamcraft_ec5_combined_load_output;

/** Sets up an input of beamcraft_ec5_combined_load: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_combined_load_input_init(beamcraft_ec5_combined_load_input *out_input);

/** Eurocode 5: use of a fastener under axial and lateral load at once. */
beamcraft_status beamcraft_ec5_combined_load(const beamcraft_ec5_combined_load_input *input,
                                             beamcraft_ec5_combined_load_output *output,
                                             beamcraft_error **out_error);

/** A row of fasteners along the grain. */
typedef struct beamcraft_ec5_effective_number_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Whether the holes are predrilled; only nails and thin screws ask. One of BEAMCRAFT_EC5_HOLE_*. */
  uint32_t hole;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Number of fasteners in the row. Range 1 to 10000. */
  uint32_t count;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Spacing along the grain a_1, mm. Range 1 to 10000. */
  double spacing_mm;
  /** Whether they stand on one line; by default they do. Counts for nails and thin screws only. One of
   *  BEAMCRAFT_ROW_STAGGER_*. Initially BEAMCRAFT_ROW_STAGGER_IN_LINE. */
  uint32_t stagger;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Angle between force and grain, degrees; by default 0, the lower number. Matters only to bolts and
   *  dowels: nails are checked with the part of the force along the grain. Range 0 to 90. Initially 0.0. */
  double angle_to_grain_deg;
} beamcraft_ec5_effective_number_input;

/** Effective number of a row. */
typedef struct beamcraft_ec5_effective_number_output {
  /** Exponent k_ef of nails (Table 8.1); 0.9 for bolts. */
  double exponent;
  /** Effective number for a force along the grain. */
  double along_grain;
  /** Effective number n_ef at the angle of the force. */
  double effective_number;
} beamcraft_ec5_effective_number_output;

/** Sets up an input of beamcraft_ec5_effective_number: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_effective_number_input_init(beamcraft_ec5_effective_number_input *out_input);

/** Eurocode 5: effective number of fasteners in a row along the grain. */
beamcraft_status beamcraft_ec5_effective_number(const beamcraft_ec5_effective_number_input *input,
                                                beamcraft_ec5_effective_number_output *output,
                                                beamcraft_error **out_error);

/** A fastener whose distances are looked up. */
typedef struct beamcraft_ec5_spacing_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Kind of fastener. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Whether the holes are predrilled; only nails and thin screws ask. One of BEAMCRAFT_EC5_HOLE_*. */
  uint32_t hole;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Characteristic density of the timber, kg/m3. Range 100 to 1500. */
  double density_kg_m3;
  /** Angle between force and grain, 0 to 90 degrees, whichever way the force points. Range 0 to 90. */
  double angle_to_grain_deg;
  /** What the timber is joined to; timber by default, the wider spacing. One of
   *  BEAMCRAFT_EC5_JOINT_PARTNER_*. Initially BEAMCRAFT_EC5_JOINT_PARTNER_TIMBER. */
  uint32_t partner;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_ec5_spacing_input;

/** Least distances of fasteners loaded laterally. */
typedef struct beamcraft_ec5_spacing_output {
  /** Table that applies. One of BEAMCRAFT_EC5_SPACING_TABLE_*. */
  uint32_t table;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Spacing along the grain a_1, mm. */
  double a1_mm;
  /** Spacing across the grain a_2, mm. */
  double a2_mm;
  /** Distance to a loaded end a_3,t, mm. */
  double a3_loaded_mm;
  /** Distance to an unloaded end a_3,c, mm. */
  double a3_unloaded_mm;
  /** Distance to a loaded edge a_4,t, mm. */
  double a4_loaded_mm;
  /** Distance to an unloaded edge a_4,c, mm. */
  double a4_unloaded_mm;
  /** Least thickness of timber for nails without predrilling (8.18), mm; 0 where the rule does not apply. */
  double least_timber_mm;
  /** The same in species that split easily (8.19), mm; 0 where the rule does not apply. */
  double least_splitting_timber_mm;
  /** Distance of nails to a loaded edge of a plywood panel (8.3.1.3), mm; 0 where the rule does not
   *  apply. */
  double plywood_loaded_edge_mm;
  /** Distance of nails to an unloaded edge of a plywood panel (8.3.1.3), mm; 0 where the rule does not
   *  apply. */
  double plywood_unloaded_edge_mm;
  /** Wood of a middle member that must be left, and more, beyond the points of nails driven from both
   *  sides so that they may overlap (8.3.1.1(7)), mm; 0 where the rule does not apply. */
  double overlap_rest_mm;
} beamcraft_ec5_spacing_output;

/** Sets up an input of beamcraft_ec5_spacing: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_spacing_input_init(beamcraft_ec5_spacing_input *out_input);

/** Eurocode 5: least spacings, end and edge distances of fasteners loaded laterally. */
beamcraft_status beamcraft_ec5_spacing(const beamcraft_ec5_spacing_input *input,
                                       beamcraft_ec5_spacing_output *output,
                                       beamcraft_error **out_error);

/** A screw loaded along its axis. */
typedef struct beamcraft_ec5_axial_screw_spacing_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Outer diameter of the thread, mm. Range 1 to 25.4. */
  double thread_diameter_mm;
  /** Face that it goes into; timber by default. One of BEAMCRAFT_EC5_AXIAL_SCREW_FACE_*. Initially
   *  BEAMCRAFT_EC5_AXIAL_SCREW_FACE_TIMBER. */
  uint32_t face;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_ec5_axial_screw_spacing_input;

/** Least distances of screws loaded along their axis. */
typedef struct beamcraft_ec5_axial_screw_spacing_output {
  /** Spacing in a plane parallel to the grain a_1, mm. */
  double a1_mm;
  /** Spacing perpendicular to that plane a_2, mm. */
  double a2_mm;
  /** Distance of the centre of the thread to the end a_1,CG, mm. */
  double end_mm;
  /** Distance of the centre of the thread to the edge a_2,CG, mm. */
  double edge_mm;
  /** Least thickness of the timber, mm. */
  double least_timber_mm;
  /** Least thread in the point-side member, mm. */
  double least_thread_mm;
} beamcraft_ec5_axial_screw_spacing_output;

/** Sets up an input of beamcraft_ec5_axial_screw_spacing: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_axial_screw_spacing_input_init(beamcraft_ec5_axial_screw_spacing_input *out_input);

/** Eurocode 5: least spacings, end and edge distances of screws loaded along their axis. */
beamcraft_status beamcraft_ec5_axial_screw_spacing(const beamcraft_ec5_axial_screw_spacing_input *input,
                                                   beamcraft_ec5_axial_screw_spacing_output *output,
                                                   beamcraft_error **out_error);

/** A beam that a connection pulls across the grain. */
typedef struct beamcraft_ec5_splitting_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of the member b, mm. Range 10 to 2000. */
  double width_mm;
  /** Depth of the member h, mm. Range 10 to 2000. */
  double depth_mm;
  /** Distance from the loaded edge to the farthest fastener h_e, mm. Range 0.1 to 1000. */
  double loaded_edge_mm;
} beamcraft_ec5_splitting_input;

/** Characteristic splitting capacity. */
typedef struct beamcraft_ec5_splitting_output {
  /** Splitting capacity F_90,Rk (8.4); to be compared with the shear force on either side of the
   *  connection, N. */
  double capacity_n;
} beamcraft_ec5_splitting_output;

/** Sets up an input of beamcraft_ec5_splitting: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_splitting_input_init(beamcraft_ec5_splitting_input *out_input);

/** Eurocode 5: splitting capacity of a member loaded across the grain by a connection. */
beamcraft_status beamcraft_ec5_splitting(const beamcraft_ec5_splitting_input *input,
                                         beamcraft_ec5_splitting_output *output,
                                         beamcraft_error **out_error);

/** Bit of second_mean_density_kg_m3 in `given` of beamcraft_ec5_slip_modulus_input. */
#define BEAMCRAFT_EC5_SLIP_MODULUS_INPUT_GIVEN_SECOND_MEAN_DENSITY_KG_M3 1

/** A fastener in one shear plane. */
typedef struct beamcraft_ec5_slip_modulus_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Kind of fastener. One of BEAMCRAFT_EC5_FASTENER_*. */
  uint32_t fastener;
  /** Whether the holes are predrilled; only nails ask. One of BEAMCRAFT_EC5_HOLE_*. */
  uint32_t hole;
  /** Diameter, for screws the effective one, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Mean density of the first member, kg/m3. Range 100 to 1500. */
  double mean_density_kg_m3;
  /** Mean density of the second member, kg/m3; left out it is that of the first. Range 100 to 1500.
   *  Optional. */
  double second_mean_density_kg_m3;
  /** What the first member is joined to; wood by default, the lower modulus. One of
   *  BEAMCRAFT_EC5_SLIP_PARTNER_*. Initially BEAMCRAFT_EC5_SLIP_PARTNER_WOOD. */
  uint32_t partner;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Lateral load on one fastener in one shear plane, in service, N; by default none, and no slip is
   *  given. Range 0 to 10000000. Initially 0.0. */
  double load_n;
} beamcraft_ec5_slip_modulus_input;

/** Slip modulus of one fastener in one shear plane. */
typedef struct beamcraft_ec5_slip_modulus_output {
  /** Mean density that entered, kg/m3. */
  double mean_density_kg_m3;
  /** Slip modulus in service K_ser, N/mm. */
  double service_n_per_mm;
  /** Slip modulus at the ultimate limit state K_u = 2/3 K_ser, N/mm. */
  double ultimate_n_per_mm;
  /** Slip that is there before the fastener bears: the clearance of a bolt's hole, mm. */
  double clearance_slip_mm;
  /** Slip under the load given, clearance included, mm; without creep. */
  double slip_mm;
} beamcraft_ec5_slip_modulus_output;

/** Sets up an input of beamcraft_ec5_slip_modulus: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_slip_modulus_input_init(beamcraft_ec5_slip_modulus_input *out_input);

/** Eurocode 5: slip modulus of a fastener in one shear plane, and its slip under load. */
beamcraft_status beamcraft_ec5_slip_modulus(const beamcraft_ec5_slip_modulus_input *input,
                                            beamcraft_ec5_slip_modulus_output *output,
                                            beamcraft_error **out_error);

/** A characteristic capacity and what it is used for. */
typedef struct beamcraft_ec5_design_value_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Characteristic capacity of one fastener R_k, N. Range 0 to 10000000. */
  double characteristic_n;
  /** Effective number of fasteners; by default 1. Range 0.1 to 10000. Initially 1.0. */
  double effective_number;
  /** Material of one member. One of BEAMCRAFT_EC5_MATERIAL_*. */
  uint32_t first_material;
  /** Material of the other member; the same for two like members. One of BEAMCRAFT_EC5_MATERIAL_*. */
  uint32_t second_material;
  /** Service class. One of BEAMCRAFT_EC5_SERVICE_CLASS_*. */
  uint32_t service_class;
  /** Load-duration class of the shortest load. One of BEAMCRAFT_EC5_LOAD_DURATION_*. */
  uint32_t load_duration;
  /** Partial factor gamma_M; by default 1.3, which the standard recommends for connections. The national
   *  annex may choose another. Range 1 to 2. Initially 1.3. */
  double gamma_m;
} beamcraft_ec5_design_value_input;

/** Design value of a capacity. */
typedef struct beamcraft_ec5_design_value_output {
  /** k_mod of the first material (Table 3.1). */
  double first_k_mod;
  /** k_mod of the second material (Table 3.1). */
  double second_k_mod;
  /** k_mod of the joint, the geometric mean of both (2.6). */
  double k_mod;
  /** Partial factor that was applied. */
  double gamma_m;
  /** Characteristic capacity of all fasteners, N. */
  double characteristic_n;
  /** Design capacity R_d (2.17), N. */
  double design_n;
} beamcraft_ec5_design_value_output;

/** Sets up an input of beamcraft_ec5_design_value: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_design_value_input_init(beamcraft_ec5_design_value_input *out_input);

/** Eurocode 5: design value of a connection by service class, load duration and partial factor. */
beamcraft_status beamcraft_ec5_design_value(const beamcraft_ec5_design_value_input *input,
                                            beamcraft_ec5_design_value_output *output,
                                            beamcraft_error **out_error);

/** A steel dowel in softwood. */
typedef struct beamcraft_ec5_german_dowel_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Diameter, mm. Range 1 to 25.4. */
  double diameter_mm;
  /** Tensile strength of the steel f_u,k, MPa; 360 for S235. Range 0.01 to 2000. */
  double tensile_strength_mpa;
  /** Characteristic density of the side members, also of timber beside steel, kg/m3. Range 100 to 1500. */
  double side_density_kg_m3;
  /** Angle between force and grain in the side members, degrees. Range 0 to 90. */
  double side_angle_to_grain_deg;
  /** Characteristic density of the middle or other member, kg/m3. Range 100 to 1500. */
  double main_density_kg_m3;
  /** Angle between force and grain in the middle or other member, degrees. Range 0 to 90. */
  double main_angle_to_grain_deg;
} beamcraft_ec5_german_dowel_input;

/** Capacities of a dowel by the simplified method, with the thicknesses they need. */
typedef struct beamcraft_ec5_german_dowel_output {
  /** Yield moment, N·mm. */
  double yield_moment_nmm;
  /** Embedment strength of the side members, MPa. */
  double side_mpa;
  /** Embedment strength of the middle or other member, MPa. */
  double main_mpa;
  /** Timber to timber: capacity F_v,Rk per shear plane, N. */
  double timber_n;
  /** Timber to timber: thickness needed of a side member, mm. */
  double side_needed_mm;
  /** Timber to timber, single shear: thickness needed of the other member, mm. */
  double other_needed_mm;
  /** Timber to timber, double shear: thickness needed of the middle member, mm. */
  double middle_needed_mm;
  /** The same for a side member, rounded up as tables print it, mm. */
  double side_needed_whole_mm;
  /** The same for the other member in single shear, rounded up, mm. */
  double other_needed_whole_mm;
  /** The same for the middle member, rounded up, mm. */
  double middle_needed_whole_mm;
  /** Side timber with thick steel plates or a steel plate in a slot: capacity per shear plane, N. */
  double steel_thick_n;
  /** Thickness of the timber needed for it, rounded up, mm. */
  double steel_thick_needed_whole_mm;
  /** Side timber with thin steel plates: capacity per shear plane, N. */
  double steel_thin_n;
  /** Thickness of the timber needed for it in single shear, rounded up, mm. */
  double steel_thin_needed_whole_mm;
  /** Thickness needed of timber between two thin steel plates, rounded up, mm. */
  double steel_thin_middle_needed_whole_mm;
} beamcraft_ec5_german_dowel_output;

/** Sets up an input of beamcraft_ec5_german_dowel: its size and its initial values. Does nothing for NULL. */
void beamcraft_ec5_german_dowel_input_init(beamcraft_ec5_german_dowel_input *out_input);

/** Eurocode 5, German annex: capacity of a steel dowel by the simplified method and the thicknesses it
 *  needs. */
beamcraft_status beamcraft_ec5_german_dowel(const beamcraft_ec5_german_dowel_input *input,
                                            beamcraft_ec5_german_dowel_output *output,
                                            beamcraft_error **out_error);

/** Bit of most_spacing_mm in `given` of beamcraft_screw_count_input. */
#define BEAMCRAFT_SCREW_COUNT_INPUT_GIVEN_MOST_SPACING_MM 1

/** A load for a row of screws. */
typedef struct beamcraft_screw_count_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Lateral load on all screws together, N. Range 0 to 10000000. */
  double lateral_n;
  /** Withdrawal load on all screws together, N. Range 0 to 10000000. */
  double withdrawal_n;
  /** Adjusted lateral capacity of one screw, N. Range 0.001 to 10000000. */
  double lateral_capacity_n;
  /** Adjusted withdrawal capacity of one screw, the lesser of thread and head, N. Range 0.001 to
   *  10000000. */
  double withdrawal_capacity_n;
  /** Largest share over the even share, from `fastener_group` for an eccentric load; 1 by default. Range
   *  1 to 100. Initially 1.0. */
  double unevenness;
  /** Least number of screws; 2 by default, so that the part cannot turn (common practice). Range 1 to
   *  1000. Initially 2. */
  uint32_t least_count;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Length of the part along the row, mm. Range 0 to 100000. */
  double row_length_mm;
  /** Distance of the first and the last screw from the ends of the part, mm. Range 0 to 100000. */
  double end_distance_mm;
  /** Least spacing of the screws, such as that of `geometry_factor`, mm. Range 10 to 10000. */
  double least_spacing_mm;
  /** Largest spacing wanted, mm; left out there is none. Range 10 to 10000. Optional. */
  double most_spacing_mm;
} beamcraft_screw_count_input;

/** Number and spacing of screws. */
typedef struct beamcraft_screw_count_output {
  /** Screws that the load needs; a real number. */
  double needed;
  /** Screws to drive: that rounded up, at least the least count, and enough for the largest spacing. */
  uint32_t count;
  /** Most screws that the row holds at the least spacing. */
  uint32_t most_count;
  /** Spacing of that number of screws over the row, mm; 0 for one screw. */
  double spacing_mm;
  /** Use of one screw with that number. */
  double utilisation;
  /** Whether the row holds that number. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_screw_count_output;

/** Sets up an input of beamcraft_screw_count: its size and its initial values. Does nothing for NULL. */
void beamcraft_screw_count_input_init(beamcraft_screw_count_input *out_input);

/** Number of screws for a load, and their spacing along the part. */
beamcraft_status beamcraft_screw_count(const beamcraft_screw_count_input *input,
                                       beamcraft_screw_count_output *output,
                                       beamcraft_error **out_error);

/** Bit of penetration_mm in `given` of beamcraft_screw_length_input. */
#define BEAMCRAFT_SCREW_LENGTH_INPUT_GIVEN_PENETRATION_MM 1

/** What a screw goes through and into. */
typedef struct beamcraft_screw_length_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Nominal diameter, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Thickness of the member under the head, mm. Range 0.1 to 1000. */
  double side_thickness_mm;
  /** Depth by which the head is sunk below the face, mm; by default it is flush. Range 0 to 500.
   *  Initially 0.0. */
  double head_recess_mm;
  /** What lies between the members, such as a wall lining, mm; by default nothing. Range 0 to 500.
   *  Initially 0.0. */
  double gap_mm;
  /** Thickness of the member that holds the point, mm. Range 0.1 to 1000. */
  double main_thickness_mm;
  /** Penetration wanted in the main member, mm; left out it is 6 D, the least of the standard (NDS
   *  12.1.5.6). Range 0.1 to 1000. Optional. */
  double penetration_mm;
  /** Wood to leave between the point and the far face, mm; 3 by default, so that nothing shows (common
   *  practice). Range 0 to 500. Initially 3.0. */
  double least_cover_mm;
  /** Lengths sold; inch by default. One of BEAMCRAFT_SOLD_LENGTH_SERIES_*. Initially
   *  BEAMCRAFT_SOLD_LENGTH_SERIES_INCH. */
  uint32_t series;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_screw_length_input;

/** Length of a screw, exact and as sold. */
typedef struct beamcraft_screw_length_output {
  /** Length that reaches the wanted penetration, mm. */
  double shortest_mm;
  /** Length that leaves the wanted cover, mm. */
  double longest_mm;
  /** Shortest length sold that reaches the penetration, mm. */
  double sold_length_mm;
  /** Penetration of that length, mm. */
  double penetration_mm;
  /** Wood between its point and the far face, mm; negative when it comes out. */
  double cover_mm;
  /** Whether that length leaves the wanted cover; if not, no length sold does both. One of
   *  BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_screw_length_output;

/** Sets up an input of beamcraft_screw_length: its size and its initial values. Does nothing for NULL. */
void beamcraft_screw_length_input_init(beamcraft_screw_length_input *out_input);

/** Length of a screw from the stack of what it goes through, rounded up to lengths sold. */
beamcraft_status beamcraft_screw_length(const beamcraft_screw_length_input *input,
                                        beamcraft_screw_length_output *output,
                                        beamcraft_error **out_error);

/** Bit of exit_depth_mm in `given` of beamcraft_pocket_screw_input. */
#define BEAMCRAFT_POCKET_SCREW_INPUT_GIVEN_EXIT_DEPTH_MM 1

/** A pocket hole, its screw and the board that it enters. */
typedef struct beamcraft_pocket_screw_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Thickness of the board with the pocket, mm. Range 1 to 150. */
  double board_thickness_mm;
  /** Angle between the screw and the board's face, degrees; 15 by default (common practice). Range 5 to
   *  45. Initially 15.0. */
  double angle_deg;
  /** Depth below the pocket face at which the screw's axis leaves the board, mm; left out it is half the
   *  thickness. Range 1 to 150. Optional. */
  double exit_depth_mm;
  /** Wood along the screw between the pocket's shoulder, where the head seats, and the joint, mm. Range
   *  0.1 to 1000. */
  double shoulder_mm;
  /** Diameter of the pocket, mm; 9.5 by default, the usual stepped drill (common practice). Range 1 to
   *  25.4. Initially 9.525. */
  double pocket_diameter_mm;
  /** Nominal diameter of the screw, mm. Range 1 to 25.4. */
  double nominal_diameter_mm;
  /** Length of the screw from its seat to its point, mm. Range 5 to 1000. */
  double screw_length_mm;
  /** How the other board stands. One of BEAMCRAFT_POCKET_MATE_*. */
  uint32_t mate;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Thickness of a board whose face is met, mm; of a board in line its length along the joint's normal.
   *  Range 0.1 to 1000. */
  double mate_depth_mm;
  /** Wood to leave over the point and under the pocket, mm; 3 by default, so that nothing shows (common
   *  practice). Range 0 to 500. Initially 3.0. */
  double least_cover_mm;
} beamcraft_pocket_screw_input;

/** How a pocket screw lies. */
typedef struct beamcraft_pocket_screw_output {
  /** Depth below the pocket face at which the axis leaves the board, mm. */
  double exit_depth_mm;
  /** Depth below the pocket face of the head's seat, mm. */
  double seat_depth_mm;
  /** Distance of the head's seat from the joint, along the board, mm. */
  double seat_from_joint_mm;
  /** Length of the screw in the other board, along the screw, mm. */
  double bite_mm;
  /** Depth of the point behind the joint, square to it, mm. */
  double point_depth_mm;
  /** Depth of the point below the plane of the pocket face, mm. */
  double point_below_face_mm;
  /** Wood between the point and the face that it comes nearest to, mm; negative when it comes out. */
  double cover_mm;
  /** Whether that cover is at least the wanted one. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t cover;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Wood between the bottom of the pocket and the show face, mm; negative when the pocket breaks
   *  through. */
  double pocket_floor_mm;
  /** Whether that is at least the wanted cover. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t pocket_floor;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** Distance from the joint to the near end of the pocket's opening in the face, mm. */
  double opening_from_mm;
  /** Distance from the joint to the far end of the pocket's opening in the face, mm. */
  double opening_to_mm;
  /** Least bite of a wood screw: 6 D (NDS 12.1.5.6), mm. */
  double required_bite_mm;
  /** Whether the bite is at least that. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t bite;
  /** Kept for later: 0. */
  uint32_t reserved_3;
  /** Longest screw that leaves the wanted cover, mm; may be shorter than the wood before the joint. */
  double longest_screw_mm;
  /** Whether cover, pocket floor and bite are all as wanted. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** Kept for later: 0. */
  uint32_t reserved_4;
} beamcraft_pocket_screw_output;

/** Sets up an input of beamcraft_pocket_screw: its size and its initial values. Does nothing for NULL. */
void beamcraft_pocket_screw_input_init(beamcraft_pocket_screw_input *out_input);

/** Exit point, bite and cover of an angled pocket screw, from the boards and the angle. */
beamcraft_status beamcraft_pocket_screw(const beamcraft_pocket_screw_input *input,
                                        beamcraft_pocket_screw_output *output,
                                        beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: statics
 * ---------------------------------------------------------------------------- */

/** Bit of top_above_mm in `given` of beamcraft_cleat_seat_input. */
#define BEAMCRAFT_CLEAT_SEAT_INPUT_GIVEN_TOP_ABOVE_MM 1
/** Bit of needed_n in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_NEEDED_N 1
/** Bit of greatest_pull_n in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_GREATEST_PULL_N 2
/** Bit of ratio_without_friction in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_RATIO_WITHOUT_FRICTION 4
/** Bit of ratio_with_friction in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_RATIO_WITH_FRICTION 8
/** Bit of margin_without_friction_n in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_MARGIN_WITHOUT_FRICTION_N 16
/** Bit of foot_bearing_n in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_FOOT_BEARING_N 32
/** Bit of top_bearing_n in `given` of beamcraft_cleat_seat_output. */
#define BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_TOP_BEARING_N 64

/** A body that hangs on a bevelled cleat and bears on the wall with its foot. */
typedef struct beamcraft_cleat_seat_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Weight of the body with everything that stands on it, N. Range 0 to 10000000. */
  double weight_n;
  /** Horizontal distance of the line of action of the weight in front of the contact, mm; negative when
   *  it lies between the contact and the wall. Range -10000 to 10000. */
  double centre_out_mm;
  /** Vertical distance from the contact down to the foot that bears on the wall, mm. Range 1 to 10000. */
  double foot_below_mm;
  /** Bevel of the seat from a square cut, which is its slope from horizontal, down towards the wall,
   *  degrees. Range 5 to 75. */
  double bevel_deg;
  /** Coefficient of friction of the seat; 0, the default, leaves friction out, since no published figure
   *  covers two sawn bevels under small, shaking loads. Range 0 to 1.5. Initially 0.0. */
  double friction;
  /** Vertical distance from the contact up to where the back of the body touches the wall near its top,
   *  mm; needed only when the weight acts behind the contact. Range 1 to 10000. Optional. */
  double top_above_mm;
} beamcraft_cleat_seat_input;

/** Forces and margins of the seat. */
typedef struct beamcraft_cleat_seat_output {
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Vertical force on the wall half, N. */
  double vertical_n;
  /** Horizontal pull on the wall half when only the foot bears, W·e/h, equal to the push of the wall on
   *  the foot, N; negative when the weight acts behind the contact and no foot can give it. */
  double horizontal_n;
  /** Least pull that the seat must give for equilibrium, N; absent when the weight acts behind the
   *  contact and the height of the top contact is not given. Only with
   *  BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_NEEDED_N in `given`. */
  double needed_n;
  /** Pull of the seat without friction, W·tan b, N. */
  double pull_without_friction_n;
  /** Least pull of the seat with friction, W·tan(b − phi), N; negative when the seat alone does not slide
   *  in. */
  double least_pull_n;
  /** Greatest pull of the seat with friction, W·tan(b + phi), N; absent when the seat is locked. Only
   *  with BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_GREATEST_PULL_N in `given`. */
  double greatest_pull_n;
  /** Friction angle phi, degrees. */
  double friction_angle_deg;
  /** Needed pull over the pull without friction; above 1 the bevel alone does not hold. Only with
   *  BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_RATIO_WITHOUT_FRICTION in `given`. */
  double ratio_without_friction;
  /** Needed pull over the greatest pull with friction; above 1 the body climbs off; absent when locked.
   *  Only with BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_RATIO_WITH_FRICTION in `given`. */
  double ratio_with_friction;
  /** Pull left without friction, W·tan b less the needed pull, N; negative when only friction holds. Only
   *  with BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_MARGIN_WITHOUT_FRICTION_N in `given`. */
  double margin_without_friction_n;
  /** Pull to design the wall half and its screws for, N: the larger of the needed pull and W·tan b. */
  double design_pull_n;
  /** Push of the wall on the foot, N, for a seat without friction; absent when no equilibrium is found
   *  without it. Only with BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_FOOT_BEARING_N in `given`. */
  double foot_bearing_n;
  /** Push of the wall near the top of the body, N, for a seat without friction; absent as the foot's.
   *  Only with BEAMCRAFT_CLEAT_SEAT_OUTPUT_GIVEN_TOP_BEARING_N in `given`. */
  double top_bearing_n;
  /** How the body rests. One of BEAMCRAFT_SEAT_REGIME_*. */
  uint32_t regime;
  /** Whether friction sets an upper limit. One of BEAMCRAFT_SEAT_LOCK_*. */
  uint32_t lock;
  /** Met only when the bevel holds without any friction; not determined when the top contact is needed
   *  and not given. One of BEAMCRAFT_OUTCOME_*. */
  uint32_t outcome;
  /** The caution that belongs to these numbers. One of BEAMCRAFT_CAUTION_*. */
  uint32_t caution;
} beamcraft_cleat_seat_output;

/** Sets up an input of beamcraft_cleat_seat: its size and its initial values. Does nothing for NULL. */
void beamcraft_cleat_seat_input_init(beamcraft_cleat_seat_input *out_input);

/** Forces at the seat of a bevelled hanging cleat, and whether the body stays on it without friction. */
beamcraft_status beamcraft_cleat_seat(const beamcraft_cleat_seat_input *input,
                                      beamcraft_cleat_seat_output *output,
                                      beamcraft_error **out_error);

/** A wall half held by one row of screws, and the forces of the body on it. */
typedef struct beamcraft_wall_strip_screws_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Force down at the contact, N. Range 0 to 10000000. */
  double vertical_n;
  /** Pull outwards at the contact, N. Range 0 to 10000000. */
  double horizontal_n;
  /** Contact in front of the wall, mm; the tip of the wall half is the safe choice. Range 0 to 500. */
  double contact_out_mm;
  /** Contact above the lower edge of the wall half, mm. Range 0 to 100000. */
  double contact_up_mm;
  /** Row of screws above the lower edge of the wall half, mm. Range 1 to 10000. */
  double screw_row_up_mm;
  /** Height of the face that lies against the wall, mm. Range 1 to 10000. */
  double strip_height_mm;
  /** Number of screws in the row. Range 1 to 10000. */
  uint32_t screw_count;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_wall_strip_screws_input;

/** Forces of the screws and of the wall on the wall half. */
typedef struct beamcraft_wall_strip_screws_output {
  /** Tension of all screws together, N. */
  double total_tension_n;
  /** Tension of one screw, equal shares, N. */
  double tension_per_screw_n;
  /** Shear of one screw, equal shares, N. */
  double shear_per_screw_n;
  /** Push of the wall on the edge that bears, N. */
  double bearing_n;
  /** The edge that bears. One of BEAMCRAFT_STRIP_PIVOT_*. */
  uint32_t pivot;
  /** The caution that belongs to these numbers. One of BEAMCRAFT_CAUTION_*. */
  uint32_t caution;
} beamcraft_wall_strip_screws_output;

/** Sets up an input of beamcraft_wall_strip_screws: its size and its initial values. Does nothing for NULL. */
void beamcraft_wall_strip_screws_input_init(beamcraft_wall_strip_screws_input *out_input);

/** Tension and shear of the screws of a cleat's wall half, and the bearing of its edge on the wall. */
beamcraft_status beamcraft_wall_strip_screws(const beamcraft_wall_strip_screws_input *input,
                                             beamcraft_wall_strip_screws_output *output,
                                             beamcraft_error **out_error);

/** Bit of row2_mm in `given` of beamcraft_bolt_row_bracket_input. */
#define BEAMCRAFT_BOLT_ROW_BRACKET_INPUT_GIVEN_ROW2_MM 1
/** Bit of row3_mm in `given` of beamcraft_bolt_row_bracket_input. */
#define BEAMCRAFT_BOLT_ROW_BRACKET_INPUT_GIVEN_ROW3_MM 2
/** Bit of tension_row2_n in `given` of beamcraft_bolt_row_bracket_output. */
#define BEAMCRAFT_BOLT_ROW_BRACKET_OUTPUT_GIVEN_TENSION_ROW2_N 1
/** Bit of tension_row3_n in `given` of beamcraft_bolt_row_bracket_output. */
#define BEAMCRAFT_BOLT_ROW_BRACKET_OUTPUT_GIVEN_TENSION_ROW3_N 2
/** Bit of couple_tension_n in `given` of beamcraft_bolt_row_bracket_output. */
#define BEAMCRAFT_BOLT_ROW_BRACKET_OUTPUT_GIVEN_COUPLE_TENSION_N 4

/** A bracket with one to three rows of bolts and one load. */
typedef struct beamcraft_bolt_row_bracket_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Load, N. Range 0 to 10000000. */
  double load_n;
  /** Lever arm of the load: its distance from the wall when it is parallel to the wall, from the tilting
   *  edge when it pulls away from it, mm. Range 0 to 100000. */
  double arm_mm;
  /** Which way the load acts. One of BEAMCRAFT_BRACKET_LOAD_*. */
  uint32_t direction;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Distance of the farthest row from the tilting edge, mm. Range 1 to 10000. */
  double row1_mm;
  /** Distance of the second row from the tilting edge, mm; leave out when there is one row. Range 1 to
   *  10000. Optional. */
  double row2_mm;
  /** Distance of the third row from the tilting edge, mm; leave out when there are two rows. Range 1 to
   *  10000. Optional. */
  double row3_mm;
  /** Number of bolts in each row. Range 1 to 10000. */
  uint32_t bolts_per_row;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_bolt_row_bracket_input;

/** Forces of the bolts. */
typedef struct beamcraft_bolt_row_bracket_output {
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Tension of one bolt of the farthest row, N. */
  double tension_row1_n;
  /** Tension of one bolt of the second row, N. Only with
   *  BEAMCRAFT_BOLT_ROW_BRACKET_OUTPUT_GIVEN_TENSION_ROW2_N in `given`. */
  double tension_row2_n;
  /** Tension of one bolt of the third row, N. Only with
   *  BEAMCRAFT_BOLT_ROW_BRACKET_OUTPUT_GIVEN_TENSION_ROW3_N in `given`. */
  double tension_row3_n;
  /** Shear of one bolt, equal shares, N; 0 for a load away from the wall. */
  double shear_per_bolt_n;
  /** Tension of one bolt of the farthest row if the moment were a couple between the first and the last
   *  row alone, N; the larger, more cautious convention; absent with one row or a load away from the
   *  wall. Only with BEAMCRAFT_BOLT_ROW_BRACKET_OUTPUT_GIVEN_COUPLE_TENSION_N in `given`. */
  double couple_tension_n;
  /** Equivalent tension of the farthest row by the greatest shear stress, √(T² + 4 V²), N. */
  double shear_theory_n;
  /** Equivalent tension of the farthest row by the greatest principal stress, (T + √(T² + 4 V²))/2, N. */
  double principal_theory_n;
  /** Number of bolts. */
  uint32_t bolt_count;
  /** The caution that belongs to these numbers. One of BEAMCRAFT_CAUTION_*. */
  uint32_t caution;
} beamcraft_bolt_row_bracket_output;

/** Sets up an input of beamcraft_bolt_row_bracket: its size and its initial values. Does nothing for NULL. */
void beamcraft_bolt_row_bracket_input_init(beamcraft_bolt_row_bracket_input *out_input);

/** Tension and shear of the bolts of a rigid wall bracket with up to three rows. */
beamcraft_status beamcraft_bolt_row_bracket(const beamcraft_bolt_row_bracket_input *input,
                                            beamcraft_bolt_row_bracket_output *output,
                                            beamcraft_error **out_error);

/** A half of a cleat and what presses on its seat. */
typedef struct beamcraft_cleat_lip_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of the strip, mm. Range 1 to 150. */
  double thickness_mm;
  /** Bevel of the seat from a square cut, degrees. Range 5 to 75. */
  double bevel_deg;
  /** How much is taken off the point of each half, mm; 0, the default, leaves them sharp. Range 0 to 500.
   *  Initially 0.0. */
  double blunt_mm;
  /** Load on the seat, straight down, N. Range 0 to 10000000. */
  double vertical_n;
  /** Pull on the seat, out from the wall, N. Range 0 to 10000000. */
  double horizontal_n;
  /** Length along the strip over which both are spread, mm. Range 1 to 10000. */
  double stretch_mm;
} beamcraft_cleat_lip_input;

/** Stresses of the lip. */
typedef struct beamcraft_cleat_lip_output {
  /** Width of the seat, along its slope, mm. */
  double seat_mm;
  /** Force square to the seat, N. */
  double square_n;
  /** Largest pressure on the seat, at the tip, MPa: across the grain. */
  double greatest_bearing_mpa;
  /** Largest tension across the grain by bending of the lip, on the side of the wall, MPa. */
  double greatest_tension_mpa;
  /** Distance of that section's inner end from the wall, mm; 0 is the root. */
  double tension_from_wall_mm;
  /** Largest shear in a level section of the lip, MPa: wood rolls across its grain. */
  double greatest_shear_mpa;
  /** Distance of that section's inner end from the wall, mm. */
  double shear_from_wall_mm;
  /** The caution that belongs to these numbers. One of BEAMCRAFT_CAUTION_*. */
  uint32_t caution;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_cleat_lip_output;

/** Sets up an input of beamcraft_cleat_lip: its size and its initial values. Does nothing for NULL. */
void beamcraft_cleat_lip_input_init(beamcraft_cleat_lip_input *out_input);

/** Bearing, bending across the grain and shear of the lip of a cleat half. */
beamcraft_status beamcraft_cleat_lip(const beamcraft_cleat_lip_input *input,
                                     beamcraft_cleat_lip_output *output,
                                     beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: saw
 * ---------------------------------------------------------------------------- */

/** A rip cut with the kept piece between the fence and the blade. */
typedef struct beamcraft_rip_fence_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Width of the show face after the cut, mm. Range 0 to 100000. */
  double show_width_mm;
  /** Thickness of the board, mm. Range 1 to 150. */
  double thickness_mm;
  /** Bevel of the edge that rides the fence, degrees; positive when its long point lies on the show face.
   *  Range -80 to 80. Initially 0.0. */
  double fence_edge_bevel_deg;
  /** Bevel of the cut, degrees; positive when its long point lies on the show face. Range -80 to 80. */
  double cut_bevel_deg;
  /** Which face lies up and which way the blade leans. One of BEAMCRAFT_RIP_SET_UP_*. */
  uint32_t set_up;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Kerf of the blade, measured square to it, mm. Range 0 to 12. */
  double kerf_mm;
} beamcraft_rip_fence_input;

/** Fence setting of a bevelled rip. */
typedef struct beamcraft_rip_fence_output {
  /** Distance from the fence to the blade, measured at the table, mm. */
  double fence_mm;
  /** Width of the show face, mm. */
  double show_width_mm;
  /** Width of the inner face, mm. */
  double inner_width_mm;
  /** Kerf measured along the table, mm. */
  double kerf_at_table_mm;
  /** Change of the show width for each mm that the board is thicker than stated, the fence unmoved. */
  double show_width_per_thickness;
  /** Which piece is trapped between the fence and the blade. One of BEAMCRAFT_TRAPPED_PIECE_*. */
  uint32_t trapped_piece;
  /** How the edge that rides the fence meets it. One of BEAMCRAFT_RIDING_EDGE_*. */
  uint32_t riding_edge;
} beamcraft_rip_fence_output;

/** Sets up an input of beamcraft_rip_fence: its size and its initial values. Does nothing for NULL. */
void beamcraft_rip_fence_input_init(beamcraft_rip_fence_input *out_input);

/** Fence distance at the table for a rip with bevels on one or both edges, by face up and lean of the
 *  blade. */
beamcraft_status beamcraft_rip_fence(const beamcraft_rip_fence_input *input,
                                     beamcraft_rip_fence_output *output,
                                     beamcraft_error **out_error);

/** A cut and the edge that rides the mitre gauge, both by their normals out of the panel, in the
 *  panel's frame.
 *
 *  Only the directions count, not the lengths. */
typedef struct beamcraft_saw_angles_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Component of the cut's normal along the grain. Range -1000 to 1000. */
  double cut_u;
  /** Component of the cut's normal across the grain. Range -1000 to 1000. */
  double cut_v;
  /** Component of the cut's normal out of the show face. Range -1000 to 1000. */
  double cut_n;
  /** Component along the grain of the normal of the edge that rides the gauge. Range -1000 to 1000. */
  double riding_u;
  /** Component across the grain of the normal of the edge that rides the gauge. Range -1000 to 1000. */
  double riding_v;
} beamcraft_saw_angles_input;

/** How to set the saw for a cut. */
typedef struct beamcraft_saw_angles_output {
  /** Blade tilt from square, degrees; positive when the long point lies on the show face. */
  double tilt_deg;
  /** Gauge angle from a cut square to the riding edge, degrees; positive when the panel is longer at the
   *  far side, and 90 for a cut along the riding edge. */
  double gauge_deg;
} beamcraft_saw_angles_output;

/** Sets up an input of beamcraft_saw_angles: its size and its initial values. Does nothing for NULL. */
void beamcraft_saw_angles_input_init(beamcraft_saw_angles_input *out_input);

/** Blade tilt and gauge angle of any straight cut, the gauge stated against the edge that rides it. */
beamcraft_status beamcraft_saw_angles(const beamcraft_saw_angles_input *input,
                                      beamcraft_saw_angles_output *output,
                                      beamcraft_error **out_error);

/** A bevel and what the saw can tilt to. */
typedef struct beamcraft_tilt_set_up_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Blade tilt from square that the edge needs, degrees; negative when the long point lies on the inner
   *  face. Range -80 to 80. */
  double tilt_deg;
  /** Largest tilt of the saw from square, degrees; 45, as most saws have, if left out. Range 30 to 60.
   *  Initially 45.0. */
  double max_tilt_deg;
} beamcraft_tilt_set_up_input;

/** The set-up for a bevel. */
typedef struct beamcraft_tilt_set_up_output {
  /** How the board goes over the saw. One of BEAMCRAFT_BOARD_SET_UP_*. */
  uint32_t set_up;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Tilt to set on the saw, degrees. */
  double saw_tilt_deg;
  /** Angle of the wedge under the board, degrees; 0 without one. */
  double wedge_deg;
} beamcraft_tilt_set_up_output;

/** Sets up an input of beamcraft_tilt_set_up: its size and its initial values. Does nothing for NULL. */
void beamcraft_tilt_set_up_input_init(beamcraft_tilt_set_up_input *out_input);

/** How to cut a bevel that lies within or beyond the tilt of the saw. */
beamcraft_status beamcraft_tilt_set_up(const beamcraft_tilt_set_up_input *input,
                                       beamcraft_tilt_set_up_output *output,
                                       beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: frame
 * ---------------------------------------------------------------------------- */

/** The hollow that a frame piece fits into, by its inside flats. */
typedef struct beamcraft_frame_piece_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Flat of the inside of the front board, between its mitres, mm. Range 0 to 100000. */
  double front_flat_mm;
  /** Flat of the inside of the top and bottom boards, from the front's mitre to their back edge, mm.
   *  Range 0 to 100000. */
  double wide_flat_mm;
  /** Thickness of the cleat strip that lies between the piece and the wall, mm; 0 where there is none.
   *  Range 0 to 500. */
  double strip_thickness_mm;
  /** Clearance left behind the piece, mm; no default, the maker's choice. Range 0 to 500. */
  double clearance_mm;
} beamcraft_frame_piece_input;

/** Size of a frame piece. */
typedef struct beamcraft_frame_piece_output {
  /** Width of the piece, along the height of the front, mm. */
  double width_mm;
  /** Length of the piece, from the front board towards the wall, mm. */
  double length_mm;
} beamcraft_frame_piece_output;

/** Sets up an input of beamcraft_frame_piece: its size and its initial values. Does nothing for NULL. */
void beamcraft_frame_piece_input_init(beamcraft_frame_piece_input *out_input);

/** Size of a frame piece between the wide boards, short of the cleat. */
beamcraft_status beamcraft_frame_piece(const beamcraft_frame_piece_input *input,
                                       beamcraft_frame_piece_output *output,
                                       beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: hang
 * ---------------------------------------------------------------------------- */

/** A strip and the bevelled rip that parts it into the two halves of a cleat. */
typedef struct beamcraft_cleat_halves_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Width of the strip before the rip, mm. Range 0 to 100000. */
  double strip_width_mm;
  /** Thickness of the strip, mm. Range 1 to 150. */
  double thickness_mm;
  /** Bevel of the rip from a square cut, degrees. Range 5 to 75. */
  double bevel_deg;
  /** Kerf of the blade, square to it, mm. Range 0 to 12. */
  double kerf_mm;
  /** How much of each long face is taken off to blunt its point, mm; 0, the default, leaves the points
   *  sharp. Range 0 to 500. Initially 0.0. */
  double blunt_mm;
} beamcraft_cleat_halves_input;

/** Sizes of the two equal halves. */
typedef struct beamcraft_cleat_halves_output {
  /** Width of the long face of each half with a sharp point, as it leaves the saw, mm. */
  double long_face_mm;
  /** Width of the long face of each half once its point is blunted, mm. */
  double blunted_face_mm;
  /** Width of the short face of each half, mm. */
  double short_face_mm;
  /** Fence distance at the table, long face up and the blade leaning away from the fence, mm. */
  double fence_leaning_away_mm;
  /** Fence distance at the table, long face down and the blade leaning towards the fence, mm. */
  double fence_leaning_towards_mm;
  /** How far the body must rise before the points pass each other, mm. */
  double lift_mm;
  /** Length of the seat along the slope, mm. */
  double seat_length_mm;
  /** Width of the seat seen from above, mm. */
  double seat_width_mm;
  /** Thickness of the flat on a blunted point, mm; 0 for a feather edge. */
  double point_flat_mm;
  /** Height of the two halves together when hung, mm. */
  double pair_height_mm;
} beamcraft_cleat_halves_output;

/** Sets up an input of beamcraft_cleat_halves: its size and its initial values. Does nothing for NULL. */
void beamcraft_cleat_halves_input_init(beamcraft_cleat_halves_input *out_input);

/** Sizes of the two halves of a bevelled cleat, the fence for the rip, and the lift they ask for. */
beamcraft_status beamcraft_cleat_halves(const beamcraft_cleat_halves_input *input,
                                        beamcraft_cleat_halves_output *output,
                                        beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: movement
 * ---------------------------------------------------------------------------- */

/** Bit of ring_angle_deg in `given` of beamcraft_board_movement_input. */
#define BEAMCRAFT_BOARD_MOVEMENT_INPUT_GIVEN_RING_ANGLE_DEG 1
/** Bit of shrinkage_radial_pct in `given` of beamcraft_board_movement_input. */
#define BEAMCRAFT_BOARD_MOVEMENT_INPUT_GIVEN_SHRINKAGE_RADIAL_PCT 2
/** Bit of shrinkage_tangential_pct in `given` of beamcraft_board_movement_input. */
#define BEAMCRAFT_BOARD_MOVEMENT_INPUT_GIVEN_SHRINKAGE_TANGENTIAL_PCT 4

/** A board and the change of its moisture content. */
typedef struct beamcraft_board_movement_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Width at the first moisture content, mm. Range 0 to 100000. */
  double width_mm;
  /** Thickness at the first moisture content, mm. Range 1 to 150. */
  double thickness_mm;
  /** How the board was sawn. One of BEAMCRAFT_BOARD_CUT_*. */
  uint32_t cut;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Angle between growth rings and wide face, degrees; for `ring_angle` only. Range 0 to 90. Optional. */
  double ring_angle_deg;
  /** Radial movement between 6 and 14 % moisture, share of the size per percent of moisture. Range 0 to
   *  0.01. */
  double movement_radial_per_pct;
  /** Tangential movement between 6 and 14 % moisture, share of the size per percent of moisture. Range 0
   *  to 0.01. */
  double movement_tangential_per_pct;
  /** Radial shrinkage from green to ovendry, %; from the coefficient when left out. Range 0 to 20.
   *  Optional. */
  double shrinkage_radial_pct;
  /** Tangential shrinkage from green to ovendry, %; from the coefficient when left out. Range 0 to 20.
   *  Optional. */
  double shrinkage_tangential_pct;
  /** Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4). Range 20 to 35. Initially
   *  30.0. */
  double fibre_saturation_pct;
  /** Moisture content at which the sizes are given, %. Range 0 to 30. */
  double from_moisture_pct;
  /** Moisture content that the board comes to, %. Range 0 to 30. */
  double to_moisture_pct;
} beamcraft_board_movement_input;

/** Change of a board, with its working. */
typedef struct beamcraft_board_movement_output {
  /** Change of the width, mm; swelling positive. */
  double width_change_mm;
  /** Change of the thickness, mm; swelling positive. */
  double thickness_change_mm;
  /** Width at the second moisture content, mm. */
  double final_width_mm;
  /** Thickness at the second moisture content, mm. */
  double final_thickness_mm;
  /** Change of the width as a share of it. */
  double width_strain;
  /** Change of the thickness as a share of it. */
  double thickness_strain;
  /** Angle by which square edges leave square, so that the section turns into a diamond, degrees; 0 for
   *  flat and quarter sawn. */
  double diamond_deg;
  /** Ring angle used, degrees. */
  double used_ring_angle_deg;
  /** Coefficient across the width, share per percent of moisture. */
  double width_coefficient_per_pct;
  /** Coefficient through the thickness, share per percent of moisture. */
  double thickness_coefficient_per_pct;
  /** Shrinkage across the width from green to ovendry, given or from the coefficient, %. */
  double width_shrinkage_pct;
  /** Shrinkage through the thickness from green to ovendry, given or from the coefficient, %. */
  double thickness_shrinkage_pct;
  /** Which equation was used. One of BEAMCRAFT_MOVEMENT_METHOD_*. */
  uint32_t method;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_board_movement_output;

/** Sets up an input of beamcraft_board_movement: its size and its initial values. Does nothing for NULL. */
void beamcraft_board_movement_input_init(beamcraft_board_movement_input *out_input);

/** Change of a board's width and thickness with moisture, by how it was sawn. */
beamcraft_status beamcraft_board_movement(const beamcraft_board_movement_input *input,
                                          beamcraft_board_movement_output *output,
                                          beamcraft_error **out_error);

/** A mitre along two boards, and the strains of both. */
typedef struct beamcraft_mitre_movement_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of board a when the mitre was cut, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b when the mitre was cut, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees; above 180 an inside
   *  corner. Range 10 to 350. Initially 90.0. */
  double corner_deg;
  /** Strain of board a across its width since then, swelling positive. Range -0.3 to 0.3. */
  double width_strain_a;
  /** Strain of board a through its thickness since then, swelling positive. Range -0.3 to 0.3. */
  double thickness_strain_a;
  /** Strain of board b across its width since then, swelling positive. Range -0.3 to 0.3. */
  double width_strain_b;
  /** Strain of board b through its thickness since then, swelling positive. Range -0.3 to 0.3. */
  double thickness_strain_b;
} beamcraft_mitre_movement_input;

/** The mitre after the movement. */
typedef struct beamcraft_mitre_movement_output {
  /** Corner that the two boards make when the seam stays closed, degrees. */
  double free_corner_deg;
  /** Change of that corner, degrees; positive when it becomes more than it was cut for. */
  double corner_change_deg;
  /** The same change to first order in the strains, degrees. */
  double first_order_change_deg;
  /** Width of the wedge at its open end when the body holds the corner as it was, mm. */
  double opening_mm;
  /** Which end of the seam opens then. One of BEAMCRAFT_SEAM_OPENING_*. */
  uint32_t opens;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Length of the seam across the section when the mitre was cut, mm. */
  double seam_mm;
  /** Angle between seam and show face of board a as cut, degrees. */
  double angle_a_deg;
  /** Angle between seam and show face of board b as cut, degrees. */
  double angle_b_deg;
  /** Angle between seam and show face of board a after the movement, degrees. */
  double moved_angle_a_deg;
  /** Angle between seam and show face of board b after the movement, degrees. */
  double moved_angle_b_deg;
} beamcraft_mitre_movement_output;

/** Sets up an input of beamcraft_mitre_movement: its size and its initial values. Does nothing for NULL. */
void beamcraft_mitre_movement_input_init(beamcraft_mitre_movement_input *out_input);

/** Change of the corner at a long-edge mitre with moisture, and where the seam opens. */
beamcraft_status beamcraft_mitre_movement(const beamcraft_mitre_movement_input *input,
                                          beamcraft_mitre_movement_output *output,
                                          beamcraft_error **out_error);

/** A mitred corner of two equal members lying flat. */
typedef struct beamcraft_frame_corner_movement_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Width of each member, mm. Range 0 to 100000. */
  double width_mm;
  /** Corner angle between the members, inside the frame, degrees. Range 10 to 170. Initially 90.0. */
  double corner_deg;
  /** Strain across the width since the mitre was cut, swelling positive. Range -0.3 to 0.3. */
  double width_strain;
  /** Strain along the length since then, swelling positive; none when left out, since wood hardly moves
   *  along the grain. Range -0.3 to 0.3. Initially 0.0. */
  double length_strain;
} beamcraft_frame_corner_movement_input;

/** The corner after the movement. */
typedef struct beamcraft_frame_corner_movement_output {
  /** Angle of the wedge between the members when the frame keeps its corner, degrees; positive when it
   *  opens inside. */
  double opening_deg;
  /** Width of the wedge at its open end, mm. */
  double opening_mm;
  /** Which end of the seam opens: the heel is the inner corner of the frame, the toe the outer. One of
   *  BEAMCRAFT_SEAM_OPENING_*. */
  uint32_t opens;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Length of the seam, mm. */
  double seam_mm;
  /** Angle between seam and outer edge of a member after the movement, degrees. */
  double moved_angle_deg;
} beamcraft_frame_corner_movement_output;

/** Sets up an input of beamcraft_frame_corner_movement: its size and its initial values. Does nothing for NULL. */
void beamcraft_frame_corner_movement_input_init(beamcraft_frame_corner_movement_input *out_input);

/** Opening of the mitred corner of a flat frame with moisture. */
beamcraft_status beamcraft_frame_corner_movement(const beamcraft_frame_corner_movement_input *input,
                                                 beamcraft_frame_corner_movement_output *output,
                                                 beamcraft_error **out_error);

/** Bit of shrinkage_pct in `given` of beamcraft_slot_length_input. */
#define BEAMCRAFT_SLOT_LENGTH_INPUT_GIVEN_SHRINKAGE_PCT 1

/** A screw across the grain, away from the line where the board is held. */
typedef struct beamcraft_slot_length_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Distance across the grain from the line where the board is held to the screw, mm. Range 0 to 100000. */
  double distance_mm;
  /** Movement of the board in that direction, share of the size per percent of moisture. Range 0 to 0.01. */
  double movement_per_pct;
  /** Shrinkage of the board in that direction from green to ovendry, %; from the coefficient when left
   *  out. Range 0 to 20. Optional. */
  double shrinkage_pct;
  /** Fibre saturation point, %; 30 in general use (FPL-GTR-282, chapter 4). Range 20 to 35. Initially
   *  30.0. */
  double fibre_saturation_pct;
  /** Moisture content when the screw is driven, %. Range 0 to 30. */
  double fixed_moisture_pct;
  /** Least moisture content in service, %. Range 0 to 30. */
  double driest_moisture_pct;
  /** Greatest moisture content in service, %. Range 0 to 30. */
  double wettest_moisture_pct;
  /** Shank diameter of the screw, mm. Range 1 to 25.4. */
  double shank_diameter_mm;
  /** Clearance added at each end of the slot, mm; none when left out, the movement alone. Range 0 to 500.
   *  Initially 0.0. */
  double clearance_mm;
} beamcraft_slot_length_input;

/** The slot. */
typedef struct beamcraft_slot_length_output {
  /** Length of the slot from end to end, mm. */
  double slot_mm;
  /** Travel of the screw towards the held line, when the board is driest, mm. */
  double shrink_mm;
  /** Travel of the screw away from the held line, when the board is wettest, mm. */
  double swell_mm;
  /** From the screw's centre as driven to the end of the slot towards the held line, mm; the slot is in
   *  the part that stays. */
  double towards_mm;
  /** From the screw's centre as driven to the end of the slot away from the held line, mm; the slot is in
   *  the part that stays. */
  double away_mm;
  /** Which equation the shrinking follows. One of BEAMCRAFT_MOVEMENT_METHOD_*. */
  uint32_t shrink_method;
  /** Which equation the swelling follows. One of BEAMCRAFT_MOVEMENT_METHOD_*. */
  uint32_t swell_method;
} beamcraft_slot_length_output;

/** Sets up an input of beamcraft_slot_length: its size and its initial values. Does nothing for NULL. */
void beamcraft_slot_length_input_init(beamcraft_slot_length_input *out_input);

/** Length of the slot that lets a screw follow a board across the grain. */
beamcraft_status beamcraft_slot_length(const beamcraft_slot_length_input *input,
                                       beamcraft_slot_length_output *output,
                                       beamcraft_error **out_error);

/** Two halves of a bevelled strip, both lying with the grain along the wall, and their strains since
 *  they were ripped. */
typedef struct beamcraft_cleat_movement_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of the strip when it was ripped, mm. Range 1 to 150. */
  double thickness_mm;
  /** Bevel from a square cut, degrees: the slope of the seat from horizontal. Range 5 to 75. */
  double bevel_deg;
  /** From the screw row of the wall half up to the middle of the seat, mm. Range 0 to 100000. */
  double wall_fixed_below_mm;
  /** From the middle of the seat up to where the beam half is held to the body, mm. Range 0 to 100000. */
  double beam_fixed_above_mm;
  /** Strain of the wall half across its width since it was ripped, swelling positive. Range -0.3 to 0.3. */
  double wall_width_strain;
  /** Strain of the wall half through its thickness since it was ripped, swelling positive. Range -0.3 to
   *  0.3. */
  double wall_thickness_strain;
  /** Strain of the beam half across its width since it was ripped, swelling positive. Range -0.3 to 0.3. */
  double beam_width_strain;
  /** Strain of the beam half through its thickness since it was ripped, swelling positive. Range -0.3 to
   *  0.3. */
  double beam_thickness_strain;
} beamcraft_cleat_movement_input;

/** The cleat after the movement. */
typedef struct beamcraft_cleat_movement_output {
  /** Bevel of the wall half after the movement, degrees. */
  double wall_bevel_deg;
  /** Bevel of the beam half after the movement, degrees. */
  double beam_bevel_deg;
  /** Change of the bevel of the wall half, degrees; positive is steeper. */
  double bevel_change_deg;
  /** Angle between the two seats, degrees; positive when that of the wall half is the steeper one. */
  double mismatch_deg;
  /** Where the two halves touch. One of BEAMCRAFT_SEAT_CONTACT_*. */
  uint32_t contact;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Gap at the open end of the seat, over the whole thickness, mm; blunted points make it smaller. */
  double seat_gap_mm;
  /** How much higher the body hangs, mm; negative when it sinks. */
  double body_rise_mm;
  /** Change of the overlap that the body must be lifted over, mm. */
  double lift_change_mm;
  /** How much thicker the wall half is, mm: room to leave between it and the frame inside. */
  double wall_thicker_mm;
  /** How much thicker the beam half is, mm. */
  double beam_thicker_mm;
} beamcraft_cleat_movement_output;

/** Sets up an input of beamcraft_cleat_movement: its size and its initial values. Does nothing for NULL. */
void beamcraft_cleat_movement_input_init(beamcraft_cleat_movement_input *out_input);

/** Bevel, seat and height of a hanging cleat when its halves swell or shrink. */
beamcraft_status beamcraft_cleat_movement(const beamcraft_cleat_movement_input *input,
                                          beamcraft_cleat_movement_output *output,
                                          beamcraft_error **out_error);

/** A mitre along two boards, each held on a frame at some distance from the seam. */
typedef struct beamcraft_framed_mitre_movement_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of board a when the mitre was cut, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b when the mitre was cut, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees; above 180 an inside
   *  corner. Range 10 to 350. Initially 90.0. */
  double corner_deg;
  /** Across board a, from the mitre on the show face to the line where the frame holds the board, mm.
   *  Range 0 to 100000. */
  double held_at_a_mm;
  /** Across board b, from the mitre on the show face to the line where the frame holds the board, mm.
   *  Range 0 to 100000. */
  double held_at_b_mm;
  /** Strain of board a across its width since the body was made, swelling positive. Range -0.3 to 0.3. */
  double width_strain_a;
  /** Strain of board a through its thickness since then, swelling positive. Range -0.3 to 0.3. */
  double thickness_strain_a;
  /** Strain of board b across its width since then, swelling positive. Range -0.3 to 0.3. */
  double width_strain_b;
  /** Strain of board b through its thickness since then, swelling positive. Range -0.3 to 0.3. */
  double thickness_strain_b;
  /** Strain of the frame since then; none when left out: cross-laid panels hardly move, and no movement
   *  of them is tabulated here. Range -0.3 to 0.3. Initially 0.0. */
  double frame_strain;
} beamcraft_framed_mitre_movement_input;

/** The mitre after the movement, if the glue of the seam held nothing back. */
typedef struct beamcraft_framed_mitre_movement_output {
  /** How far the two boards draw apart square to the seam, mm; negative when they press against one
   *  another. */
  double offset_mm;
  /** Part of the offset that is board a's, mm. */
  double offset_a_mm;
  /** Part of the offset that is board b's, mm. */
  double offset_b_mm;
  /** What the change of the bevels opens besides, mm; positive at the show edge, negative inside. */
  double taper_mm;
  /** Gap at the show edge, mm. */
  double show_gap_mm;
  /** Gap at the heel, mm. */
  double inside_gap_mm;
  /** How far the boards would overlap at the tighter edge if nothing gave way, mm: boards, glue and frame
   *  have to bear it. */
  double pressed_mm;
  /** Which end of the seam the change of the bevels opens. One of BEAMCRAFT_SEAM_OPENING_*. */
  uint32_t opens;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Length of the seam across the section, mm. */
  double seam_mm;
} beamcraft_framed_mitre_movement_output;

/** Sets up an input of beamcraft_framed_mitre_movement: its size and its initial values. Does nothing for NULL. */
void beamcraft_framed_mitre_movement_input_init(beamcraft_framed_mitre_movement_input *out_input);

/** Opening of a long-grain mitre whose boards are held on a frame that does not move, such as one of
 *  plywood. */
beamcraft_status beamcraft_framed_mitre_movement(const beamcraft_framed_mitre_movement_input *input,
                                                 beamcraft_framed_mitre_movement_output *output,
                                                 beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: tolerance
 * ---------------------------------------------------------------------------- */

/** A mitred seam and the errors of its two edges. */
typedef struct beamcraft_seam_gap_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of board a as planned, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b as planned, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees; a square corner if left
   *  out. Range 10 to 350. Initially 90.0. */
  double corner_deg;
  /** Width of panel a across the direction in which it cups, mm. Range 1 to 5000. */
  double width_a_mm;
  /** Width of panel b across the direction in which it cups, mm. Range 1 to 5000. */
  double width_b_mm;
  /** Which face of board a lay up at the saw. One of BEAMCRAFT_CUT_SIDE_*. */
  uint32_t cut_side_a;
  /** Which face of board b lay up at the saw. One of BEAMCRAFT_CUT_SIDE_*. */
  uint32_t cut_side_b;
  /** What holds the boards in place. One of BEAMCRAFT_SEAM_HOLD_*. */
  uint32_t hold;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Tilt of edge a beyond what the mitre needs, degrees; positive is over-tilt; none if left out. Range
   *  -10 to 10. Initially 0.0. */
  double tilt_error_a_deg;
  /** Tilt of edge b beyond what the mitre needs, degrees; positive is over-tilt; none if left out. Range
   *  -10 to 10. Initially 0.0. */
  double tilt_error_b_deg;
  /** Error of the corner at which the boards are held, degrees; positive is a wider corner; none if left
   *  out. Range -10 to 10. Initially 0.0. */
  double corner_error_deg;
  /** Width or length of panel a beyond the planned one, as far as it reaches this edge, mm; none if left
   *  out. Range -50 to 50. Initially 0.0. */
  double size_error_a_mm;
  /** Width or length of panel b beyond the planned one, as far as it reaches this edge, mm; none if left
   *  out. Range -50 to 50. Initially 0.0. */
  double size_error_b_mm;
  /** Thickness of board a beyond the planned one, mm; none if left out. Range -50 to 50. Initially 0.0. */
  double thickness_error_a_mm;
  /** Thickness of board b beyond the planned one, mm; none if left out. Range -50 to 50. Initially 0.0. */
  double thickness_error_b_mm;
  /** Rise of the cup of panel a over its width, mm; positive when the show face bulges out; none if left
   *  out. Range -50 to 50. Initially 0.0. */
  double cup_a_mm;
  /** Rise of the cup of panel b over its width, mm; positive when the show face bulges out; none if left
   *  out. Range -50 to 50. Initially 0.0. */
  double cup_b_mm;
  /** How far edge a bows out of its plane here, mm; positive outwards; none if left out. Range -50 to 50.
   *  Initially 0.0. */
  double bow_a_mm;
  /** How far edge b bows out of its plane here, mm; positive outwards; none if left out. Range -50 to 50.
   *  Initially 0.0. */
  double bow_b_mm;
} beamcraft_seam_gap_input;

/** The gap of a mitred seam. */
typedef struct beamcraft_seam_gap_output {
  /** Tilt from square that the mitre needs at edge a, degrees. */
  double tilt_a_deg;
  /** Tilt from square that the mitre needs at edge b, degrees. */
  double tilt_b_deg;
  /** Length of the seam across the section, mm. */
  double seam_mm;
  /** How far edge a is out of square or of its mitre over the length of the seam, seam times the tangent
   *  of its tilt error, mm. */
  double edge_a_mm;
  /** How far edge b is out of square or of its mitre over the length of the seam, seam times the tangent
   *  of its tilt error, mm. */
  double edge_b_mm;
  /** Angle between the two cut faces, degrees; positive when they part towards the inside. */
  double divergence_deg;
  /** What the divergence alone opens, mm; positive at the show edge (under-tilt), negative inside
   *  (over-tilt). */
  double taper_mm;
  /** Change of the show width of board a for each mm that it is thicker than planned, fence unmoved. */
  double width_per_thickness_a;
  /** Change of the show width of board b for each mm that it is thicker than planned, fence unmoved. */
  double width_per_thickness_b;
  /** Error of the show width of board a at this edge, that of thickness and tilt included, mm. */
  double width_error_a_mm;
  /** Error of the show width of board b at this edge, that of thickness and tilt included, mm. */
  double width_error_b_mm;
  /** How far the cut faces stand apart at the show edge before they push one another, mm; negative when
   *  they would overlap; 0 when drawn tight. */
  double offset_mm;
  /** Visible gap at the show edge, mm. */
  double show_gap_mm;
  /** Hidden gap at the heel, mm. */
  double inside_gap_mm;
  /** Where the seam stands open. One of BEAMCRAFT_OPEN_EDGE_*. */
  uint32_t opening;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** How far the show face of board a stands out past the arris of board b along the seam, mm; negative
   *  when it lies behind. */
  double step_mm;
  /** Corner angle at which the seam would close over its whole length, degrees. */
  double closing_corner_deg;
} beamcraft_seam_gap_output;

/** Sets up an input of beamcraft_seam_gap: its size and its initial values. Does nothing for NULL. */
void beamcraft_seam_gap_input_init(beamcraft_seam_gap_input *out_input);

/** Signed gap of a mitred seam from errors of tilt, corner, size, thickness, cup and bow. */
beamcraft_status beamcraft_seam_gap(const beamcraft_seam_gap_input *input,
                                    beamcraft_seam_gap_output *output,
                                    beamcraft_error **out_error);

/** A ring of equal mitres, all cut with the same error. */
typedef struct beamcraft_frame_error_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Length of the face that is cut: width of a frame member or thickness of a board, mm. Range 0 to
   *  100000. */
  double face_mm;
  /** Error of each cut, degrees; positive is over-tilt. Range -10 to 10. */
  double error_deg;
  /** Number of corners of the ring; four, a rectangular frame or box, if left out. Range 3 to 1000.
   *  Initially 4. */
  uint32_t sides;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_frame_error_input;

/** What the error adds up to. */
typedef struct beamcraft_frame_error_output {
  /** How far the far end of a square-cut face is out, mm. */
  double far_end_mm;
  /** Length of the mitred seam, mm. */
  double seam_mm;
  /** Opening at the open end of one seam, both its cuts off in the same sense, the corner held, mm;
   *  negative inside. */
  double seam_opening_mm;
  /** Divergence of the two faces of one seam, degrees. */
  double divergence_deg;
  /** Angle by which the ring fails to close when every seam is drawn tight, degrees. */
  double closing_error_deg;
} beamcraft_frame_error_output;

/** Sets up an input of beamcraft_frame_error: its size and its initial values. Does nothing for NULL. */
void beamcraft_frame_error_input_init(beamcraft_frame_error_input *out_input);

/** Far end of a face, opening of a mitre and closing error of a ring whose cuts are all off by one
 *  angle. */
beamcraft_status beamcraft_frame_error(const beamcraft_frame_error_input *input,
                                       beamcraft_frame_error_output *output,
                                       beamcraft_error **out_error);

/** A gap that is allowed, and the cuts that share it. */
typedef struct beamcraft_error_for_gap_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Gap that is allowed at the open end, mm. Range 0 to 500. */
  double gap_mm;
  /** Length of the joint, mm. Range 0 to 100000. */
  double joint_mm;
  /** Number of cuts that add up to the gap: two at one mitre, twice the corners when the last joint of a
   *  ring takes it all. Range 1 to 10000. Initially 2. */
  uint32_t cuts;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_error_for_gap_input;

/** The error of angle that a gap allows. */
typedef struct beamcraft_error_for_gap_output {
  /** Divergence of the two faces that gives the gap, degrees. */
  double total_error_deg;
  /** Error of each cut when all are off alike, degrees. */
  double error_per_cut_deg;
} beamcraft_error_for_gap_output;

/** Sets up an input of beamcraft_error_for_gap: its size and its initial values. Does nothing for NULL. */
void beamcraft_error_for_gap_input_init(beamcraft_error_for_gap_input *out_input);

/** Error of angle that opens a joint by a given gap, in all and for each cut. */
beamcraft_status beamcraft_error_for_gap(const beamcraft_error_for_gap_input *input,
                                         beamcraft_error_for_gap_output *output,
                                         beamcraft_error **out_error);

/** A seam, the gap that is allowed, and the share of seams that should keep to it. */
typedef struct beamcraft_saw_accuracy_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of board a, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees; a square corner if left
   *  out. Range 10 to 350. Initially 90.0. */
  double corner_deg;
  /** Visible gap that is allowed at the show edge, mm. Range 0 to 500. */
  double gap_mm;
  /** Share of seams that should keep to it; 0.95 if left out, 19 of 20. Range 0.51 to 0.9999. Initially
   *  0.95. */
  double share;
  /** How the two edges come by their tilt. One of BEAMCRAFT_TILT_SETTING_*. */
  uint32_t setting;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Deliberate over-tilt of each edge, degrees; none if left out. Range -10 to 10. Initially 0.0. */
  double over_tilt_deg;
  /** Standard deviation of everything else that turns the seam (corner, cup), degrees; none if left out.
   *  Range 0 to 5. Initially 0.0. */
  double other_sd_deg;
} beamcraft_saw_accuracy_input;

/** How exact the tilt must be. */
typedef struct beamcraft_saw_accuracy_output {
  /** Length of the seam across the section, mm. */
  double seam_mm;
  /** Divergence at which the gap is reached, beyond the deliberate over-tilt, degrees. */
  double allowed_divergence_deg;
  /** Number of standard deviations that the share stands for, one-sided. */
  double deviations;
  /** Standard deviation of the whole divergence that is allowed, degrees. */
  double total_sd_deg;
  /** Standard deviation of the tilt of one edge that is allowed, degrees. */
  double tilt_sd_deg;
  /** Half-range of an even scatter with that standard deviation, degrees. */
  double tilt_half_range_deg;
  /** Error of tilt that every cut may have when no seam at all may exceed the gap, other errors aside,
   *  degrees. */
  double worst_case_deg;
  /** Hidden gap inside that the same share of seams keeps to, mm. */
  double inside_gap_mm;
  /** Whether any saw would do. One of BEAMCRAFT_ACCURACY_REACH_*. */
  uint32_t reach;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_saw_accuracy_output;

/** Sets up an input of beamcraft_saw_accuracy: its size and its initial values. Does nothing for NULL. */
void beamcraft_saw_accuracy_input_init(beamcraft_saw_accuracy_input *out_input);

/** How exact the tilt must be for a wanted share of seams under a given gap. */
beamcraft_status beamcraft_saw_accuracy(const beamcraft_saw_accuracy_input *input,
                                        beamcraft_saw_accuracy_output *output,
                                        beamcraft_error **out_error);

/** A seam, the scatter of the saw, and the share of seams that should be closed where they are seen. */
typedef struct beamcraft_over_tilt_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness of board a, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees; a square corner if left
   *  out. Range 10 to 350. Initially 90.0. */
  double corner_deg;
  /** Standard deviation of the tilt of one edge, degrees; from test cuts. Range 0 to 5. */
  double tilt_sd_deg;
  /** How the two edges come by their tilt. One of BEAMCRAFT_TILT_SETTING_*. */
  uint32_t setting;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Standard deviation of everything else that turns the seam (corner, cup), degrees; none if left out.
   *  Range 0 to 5. Initially 0.0. */
  double other_sd_deg;
  /** Visible gap that counts as closed, mm; 0 if left out, closed in full. Range 0 to 500. Initially 0.0. */
  double gap_mm;
  /** Share of seams that should be closed; 0.95 if left out, 19 of 20. Range 0.51 to 0.9999. Initially
   *  0.95. */
  double share;
  /** Thickest film in which the glue holds, mm; 0.15 if left out, the upper end for stiff glues
   *  (FPL-GTR-190, chapter 10). Range 0.001 to 5. Initially 0.15. */
  double glue_film_mm;
} beamcraft_over_tilt_input;

/** The over-tilt with what it gives and what it costs. */
typedef struct beamcraft_over_tilt_output {
  /** Over-tilt of each edge, degrees; 0 where the share is reached without. */
  double over_tilt_deg;
  /** Tilt from square to aim at for edge a, the over-tilt included, degrees. */
  double aim_a_deg;
  /** Tilt from square to aim at for edge b, the over-tilt included, degrees. */
  double aim_b_deg;
  /** Length of the seam across the section, mm. */
  double seam_mm;
  /** Standard deviation of the divergence of the two cut faces, degrees. */
  double total_sd_deg;
  /** Share of seams closed without over-tilt. */
  double closed_without;
  /** Share of seams closed with it. */
  double closed_with;
  /** Gap at the heel of a seam cut as aimed at, mm: the price. */
  double inside_gap_mm;
  /** Gap at the heel that the wanted share of seams keeps to, mm. */
  double inside_gap_share_mm;
  /** Share of the seam's length, from the show edge, over which glue can still hold when cut as aimed at. */
  double glued_share;
  /** The same for the gap at the heel that the wanted share of seams keeps to. */
  double glued_share_worst;
} beamcraft_over_tilt_output;

/** Sets up an input of beamcraft_over_tilt: its size and its initial values. Does nothing for NULL. */
void beamcraft_over_tilt_input_init(beamcraft_over_tilt_input *out_input);

/** Deliberate over-tilt that closes a wanted share of seams at the show edge, and its price inside. */
beamcraft_status beamcraft_over_tilt(const beamcraft_over_tilt_input *input,
                                     beamcraft_over_tilt_output *output,
                                     beamcraft_error **out_error);

/** A size and a class of general tolerances. */
typedef struct beamcraft_general_tolerance_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Class of tolerance; wood is often specified at medium or coarse. One of BEAMCRAFT_TOLERANCE_CLASS_*. */
  uint32_t tolerance_class;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** The size; for the angle the shorter leg, mm. Range 0.5 to 4000. */
  double size_mm;
} beamcraft_general_tolerance_input;

/** Permissible deviations, each to either side. */
typedef struct beamcraft_general_tolerance_output {
  /** Deviation of the size, to either side, mm. */
  double linear_mm;
  /** How the deviation of the size was checked. One of BEAMCRAFT_EVIDENCE_*. */
  uint32_t linear_evidence;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Deviation of an angle whose shorter leg is the size, to either side, degrees. */
  double angle_deg;
  /** How the deviation of the angle was checked. One of BEAMCRAFT_EVIDENCE_*. */
  uint32_t angle_evidence;
  /** Kept for later: 0. */
  uint32_t reserved_2;
  /** The deviation of the angle over the length of the leg, mm. */
  double angle_over_leg_mm;
} beamcraft_general_tolerance_output;

/** Sets up an input of beamcraft_general_tolerance: its size and its initial values. Does nothing for NULL. */
void beamcraft_general_tolerance_input_init(beamcraft_general_tolerance_input *out_input);

/** General tolerance of a size and of an angle by class. */
beamcraft_status beamcraft_general_tolerance(const beamcraft_general_tolerance_input *input,
                                             beamcraft_general_tolerance_output *output,
                                             beamcraft_error **out_error);

/** A joint and its grade. */
typedef struct beamcraft_joint_tolerance_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Grade of the work. One of BEAMCRAFT_JOINT_GRADE_*. */
  uint32_t grade;
  /** Where and between what the joint is made. One of BEAMCRAFT_JOINT_PLACE_*. */
  uint32_t place;
  /** Length of the joint, mm. Range 0 to 100000. */
  double joint_mm;
} beamcraft_joint_tolerance_input;

/** What a grade allows at a joint. */
typedef struct beamcraft_joint_tolerance_output {
  /** Largest step between the two surfaces, mm. */
  double flushness_mm;
  /** Length over which a gap may extend, 30 % of the joint, mm. */
  double gap_length_mm;
} beamcraft_joint_tolerance_output;

/** Sets up an input of beamcraft_joint_tolerance: its size and its initial values. Does nothing for NULL. */
void beamcraft_joint_tolerance_input_init(beamcraft_joint_tolerance_input *out_input);

/** Largest step and largest length of gap at a joint of a woodwork grade. */
beamcraft_status beamcraft_joint_tolerance(const beamcraft_joint_tolerance_input *input,
                                           beamcraft_joint_tolerance_output *output,
                                           beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: finish
 * ---------------------------------------------------------------------------- */

/** A dry film to be reached with a coating of known volume solids. */
typedef struct beamcraft_film_build_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Volume solids of the coating, %; by volume, which is always less than by weight. Range 0.1 to 100. */
  double volume_solids_pct;
  /** Dry film, µm. Range 0.1 to 5000. */
  double dry_film_um;
} beamcraft_film_build_input;

/** What a dry film takes. */
typedef struct beamcraft_film_build_output {
  /** Theoretical spread rate, m² per litre; without any loss. */
  double spread_m2_per_l;
  /** Wet film that dries to the dry film, µm. */
  double wet_film_um;
} beamcraft_film_build_output;

/** Sets up an input of beamcraft_film_build: its size and its initial values. Does nothing for NULL. */
void beamcraft_film_build_input_init(beamcraft_film_build_input *out_input);

/** Theoretical spread rate and wet film for a dry film of a coating of known volume solids. */
beamcraft_status beamcraft_film_build(const beamcraft_film_build_input *input,
                                      beamcraft_film_build_output *output,
                                      beamcraft_error **out_error);

/** A coating spread at a known rate. */
typedef struct beamcraft_film_from_spread_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Spread rate, m² per litre. Range 0.1 to 100. */
  double spread_m2_per_l;
  /** Volume solids of the coating, %. Range 0.1 to 100. */
  double volume_solids_pct;
} beamcraft_film_from_spread_input;

/** The film that a spread rate leaves. */
typedef struct beamcraft_film_from_spread_output {
  /** Wet film, µm. */
  double wet_film_um;
  /** Dry film, µm. */
  double dry_film_um;
} beamcraft_film_from_spread_output;

/** Sets up an input of beamcraft_film_from_spread: its size and its initial values. Does nothing for NULL. */
void beamcraft_film_from_spread_input_init(beamcraft_film_from_spread_input *out_input);

/** Wet and dry film of a coating spread at a known rate. */
beamcraft_status beamcraft_film_from_spread(const beamcraft_film_from_spread_input *input,
                                            beamcraft_film_from_spread_output *output,
                                            beamcraft_error **out_error);

/** A film measured wet and again dry. */
typedef struct beamcraft_volume_solids_from_films_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Wet film, µm. Range 0.1 to 5000. */
  double wet_film_um;
  /** Dry film, µm; not above the wet film. Range 0 to 5000. */
  double dry_film_um;
} beamcraft_volume_solids_from_films_input;

/** Volume solids found from a trial film. */
typedef struct beamcraft_volume_solids_from_films_output {
  /** Volume solids of the coating, %. */
  double volume_solids_pct;
} beamcraft_volume_solids_from_films_output;

/** Sets up an input of beamcraft_volume_solids_from_films: its size and its initial values. Does nothing for NULL. */
void beamcraft_volume_solids_from_films_input_init(beamcraft_volume_solids_from_films_input *out_input);

/** Volume solids of a coating from a trial film measured wet and dry. */
beamcraft_status beamcraft_volume_solids_from_films(const beamcraft_volume_solids_from_films_input *input,
                                                    beamcraft_volume_solids_from_films_output *output,
                                                    beamcraft_error **out_error);

/** A coating cut with thinner. */
typedef struct beamcraft_thinned_volume_solids_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Volume solids of the coating as bought, %. Range 0 to 100. */
  double volume_solids_pct;
  /** Coating, parts by volume. Range 0.01 to 1000. */
  double coating_parts;
  /** Thinner, parts by volume. Range 0 to 1000. */
  double thinner_parts;
} beamcraft_thinned_volume_solids_input;

/** The coating after thinning. */
typedef struct beamcraft_thinned_volume_solids_output {
  /** Volume solids of the mixture, %. */
  double volume_solids_pct;
  /** Share of the mixture that is coating. */
  double coating_share;
} beamcraft_thinned_volume_solids_output;

/** Sets up an input of beamcraft_thinned_volume_solids: its size and its initial values. Does nothing for NULL. */
void beamcraft_thinned_volume_solids_input_init(beamcraft_thinned_volume_solids_input *out_input);

/** Volume solids of a coating cut with thinner. */
beamcraft_status beamcraft_thinned_volume_solids(const beamcraft_thinned_volume_solids_input *input,
                                                 beamcraft_thinned_volume_solids_output *output,
                                                 beamcraft_error **out_error);

/** A total dry film to be reached coat by coat. */
typedef struct beamcraft_coats_to_film_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Total dry film wanted, µm. Range 0.1 to 5000. */
  double target_dry_um;
  /** Wet film of one coat, µm. Range 0.1 to 5000. */
  double wet_um_per_coat;
  /** Volume solids of the coating as applied, %. Range 0.1 to 100. */
  double volume_solids_pct;
} beamcraft_coats_to_film_input;

/** The coats that reach a film. */
typedef struct beamcraft_coats_to_film_output {
  /** Number of whole coats. */
  uint32_t coats;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Dry film of one coat, µm. */
  double dry_um_per_coat;
  /** Total dry film of the whole coats, µm. */
  double total_dry_um;
  /** The total against the usual ceiling for sprayed furniture finishes. One of BEAMCRAFT_FILM_CEILING_*. */
  uint32_t furniture_ceiling;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_coats_to_film_output;

/** Sets up an input of beamcraft_coats_to_film: its size and its initial values. Does nothing for NULL. */
void beamcraft_coats_to_film_input_init(beamcraft_coats_to_film_input *out_input);

/** Whole coats that reach a dry film, and the film against the usual ceiling. */
beamcraft_status beamcraft_coats_to_film(const beamcraft_coats_to_film_input *input,
                                         beamcraft_coats_to_film_output *output,
                                         beamcraft_error **out_error);

/** An area to be coated at a known spread rate. */
typedef struct beamcraft_finish_quantity_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Area to be coated, m². Range 0 to 1000000. */
  double area_m2;
  /** Number of coats. Range 0 to 50. */
  uint32_t coats;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Spread rate of one coat on this surface, m² per litre. Range 0.1 to 100. */
  double spread_m2_per_l;
  /** Share of the coating that lands on the work; 1 unless given, because none is published for brush,
   *  roller and cloth. For a spray give the gun's share. Range 0.01 to 1. Initially 1.0. */
  double transfer_efficiency;
  /** Share lost otherwise, in cans, tools and cloths; 0 unless given, because no figure is published.
   *  Range 0 to 0.95. Initially 0.0. */
  double other_loss;
} beamcraft_finish_quantity_input;

/** Litres to have in hand. */
typedef struct beamcraft_finish_quantity_output {
  /** Volume on the work for one coat, L. */
  double net_l_per_coat;
  /** Volume on the work for all coats, L. */
  double net_l;
  /** Volume used for each litre on the work. */
  double use_factor;
  /** Volume needed for one coat, losses included, L. */
  double needed_l_per_coat;
  /** Volume needed for all coats, losses included, L; before it is rounded up to whole cans. */
  double needed_l;
} beamcraft_finish_quantity_output;

/** Sets up an input of beamcraft_finish_quantity: its size and its initial values. Does nothing for NULL. */
void beamcraft_finish_quantity_input_init(beamcraft_finish_quantity_input *out_input);

/** Litres of finish for an area, net and with losses, for each coat and in all. */
beamcraft_status beamcraft_finish_quantity(const beamcraft_finish_quantity_input *input,
                                           beamcraft_finish_quantity_output *output,
                                           beamcraft_error **out_error);

/** A bonded area and how the glue is spread on it. */
typedef struct beamcraft_glue_quantity_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Area of all glue lines, m²; each line counted once, though it has two faces. Range 0 to 1000000. */
  double bond_area_m2;
  /** Glue on one glue line, both faces together, g/m²; the maker's figure. Range 1 to 5000. */
  double spread_g_per_m2;
  /** Share on top for squeeze-out, brush and pot; no published figure was found, so nothing is added
   *  unless given. Range 0 to 5. Initially 0.0. */
  double waste_share;
  /** Density of the glue, kg per litre; the maker's figure. Range 0.5 to 3. */
  double density_kg_per_l;
} beamcraft_glue_quantity_input;

/** Glue to have in hand. */
typedef struct beamcraft_glue_quantity_output {
  /** Glue in the joints, grams. */
  double net_g;
  /** Glue with waste, grams. */
  double mass_g;
  /** Glue with waste, millilitres. */
  double volume_ml;
  /** Wet film in the glue line, µm. */
  double wet_film_um;
} beamcraft_glue_quantity_output;

/** Sets up an input of beamcraft_glue_quantity: its size and its initial values. Does nothing for NULL. */
void beamcraft_glue_quantity_input_init(beamcraft_glue_quantity_input *out_input);

/** Grams and millilitres of glue for a bonded area. */
beamcraft_status beamcraft_glue_quantity(const beamcraft_glue_quantity_input *input,
                                         beamcraft_glue_quantity_output *output,
                                         beamcraft_error **out_error);

/** Long mitres of one kind. */
typedef struct beamcraft_mitre_bond_area_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Length of one joint along the corner, mm. Range 0 to 100000. */
  double length_mm;
  /** Thickness of board a, mm. Range 1 to 150. */
  double thickness_a_mm;
  /** Thickness of board b, mm. Range 1 to 150. */
  double thickness_b_mm;
  /** Corner angle between the two show faces, measured inside the body, degrees. Range 10 to 350.
   *  Initially 90.0. */
  double corner_deg;
  /** Number of such joints. Range 1 to 10000. Initially 1. */
  uint32_t joints;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_mitre_bond_area_input;

/** Glue lines of long mitres. */
typedef struct beamcraft_mitre_bond_area_output {
  /** Width of the glue line across the section, mm. */
  double seam_mm;
  /** Area of the glue line of one joint, m². */
  double joint_area_m2;
  /** Area of the glue lines of all joints, m². */
  double bond_area_m2;
} beamcraft_mitre_bond_area_output;

/** Sets up an input of beamcraft_mitre_bond_area: its size and its initial values. Does nothing for NULL. */
void beamcraft_mitre_bond_area_input_init(beamcraft_mitre_bond_area_input *out_input);

/** Area to be glued in long mitres of boards of any thickness. */
beamcraft_status beamcraft_mitre_bond_area(const beamcraft_mitre_bond_area_input *input,
                                           beamcraft_mitre_bond_area_output *output,
                                           beamcraft_error **out_error);

/** An area to sand and how long a disc lasts. */
typedef struct beamcraft_sanding_discs_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Area to sand, m². Range 0 to 1000000. */
  double area_m2;
  /** Number of sanding steps, each with its own grade. Range 1 to 10000. */
  uint32_t steps;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Area that one disc sands before it is dull, m²; from experience with this wood, no figure is
   *  published. Range 0.01 to 1000. */
  double area_a_disc_m2;
} beamcraft_sanding_discs_input;

/** Discs to have in hand. */
typedef struct beamcraft_sanding_discs_output {
  /** Discs of each grade. */
  uint32_t discs_a_step;
  /** Discs in all. */
  uint32_t discs;
  /** Area that is left in the last disc of a step, m². */
  double spare_m2;
} beamcraft_sanding_discs_output;

/** Sets up an input of beamcraft_sanding_discs: its size and its initial values. Does nothing for NULL. */
void beamcraft_sanding_discs_input_init(beamcraft_sanding_discs_input *out_input);

/** How many abrasive discs the sanding takes. */
beamcraft_status beamcraft_sanding_discs(const beamcraft_sanding_discs_input *input,
                                         beamcraft_sanding_discs_output *output,
                                         beamcraft_error **out_error);

/** Seams after glue-up, as the tolerance stack-up foretells them. */
typedef struct beamcraft_seam_filler_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Length of all seams that show, mm. Range 0 to 100000. */
  double seam_length_mm;
  /** Share of the seams that need filler. Range 0 to 1. */
  double share_to_fill;
  /** Width of the gap at the show face where it is filled, mm. Range 0 to 500. */
  double gap_mm;
  /** Depth to which the gap reaches, mm; a seam that is closed inside tapers to nothing there. Range 1 to
   *  150. */
  double depth_mm;
  /** Share on top that is wiped and sanded off; no figure is published. Range 0 to 5. Initially 0.0. */
  double waste_share;
} beamcraft_seam_filler_input;

/** Filler to mix. */
typedef struct beamcraft_seam_filler_output {
  /** Length of seam to fill, mm. */
  double filled_length_mm;
  /** Volume in the seams, ml. */
  double net_ml;
  /** Volume with waste, ml. */
  double volume_ml;
} beamcraft_seam_filler_output;

/** Sets up an input of beamcraft_seam_filler: its size and its initial values. Does nothing for NULL. */
void beamcraft_seam_filler_input_init(beamcraft_seam_filler_input *out_input);

/** How much colour-matched filler the open seams take. */
beamcraft_status beamcraft_seam_filler(const beamcraft_seam_filler_input *input,
                                       beamcraft_seam_filler_output *output,
                                       beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: lumber
 * ---------------------------------------------------------------------------- */

/** Boards of one size. */
typedef struct beamcraft_board_measure_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Thickness by which the board is sold, mm: rough for hardwood, nominal for softwood. Range 1 to 150. */
  double thickness_mm;
  /** Width, mm: actual for hardwood, nominal for softwood. Range 1 to 5000. */
  double width_mm;
  /** Length, mm. Range 0 to 100000. */
  double length_mm;
  /** Number of such boards. Range 1 to 10000. Initially 1. */
  uint32_t boards;
  /** How the boards are tallied. One of BEAMCRAFT_TALLY_RULE_*. Initially
   *  BEAMCRAFT_TALLY_RULE_HARDWOOD_SURFACE_MEASURE. */
  uint32_t rule;
} beamcraft_board_measure_input;

/** Volume of the boards. */
typedef struct beamcraft_board_measure_output {
  /** Volume of the given sizes, m³. */
  double volume_m3;
  /** Volume of the given sizes, board feet. */
  double exact_bf;
  /** Thickness that is counted, mm; stock under an inch counts as an inch, except in the exact measure. */
  double counted_thickness_mm;
  /** Length that is counted, mm. */
  double counted_length_mm;
  /** Surface measure of all boards, ft²; before rounding it is width × counted length. */
  double surface_measure_ft2;
  /** Volume that is sold, board feet. */
  double tally_bf;
  /** Tally over exact volume; 1 when nothing is rounded, 0 for no volume. */
  double tally_ratio;
} beamcraft_board_measure_output;

/** Sets up an input of beamcraft_board_measure: its size and its initial values. Does nothing for NULL. */
void beamcraft_board_measure_input_init(beamcraft_board_measure_input *out_input);

/** Board feet and cubic metres of boards, exactly and by the trade's tally. */
beamcraft_status beamcraft_board_measure(const beamcraft_board_measure_input *input,
                                         beamcraft_board_measure_output *output,
                                         beamcraft_error **out_error);

/** A finished size and everything that takes wood away before it. */
typedef struct beamcraft_target_rough_size_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Finished size, mm. Range 1 to 150. */
  double finished_mm;
  /** Wood planed off each of the two faces, mm; 0.76 (0.030 in) is a sawmill's published allowance, a
   *  hand-fed planer takes more. Range 0 to 500. */
  double planing_each_face_mm;
  /** Size lost in drying, mm; 0 for dry stock. Range 0 to 500. Initially 0.0. */
  double shrinkage_mm;
  /** Standard deviation of the sawn size, mm. Range 0 to 20. Initially 0.0. */
  double scatter_mm;
  /** Share of pieces that may end undersize, %. Range 0.1 to 50. Initially 5.0. */
  double undersize_pct;
} beamcraft_target_rough_size_input;

/** The size to saw to. */
typedef struct beamcraft_target_rough_size_output {
  /** Least rough size that can be planed to the finished one, mm. */
  double critical_mm;
  /** Standard deviations above it. */
  double deviations;
  /** Mean size to saw to, mm. */
  double target_mm;
} beamcraft_target_rough_size_output;

/** Sets up an input of beamcraft_target_rough_size: its size and its initial values. Does nothing for NULL. */
void beamcraft_target_rough_size_input_init(beamcraft_target_rough_size_input *out_input);

/** The mean rough size that leaves a finished size with few pieces too thin. */
beamcraft_status beamcraft_target_rough_size(const beamcraft_target_rough_size_input *input,
                                             beamcraft_target_rough_size_output *output,
                                             beamcraft_error **out_error);

/** A board to be ripped into equal strips. */
typedef struct beamcraft_strips_from_width_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Width of the board with straight edges, mm. Range 1 to 5000. */
  double board_width_mm;
  /** Width of a strip, mm. Range 1 to 5000. */
  double strip_width_mm;
  /** Width of a saw cut, mm. Range 0 to 12. */
  double kerf_mm;
} beamcraft_strips_from_width_input;

/** The strips and the rest. */
typedef struct beamcraft_strips_from_width_output {
  /** Number of strips. */
  uint32_t strips;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** Width that is left after the last cut, mm. */
  double rest_mm;
} beamcraft_strips_from_width_output;

/** Sets up an input of beamcraft_strips_from_width: its size and its initial values. Does nothing for NULL. */
void beamcraft_strips_from_width_input_init(beamcraft_strips_from_width_input *out_input);

/** How many strips of one width a board gives. */
beamcraft_status beamcraft_strips_from_width(const beamcraft_strips_from_width_input *input,
                                             beamcraft_strips_from_width_output *output,
                                             beamcraft_error **out_error);

/* ----------------------------------------------------------------------------
 * Typed calls: lifting
 * ---------------------------------------------------------------------------- */

/** Bit of origin_height_mm in `given` of beamcraft_lifting_index_input. */
#define BEAMCRAFT_LIFTING_INDEX_INPUT_GIVEN_ORIGIN_HEIGHT_MM 1
/** Bit of lifting_index in `given` of beamcraft_lifting_index_output. */
#define BEAMCRAFT_LIFTING_INDEX_OUTPUT_GIVEN_LIFTING_INDEX 1

/** One lift, shared by one or more people. */
typedef struct beamcraft_lifting_index_input {
  /** Size of this struct in bytes, as the caller's header knows it; set by the init function. */
  uint64_t struct_size;
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Mass lifted, kg. Range 0 to 1000000. */
  double mass_kg;
  /** Number of people who lift; each is taken to carry an equal share, which holds only at equal
   *  distances from the centre of mass. Range 1 to 12. */
  uint32_t persons;
  /** Kept for later: 0. */
  uint32_t reserved_1;
  /** From the mid-point between the ankles out to the middle of the hands, mm. Range 0 to 5000. */
  double reach_mm;
  /** Hands above the floor, mm. Range 0 to 5000. */
  double hand_height_mm;
  /** Vertical travel of the hands, mm. Range 0 to 5000. */
  double travel_mm;
  /** Angle by which the lifter turns from straight ahead, degrees. Range 0 to 180. Initially 0.0. */
  double turn_deg;
  /** Lifts a minute; 0.2, the default, is the least of the method and stands for hanging one beam. Range
   *  0 to 60. Initially 0.2. */
  double lifts_per_min;
  /** How long the work goes on. One of BEAMCRAFT_LIFT_DURATION_*. Initially
   *  BEAMCRAFT_LIFT_DURATION_SHORT. */
  uint32_t duration;
  /** How well the hands hold; a beam without handles is poor, the default. One of
   *  BEAMCRAFT_HAND_COUPLING_*. Initially BEAMCRAFT_HAND_COUPLING_POOR. */
  uint32_t coupling;
  /** Height of the hands where the lift began, mm, for the frequency multiplier; the hand height when
   *  left out. Range 0 to 5000. Optional. */
  double origin_height_mm;
  /** Which of the two printed forms of the equation to use. One of BEAMCRAFT_LIFTING_FORM_*. Initially
   *  BEAMCRAFT_LIFTING_FORM_METRIC. */
  uint32_t form;
  /** Kept for later: 0. */
  uint32_t reserved_2;
} beamcraft_lifting_index_input;

/** Recommended weight and lifting index, with every multiplier. */
typedef struct beamcraft_lifting_index_output {
  /** Which of the optional fields have a value: a sum of the GIVEN constants of this struct. */
  uint64_t given;
  /** Share of one person, kg. */
  double share_kg;
  /** Load constant LC, kg. */
  double load_constant_kg;
  /** Horizontal multiplier HM. */
  double horizontal_multiplier;
  /** Vertical multiplier VM. */
  double vertical_multiplier;
  /** Distance multiplier DM. */
  double distance_multiplier;
  /** Asymmetric multiplier AM. */
  double asymmetric_multiplier;
  /** Frequency multiplier FM. */
  double frequency_multiplier;
  /** Coupling multiplier CM. */
  double coupling_multiplier;
  /** Recommended weight limit RWL, kg; 0 outside the method. */
  double recommended_kg;
  /** Lifting index LI, share over recommended weight; absent outside the method. Only with
   *  BEAMCRAFT_LIFTING_INDEX_OUTPUT_GIVEN_LIFTING_INDEX in `given`. */
  double lifting_index;
  /** Mass beyond the recommended weights of all lifters together, kg; 0 when there is none. */
  double excess_kg;
  /** Where the lift stands. One of BEAMCRAFT_LIFT_STANDING_*. */
  uint32_t standing;
  /** The first limit of the method that the lift lies beyond. One of BEAMCRAFT_LIFT_LIMIT_*. */
  uint32_t limit;
  /** The caution that belongs to these numbers. One of BEAMCRAFT_CAUTION_*. */
  uint32_t caution;
  /** Kept for later: 0. */
  uint32_t reserved_1;
} beamcraft_lifting_index_output;

/** Sets up an input of beamcraft_lifting_index: its size and its initial values. Does nothing for NULL. */
void beamcraft_lifting_index_input_init(beamcraft_lifting_index_input *out_input);

/** Recommended weight limit and lifting index of one lift by the revised NIOSH equation. */
beamcraft_status beamcraft_lifting_index(const beamcraft_lifting_index_input *input,
                                         beamcraft_lifting_index_output *output,
                                         beamcraft_error **out_error);

#ifdef __cplusplus
}  /* extern "C" */
#endif

#endif  /* BEAMCRAFT_H */
