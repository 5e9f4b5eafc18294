# Cutting plans: known and by chance; and, where glpsol (package glpk-utils) is installed, against that solver.
wend_check_program(test_cutting LABEL unit
    SOURCES unit/test_cutting.c unit/test_cutting_tiny.c unit/test_cutting_chance.c unit/cutting_rig.c unit/csv_file.c
    NEEDS wend_buying m)
wend_deep(test_cutting)
add_executable(cutting_jobs cutting/cutting_jobs.c)
target_link_libraries(cutting_jobs PRIVATE wend_buying wend_warnings m)
add_test(NAME cutting-against-solver COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cutting/compare.sh $<TARGET_FILE:cutting_jobs>)
set_tests_properties(cutting-against-solver PROPERTIES LABELS solver SKIP_RETURN_CODE 77 TIMEOUT 300)
# What cutting and prices make of a list of parts, and of whole routes.
wend_check_program(test_parts_cut LABEL unit SOURCES unit/test_parts_cut.c NEEDS wend_library m)
wend_check_program(test_prices LABEL unit SOURCES unit/test_prices.c NEEDS wend_library m)
