wend_folder(survey SOURCES survey_names.c survey_cores.c survey_run.c NEEDS wend_base)
