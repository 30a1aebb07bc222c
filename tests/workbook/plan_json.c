/* Prints the plan of a job file as the library writes it. */
#include "deck.h"
#include <stdio.h>
#include <stdlib.h>

static char *file(const char *path, long *size) {
    FILE *from = fopen(path, "rb");
    if (from == NULL || fseek(from, 0, SEEK_END) != 0) exit(2);
    *size = ftell(from);
    rewind(from);
    char *text = malloc((size_t)*size + 1);
    if (text == NULL || fread(text, 1, (size_t)*size, from) != (size_t)*size) exit(2);
    fclose(from);
    return text;
}

int main(int count, char **arguments) {
    if (count != 2) return 2;
    long size = 0;
    char *job = file(arguments[1], &size);
    deck_plan *plan = NULL;
    if (deck_plan_new(job, size, &plan) != DECK_OK) return 1;
    size_t needed = 0;
    deck_plan_json(plan, NULL, 0, &needed);
    char *json = malloc(needed);
    if (json == NULL || deck_plan_json(plan, json, needed, &needed) != DECK_OK) return 1;
    fwrite(json, 1, needed - 1, stdout);
    free(json);
    free(job);
    return deck_plan_free(plan) == DECK_OK ? 0 : 1;
}
