/* Prints the answer to a request of the function that is named, having seen that the UTF-16 one is the same text and that
 * calls that are wrong are refused. */
#include "common.h"
#include "deck.h"

#include <string.h>

typedef int32_t (*ask_fn)(const char *, int64_t, char *, size_t, size_t *);
typedef int32_t (*ask_wide_fn)(const uint16_t *, int64_t, uint16_t *, size_t, size_t *);

typedef struct {
    const char *name;
    ask_fn ask;
    ask_wide_fn ask_wide;
    const char *wrong; /* a request with a slip of the pen */
    const char *told;
} function;

static const function FUNCTIONS[] = {
    {"span_limits", deck_span_limits, deck_span_limits_utf16,
     "{\"panel\": {\"series\": \"OSB\", \"ratng\": \"3/4\"}, \"spacing\": 16, \"axis\": \"along\", \"spans\": 2}",
     "/panel/ratng: unknown field. Did you mean \"rating\"?"},
    {"beam", deck_beam, deck_beam_utf16, "{\"spans\": [16], \"loads\": [{\"kind\": \"point\", \"at\": 17, \"value\": 1}]}",
     "/loads/0/at: A load covers 17 to 17, which is not all on the beam of 16. It lies between 0 and 16, from the left tip."},
    {"plate", deck_plate, deck_plate_utf16,
     "{\"length\": 9, \"width\": 9, \"dx\": 1, \"dy\": 1, \"torsion\": 1, \"loads\": [], \"supports\": [{\"kind\": \"along\", \"y\": 4}]}",
     "/supports: The supports let the plate move as a whole. Two parallel lines hold it, or lines and points that do not lie "
     "on one line, or a clamped line."},
    {"seams", deck_seams, deck_seams_utf16,
     "{\"frame\": {\"flange\": 2, \"measured_to\": \"center\", \"members\": [{\"station\": 1}]}, \"deck_length\": 96, "
     "\"sheet\": {\"label\": \"a\", \"length\": 96, \"width\": 48}}",
     "/frame/measured_to: \"center\" is not known here. It is \"web\", \"fore-edge\", \"aft-edge\" or \"centre\"."},
    {"panels", deck_panels, deck_panels_utf16, "{\"outline\": {\"length\": 96, \"beam\": 96}, \"seams\": [48, 47]}",
     "/seams/1: The seam at 47\" leaves no board aft of 48\". Seams lie between 0 and 96\", in order from the bow."},
    {"fasteners", deck_fasteners, deck_fasteners_utf16,
     "{\"panels\": [], \"frame\": {\"flange\": 2, \"measured_to\": \"centre\", \"members\": [{\"station\": 1}]}, "
     "\"fastening\": {\"edge_spacing\": 0}}",
     "/fastening/edge_spacing: Fasteners 0\" apart cannot be laid out. A spacing is above zero."},
    {"survey", deck_survey, deck_survey_utf16,
     "{\"datum\": [\"A\", \"B\"], \"readings\": [{\"kind\": \"distnce\", \"between\": [\"A\", \"B\"], \"reading\": 9}]}",
     "/readings/0/kind: \"distnce\" is not known here. It is \"distance\", \"tie\", \"station\", \"offset\", \"straight\" or \"square\"."},
};

static char *ask(const function *it, const char *request) {
    size_t needed = 0, again = 0;
    CHECK(it->ask(request, -1, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *answer = (char *)malloc(needed);
    CHECK(answer != NULL && it->ask(request, (int64_t)strlen(request), answer, needed, &again) == DECK_OK);
    CHECK(again == needed && strlen(answer) + 1 == needed && deck_last_error_count() == 0);
    return answer;
}

static void in_utf16_it_is_the_same(const function *it, const char *request, const char *answer) {
    uint16_t *wide_request = (uint16_t *)malloc((strlen(request) + 1) * sizeof *wide_request);
    CHECK(wide_request != NULL);
    size_t units = widen(request, wide_request), needed = 0;
    CHECK(it->ask_wide(wide_request, (int64_t)units, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    uint16_t *wide = (uint16_t *)malloc(needed * sizeof *wide);
    CHECK(wide != NULL);
    CHECK(it->ask_wide(wide_request, -1, wide, needed, &needed) == DECK_OK);
    char *narrowed = narrow(wide, needed - 1);
    CHECK(strcmp(narrowed, answer) == 0);
    free(narrowed);
    free(wide);
    free(wide_request);
}

static void what_is_wrong_is_refused(const function *it) {
    char text[512] = "untouched";
    uint16_t wide[8] = {7};
    size_t needed = 0;
    CHECK(it->ask(NULL, -1, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(it->ask("{}", -1, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(it->ask("{}", -1, text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(it->ask("{}", -2, text, 8, &needed) == DECK_BAD_SIZE);
    CHECK(it->ask("\xff", 1, text, 8, &needed) == DECK_NOT_TEXT);
    CHECK(it->ask("{", -1, text, 8, &needed) == DECK_NOT_JSON);
    CHECK(it->ask("{}", -1, text, 8, &needed) == DECK_MISSING_FIELD && deck_last_error_count() >= 2);
    CHECK(it->ask_wide(NULL, 0, wide, 8, &needed) == DECK_NULL_POINTER);
    CHECK(it->ask(it->wrong, -1, text, sizeof text, &needed) >= 101);
    CHECK(deck_last_error_count() == 1 && needed == 0 && wide[0] == 7 && strcmp(text, "untouched") == 0);
    CHECK(deck_last_error(text, sizeof text, &needed) == DECK_OK);
    CHECK(strcmp(text, it->told) == 0);
}

int main(int argc, char **argv) {
    CHECK(argc == 3);
    for (size_t i = 0; i < sizeof FUNCTIONS / sizeof *FUNCTIONS; i++) {
        const function *it = &FUNCTIONS[i];
        if (strcmp(it->name, argv[1]) == 0) {
            char *request = read_file(argv[2]);
            char *answer = ask(it, request);
            in_utf16_it_is_the_same(it, request, answer);
            what_is_wrong_is_refused(it);
            fputs(answer, stdout);
            free(answer);
            free(request);
            return 0;
        }
    }
    return 1;
}
