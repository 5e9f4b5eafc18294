wend_check_program(test_design LABEL unit SOURCES unit/test_design.c NEEDS wend_design m)
wend_check_program(test_unbalanced LABEL unit SOURCES unit/test_unbalanced.c NEEDS wend_design m)
wend_check_program(test_cases LABEL unit SOURCES unit/test_cases.c NEEDS wend_design m)
