/* fuzz_replay CORPUS: puts every file of CORPUS/routes, prices, orders and labour through the library again. An
 * input that a promise does not hold of ends the process; its name was printed before. */
#include "fuzz_input.h"

#include <dirent.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>

static const char *const folders[FUZZ_KINDS] = {"routes", "prices", "orders", "labour"};

enum { INPUT_MOST = 65536 };

static int replay_file(enum FuzzKind kind, const char *path)
{
    static char bytes[INPUT_MOST];
    FILE *file = fopen(path, "rb");
    if (file == NULL) {
        fprintf(stderr, "%s: cannot be read\n", path);
        exit(EXIT_FAILURE);
    }
    const size_t length = fread(bytes, 1, sizeof bytes, file);
    fclose(file);
    /* a copy of its own length, so that a read behind its end is seen */
    char *text = malloc(length > 0 ? length : 1);
    if (text == NULL) {
        exit(EXIT_FAILURE);
    }
    for (size_t i = 0; i < length; i++) {
        text[i] = bytes[i];
    }
    fuzz_input(kind, text, length);
    free(text);
    return 1;
}

static int replay_folder(enum FuzzKind kind, const char *corpus)
{
    char path[1024];
    int count = 0;
    snprintf(path, sizeof path, "%s/%s", corpus, folders[kind]);
    DIR *folder = opendir(path);
    for (const struct dirent *entry; folder != NULL && (entry = readdir(folder)) != NULL;) {
        if (entry->d_name[0] != '.') {
            snprintf(path, sizeof path, "%s/%s/%s", corpus, folders[kind], entry->d_name);
            printf("%s\n", path);
            fflush(stdout);
            count += replay_file(kind, path);
        }
    }
    if (folder != NULL) {
        closedir(folder);
    }
    return count;
}

int main(int count, char **words)
{
    if (count != 2) {
        fprintf(stderr, "usage: fuzz_replay CORPUS\n");
        return 2;
    }
    bool empty = false;
    for (int kind = 0; kind < FUZZ_KINDS; kind++) {
        const int files = replay_folder((enum FuzzKind)kind, words[1]);
        printf("%d %s replayed\n", files, folders[kind]);
        empty = empty || files == 0;
    }
    return empty ? EXIT_FAILURE : EXIT_SUCCESS;
}
