wend_folder(survey SOURCES survey_cores.c survey_run.c survey_kinds.c survey_legs.c NEEDS wend_base)
