wend_folder(labour SOURCES labour.c work.c work_before.c work_cost.c work_tasks.c NEEDS wend_day wend_buying m)
