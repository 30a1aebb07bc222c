/* Every function once as it should be called, and as it should not. */
#include "common.h"
#include "deck.h"

#include <string.h>

static const char JOB[] =
    "{\"schema\": 1, \"name\": \"Dory\", \"unit\": \"in\", \"deck\": {\"length\": 48, \"beam\": 96},"
    " \"frame\": {\"measured_to\": \"centre\", \"flange\": 2, \"regular\": {\"first\": 0, \"last\": 48, \"spacing\": 24}},"
    " \"stock\": [{\"label\": \"ply\", \"length\": 96, \"width\": 48, \"thickness\": \"3/4\"}], \"gap\": 0}";

static const char FAULTY[] = "{\"schema\": 1, \"name\": \"Dory\", \"unit\": \"in\", \"deck\": {\"lenght\": 48, \"beam\": -96}}";

static int equal(const uint16_t *wide, const char *text) {
    size_t i = 0;
    while (text[i] != 0 && wide[i] == (uint16_t)text[i]) i++;
    return wide[i] == (uint16_t)text[i];
}

static deck_plan *a_plan(void) {
    deck_plan *plan = NULL;
    CHECK(deck_plan_new(JOB, -1, &plan) == DECK_OK && plan != NULL);
    CHECK(deck_last_error_count() == 0);
    return plan;
}

static void plans_are_made_and_freed(void) {
    uint16_t wide[sizeof JOB];
    size_t units = widen(JOB, wide);
    deck_plan *plan = NULL, *other = NULL;
    CHECK(deck_plan_new(JOB, (int64_t)sizeof JOB - 1, &plan) == DECK_OK);
    CHECK(deck_plan_new_utf16(wide, (int64_t)units, &other) == DECK_OK);
    CHECK(plan != other);
    CHECK(deck_plan_free(plan) == DECK_OK && deck_plan_free(other) == DECK_OK);
    CHECK(deck_plan_new_utf16(wide, -1, &other) == DECK_OK);
    CHECK(deck_plan_free(other) == DECK_OK);
    CHECK(deck_plan_free(NULL) == DECK_OK);
}

static void numbers_and_counts_are_read(void) {
    deck_plan *plan = a_plan();
    uint16_t pointer[64];
    size_t units = widen("/deck/length", pointer), count = 0, wide_count = 0;
    double value = 0;
    CHECK(deck_plan_number(plan, "/deck/length", &value) == DECK_OK && value == 48.0);
    value = 0;
    CHECK(deck_plan_number_utf16(plan, pointer, (int64_t)units, &value) == DECK_OK && value == 48.0);
    CHECK(deck_plan_number(plan, "/openings/0/framed", &value) == DECK_UNKNOWN_POINTER && value == 48.0);
    CHECK(deck_plan_number(plan, "/proven", &value) == DECK_OK && (value == 0.0 || value == 1.0));
    CHECK(deck_plan_count(plan, "/frame", &count) == DECK_OK && count == 3);
    units = widen("/frame", pointer);
    CHECK(deck_plan_count_utf16(plan, pointer, (int64_t)units, &wide_count) == DECK_OK && wide_count == 3);
    CHECK(deck_plan_count(plan, "/deck/length", &count) == DECK_UNKNOWN_POINTER && count == 3);
    deck_plan_free(plan);
}

static void texts_are_read(void) {
    deck_plan *plan = a_plan();
    char text[64] = "untouched";
    uint16_t wide[64] = {7}, pointer[64];
    size_t needed = 0;
    CHECK(deck_plan_text(plan, "/job/name", text, 4, &needed) == DECK_SHORT_BUFFER && needed == 5);
    CHECK(strcmp(text, "untouched") == 0);
    CHECK(deck_plan_text(plan, "/job/name", text, 5, &needed) == DECK_OK && needed == 5);
    CHECK(strcmp(text, "Dory") == 0 && strcmp(text + 5, "ched") == 0);

    size_t units = widen("/job/name", pointer);
    CHECK(deck_plan_text_utf16(plan, pointer, (int64_t)units, wide, 4, &needed) == DECK_SHORT_BUFFER && wide[0] == 7);
    CHECK(deck_plan_text_utf16(plan, pointer, -1, wide, 64, &needed) == DECK_OK && needed == 5);
    CHECK(equal(wide, "Dory"));

    needed = 77;
    CHECK(deck_plan_text(plan, "/deck/length", text, sizeof text, &needed) == DECK_UNKNOWN_POINTER && needed == 77);
    CHECK(strcmp(text, "Dory") == 0);
    deck_plan_free(plan);
}

