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
 * The whole job: from a spec to a plan, its panels and their solids
 * ---------------------------------------------------------------------------- */

/** A piece of wood. */
#define BEAMCRAFT_PIECE_ADDED 0
/** A piece that is taken out of the wood. */
#define BEAMCRAFT_PIECE_REMOVED 1

/** A whole job: panels, saw settings, cleat, checks, findings. Never changes, so that any number of threads may read it
 *  at once. */
typedef struct beamcraft_plan beamcraft_plan;

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

/** All panels as a binary STL file in mm, one closed surface for each piece; an array buffer of bytes.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; the rest is an array buffer, see the top of the header; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panels_stl(const beamcraft_plan *plan,
                                           uint8_t *buffer,
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

/** How many panels there are.
 *
 *  Pointers:
 *  `plan` is NULL or a live plan; `out_count` is NULL or writable; NULL is refused; `out_error` is NULL or writable. */
beamcraft_status beamcraft_plan_panel_count(const beamcraft_plan *plan,
                                            size_t *out_count,
                                            beamcraft_error **out_error);

/** Name of a panel, that of its show face, such as "front" or "left_end". It comes from the spec and stays the same when
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
/** 7: Detect cables and pipes before drilling into a wall. */
#define BEAMCRAFT_CAUTION_SERVICES 7

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
/** 17: an end without a panel shows the inside of the body */
#define BEAMCRAFT_FINDING_CODE_OPEN_END_SHOWS_INSIDE 17

/* How a total dry film stands to the usual ceiling of 127 µm for sprayed furniture finishes. */
/** 0: Not above the ceiling. */
#define BEAMCRAFT_FILM_CEILING_WITHIN 0
/** 1: Above the ceiling: the film risks going brittle and wrinkling. */
#define BEAMCRAFT_FILM_CEILING_ABOVE 1

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

/* What a check rests on. */
/** 0: A published rule. */
#define BEAMCRAFT_BASIS_CLAUSE 0
/** 1: Statics or geometry, shown in the theory pages. */
#define BEAMCRAFT_BASIS_DERIVED 1
/** 2: The user's number, or a default with its reason. */
#define BEAMCRAFT_BASIS_CHOSEN 2

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
  /** Adjusted withdrawal capacity W'p of the whole holding length, N. Range 0.001 to 10000000. */
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
