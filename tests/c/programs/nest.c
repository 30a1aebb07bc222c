/* Prints the answer to a request, having seen that the UTF-16 one and the watched one are the same text, and that calls
 * that are wrong are refused. */
#include "common.h"
#include "deck.h"

#include <string.h>

/* An order that a search works on for long: no bound is met by its first answers. */
static const char LONG[] =
    "{\"effort\": 100000000, \"kerf\": 0.125, \"stock\": [{\"label\": \"ply\", \"length\": 96, \"width\": 48}], \"parts\": ["
    "{\"label\": \"a\", \"length\": 31, \"width\": 17, \"count\": 11}, {\"label\": \"b\", \"length\": 29, \"width\": 13, \"count\": 13},"
    "{\"label\": \"c\", \"length\": 23, \"width\": 19, \"count\": 17}, {\"label\": \"d\", \"length\": 41, \"width\": 11, \"count\": 7},"
    "{\"label\": \"e\", \"length\": 37, \"width\": 27, \"count\": 5}, {\"label\": \"f\", \"length\": 53, \"width\": 14, \"count\": 9}]}";

typedef struct {
    int32_t calls;
    int32_t stop_at;
    double done;
} watcher;

static int32_t look_on(void *user, double done, double of, double unplaced, double cost, double bound, int32_t proven) {
    watcher *it = (watcher *)user;
    CHECK(done >= it->done && done <= of);
    CHECK(unplaced >= 0 && bound <= cost && (proven == 0 || proven == 1));
    it->done = done;
    it->calls++;
    return it->calls == it->stop_at;
}

static char *ask(const char *request) {
    size_t needed = 0, again = 0;
    CHECK(deck_nest(request, -1, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *answer = (char *)malloc(needed);
    CHECK(answer != NULL && deck_nest(request, (int64_t)strlen(request), answer, needed, &again) == DECK_OK);
    CHECK(again == needed && strlen(answer) + 1 == needed && deck_last_error_count() == 0);
    return answer;
}

static void in_utf16_it_is_the_same(const char *answer) {
    uint16_t request[2048];
    size_t units = widen(LONG, request), needed = 0;
    watcher it = {0, 1, 0};
    CHECK(deck_nest_watched_utf16(request, (int64_t)units, NULL, 0, &needed, look_on, &it) == DECK_SHORT_BUFFER);
    uint16_t *wide = (uint16_t *)malloc(needed * sizeof *wide);
    CHECK(wide != NULL);
    CHECK(deck_nest_watched_utf16(request, -1, wide, needed, &needed, look_on, &it) == DECK_OK);
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
    watcher it = {0, 1, 0};
    CHECK(deck_nest_watched(LONG, -1, NULL, 0, &needed, look_on, &it) == DECK_SHORT_BUFFER && it.calls == 1);
    char *answer = (char *)malloc(needed);
    CHECK(answer != NULL);
    CHECK(deck_nest_watched(LONG, -1, answer, needed, &needed, look_on, &it) == DECK_OK && it.calls == 1);
    CHECK(strstr(answer, "\"unplaced\": []") != NULL && strstr(answer, "\"proven\": false") != NULL);
    in_utf16_it_is_the_same(answer);
    free(answer);
}

static void looking_on_changes_nothing(const char *request, const char *answer) {
    size_t needed = 0;
    watcher it = {0, -1, 0};
    CHECK(deck_nest_watched(request, -1, NULL, 0, &needed, look_on, &it) == DECK_SHORT_BUFFER && it.calls >= 2);
    char *watched = (char *)malloc(needed);
    CHECK(watched != NULL);
    CHECK(deck_nest_watched(request, -1, watched, needed, &needed, look_on, &it) == DECK_OK);
    CHECK(strcmp(watched, answer) == 0);
    free(watched);
}

static void what_is_wrong_is_refused(void) {
    char text[256] = "untouched";
    uint16_t wide[8] = {7};
    size_t needed = 0;
    watcher it = {0, -1, 0};
    CHECK(deck_nest(NULL, -1, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_nest("{}", -1, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_nest("{}", -1, text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_nest("{}", -2, text, 8, &needed) == DECK_BAD_SIZE);
    CHECK(deck_nest("\xff", 1, text, 8, &needed) == DECK_NOT_TEXT);
    CHECK(deck_nest_utf16(NULL, 0, wide, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_nest_watched("{}", -1, text, 8, &needed, NULL, &it) == DECK_NULL_POINTER);
    CHECK(deck_nest_watched_utf16(wide, 1, NULL, 0, &needed, NULL, &it) == DECK_NULL_POINTER);
    CHECK(deck_nest_watched("{}", -1, text, 8, &needed, look_on, NULL) == DECK_MISSING_FIELD);
    CHECK(deck_nest("{\"parts\": [{\"label\": \"a\", \"lenght\": 1, \"width\": -1}], \"stock\": []}", -1, text, 8, &needed) ==
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
