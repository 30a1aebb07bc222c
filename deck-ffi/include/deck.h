/*
 * Plans a new plywood deck for a pontoon boat, from C, C++, VBA, C#, or anything that can call C.
 *
 * A job is a text in JSON; a plan is a handle, read through buffers that belong to the caller. The functions that need no
 * job, such as deck_seams and deck_nest, read a request in JSON and write their answer in JSON. For C++17 there is deck.hpp
 * beside this, with plans that free themselves and exceptions.
 *
 * Installed by deck-ffi/install.sh, a program is built by `cc program.c $(pkg-config --cflags --libs deck)`.
 *
 * These rules hold for every function:
 *
 * - Every function returns a status: DECK_OK, or what went wrong. deck_last_error says it in words. Only
 *   deck_last_error_count and deck_abi_version return what their names say.
 * - Text goes in as a pointer and a count of code units, or -1 where it ends with a NUL. Where a function takes no count,
 *   the text ends with a NUL. Text is copied before the function returns; the caller keeps it. Text that is longer than
 *   DECK_MAX_TEXT, or is not what it should be (UTF-8, or UTF-16 in the functions that end in _utf16), is refused.
 * - Text comes out in a buffer of the caller's with room for `cap` code units. It ends with a NUL. `needed` receives the
 *   code units it takes, the NUL counted. A buffer that is too short, NULL with a `cap` of 0 for one, is left as it is,
 *   `needed` is set all the same, and the status is DECK_SHORT_BUFFER: ask once for the size, once for the text.
 * - Else nothing is written to outputs where the status is not DECK_OK. Set a handle to NULL before it is filled.
 * - NULL is refused with a status of its own, except where a handle is freed: freeing NULL does nothing.
 * - A deck_plan belongs to the caller from the call that fills it to deck_plan_free, and is freed once. A plan does not
 *   change: any number of threads may read it at once. None may read it while, or after, it is freed: a handle that is
 *   freed cannot be told from one that is not, so no status warns of it, and anything may come of it.
 * - The last error belongs to the thread: each call replaces its own thread's, a call that succeeds by none. Only
 *   deck_plan_free, deck_status_text, deck_abi_version and the functions of the last error leave it as it is.
 * - A failure inside the library is caught and returned as DECK_PANIC. No handle is harmed by it.
 * - A function that ends in _utf16 does what its namesake does, with code units of 16 bits, for VBA and C#. It takes a
 *   count with every text that goes in.
 * - Status numbers are fixed for good. Those below 100 are of this border; those from 101 on are about the job, and each
 *   fault has the JSON pointer of its field.
 *
 * Made by cbindgen from deck-ffi/src. Do not edit.
 */

#ifndef DECK_H
#define DECK_H

#include <stddef.h>
#include <stdint.h>

/**
 * The number of the border that this header describes. It rises where a program built for an older one would break.
 */
#define DECK_ABI_VERSION 1

/**
 * Done.
 */
#define DECK_OK 0

/**
 * A pointer that is NULL where one is needed.
 */
#define DECK_NULL_POINTER 1

/**
 * Text that is not UTF-8, or not UTF-16 in a function that ends in _utf16.
 */
#define DECK_NOT_TEXT 2

/**
 * A buffer that is too short; `needed` says what the text takes.
 */
#define DECK_SHORT_BUFFER 3

/**
 * A failure inside the library, which is a fault of ours.
 */
#define DECK_PANIC 4

/**
 * A size of a text or a buffer that cannot be, or is beyond DECK_MAX_TEXT.
 */
#define DECK_BAD_SIZE 5

/**
 * An error index that the last error does not have.
 */
#define DECK_NO_SUCH_ERROR 6

/**
 * A status number that no function returns.
 */
#define DECK_NO_SUCH_STATUS 7

/**
 * A length that cannot be read.
 */
#define DECK_LENGTH_UNREADABLE 101

/**
 * A length in a unit that is not known.
 */
#define DECK_LENGTH_UNKNOWN_UNIT 102

/**
 * A length with two units that do not belong together.
 */
#define DECK_LENGTH_TWO_UNITS 103

/**
 * A length that is NaN or infinite.
 */
