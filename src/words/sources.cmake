wend_folder(words SOURCES words.c calculation.c template.c warnings.c NEEDS wend_plan)