static void views_are_named(void) {
    deck_plan *plan = a_plan();
    char names[512] = "untouched";
    uint16_t wide[512] = {7};
    size_t needed = 0, wide_needed = 0;
    CHECK(deck_plan_views(plan, names, 8, &needed) == DECK_SHORT_BUFFER && needed > 8);
    CHECK(strcmp(names, "untouched") == 0);
    CHECK(deck_plan_views_utf16(plan, wide, needed - 1, &wide_needed) == DECK_SHORT_BUFFER && wide[0] == 7);
    CHECK(wide_needed == needed);
    CHECK(deck_plan_views(plan, names, needed, &needed) == DECK_OK && strlen(names) + 1 == needed);
    CHECK(strncmp(names, "[\"cover\",", 9) == 0 && strstr(names, "\"plan\",\"panel-1\",") != NULL);
    CHECK(deck_plan_views_utf16(plan, wide, 512, &wide_needed) == DECK_OK && equal(wide, names));
    deck_plan_free(plan);
}

static void a_view_is_drawn_or_refused(void) {
    deck_plan *plan = a_plan();
    char text[512] = "untouched";
    uint16_t wide[8] = {7}, name[16];
    size_t needed = 0, wide_needed = 0, units = widen("plan", name);
    CHECK(deck_plan_svg(plan, "plan", text, sizeof text, &needed) == DECK_SHORT_BUFFER && needed > sizeof text);
    CHECK(strcmp(text, "untouched") == 0);
    CHECK(deck_plan_svg_utf16(plan, name, (int64_t)units, wide, 8, &wide_needed) == DECK_SHORT_BUFFER && wide[0] == 7);
    /* One unit too few is too few. */
    char *svg = (char *)malloc(needed);
    CHECK(svg != NULL);
    memset(svg, '?', needed);
    CHECK(deck_plan_svg(plan, "plan", svg, needed - 1, &needed) == DECK_SHORT_BUFFER && svg[0] == '?');
    CHECK(deck_plan_svg(plan, "plan", svg, needed, &needed) == DECK_OK);
    CHECK(strlen(svg) + 1 == needed && strncmp(svg, "<svg", 4) == 0 && deck_last_error_count() == 0);
    free(svg);

    needed = 77;
    CHECK(deck_plan_svg(plan, "panel-99", text, sizeof text, &needed) == DECK_UNKNOWN_VIEW);
    CHECK(needed == 77 && strcmp(text, "untouched") == 0);
    CHECK(deck_last_error(text, sizeof text, &needed) == DECK_OK);
    CHECK(strstr(text, "\"panel-99\"") != NULL && strstr(text, "saw-1") != NULL);
    CHECK(deck_last_error_pointer(0, text, sizeof text, &needed) == DECK_OK && needed == 1);
    units = widen("Plan", name);
    CHECK(deck_plan_svg_utf16(plan, name, (int64_t)units, wide, 8, &needed) == DECK_UNKNOWN_VIEW);
    CHECK(deck_plan_svg(plan, "", text, sizeof text, &needed) == DECK_UNKNOWN_VIEW);
    CHECK(deck_plan_svg(plan, "\xff", text, sizeof text, &needed) == DECK_NOT_TEXT);
    CHECK(deck_plan_svg(plan, "plan", text, SIZE_MAX, &needed) == DECK_BAD_SIZE);
    CHECK(deck_plan_svg_utf16(plan, name, -2, wide, 8, &needed) == DECK_BAD_SIZE && wide[0] == 7);
    deck_plan_free(plan);
}

