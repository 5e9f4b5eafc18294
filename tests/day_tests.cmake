# The order of work, its bound and the simulation; and the tasks that a plan comes to.
wend_check_program(test_day LABEL unit SOURCES unit/test_day.c NEEDS wend_day m)
wend_deep(test_day)
wend_check_program(test_labour LABEL unit SOURCES unit/test_labour.c NEEDS wend_library m)
add_test(NAME day COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/day.sh $<TARGET_FILE:wend>)
set_tests_properties(day PROPERTIES LABELS golden)