#define DECK_LENGTH_NOT_FINITE 104

/**
 * A length beyond what a boat or a shop holds.
 */
#define DECK_LENGTH_TOO_LARGE 105

/**
 * A length below zero where none can be.
 */
#define DECK_LENGTH_NEGATIVE 106

/**
 * A length of zero where something must be left.
 */
#define DECK_LENGTH_ZERO 107

/**
 * An amount of money that cannot be read.
 */
#define DECK_MONEY_UNREADABLE 121

/**
 * An amount of money below zero.
 */
#define DECK_MONEY_NEGATIVE 122

/**
 * Text that is not JSON.
 */
#define DECK_NOT_JSON 201

/**
 * A field that the schema does not have.
 */
#define DECK_UNKNOWN_FIELD 202

/**
 * A measurement that is required and not there.
 */
#define DECK_MISSING_FIELD 203

/**
 * A value of the wrong type.
 */
#define DECK_WRONG_TYPE 204

/**
 * A word that is not one of those a field accepts.
 */
#define DECK_UNKNOWN_WORD 205

/**
 * A number outside what a field accepts.
 */
#define DECK_OUT_OF_RANGE 206

/**
 * Two fields that exclude each other.
 */
#define DECK_CONFLICT 207

/**
 * A schema number that this version does not read.
 */
#define DECK_SCHEMA_NUMBER 208

/**
 * A list that must hold something.
 */
#define DECK_EMPTY_LIST 209

/**
 * A name that is used twice.
 */
#define DECK_DUPLICATE_NAME 210

/**
 * An outline that crosses or touches itself.
 */
#define DECK_OUTLINE_CROSSES_ITSELF 301

/**
 * An outline with too few corners to enclose anything.
 */
#define DECK_OUTLINE_TOO_FEW_CORNERS 302

/**
 * An arc whose radius cannot reach both of its ends.
 */
#define DECK_OUTLINE_ARC_TOO_SMALL 303

/**
 * A corner or taper too large for the sides it joins.
 */
#define DECK_OUTLINE_CORNER_TOO_LARGE 304

/**
 * A notch that does not fit the stern.
 */
#define DECK_OUTLINE_NOTCH_OUTSIDE 305

/**
 * An outline that does not start at the bow and port reference edges.
 */
#define DECK_OUTLINE_DATUM 306

/**
 * Old seams that are not in order, or not within the deck.
 */
#define DECK_PATCH_SEAMS 311

/**
 * A damaged place that encloses nothing, or lies off the deck.
 */
#define DECK_PATCH_DAMAGE 312

/**
 * A cross member that lies outside the deck.
 */
#define DECK_FRAME_MEMBER_OUTSIDE 401

/**
 * Cross members that are not in order from the bow.
 */
#define DECK_FRAME_OUT_OF_ORDER 402

/**
 * Cross members that overlap.
 */
#define DECK_FRAME_OVERLAP 403

/**
 * A cross member whose port end is not to port of its starboard end.
 */
#define DECK_FRAME_ENDS_REVERSED 404

/**
 * A regular spacing that does not go from the first to the last.
 */
#define DECK_FRAME_SPACING 405

/**
 * Readings at a cross member's ends that are not both given, or further off than boards can follow.
 */
#define DECK_FRAME_SKEW 406

/**
 * An opening that does not lie within the deck.
 */
#define DECK_OPENING_OUTSIDE 501

/**
 * Two openings that overlap.
 */
#define DECK_OPENING_OVERLAP 502

/**
 * An opening's corner radius that is too large for its sides.
 */
#define DECK_OPENING_CORNER_TOO_LARGE 503

/**
 * A keep-clear zone that does not touch the deck.
 */
#define DECK_ZONE_OUTSIDE 504

/**
 * An old hole that is in no member.
 */
#define DECK_OLD_HOLE_OUTSIDE 505

/**
 * A slot that does not open to the edge that it names.
 */
#define DECK_OPENING_SLOT 506

/**
 * A lid of which nothing is left, or that laps too far.
 */
#define DECK_LID_SIZE 507

/**
 * A fitting whose sizes contradict each other.
 */
