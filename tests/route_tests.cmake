wend_check_program(test_relations LABEL golden SOURCES unit/test_relations.c unit/made_route.c NEEDS wend_library m)
wend_check_program(test_library LABEL unit SOURCES unit/test_library.c NEEDS wend_library m)

add_test(NAME golden COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/golden/compare.sh $<TARGET_FILE:wend>)
add_test(NAME found COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/found/run.sh $<TARGET_FILE:wend>)
set_tests_properties(found PROPERTIES LABELS golden)
add_test(NAME command-line COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/command_line.sh $<TARGET_FILE:wend>)
add_test(NAME files COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/files.sh $<TARGET_FILE:wend>)
add_test(NAME templates COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/templates.sh $<TARGET_FILE:wend>)
add_test(NAME short-memory COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/fault/short_memory.sh $<TARGET_FILE:wend>)
set_tests_properties(files templates PROPERTIES LABELS hostile TIMEOUT 300)
set_tests_properties(short-memory PROPERTIES LABELS "deep;no-sanitizers" TIMEOUT 300)
set_tests_properties(golden command-line PROPERTIES LABELS golden)
add_test(NAME failing-writes COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/fault/failing_writes.sh $<TARGET_FILE:wend>)
set_tests_properties(failing-writes PROPERTIES LABELS hostile)

add_executable(wend_bench bench/bench.c)
target_link_libraries(wend_bench PRIVATE wend_library wend_warnings PkgConfig::YAML)

wend_check_program(test_explain LABEL golden
    SOURCES unit/test_explain.c unit/explain_routes.c unit/printed_working.c unit/calculator.c NEEDS wend_library m)
wend_check_program(test_nearest LABEL golden
    SOURCES unit/test_nearest.c unit/explain_routes.c unit/made_route.c unit/read_route.c NEEDS wend_library m)
wend_check_program(test_decides LABEL golden SOURCES unit/test_decides.c NEEDS wend_library m)
wend_check_program(test_options LABEL golden SOURCES unit/test_options.c unit/printed_working.c unit/explain_routes.c NEEDS wend_library m)
wend_deep(test_options)
add_test(NAME questions COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/questions.sh $<TARGET_FILE:wend>)
set_tests_properties(questions PROPERTIES LABELS golden)
