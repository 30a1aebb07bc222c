/* What the programs of this folder share. */
#ifndef COMMON_H
#define COMMON_H

#include <stdio.h>
#include <stdlib.h>

/* Fails the program with the place. */
#define CHECK(condition)                                                          \
    do {                                                                          \
        if (!(condition)) {                                                       \
            fprintf(stderr, "%s:%d: not so: %s\n", __FILE__, __LINE__, #condition); \
            exit(1);                                                              \
        }                                                                         \
    } while (0)

/* The whole of a file with a NUL at its end, to be freed. */
static inline char *read_file(const char *path) {
    FILE *file = fopen(path, "rb");
    CHECK(file != NULL);
    CHECK(fseek(file, 0, SEEK_END) == 0);
    long size = ftell(file);
    CHECK(size >= 0 && fseek(file, 0, SEEK_SET) == 0);
    char *text = (char *)calloc((size_t)size + 1, 1);
    CHECK(text != NULL && fread(text, 1, (size_t)size, file) == (size_t)size);
    fclose(file);
    return text;
}

#endif
