/* What the programs of this folder share. */
#ifndef COMMON_H
#define COMMON_H

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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

/* ASCII as UTF-16, with its NUL; returns the code units before that. */
static inline size_t widen(const char *text, uint16_t *wide) {
    size_t units = strlen(text);
    for (size_t i = 0; i <= units; i++) {
        CHECK((unsigned char)text[i] < 0x80);
        wide[i] = (uint16_t)text[i];
    }
    return units;
}

/* Decodes what UTF-16 stands for, by hand, into UTF-8. The caller frees it. */
static inline char *narrow(const uint16_t *wide, size_t units) {
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

#endif
