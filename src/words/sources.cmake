wend_folder(words SOURCES words.c calculation.c template.c NEEDS wend_plan)
