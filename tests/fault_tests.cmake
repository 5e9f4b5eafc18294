# Faults and earthing: examples, limits and rules put to the design's own functions and to whole routes.
wend_check_program(test_fault LABEL unit
    SOURCES unit/test_fault.c unit/test_fault_published.c unit/test_fault_worked.c unit/test_fault_limits.c
            unit/test_fault_rules.c unit/test_fault_trade.c unit/test_fault_cautious.c unit/test_fault_energy.c unit/test_fault_known.c unit/test_fault_said.c unit/fault_rig.c unit/csv_file.c
    NEEDS wend_library m)
# Readings against the plan, faults planted and found again.
wend_check_program(test_measured LABEL unit SOURCES unit/test_measured.c NEEDS wend_library m)
# What the place of a feed and its outbuilding demand: the published rules cell by cell, then whole routes.
wend_check_program(test_location LABEL unit
    SOURCES unit/test_location.c unit/location_rig.c unit/fault_rig.c unit/csv_file.c
    NEEDS wend_library m)
wend_check_program(test_outbuilding LABEL unit
    SOURCES unit/test_outbuilding.c unit/location_rig.c unit/fault_rig.c
    NEEDS wend_library m)
# Everything a short route can be: tens of thousands of plans, held against what must hold of any and against physics.
wend_check_program(test_sweep LABEL golden
    SOURCES unit/test_sweep.c unit/sweep_case.c unit/sweep_holds.c
    NEEDS wend_library m)
wend_deep(test_sweep)
