/* Breaks a rule of deck.h, by name: a checker of memory must see it. */
#include "common.h"
#include "deck.h"

static const char JOB[] =
    "{\"schema\": 1, \"name\": \"Dory\", \"unit\": \"in\", \"deck\": {\"length\": 48, \"beam\": 96},"
    " \"frame\": {\"measured_to\": \"centre\", \"flange\": 2, \"regular\": {\"first\": 0, \"last\": 48, \"spacing\": 24}},"
    " \"stock\": [{\"label\": \"ply\", \"length\": 96, \"width\": 48, \"thickness\": \"3/4\"}], \"gap\": 0}";

int main(int argc, char **argv) {
    CHECK(argc == 2);
    deck_plan *plan = NULL;
    CHECK(deck_plan_new(JOB, -1, &plan) == DECK_OK);
    if (strcmp(argv[1], "overrun") == 0) {
        size_t needed = 0;
        CHECK(deck_plan_json(plan, NULL, 0, &needed) == DECK_SHORT_BUFFER);
        char *json = (char *)malloc(needed);
        CHECK(json != NULL && deck_plan_json(plan, json, needed, &needed) == DECK_OK);
        int letter = json[needed];
        free(json);
        CHECK(deck_plan_free(plan) == DECK_OK);
        return letter == 0 ? 0 : 3;
    }
    if (strcmp(argv[1], "freed") == 0) {
        CHECK(deck_plan_free(plan) == DECK_OK);
        return deck_plan_free(plan);
    }
    plan = NULL;
    return 0;
}