#define DECK_FITTING_SIZE 508

/**
 * Prices given for some bought sheets and not for all.
 */
#define DECK_STOCK_PRICE_MISSING 601

/**
 * A measured sheet that cannot be the nominal one.
 */
#define DECK_STOCK_MEASURED_SIZE 602

/**
 * An edge trim or kerf that leaves nothing of a sheet.
 */
#define DECK_SAW_TRIM_TOO_LARGE 603

/**
 * A fastener spacing that cannot be laid out.
 */
#define DECK_FASTENER_SPACING 701

/**
 * A fastener whose sizes contradict each other.
 */
#define DECK_FASTENER_SIZE 702

/**
 * Values given for some parts and not for all.
 */
#define DECK_NEST_VALUE_MISSING 801

/**
 * A number of cutting stages that no saw has.
 */
#define DECK_NEST_STAGES 802

/**
 * More of something than can be worked on.
 */
#define DECK_TOO_MANY 803

/**
 * Waste inside a part that is not within it, or overlaps other waste.
 */
#define DECK_NEST_INSIDE 805

/**
 * A drawing view that the plan does not have.
 */
#define DECK_UNKNOWN_VIEW 901

/**
 * A file that cannot be written.
 */
#define DECK_CANNOT_WRITE 902

/**
 * A file that cannot be read.
 */
#define DECK_CANNOT_READ 903

/**
 * A JSON pointer that leads to nothing of that type.
 */
#define DECK_UNKNOWN_POINTER 904

/**
 * A point that the readings do not hold in place.
 */
#define DECK_SURVEY_POINT_LOOSE 1001

/**
 * A survey that does not say from where and which way it counts.
 */
#define DECK_SURVEY_DATUM 1002

/**
 * A trace that cannot be placed or fitted.
 */
#define DECK_SURVEY_TRACE 1003

/**
 * A name of a point that no reading has.
 */
#define DECK_SURVEY_POINT_UNKNOWN 1004

/**
 * A reading whose points or parts contradict each other.
 */
#define DECK_SURVEY_READING 1005

/**
 * Readings that no places of the points come near to.
 */
#define DECK_SURVEY_NOT_SOLVED 1006

/**
 * Something that is taken from a survey which does not give it.
 */
#define DECK_SURVEY_WANTED 1007

/**
 * A figure that cannot be taken exactly.
 */
#define DECK_FIGURE_UNREADABLE 1101

/**
 * A low, a likely and a high figure that are not in order.
 */
#define DECK_THREE_POINT_ORDER 1102

/**
 * A pit that is as deep as the wall is thick, or deeper.
 */
#define DECK_PIT_TOO_DEEP 1103

/**
 * The longest text that goes in, in code units without the NUL. The longest of job files has less than a tenth of it.
 */
#define DECK_MAX_TEXT 16777216

/**
 * A plan. Belongs to the caller until deck_plan_free; any number of threads may read it at once.
 */
typedef struct deck_plan deck_plan;

/**
 * Is told how far the filling of a sheet has come; goes on where it returns 0, and stops at once with the best answer so
 * far where it returns anything else.
 *
 * `user` is what the caller handed in. `done` of at most `of` steps are done; a search may end sooner. The best answer so
 * far is worth `value`; none is worth more than `bound`; `proven` is 1 once no better answer exists, 0 before. Where no
 * part has a value, both are areas in the square of the request's unit.
 *
 * It is called in the thread of the call, each million steps, and at the end: at the same steps on every machine. It must
 * return: no exception and no longjmp may leave it.
 */
typedef int32_t (*deck_fill_progress)(void *user,
                                      double done,
                                      double of,
                                      double value,
                                      double bound,
                                      int32_t proven);

/**
 * Is told how far a search has come; goes on where it returns 0, and stops at once with the best answer so far where it
 * returns anything else.
 *
 * `user` is what the caller handed in. `done` of at most `of` steps are done; a search may end sooner. In the best answer
 * so far, parts of the area `unplaced` found no place, and the sheets cost `cost`; no answer that places as much costs less
 * than `bound`; `proven` is 1 once no better answer exists, 0 before. Areas are in the square of the request's unit; so are
 * costs where no sheet has a price.
 *
 * It is called in the thread of the call, after the first answer, then each million steps, and at the end: at the same
 * steps on every machine. It must return: no exception and no longjmp may leave it.
 */
