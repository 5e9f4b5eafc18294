# Bends, ducts and drawing in: tables, published examples, sums worked by hand, and the checks on made-up ways.
wend_check_program(test_mechanics LABEL unit
    SOURCES unit/test_mechanics.c unit/test_mechanics_tables.c unit/test_mechanics_cases.c unit/test_mechanics_worked.c
            unit/test_mechanics_bends.c unit/test_mechanics_ducts.c unit/test_mechanics_pulls.c unit/mechanics_rig.c
            unit/calculator.c unit/csv_file.c
    NEEDS wend_design wend_words m)
wend_check_program(test_mechanics_routes LABEL unit
    SOURCES unit/test_mechanics_routes.c unit/test_mechanics_choice.c unit/test_mechanics_keys.c
            unit/test_mechanics_together.c unit/test_legs.c unit/mechanics_route.c
    NEEDS wend_library m)
