/* Prints the names of a job's views and then each as SVG, a line after it, and leaves the packet twice in a folder.
 * Whatever it asks in UTF-8 it asks in UTF-16 too, and sees that the two agree. */
#include "common.h"
#include "deck.h"

#include <string.h>

/* A call's text in UTF-8 and in UTF-16, seen to be the same. The caller frees it. */
static char *agreed(char *text, uint16_t *wide, size_t wide_needed) {
    CHECK(wide[wide_needed - 1] == 0);
    char *narrowed = narrow(wide, wide_needed - 1);
    CHECK(strcmp(narrowed, text) == 0);
    free(narrowed);
    free(wide);
    return text;
}

static char *views(const deck_plan *plan) {
    size_t needed = 0, wide_needed = 0;
    CHECK(deck_plan_views(plan, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    CHECK(deck_plan_views_utf16(plan, NULL, 0, &wide_needed) == DECK_SHORT_BUFFER);
    char *text = (char *)malloc(needed);
    uint16_t *wide = (uint16_t *)malloc(wide_needed * sizeof *wide);
    CHECK(text != NULL && deck_plan_views(plan, text, needed, &needed) == DECK_OK);
    CHECK(wide != NULL && deck_plan_views_utf16(plan, wide, wide_needed, &wide_needed) == DECK_OK);
    return agreed(text, wide, wide_needed);
}

static char *svg(const deck_plan *plan, const char *view) {
    uint16_t wide_view[64];
    int64_t units = (int64_t)widen(view, wide_view);
    size_t needed = 0, wide_needed = 0;
    CHECK(deck_plan_svg(plan, view, NULL, 0, &needed) == DECK_SHORT_BUFFER);
    CHECK(deck_plan_svg_utf16(plan, wide_view, units, NULL, 0, &wide_needed) == DECK_SHORT_BUFFER);
    char *text = (char *)malloc(needed);
    uint16_t *wide = (uint16_t *)malloc(wide_needed * sizeof *wide);
    CHECK(text != NULL && deck_plan_svg(plan, view, text, needed, &needed) == DECK_OK);
    CHECK(wide != NULL && deck_plan_svg_utf16(plan, wide_view, -1, wide, wide_needed, &wide_needed) == DECK_OK);
    return agreed(text, wide, wide_needed);
}

/* Names of views are plain: what stands between the quotes is the name. */
static void print_views(const deck_plan *plan) {
    char *names = views(plan);
    puts(names);
    for (char *name = strtok(names, "[\",]"); name != NULL; name = strtok(NULL, "[\",]")) {
        CHECK(strlen(name) < 64);
        char *drawing = svg(plan, name);
        puts(drawing);
        free(drawing);
    }
    free(names);
}

/* Names that are not ASCII, of two units and of three in UTF-16. */
static void write_packets(const deck_plan *plan, const char *folder) {
    char path[512];
    uint16_t wide[512];
    static const uint16_t name[] = {'/', 'w', 'i', 'd', 'e', 0x2032, 0xd83d, 0xdee5, '.', 'p', 'd', 'f'};
    CHECK(strlen(folder) < 400);
    snprintf(path, sizeof path, "%s/narrow\xe2\x80\xb2.pdf", folder);
    CHECK(deck_plan_packet(plan, path) == DECK_OK);
    size_t units = widen(folder, wide);
    memcpy(wide + units, name, sizeof name);
    CHECK(deck_plan_packet_utf16(plan, wide, (int64_t)(units + sizeof name / sizeof *name)) == DECK_OK);
}

int main(int argc, char **argv) {
    CHECK(argc == 3);
    char *job = read_file(argv[1]);
    deck_plan *plan = NULL;
    CHECK(deck_plan_new(job, -1, &plan) == DECK_OK);
    free(job);
    print_views(plan);
    write_packets(plan, argv[2]);
    CHECK(deck_last_error_count() == 0);
    CHECK(deck_plan_free(plan) == DECK_OK);
    return 0;
}
