# What is counted for a route: the tables of the trade, each rule on a made-up route, and what holds of any route.
wend_check_program(test_takeoff LABEL unit
    SOURCES unit/test_takeoff.c unit/test_takeoff_tables.c unit/test_takeoff_fixings.c unit/test_takeoff_ends.c
            unit/test_takeoff_devices.c unit/test_takeoff_supply.c
            unit/test_takeoff_ground.c unit/test_takeoff_held.c unit/takeoff_rig.c unit/csv_file.c
    NEEDS wend_library m)
add_test(NAME counted-by-hand COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/golden/counted.sh)
set_tests_properties(counted-by-hand PROPERTIES LABELS golden)
wend_check_program(test_takeoff_relations LABEL golden
    SOURCES unit/test_takeoff_relations.c unit/takeoff_rig.c unit/made_route.c NEEDS wend_library m)
wend_deep(test_takeoff_relations)
