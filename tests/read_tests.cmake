# Ground floor and reader. The three programs of the reader share read_route.c; its private headers are tested too.
wend_check_program(test_base LABEL unit SOURCES unit/test_base.c unit/test_diag.c NEEDS wend_base m)
wend_check_program(test_read LABEL unit
    SOURCES unit/test_read.c unit/test_read_good.c unit/test_read_defaults.c unit/test_read_values.c
            unit/test_read_ranges.c unit/test_read_faults.c unit/test_read_bulk.c unit/test_read_format.c
            unit/test_read_digest.c
            unit/read_route.c
    NEEDS wend_read m)
wend_deep(test_read)
wend_check_program(test_language LABEL unit SOURCES unit/test_language.c NEEDS wend_read m)
wend_check_program(test_bad_files LABEL unit SOURCES unit/test_bad_files.c unit/read_route.c NEEDS wend_read)
wend_check_program(test_hostile LABEL hostile SOURCES unit/test_hostile.c unit/read_route.c NEEDS wend_read)
