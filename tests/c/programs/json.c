/* Prints the JSON of a job's plan, having seen that the UTF-16 one is the same text. */
#include "common.h"
#include "deck.h"

#include <string.h>

/* Decodes what UTF-16 stands for, by hand, into UTF-8. The caller frees it. */
static char *narrow(const uint16_t *wide, size_t units) {
    char *text = (char *)calloc(units * 3 + 1, 1);
    CHECK(text != NULL);
    char *at = text;
    for (size_t i = 0; i < units; i++) {
        uint32_t point = wide[i];
        if (point >= 0xd800 && point < 0xdc00 && i + 1 < units) {
            point = 0x10000 + ((point - 0xd800) << 10) + (wide[++i] - 0xdc00u);
        }
        if (point < 0x80) {
            *at++ = (char)point;
        } else if (point < 0x800) {
            *at++ = (char)(0xc0 | point >> 6);
            *at++ = (char)(0x80 | (point & 0x3f));
        } else if (point < 0x10000) {
            *at++ = (char)(0xe0 | point >> 12);
            *at++ = (char)(0x80 | (point >> 6 & 0x3f));
            *at++ = (char)(0x80 | (point & 0x3f));
        } else {
            *at++ = (char)(0xf0 | point >> 18);
            *at++ = (char)(0x80 | (point >> 12 & 0x3f));
            *at++ = (char)(0x80 | (point >> 6 & 0x3f));
            *at++ = (char)(0x80 | (point & 0x3f));
        }
    }
    return text;
}

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
