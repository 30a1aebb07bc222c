/* Threads that plan, nest, fill and fail at the same time, each with texts of its own: what one is told is what it would be
 * told alone, down to the reason of its failure. */
#include "common.h"
#include "deck.h"

#include <pthread.h>
#include <string.h>

enum { THREADS = 6, ROUNDS = 6 };

typedef struct {
    int number;
    char *alone;
} task;

typedef int32_t (*ask)(const char *, int64_t, char *, size_t, size_t *);

static int32_t look_on(void *user, double done, double of, double unplaced, double cost, double bound, int32_t proven) {
    (void)of, (void)unplaced, (void)cost, (void)bound, (void)proven;
    CHECK(done >= *(double *)user);
    *(double *)user = done;
    return 0;
}

/* Both asked for the size first: what is kept for the next call is the thread's own, whatever others ask between. */
static char *answer(ask function, const char *request) {
    size_t needed = 0;
    CHECK(function(request, -1, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *text = (char *)malloc(needed);
    CHECK(text != NULL && function(request, -1, text, needed, &needed) == DECK_OK);
    return text;
}

/* A nest, the same one watched, a fill and a plan of the thread's own sizes, put together. */
static char *work(int number) {
    char nest[512], fill[512], job[512];
    snprintf(nest, sizeof nest,
             "{\"effort\": 3000, \"stock\": [{\"label\": \"ply\", \"length\": 96, \"width\": 48}], \"parts\": ["
             "{\"label\": \"a%d\", \"length\": %d, \"width\": 17, \"count\": 7}, {\"label\": \"b\", \"length\": 29, \"width\": 13, \"count\": 9}]}",
             number, 31 + number);
    snprintf(fill, sizeof fill,
             "{\"effort\": 2000, \"sheet\": {\"label\": \"rest\", \"length\": 40, \"width\": 36}, \"parts\": ["
             "{\"label\": \"a%d\", \"length\": %d, \"width\": 7, \"count\": null}]}",
             number, 9 + number);
    snprintf(job, sizeof job,
             "{\"schema\": 1, \"name\": \"Dory %d\", \"unit\": \"in\", \"deck\": {\"length\": 48, \"beam\": %d},"
             " \"frame\": {\"measured_to\": \"centre\", \"flange\": 2, \"regular\": {\"first\": 0, \"last\": 48, \"spacing\": 24}},"
             " \"stock\": [{\"label\": \"ply\", \"length\": 96, \"width\": 48, \"thickness\": \"3/4\"}], \"gap\": 0}",
             number, 80 + number);
    char *nested = answer(deck_nest, nest), *filled = answer(deck_fill, fill);

    size_t needed = 0;
    double done = 0;
    CHECK(deck_nest_watched(nest, -1, NULL, 0, &needed, look_on, &done) == DECK_SHORT_BUFFER);
    char *watched = (char *)malloc(needed);
    CHECK(watched != NULL && deck_nest_watched(nest, -1, watched, needed, &needed, look_on, &done) == DECK_OK);
    CHECK(strcmp(watched, nested) == 0);
    free(watched);

    deck_plan *plan = NULL;
    CHECK(deck_plan_new(job, -1, &plan) == DECK_OK);
    CHECK(deck_plan_json(plan, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *all = (char *)calloc(strlen(nested) + strlen(filled) + needed, 1);
    CHECK(all != NULL && deck_plan_json(plan, all, needed, &needed) == DECK_OK);
    strcat(strcat(all, nested), filled);
    CHECK(deck_plan_free(plan) == DECK_OK);
    free(filled);
    free(nested);
    return all;
}

/* A failure with a name of the thread's own, read back after other threads had theirs. */
static void fail(int number, int round) {
    char request[128], text[256], expected[64];
    size_t needed = 0;
    snprintf(request, sizeof request, "{\"spans\": [9], \"loads\": [], \"x%d_%d\": 1, \"ends\": 4}", number, round);
    snprintf(expected, sizeof expected, "/x%d_%d: unknown field.", number, round);
    CHECK(deck_beam(request, -1, NULL, 0, &needed) == DECK_UNKNOWN_FIELD && deck_last_error_count() == 2);
    CHECK(deck_last_error(text, sizeof text, &needed) == DECK_OK && strncmp(text, expected, strlen(expected)) == 0);
    CHECK(deck_last_error_pointer(1, text, sizeof text, &needed) == DECK_OK && strcmp(text, "/ends") == 0);
}

static void *hammer(void *argument) {
    const task *it = (const task *)argument;
    for (int round = 0; round < ROUNDS; round++) {
        fail(it->number, round);
        char *together = work(it->number);
        CHECK(deck_last_error_count() == 0);
        CHECK(strcmp(together, it->alone) == 0);
        free(together);
    }
    return NULL;
}

int main(void) {
    task tasks[THREADS];
    pthread_t threads[THREADS];
    for (int i = 0; i < THREADS; i++) tasks[i] = (task){i, work(i)};
    for (int i = 0; i < THREADS; i++) CHECK(pthread_create(&threads[i], NULL, hammer, &tasks[i]) == 0);
    for (int i = 0; i < THREADS; i++) CHECK(pthread_join(threads[i], NULL) == 0);
    for (int i = 0; i < THREADS; i++) free(tasks[i].alone);
    CHECK(deck_last_error_count() == 0);
    return 0;
}