static void a_packet_that_cannot_be_written_is_told(void) {
    deck_plan *plan = a_plan();
    char text[512];
    static const uint16_t cut[] = {'a', 0, 'b'}, lone[] = {0xd800, 0};
    uint16_t wide[64];
    size_t needed = 0, units = widen("no/such/folder/packet.pdf", wide);
    CHECK(deck_plan_packet(plan, "no/such/folder/packet.pdf") == DECK_CANNOT_WRITE);
    CHECK(deck_last_error_count() == 1);
    CHECK(deck_last_error(text, sizeof text, &needed) == DECK_OK);
    CHECK(strstr(text, "\"no/such/folder/packet.pdf\"") != NULL);
    CHECK(deck_last_error_pointer(0, text, sizeof text, &needed) == DECK_OK && needed == 1);
    CHECK(deck_plan_packet_utf16(plan, wide, (int64_t)units) == DECK_CANNOT_WRITE);
    CHECK(deck_plan_packet_utf16(plan, wide, -1) == DECK_CANNOT_WRITE);
    /* A disk that is full, a folder, nothing, and a name that no system has. */
    CHECK(deck_plan_packet(plan, "/dev/full") == DECK_CANNOT_WRITE);
    CHECK(deck_plan_packet(plan, "tests") == DECK_CANNOT_WRITE);
    CHECK(deck_plan_packet(plan, "") == DECK_CANNOT_WRITE);
    CHECK(deck_plan_packet_utf16(plan, wide, 0) == DECK_CANNOT_WRITE);
    CHECK(deck_plan_packet_utf16(plan, cut, 3) == DECK_CANNOT_WRITE);
    CHECK(deck_plan_packet(plan, "\xe2\x80.pdf") == DECK_NOT_TEXT);
    CHECK(deck_plan_packet_utf16(plan, lone, -1) == DECK_NOT_TEXT);
    CHECK(deck_plan_packet_utf16(plan, wide, -2) == DECK_BAD_SIZE);
    deck_plan_free(plan);
}

