wend_check_program(test_design LABEL unit SOURCES unit/test_design.c NEEDS wend_design m)
# What each rating factor was taken for: as data, in words and on the drawing.
wend_check_program(test_factors LABEL unit SOURCES unit/test_factors.c unit/fault_rig.c NEEDS wend_library m)
# Two editions of the wiring rules in one process.
wend_check_program(test_editions LABEL unit SOURCES unit/test_editions.c unit/read_route.c NEEDS wend_library m)
wend_check_program(test_assumed LABEL unit SOURCES unit/test_assumed.c NEEDS wend_design wend_words m)
wend_check_program(test_unbalanced LABEL unit SOURCES unit/test_unbalanced.c NEEDS wend_design m)
wend_check_program(test_cases LABEL unit SOURCES unit/test_cases.c NEEDS wend_design m)
