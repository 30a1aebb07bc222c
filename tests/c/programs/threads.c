/* A thread's failure is its own: others see none of it, and several may read one plan. */
#include "common.h"
#include "deck.h"

#include <pthread.h>
#include <string.h>

static const char JOB[] =
    "{\"schema\": 1, \"name\": \"Dory\", \"unit\": \"in\", \"deck\": {\"length\": 48, \"beam\": 96},"
    " \"frame\": {\"measured_to\": \"centre\", \"flange\": 2, \"regular\": {\"first\": 0, \"last\": 48, \"spacing\": 24}},"
    " \"stock\": [{\"label\": \"ply\", \"length\": 96, \"width\": 48, \"thickness\": \"3/4\"}], \"gap\": 0}";

static void *fail_and_read(void *argument) {
    const deck_plan *plan = (const deck_plan *)argument;
    char text[256];
    size_t needed = 0;
    for (int i = 0; i < 20; i++) {
        CHECK(deck_last_error_count() == (i > 0 ? 1 : 0));
        CHECK(deck_plan_text(plan, "/job/name", text, sizeof text, &needed) == DECK_OK && strcmp(text, "Dory") == 0);
        CHECK(deck_last_error_count() == 0);
        CHECK(deck_plan_text(plan, "/job/nome", text, sizeof text, &needed) == DECK_UNKNOWN_POINTER);
    }
    return NULL;
}

int main(void) {
    deck_plan *plan = NULL;
    CHECK(deck_plan_new(JOB, -1, &plan) == DECK_OK);
    pthread_t threads[4];
    for (int i = 0; i < 4; i++) CHECK(pthread_create(&threads[i], NULL, fail_and_read, plan) == 0);
    for (int i = 0; i < 4; i++) CHECK(pthread_join(threads[i], NULL) == 0);
    CHECK(deck_last_error_count() == 0);
    CHECK(deck_plan_free(plan) == DECK_OK);
    return 0;
}