static void every_fault_is_told(void) {
    deck_plan *plan = (deck_plan *)&plan;
    char text[512], first[512];
    uint16_t wide[512];
    size_t needed = 0;
    CHECK(deck_plan_new(FAULTY, -1, &plan) == DECK_UNKNOWN_FIELD);
    CHECK(plan == (deck_plan *)&plan);
    int32_t count = deck_last_error_count();
    CHECK(count > 2);
    CHECK(deck_last_error(first, sizeof first, &needed) == DECK_OK && needed == strlen(first) + 1);
    CHECK(strncmp(first, "/deck/lenght: ", 14) == 0);
    CHECK(deck_last_error_utf16(wide, 512, &needed) == DECK_OK && equal(wide, first));
    for (int32_t i = 0; i < count; i++) {
        CHECK(deck_last_error_at(i, text, sizeof text, &needed) == DECK_OK);
        CHECK((strcmp(text, first) == 0) == (i == 0));
        CHECK(deck_last_error_at_utf16(i, wide, 512, &needed) == DECK_OK && equal(wide, text));
        char pointer[128];
        CHECK(deck_last_error_pointer(i, pointer, sizeof pointer, &needed) == DECK_OK);
        CHECK(strncmp(text, pointer, needed - 1) == 0);
        CHECK(deck_last_error_pointer_utf16(i, wide, 512, &needed) == DECK_OK && equal(wide, pointer));
    }
    /* Looking and freeing leave it; so does looking wrongly. */
    CHECK(deck_last_error_at(count, text, sizeof text, &needed) == DECK_NO_SUCH_ERROR);
    CHECK(deck_last_error_at(-1, text, sizeof text, &needed) == DECK_NO_SUCH_ERROR);
    CHECK(deck_last_error(text, 3, &needed) == DECK_SHORT_BUFFER && needed == strlen(first) + 1);
    CHECK(deck_last_error(text, sizeof text, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_free(NULL) == DECK_OK);
    CHECK(deck_last_error_count() == count);
    deck_plan_free(a_plan());
    CHECK(deck_last_error_count() == 0);
    CHECK(deck_last_error(text, sizeof text, &needed) == DECK_OK && needed == 1 && text[0] == 0);
}

static void null_is_refused_everywhere(void) {
    deck_plan *plan = a_plan(), *none = NULL;
    char text[8];
    uint16_t wide[8] = {0};
    size_t needed = 0;
    double value = 0;
    CHECK(deck_plan_new(NULL, -1, &none) == DECK_NULL_POINTER);
    CHECK(deck_plan_new(NULL, 0, &none) == DECK_NULL_POINTER);
    CHECK(deck_plan_new(JOB, -1, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_new_utf16(NULL, -1, &none) == DECK_NULL_POINTER);
    CHECK(deck_plan_json(NULL, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_json(plan, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_json(plan, text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_json_utf16(plan, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_number(NULL, "", &value) == DECK_NULL_POINTER);
    CHECK(deck_plan_number(plan, NULL, &value) == DECK_NULL_POINTER);
    CHECK(deck_plan_number(plan, "", NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_number_utf16(plan, NULL, 0, &value) == DECK_NULL_POINTER);
    CHECK(deck_plan_count(plan, NULL, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_count(plan, "", NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_count_utf16(NULL, wide, 0, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_text(NULL, "", text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_text(plan, NULL, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_text(plan, "", text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_text_utf16(plan, wide, 0, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_views(NULL, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_views(plan, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_views(plan, text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_views_utf16(plan, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_svg(NULL, "plan", text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_svg(plan, NULL, text, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_svg(plan, "plan", NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_svg(plan, "plan", text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_svg_utf16(plan, NULL, 0, wide, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_plan_packet(NULL, "no/such/folder/packet.pdf") == DECK_NULL_POINTER);
    CHECK(deck_plan_packet(plan, NULL) == DECK_NULL_POINTER);
    CHECK(deck_plan_packet_utf16(NULL, wide, -1) == DECK_NULL_POINTER);
    CHECK(deck_plan_packet_utf16(plan, NULL, 0) == DECK_NULL_POINTER);
    CHECK(deck_job_schema(NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(deck_job_schema_utf16(wide, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_status_text(DECK_OK, text, 8, NULL) == DECK_NULL_POINTER);
    CHECK(deck_status_text_utf16(DECK_OK, NULL, 8, &needed) == DECK_NULL_POINTER);
    CHECK(none == NULL && needed == 0 && value == 0.0);
    deck_plan_free(plan);
}

static void text_that_is_none_is_refused(void) {
    deck_plan *plan = NULL;
    static const uint16_t lone[] = {0xdc00, 0};
    CHECK(deck_plan_new("\xff\xfe", -1, &plan) == DECK_NOT_TEXT);
    CHECK(deck_plan_new("{\"name\": \"\xc3", 11, &plan) == DECK_NOT_TEXT);
    CHECK(deck_plan_new_utf16(lone, -1, &plan) == DECK_NOT_TEXT);
    CHECK(deck_plan_new(JOB, -2, &plan) == DECK_BAD_SIZE);
    CHECK(deck_plan_new(JOB, INT64_MIN, &plan) == DECK_BAD_SIZE);
    CHECK(deck_plan_new(JOB, (int64_t)DECK_MAX_TEXT + 1, &plan) == DECK_BAD_SIZE);
    CHECK(deck_plan_new(JOB, 0, &plan) == DECK_NOT_JSON);
    CHECK(deck_plan_new(JOB, 20, &plan) == DECK_NOT_JSON);
    char *endless = (char *)malloc(DECK_MAX_TEXT + 1);
    CHECK(endless != NULL);
    memset(endless, ' ', DECK_MAX_TEXT + 1);
    CHECK(deck_plan_new(endless, -1, &plan) == DECK_BAD_SIZE);
    CHECK(deck_plan_new(endless, DECK_MAX_TEXT, &plan) == DECK_NOT_JSON);
    free(endless);
    CHECK(plan == NULL);
}

static void a_capacity_that_cannot_be_is_refused(void) {
    deck_plan *plan = a_plan();
    char text[8] = "as ever";
    size_t needed = 0;
    CHECK(deck_plan_text(plan, "/job/name", text, SIZE_MAX, &needed) == DECK_BAD_SIZE);
    CHECK(needed == 0 && strcmp(text, "as ever") == 0);
    deck_plan_free(plan);
}

int main(void) {
    CHECK(deck_abi_version() == DECK_ABI_VERSION);
    plans_are_made_and_freed();
    numbers_and_counts_are_read();
    texts_are_read();
    views_are_named();
    a_view_is_drawn_or_refused();
    a_packet_that_cannot_be_written_is_told();
    every_fault_is_told();
    null_is_refused_everywhere();
    text_that_is_none_is_refused();
    a_capacity_that_cannot_be_is_refused();
    return 0;
}
