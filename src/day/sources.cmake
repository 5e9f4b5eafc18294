wend_folder(day SOURCES day_bound.c day_chains.c day_chance.c day_schedule.c NEEDS wend_base m)
