# Published tables: every figure against the copies in published/, physics, the thermal model, the cautions.
wend_check_program(test_tables LABEL unit
    SOURCES unit/test_tables.c unit/test_table_rows.c unit/test_table_things.c unit/test_table_cells.c unit/test_table_physics.c
            unit/test_factor_physics.c unit/test_table_oracle.c unit/test_table_cases.c unit/test_cautions.c
            unit/csv_file.c
    NEEDS wend_tables wend_words)
# Published tables on faults, earthing and protective devices, and the worked examples that they alone answer.
wend_check_program(test_fault_tables LABEL unit
    SOURCES unit/test_fault_tables.c unit/test_fault_armour.c unit/test_fault_conductors.c unit/test_fault_devices.c
            unit/test_fault_cases.c unit/csv_file.c
    NEEDS wend_tables m)
add_test(NAME tables-listed COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/tables_listed.sh $<TARGET_FILE:wend>)
set_tests_properties(tables-listed PROPERTIES LABELS unit)
