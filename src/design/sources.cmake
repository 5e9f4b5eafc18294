wend_folder(design
    SOURCES design.c fault_terms.c load.c device.c device_words.c place.c extent.c grouping.c factors.c rating.c temperature.c drop.c checks.c choose.c
            steps.c loop.c fault_level.c fault_energy.c disconnection.c withstand.c electrode.c earthing.c load_rules.c location.c location_assumed.c owner_rules.c
            readings.c
            assumptions.c cautions_due.c alternatives.c variant.c
            working_load.c working_drop.c working_rating.c working_loop.c working_fault.c working_earthing.c working_rules.c
            mechanics.c mechanics_cable.c bend.c duct_fill.c check_duct.c check_enclosed.c check_segregation.c pull.c pull_crowd.c pull_pit.c check_pull.c
            word_pull.c working_pull.c sag.c plan_mechanics.c settle.c together.c legs.c verdict.c warnings.c
            likeness.c
            drop_lines.c neutral.c starting.c working_neutral.c working_drop_sums.c working_drop_lines.c
    NEEDS wend_plan wend_tables)
