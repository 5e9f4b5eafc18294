wend_folder(plan SOURCES plan_check.c plan_caution.c plan_readings.c plan_source.c say.c NEEDS wend_survey)
