/* Prints the schema of a job. */
#include "common.h"
#include "deck.h"

int main(void) {
    size_t needed = 0;
    CHECK(deck_job_schema(NULL, 0, &needed) == DECK_SHORT_BUFFER);
    char *schema = (char *)malloc(needed);
    CHECK(schema != NULL && deck_job_schema(schema, needed, &needed) == DECK_OK);
    fputs(schema, stdout);
    free(schema);
    return 0;
}
