wend_folder(design
    SOURCES
        alternatives.c assumed.c assumptions.c cautions_due.c checks.c choose.c design.c fixed.c device.c device_words.c legs.c
        likeness.c nearest.c otherwise.c verdict.c way_rates.c what_if.c
        terms/steps.c
        rating/drop.c rating/factor_because.c rating/factors.c rating/grouping.c rating/load.c rating/neighbours.c
        rating/neutral.c rating/rating.c rating/reference_method.c rating/working_drop.c
        rating/working_drop_lines.c rating/working_drop_sums.c rating/working_load.c rating/working_neutral.c
        rating/working_rating.c
        faults/disconnection.c faults/earthing.c faults/electrode.c faults/fault_energy.c faults/fault_level.c
        faults/fault_terms.c faults/load_rules.c faults/location.c faults/location_assumed.c faults/loop.c
        faults/measured.c faults/measured_causes.c faults/owner_rules.c faults/readings.c faults/starting.c faults/withstand.c faults/working_earthing.c
        faults/working_fault.c faults/working_loop.c faults/working_rules.c
        mechanics/bends.c mechanics/check_duct.c mechanics/check_enclosed.c mechanics/check_pull.c
        mechanics/check_segregation.c mechanics/duct_fill.c mechanics/mechanics.c mechanics/mechanics_cable.c
        mechanics/plan_cable.c mechanics/pull.c mechanics/pull_words.c mechanics/recheck.c mechanics/shared_segments.c
    NEEDS wend_plan wend_tables)