typedef int32_t (*deck_progress)(void *user,
                                 double done,
                                 double of,
                                 double unplaced,
                                 double cost,
                                 double bound,
                                 int32_t proven);

#ifdef __cplusplus
extern "C" {
#endif // __cplusplus

/**
 * Finds the most valuable set of parts that can be cut from one sheet: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of sheet, parts, kerf, trim, stages, first, keep, effort ("quick", "standard", "thorough", or
 * a number of steps) and unit ("in" where it is left out). Only sheet and parts are required. The count of a part may be
 * null: as many as fit. Values are given for all parts or for none; then a part is worth its area. Lengths in the answer
 * are numbers in the request's unit. The same request gives the same bytes as from Rust and Python.
 *
 * An answer that the buffer was too short for is kept for the thread's next call: asked for the same, it is not worked out
 * again.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
 * everything that is wrong with the request is in the last error.
 */
int32_t deck_fill(const char *json,
                  int64_t len,
                  char *buf,
                  size_t cap,
                  size_t *needed);

/**
 * As deck_fill, in UTF-16.
 */
int32_t deck_fill_utf16(const uint16_t *json,
                        int64_t len,
                        uint16_t *buf,
                        size_t cap,
                        size_t *needed);

/**
 * As deck_fill, while `progress` looks on and may stop it. A search that is stopped has an answer as well.
 *
 * `progress` is not called where the answer was kept by the call before.
 *
 * # Ownership
 * All that is handed in stays the caller's; `user` is handed on and not looked at.
 *
 * # Threads
 * Any; `progress` is called in the same one, with `user` as it is.
 *
 * # Statuses
 * As deck_fill.
 */
int32_t deck_fill_watched(const char *json,
                          int64_t len,
                          char *buf,
                          size_t cap,
                          size_t *needed,
                          deck_fill_progress progress,
                          void *user);

/**
 * As deck_fill_watched, in UTF-16.
 */
int32_t deck_fill_watched_utf16(const uint16_t *json,
                                int64_t len,
                                uint16_t *buf,
                                size_t cap,
                                size_t *needed,
                                deck_fill_progress progress,
                                void *user);

/**
 * The number of the library's border, to be compared with DECK_ABI_VERSION. This is the number itself and not a status.
 *
 * # Threads
 * Any. The last error stays as it is.
 */
int32_t deck_abi_version(void);

/**
 * Writes the JSON Schema (draft 2020-12) of a job.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
 */
int32_t deck_job_schema(char *buf, size_t cap, size_t *needed);

/**
 * As deck_job_schema, in UTF-16.
 */
int32_t deck_job_schema_utf16(uint16_t *buf, size_t cap, size_t *needed);

/**
 * Writes what is wrong, after the JSON pointer of the field: the first fault, where there are several.
 *
 * It is empty where the thread's last call succeeded.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Each thread sees its own. The last error stays as it is.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
 */
int32_t deck_last_error(char *buf,
                        size_t cap,
                        size_t *needed);

/**
 * As deck_last_error, in UTF-16.
 */
int32_t deck_last_error_utf16(uint16_t *buf, size_t cap, size_t *needed);

/**
 * How many faults the thread's last call found: 0 where it succeeded. This is the count itself and not a status.
 *
 * # Threads
 * Each thread sees its own. The last error stays as it is.
 */
int32_t deck_last_error_count(void);

/**
 * Writes what deck_last_error writes, for the fault of that index, from 0 on. Faults of a job are in its own order.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Each thread sees its own. The last error stays as it is.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_NO_SUCH_ERROR, DECK_PANIC.
 */
int32_t deck_last_error_at(int32_t index,
                           char *buf,
                           size_t cap,
                           size_t *needed);

/**
 * As deck_last_error_at, in UTF-16.
 */
int32_t deck_last_error_at_utf16(int32_t index, uint16_t *buf, size_t cap, size_t *needed);

/**
 * Writes the JSON pointer alone (RFC 6901) of the fault of that index, for a program that marks the field.
 *
 * It is empty where the fault is about the whole of the text, or about the call.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Each thread sees its own. The last error stays as it is.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_NO_SUCH_ERROR, DECK_PANIC.
 */
int32_t deck_last_error_pointer(int32_t index,
                                char *buf,
                                size_t cap,
                                size_t *needed);

/**
 * As deck_last_error_pointer, in UTF-16.
 */
int32_t deck_last_error_pointer_utf16(int32_t index, uint16_t *buf, size_t cap, size_t *needed);

/**
 * Reads a length as a job's are read, and writes it as a plan's are: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of length (a number in the unit, or a text such as 7' 10-1/2" or 2400 mm), fractions (16: the
 * finest fraction of an inch that is written), feet (whether 12 inches and more are written in feet and inches) and unit
 * ("in" where it is left out). Only length is required. The answer has length, a number in the unit, and text.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
 * everything that is wrong with the request is in the last error.
 */
int32_t deck_length(const char *json,
                    int64_t len,
                    char *buf,
                    size_t cap,
                    size_t *needed);

/**
 * As deck_length, in UTF-16.
 */
int32_t deck_length_utf16(const uint16_t *json,
                          int64_t len,
                          uint16_t *buf,
                          size_t cap,
                          size_t *needed);

/**
 * Lays parts out on sheets: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of parts, stock, kerf, trim, stages, first, keep, effort ("quick", "standard", "thorough", or
 * a number of steps) and unit ("in" where it is left out). Only parts and stock are required. A part that finds no place is
 * no error: it is listed in the answer under unplaced. Lengths in the answer are numbers in the request's unit. The same
 * request gives the same bytes as from Rust and Python.
 *
 * An answer that the buffer was too short for is kept for the thread's next call: asked for the same, it is not worked out
 * again.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
 * everything that is wrong with the request is in the last error.
 */
int32_t deck_nest(const char *json,
                  int64_t len,
                  char *buf,
                  size_t cap,
                  size_t *needed);

/**
 * As deck_nest, in UTF-16.
 */
int32_t deck_nest_utf16(const uint16_t *json,
                        int64_t len,
                        uint16_t *buf,
                        size_t cap,
                        size_t *needed);

/**
 * As deck_nest, while `progress` looks on and may stop it. A search that is stopped has an answer as well.
 *
 * `progress` is not called where the answer was kept by the call before.
 *
 * # Ownership
 * All that is handed in stays the caller's; `user` is handed on and not looked at.
 *
 * # Threads
 * Any; `progress` is called in the same one, with `user` as it is.
 *
 * # Statuses
 * As deck_nest.
 */
int32_t deck_nest_watched(const char *json,
                          int64_t len,
                          char *buf,
                          size_t cap,
                          size_t *needed,
                          deck_progress progress,
                          void *user);

/**
 * As deck_nest_watched, in UTF-16.
 */
int32_t deck_nest_watched_utf16(const uint16_t *json,
                                int64_t len,
                                uint16_t *buf,
                                size_t cap,
                                size_t *needed,
                                deck_progress progress,
                                void *user);

/**
 * Plans a job: reads its JSON, and fills `plan` with a handle.
 *
 * A job that can be read but not laid out is a plan too, with the reason at /no_layout.
 *
 * # Ownership
 * The plan is the caller's, to be freed with deck_plan_free. `json` stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on: everything that is wrong with
 * the job is in the last error.
 */
int32_t deck_plan_new(const char *json,
                      int64_t len,
                      deck_plan **plan);

/**
 * As deck_plan_new, in UTF-16.
 */
int32_t deck_plan_new_utf16(const uint16_t *json, int64_t len, deck_plan **plan);

/**
 * Frees a plan; NULL is left alone.
 *
 * # Ownership
 * The handle is nobody's after this. It must not be used, and not be freed again: no status tells of that, and anything
 * may come of it.
 *
 * # Threads
 * Any, while no other uses the plan. The last error stays as it is.
 *
 * # Statuses
 * DECK_OK, DECK_PANIC.
 */
int32_t deck_plan_free(deck_plan *plan);

/**
 * Writes the plan's JSON: the same bytes as from Rust and Python.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
 */
int32_t deck_plan_json(const deck_plan *plan, char *buf, size_t cap, size_t *needed);

/**
 * As deck_plan_json, in UTF-16.
 */
int32_t deck_plan_json_utf16(const deck_plan *plan, uint16_t *buf, size_t cap, size_t *needed);

/**
 * Reads one number of the plan, by a JSON pointer (RFC 6901) that ends with a NUL, such as /deck/length.
 *
 * Lengths are in the job's unit. True is 1 and false is 0.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_POINTER.
 */
int32_t deck_plan_number(const deck_plan *plan,
                         const char *json_pointer,
                         double *value);

/**
 * As deck_plan_number, in UTF-16.
 */
int32_t deck_plan_number_utf16(const deck_plan *plan,
                               const uint16_t *json_pointer,
                               int64_t len,
                               double *value);

/**
 * Counts what is in a list or an object of the plan, by a JSON pointer that ends with a NUL, such as /takeoff/lines.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_POINTER.
 */
int32_t deck_plan_count(const deck_plan *plan,
                        const char *json_pointer,
                        size_t *count);

/**
 * As deck_plan_count, in UTF-16.
 */
int32_t deck_plan_count_utf16(const deck_plan *plan,
                              const uint16_t *json_pointer,
                              int64_t len,
                              size_t *count);

/**
 * Writes one text of the plan, by a JSON pointer that ends with a NUL, such as /takeoff/lines/0/description.
 *
 * The length that a person reads stands beside each number as its name with _text, such as /deck/length_text.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_POINTER.
 */
int32_t deck_plan_text(const deck_plan *plan,
                       const char *json_pointer,
                       char *buf,
                       size_t cap,
                       size_t *needed);

/**
 * As deck_plan_text, in UTF-16.
 */
int32_t deck_plan_text_utf16(const deck_plan *plan,
                             const uint16_t *json_pointer,
                             int64_t len,
                             uint16_t *buf,
                             size_t cap,
                             size_t *needed);

/**
 * Writes the names of the plan's views as a JSON array of texts, in the order of the packet.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
 */
int32_t deck_plan_views(const deck_plan *plan, char *buf, size_t cap, size_t *needed);

/**
 * As deck_plan_views, in UTF-16.
 */
int32_t deck_plan_views_utf16(const deck_plan *plan, uint16_t *buf, size_t cap, size_t *needed);

/**
 * Writes one view as SVG, on the plan's own paper: the same bytes as from Rust.
 *
 * `view` is a name from deck_plan_views that ends with a NUL, such as plan or saw-1. Each call draws anew, which takes some
 * milliseconds: a buffer with room enough at once, such as that of the view before, saves the call for the size.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, DECK_UNKNOWN_VIEW: the last
 * error then tells which views there are.
 */
int32_t deck_plan_svg(const deck_plan *plan,
                      const char *view,
                      char *buf,
                      size_t cap,
                      size_t *needed);

/**
 * As deck_plan_svg, in UTF-16.
 */
int32_t deck_plan_svg_utf16(const deck_plan *plan,
                            const uint16_t *view,
                            int64_t len,
                            uint16_t *buf,
                            size_t cap,
                            size_t *needed);

/**
 * Writes the job packet to a file: every view as a page of one PDF, on the plan's own paper.
 *
 * `path` is UTF-8 on every system, and ends with a NUL. It starts from the working directory where it is not absolute.
 * The folder must be there. A file of that name is replaced; where the disk fills up meanwhile, part of the packet is
 * left.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once, each writing a file of its own.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_BAD_SIZE, DECK_PANIC, DECK_CANNOT_WRITE: the last error then gives the
 * system's reason.
 */
int32_t deck_plan_packet(const deck_plan *plan,
                         const char *path);

/**
 * As deck_plan_packet, in UTF-16.
 */
int32_t deck_plan_packet_utf16(const deck_plan *plan, const uint16_t *path, int64_t len);

/**
 * Writes the plan's quote as comma-separated values (RFC 4180), the total in the last row; the empty text where the job
 * asks for no quote.
 *
 * # Ownership
 * The plan stays the caller's, and so does all else that is handed in.
 *
 * # Threads
 * Any; several may read one plan at once.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC.
 */
int32_t deck_plan_quote_csv(const deck_plan *plan,
                            char *buf,
                            size_t cap,
                            size_t *needed);

/**
 * As deck_plan_quote_csv, in UTF-16.
 */
int32_t deck_plan_quote_csv_utf16(const deck_plan *plan, uint16_t *buf, size_t cap, size_t *needed);

/**
 * The allowable uniform loads of a panel on equal spans: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of panel, spacing, axis ("across" or "along" the supports the strength axis), spans (1, 2, or 3
 * for three and more), support, clear_span, deflection (360), wet (false), duration (1), width and unit ("in" where it is
 * left out). Only the first four are required. A panel is {"series", "rating"} in the words of the published tables, the
 * user's own {"ei", "mr", "fs"}, sections, or plies. The answer has the loads in psf under deflection, bending and shear,
 * the one that is governing, and the source of each; or no_figure, with the reason. It is a figure for a person to judge,
 * and no load rating.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
 * everything that is wrong with the request is in the last error.
 */
int32_t deck_span_limits(const char *json,
                         int64_t len,
                         char *buf,
                         size_t cap,
                         size_t *needed);

/**
 * As deck_span_limits, in UTF-16.
 */
int32_t deck_span_limits_utf16(const uint16_t *json,
                               int64_t len,
                               uint16_t *buf,
                               size_t cap,
                               size_t *needed);

/**
 * Reactions, moments, shears and deflections of a beam over several supports: reads a request in JSON, writes the answer
 * in JSON.
 *
 * The request is an object of spans, loads, overhangs ([left, right]), stiffness (EI, 1 where it is left out), ends (two of
 * "simple" and "fixed") and unit (that of lengths written as texts). Only spans and loads are required. A load is
 * {"kind", "at", "size", "value"}: "uniform" is force per length, a "patch" is a force spread over size, a "point" has no
 * size; at is its middle, from the left tip. Any consistent units will do. Downward loads, sagging moments and downward
 * deflections are positive.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * As deck_span_limits.
 */
int32_t deck_beam(const char *json,
                  int64_t len,
                  char *buf,
                  size_t cap,
                  size_t *needed);

/**
 * As deck_beam, in UTF-16.
 */
int32_t deck_beam_utf16(const uint16_t *json,
                        int64_t len,
                        uint16_t *buf,
                        size_t cap,
                        size_t *needed);

/**
 * Deflections, moments and reactions of an orthotropic plate: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of length, width, dx, dy (bending rigidities, force times length), torsion (H = dx nu_y + 2 Dxy),
 * poisson ([nu_x, nu_y]), supports, loads, mesh (the largest side of an element) and unit (that of lengths written as
 * texts). Poisson, mesh and unit may be left out. A support is {"kind": "across", "x"} or {"kind": "along", "y"}, perhaps
 * with "between": [from, to] and "clamped": true, or {"kind": "point", "at": [x, y]}. A load is {"kind", "at": [x, y],
 * "size": [length, width], "value"}: "uniform" is force per area, a "patch" is a force spread over size, a "line" is force
 * per length, a "point" has no size; at is its middle. Any consistent units will do. Downward loads, sagging moments and
 * downward deflections are positive.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * As deck_span_limits.
 */
int32_t deck_plate(const char *json,
                   int64_t len,
                   char *buf,
                   size_t cap,
                   size_t *needed);

/**
 * As deck_plate, in UTF-16.
 */
int32_t deck_plate_utf16(const uint16_t *json,
                         int64_t len,
                         uint16_t *buf,
                         size_t cap,
                         size_t *needed);

/**
 * What a status means, in a line.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any. The last error stays as it is.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_NO_SUCH_STATUS, DECK_PANIC.
 */
int32_t deck_status_text(int32_t status, char *buf, size_t cap, size_t *needed);

/**
 * As deck_status_text, in UTF-16.
 */
int32_t deck_status_text_utf16(int32_t status, uint16_t *buf, size_t cap, size_t *needed);

/**
 * Finds where a deck splits into boards: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of frame, deck_length, sheet (or a list of them), outline, gap (0), bearing, keep_clear,
 * openings, fastening, best (1: how many layouts), end_tolerance, saw, shop and unit ("in" where it is left out). Only frame
 * and sheet are required, and deck_length where there is no outline, which is the job file's "deck". Everything else is
 * the job file's field of that name, with the job's defaults; those are also taken for a gap or a bearing of null.
 *
 * The answer has layouts, best first and each as it stands in a plan; no_layout, the reason where there is none; and proven.
 * That there is no layout is no failure. Lengths in the answer are numbers in the request's unit, and beside them as the shop
 * writes them.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * DECK_OK, DECK_NULL_POINTER, DECK_NOT_TEXT, DECK_SHORT_BUFFER, DECK_BAD_SIZE, DECK_PANIC, and those from 101 on:
 * everything that is wrong with the request is in the last error.
 */
int32_t deck_seams(const char *json,
                   int64_t len,
                   char *buf,
                   size_t cap,
                   size_t *needed);

/**
 * As deck_seams, in UTF-16.
 */
int32_t deck_seams_utf16(const uint16_t *json,
                         int64_t len,
                         uint16_t *buf,
                         size_t cap,
                         size_t *needed);

/**
 * Cuts the boards in their true shape: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of outline (the job file's "deck"), seams, gap (0), finish, openings, thickness, shop and unit.
 * Only outline and seams are required. Seams are the answer of deck_seams as it is, of which the first layout is taken; or
 * a layout; or a list of stations at which boards end, with gap aft of each. Without a thickness no panel has a weight.
 *
 * The answer is a list of panels, each as it stands in a plan.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * As deck_seams. An answer of deck_seams without a layout gives DECK_EMPTY_LIST.
 */
int32_t deck_panels(const char *json,
                    int64_t len,
                    char *buf,
                    size_t cap,
                    size_t *needed);

/**
 * As deck_panels, in UTF-16.
 */
int32_t deck_panels_utf16(const uint16_t *json,
                          int64_t len,
                          uint16_t *buf,
                          size_t cap,
                          size_t *needed);

/**
 * Places the fasteners: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of panels (the answer of deck_panels as it is), frame, outline, fastening, shop and unit. Only
 * panels and frame are required; the outline may be left out where all panels of the deck are given.
 *
 * The answer has rows, count, edge_count and field_count, as they stand in a plan.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * As deck_seams.
 */
int32_t deck_fasteners(const char *json,
                       int64_t len,
                       char *buf,
                       size_t cap,
                       size_t *needed);

/**
 * As deck_fasteners, in UTF-16.
 */
int32_t deck_fasteners_utf16(const uint16_t *json,
                             int64_t len,
                             uint16_t *buf,
                             size_t cap,
                             size_t *needed);

/**
 * Finds where measured points lie, and which readings are wrong: reads a request in JSON, writes the answer in JSON.
 *
 * The request is an object of readings, datum, corners, known, error, traces, old_boards, outline, members, lie, shop and unit
 * ("in" where it is left out): the fields of a job's "survey". Only readings is required, and datum where there are no corners.
 *
 * The answer has points with their deviations, readings with residuals and reliability, blunders (readings that disagree with
 * the rest and were left out), squaring, traces as lines and arcs, old_boards, outline and members as a job takes them, and a
 * summary in sentences. That a reading is wrong is no failure.
 *
 * # Ownership
 * All that is handed in stays the caller's.
 *
 * # Threads
 * Any.
 *
 * # Statuses
 * As deck_seams. Readings that do not hold a point in place give DECK_SURVEY_POINT_LOOSE.
 */
int32_t deck_survey(const char *json,
                    int64_t len,
                    char *buf,
                    size_t cap,
                    size_t *needed);

/**
 * As deck_survey, in UTF-16.
 */
int32_t deck_survey_utf16(const uint16_t *json,
                          int64_t len,
                          uint16_t *buf,
                          size_t cap,
                          size_t *needed);

#ifdef __cplusplus
}  // extern "C"
#endif  // __cplusplus

#endif  /* DECK_H */
