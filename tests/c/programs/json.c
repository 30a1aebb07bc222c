/* Prints the JSON of a job's plan, having seen that the UTF-16 one is the same text. */
#include "common.h"
#include "deck.h"

#include <string.h>

int main(int argc, char **argv) {
    CHECK(argc == 2);
    char *job = read_file(argv[1]);
    deck_plan *plan = NULL;
    CHECK(deck_plan_new(job, -1, &plan) == DECK_OK);
    free(job);

    size_t needed = 0, wide_needed = 0;
    CHECK(deck_plan_json(plan, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *json = (char *)malloc(needed);
    CHECK(json != NULL && deck_plan_json(plan, json, needed, &needed) == DECK_OK);
    CHECK(strlen(json) + 1 == needed);

    CHECK(deck_plan_json_utf16(plan, NULL, 0, &wide_needed) == DECK_SHORT_BUFFER);
    uint16_t *wide = (uint16_t *)malloc(wide_needed * sizeof *wide);
    CHECK(wide != NULL && deck_plan_json_utf16(plan, wide, wide_needed, &wide_needed) == DECK_OK);
    CHECK(wide[wide_needed - 1] == 0);
    char *narrowed = narrow(wide, wide_needed - 1);
    CHECK(strcmp(narrowed, json) == 0);

    fputs(json, stdout);
    free(narrowed);
    free(wide);
    free(json);
    CHECK(deck_plan_free(plan) == DECK_OK);
    return 0;
}
