# The order of work, its bound and the simulation; and the tasks that a plan comes to.
wend_check_program(test_day LABEL unit SOURCES unit/test_day.c NEEDS wend_day m)
wend_deep(test_day)
