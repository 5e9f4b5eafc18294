wend_folder(base SOURCES arena.c text.c number.c diag.c diag_print.c NEEDS m)
