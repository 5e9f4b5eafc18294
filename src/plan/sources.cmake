wend_folder(plan SOURCES plan_check.c plan_caution.c say.c NEEDS wend_survey)
