/* From a frame to fasteners: each answer is put into the next request as it is. */
#include "common.h"
#include "deck.h"

#define FRAME "{\"measured_to\": \"centre\", \"flange\": 2, \"regular\": {\"first\": 0, \"last\": 240, \"spacing\": 24}}"
#define OUTLINE "{\"length\": 240, \"beam\": 96}"

typedef int32_t (*ask_fn)(const char *, int64_t, char *, size_t, size_t *);

/* The answer, to be freed. */
static char *ask(ask_fn function, const char *request) {
    size_t needed = 0;
    CHECK(function(request, -1, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *answer = (char *)malloc(needed);
    CHECK(answer != NULL && function(request, -1, answer, needed, &needed) == DECK_OK);
    return answer;
}

/* `before`, the answer, `after`; to be freed. The answer is freed. */
static char *around(const char *before, char *answer, const char *after) {
    char *request = (char *)malloc(strlen(before) + strlen(answer) + strlen(after) + 1);
    CHECK(request != NULL);
    strcpy(request, before);
    strcat(request, answer);
    strcat(request, after);
    free(answer);
    return request;
}

static void from_frame_to_fasteners(void) {
    char *seams = ask(deck_seams, "{\"frame\": " FRAME ", \"deck_length\": 240, \"sheet\": "
                                  "{\"label\": \"4 x 8\", \"length\": 96, \"width\": 48}}");
    CHECK(strstr(seams, "\"no_layout\": null") != NULL);
    char *request = around("{\"outline\": " OUTLINE ", \"seams\": ", seams, "}");
    char *panels = ask(deck_panels, request);
    free(request);
    CHECK(panels[0] == '[' && strstr(panels, "\"label\": \"5\"") != NULL);
    request = around("{\"panels\": ", panels, ", \"frame\": " FRAME ", \"fastening\": "
                     "{\"edge_spacing\": 8, \"field_spacing\": 8, \"end_distance\": 1}}");
    char *fasteners = ask(deck_fasteners, request);
    free(request);
    CHECK(strstr(fasteners, "\"count\": 195") != NULL);
    free(fasteners);
}

/* Without a layout there is an answer, and no panels. */
static void no_layout_is_an_answer(void) {
    char *seams = ask(deck_seams, "{\"frame\": " FRAME ", \"deck_length\": 240, \"sheet\": "
                                  "{\"label\": \"shelf\", \"length\": 96, \"width\": 16}}");
    CHECK(strstr(seams, "\"layouts\": []") != NULL && strstr(seams, "\"reason\": \"The bay from member 1") != NULL);
    char *request = around("{\"outline\": " OUTLINE ", \"seams\": ", seams, "}");
    size_t needed = 0;
    CHECK(deck_panels(request, -1, NULL, 0, &needed) == DECK_EMPTY_LIST && needed == 0);
    free(request);
}

int main(void) {
    from_frame_to_fasteners();
    no_layout_is_an_answer();
    return 0;
}
