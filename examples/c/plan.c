/* Plans the deck of a job file, prints what to order, and writes the job packet where it is told a file for it.
 *
 *     cc -std=c99 -I deck-ffi/include examples/c/plan.c -L target/release -ldeck_ffi -o plan
 *     LD_LIBRARY_PATH=target/release ./plan examples/jobs/plain-20.json packet.pdf
 */
#include "deck.h"

#include <stdio.h>
#include <stdlib.h>

/* The whole of a file, to be freed by the caller; NULL where it cannot be read. */
static char *read_file(const char *path, int64_t *length) {
    FILE *file = fopen(path, "rb");
    if (file == NULL) return NULL;
    char *text = NULL;
    long size = -1;
    if (fseek(file, 0, SEEK_END) == 0) size = ftell(file);
    if (size >= 0 && fseek(file, 0, SEEK_SET) == 0) text = malloc((size_t)size + 1);
    if (text != NULL && fread(text, 1, (size_t)size, file) != (size_t)size) {
        free(text);
        text = NULL;
    }
    fclose(file);
    *length = size;
    return text;
}

/* Prints every fault that the last call found, one a line: the field, what is wrong, what would do. */
static void print_faults(void) {
    for (int32_t i = 0; i < deck_last_error_count(); i++) {
        size_t needed = 0;
        if (deck_last_error_at(i, NULL, 0, &needed) != DECK_SHORT_BUFFER) continue;
        char *text = malloc(needed);
        if (text != NULL && deck_last_error_at(i, text, needed, &needed) == DECK_OK) fprintf(stderr, "%s\n", text);
        free(text);
    }
}

/* A text of the plan: asked once for its size and once for itself. It is *text, to be freed by the caller. */
static int32_t text_of(const deck_plan *plan, const char *pointer, char **text) {
    size_t needed = 0;
    int32_t status = deck_plan_text(plan, pointer, NULL, 0, &needed);
    if (status != DECK_SHORT_BUFFER) return status;
    *text = malloc(needed);
    return deck_plan_text(plan, pointer, *text, *text == NULL ? 0 : needed, &needed);
}

static int32_t print_line(const deck_plan *plan, size_t line) {
    char pointer[64];
    double buy = 0;
    char *unit = NULL, *description = NULL;
    snprintf(pointer, sizeof pointer, "/takeoff/lines/%zu/buy", line);
    int32_t status = deck_plan_number(plan, pointer, &buy);
    snprintf(pointer, sizeof pointer, "/takeoff/lines/%zu/unit", line);
    if (status == DECK_OK) status = text_of(plan, pointer, &unit);
    snprintf(pointer, sizeof pointer, "/takeoff/lines/%zu/description", line);
    if (status == DECK_OK) status = text_of(plan, pointer, &description);
    if (status == DECK_OK) printf("%4.0f %-8s %s\n", buy, unit, description);
    free(description);
    free(unit);
    return status;
}

/* A deck that cannot be laid out has a reason in place of an order list. */
static int32_t print_reason(const deck_plan *plan) {
    char *reason = NULL;
    int32_t status = text_of(plan, "/no_layout/reason", &reason);
    if (status == DECK_OK) printf("no layout: %s\n", reason);
    free(reason);
    return status;
}

static int32_t print_order(const deck_plan *plan) {
    size_t panels = 0, lines = 0;
    int32_t status = deck_plan_count(plan, "/panels", &panels);
    if (status == DECK_OK && panels == 0) return print_reason(plan);
    if (status == DECK_OK) status = deck_plan_count(plan, "/takeoff/lines", &lines);
    for (size_t line = 0; status == DECK_OK && line < lines; line++) status = print_line(plan, line);
    return status;
}

int main(int argc, char **argv) {
    if (argc != 2 && argc != 3) {
        fprintf(stderr, "usage: plan JOB.json [PACKET.pdf]\n");
        return 2;
    }
    if (deck_abi_version() != DECK_ABI_VERSION) {
        fprintf(stderr, "deck.h and the library are not of the same version\n");
        return 2;
    }
    int64_t length = 0;
    char *job = read_file(argv[1], &length);
    if (job == NULL) {
        perror(argv[1]);
        return 2;
    }
    deck_plan *plan = NULL;
    int32_t status = deck_plan_new(job, length, &plan);
    free(job);
    if (status == DECK_OK) status = print_order(plan);
    if (status == DECK_OK && argc == 3) status = deck_plan_packet(plan, argv[2]);
    if (status != DECK_OK) print_faults();
    deck_plan_free(plan);
    return status == DECK_OK ? 0 : 1;
}
