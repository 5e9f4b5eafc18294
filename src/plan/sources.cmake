wend_folder(plan SOURCES plan_check.c NEEDS wend_survey)
