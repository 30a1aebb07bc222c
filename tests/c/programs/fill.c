/* Prints the answer to a request, having seen that the UTF-16 one and the watched one are the same text, and that calls
 * that are wrong are refused. */
#include "common.h"
#include "deck.h"

#include <string.h>

/* A sheet whose search takes many steps: a few of many sizes. */
static const char LONG[] =
    "{\"effort\": 100000000, \"sheet\": {\"label\": \"ply\", \"length\": 96, \"width\": 48}, \"parts\": ["
    "{\"label\": \"a\", \"length\": 13, \"width\": 7, \"count\": 2}, {\"label\": \"b\", \"length\": 20, \"width\": 12, \"count\": 2},"
    "{\"label\": \"c\", \"length\": 27, \"width\": 17, \"count\": 2}, {\"label\": \"d\", \"length\": 15, \"width\": 22, \"count\": 2},"
    "{\"label\": \"e\", \"length\": 22, \"width\": 10, \"count\": 2}, {\"label\": \"f\", \"length\": 29, \"width\": 15, \"count\": 2},"
    "{\"label\": \"g\", \"length\": 17, \"width\": 20, \"count\": 2}, {\"label\": \"h\", \"length\": 24, \"width\": 8, \"count\": 2},"
    "{\"label\": \"i\", \"length\": 31, \"width\": 13, \"count\": 2}, {\"label\": \"j\", \"length\": 19, \"width\": 18, \"count\": 2},"
    "{\"label\": \"k\", \"length\": 26, \"width\": 23, \"count\": 2}, {\"label\": \"l\", \"length\": 14, \"width\": 11, \"count\": 2},"
    "{\"label\": \"m\", \"length\": 21, \"width\": 16, \"count\": 2}, {\"label\": \"n\", \"length\": 28, \"width\": 21, \"count\": 2}]}";

typedef struct {
    int32_t calls;
    int32_t stop_at;
    double done;
    double value;
} watcher;

static int32_t look_on(void *user, double done, double of, double value, double bound, int32_t proven) {
    watcher *it = (watcher *)user;
    CHECK(done >= it->done && done <= of);
    CHECK(value >= it->value && bound >= value && proven == (bound == value));
    it->value = value;
    it->done = done;
    it->calls++;
    return it->calls == it->stop_at;
}

static char *ask(const char *request) {
    size_t needed = 0, again = 0;
    CHECK(deck_fill(request, -1, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *answer = (char *)malloc(needed);
    CHECK(answer != NULL && deck_fill(request, (int64_t)strlen(request), answer, needed, &again) == DECK_OK);
    CHECK(again == needed && strlen(answer) + 1 == needed && deck_last_error_count() == 0);
    return answer;
}

static void in_utf16_it_is_the_same(const char *answer) {
    uint16_t request[2048];
    size_t units = widen(LONG, request), needed = 0;
    watcher it = {0, 1, 0, 0};
    CHECK(deck_fill_watched_utf16(request, (int64_t)units, NULL, 0, &needed, look_on, &it) == DECK_SHORT_BUFFER);
    uint16_t *wide = (uint16_t *)malloc(needed * sizeof *wide);
    CHECK(wide != NULL);
    CHECK(deck_fill_watched_utf16(request, -1, wide, needed, &needed, look_on, &it) == DECK_OK);
    /* Asked for the size first, the search is made once. */
    CHECK(it.calls == 1);
    char *narrowed = narrow(wide, needed - 1);
    CHECK(strcmp(narrowed, answer) == 0);
    free(narrowed);
    free(wide);
}

/* Stopped at the same step, an answer is the same. */
static void a_search_is_stopped(void) {
    size_t needed = 0;
    watcher it = {0, 1, 0, 0};
    CHECK(deck_fill_watched(LONG, -1, NULL, 0, &needed, look_on, &it) == DECK_SHORT_BUFFER && it.calls == 1);
    char *answer = (char *)malloc(needed);
    CHECK(answer != NULL);
    CHECK(deck_fill_watched(LONG, -1, answer, needed, &needed, look_on, &it) == DECK_OK && it.calls == 1);
    CHECK(strstr(answer, "\"placements\": []") == NULL && strstr(answer, "\"proven\": false") != NULL);
    in_utf16_it_is_the_same(answer);
    free(answer);
}

static void looking_on_changes_nothing(const char *request, const char *answer) {
    size_t needed = 0;
    watcher it = {0, -1, 0, 0};
    CHECK(deck_fill_watched(request, -1, NULL, 0, &needed, look_on, &it) == DECK_SHORT_BUFFER && it.calls >= 1);
    char *watched = (char *)malloc(needed);
    CHECK(watched != NULL);
    CHECK(deck_fill_watched(request, -1, watched, needed, &needed, look_on, &it) == DECK_OK);
    CHECK(strcmp(watched, answer) == 0);
    free(watched);
}

static void what_is_wrong_is_refused(void) {
    char text[256] = "untouched";
    uint16_t wide[8] = {7};
    size_t needed = 0;
    watcher it = {0, -1, 0, 0};
    CHECK(deck_fill(NULL, -1, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_fill("{}", -1, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_fill("{}", -1, text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_fill("{}", -2, text, 8, &needed) == DECK_BAD_SIZE);
    CHECK(deck_fill("\xff", 1, text, 8, &needed) == DECK_NOT_TEXT);
    CHECK(deck_fill_utf16(NULL, 0, wide, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_fill_watched("{}", -1, text, 8, &needed, NULL, &it) == DECK_NULL_POINTER);
    CHECK(deck_fill_watched_utf16(wide, 1, NULL, 0, &needed, NULL, &it) == DECK_NULL_POINTER);
    CHECK(deck_fill_watched("{}", -1, text, 8, &needed, look_on, NULL) == DECK_MISSING_FIELD);
    CHECK(deck_fill("{\"parts\": [{\"label\": \"a\", \"lenght\": 1, \"width\": -1}], \"sheet\": {\"label\": \"s\", \"length\": 9, \"width\": 9}}", -1, text, 8, &needed) ==
          DECK_UNKNOWN_FIELD);
    CHECK(deck_last_error_count() == 2 && needed == 0 && wide[0] == 7 && strcmp(text, "untouched") == 0);
    CHECK(deck_last_error(text, sizeof text, &needed) == DECK_OK);
    CHECK(strcmp(text, "/parts/0/lenght: unknown field. Did you mean \"length\"?") == 0);
}

int main(int argc, char **argv) {
    CHECK(argc == 2);
    char *request = read_file(argv[1]);
    char *answer = ask(request);
    looking_on_changes_nothing(request, answer);
    a_search_is_stopped();
    what_is_wrong_is_refused();
    fputs(answer, stdout);
    free(answer);
    free(request);
    return 0;
}
