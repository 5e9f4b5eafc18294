wend_folder(words SOURCES words.c template.c NEEDS wend_plan)
