wend_folder(tables
    SOURCES
        cable_kinds.c edition.c lookup.c tables_list.c table_cells.c cautions.c
        capacity.c capacity_4d2a.c capacity_4d4a.c capacity_4d5.c capacity_4e2a.c capacity_4e4a.c
        voltdrop.c voltdrop_4d2b.c voltdrop_4d4b.c voltdrop_4d5.c voltdrop_4e2b.c voltdrop_4e4b.c
        ambient_air_4b1.c ambient_ground_4b2.c soil_resistivity_4b3.c laying_depth_4b4.c insulation_length_52_2.c
        rating_factors.c grouping_air_4c1.c grouping_ceiling_b52_17.c grouping_buried_4c2.c grouping_ducts_4c3.c
        grouping_unlike_b52_5.c
        conductor_resistance_iec60228.c
        device_ratings.c device_ratings_breaker.c device_ratings_bs88_2.c device_ratings_bs88_3.c
        device_ratings_bs1361.c device_ratings_bs3036.c
        cable_dimensions_bs5467.c gland_usual_bs5467.c gland_thread_bs6121.c support_spacing_d1.c hook_cleat.c
        armour_bs5467.c armour_loop_50480.c protective_core_bs6004.c disconnection_times_41_1.c
        device_trip.c device_trip_breaker_41_3.c device_trip_bs88_2.c device_trip_bs88_3.c device_trip_bs1361.c device_trip_bs3036.c
        let_through_class_3.c first_loop.c clause_figures_bs7671.c design_practice.c
        clause_ratings_bs7671.c device_trip_least_breaker.c residual_ratings_en61008.c meter_errors_en61557.c
        reading_practice.c
        k_values.c k_values_43_1.c k_values_54_2.c k_values_54_3.c k_values_54_4.c
        protective_size_54_7.c bonding_tn_c_s_54_8.c buried_earthing_54_1.c
        residual_times_en61008.c residual_loop_limit_41_5.c harmonic_annex_e.c location_rules.c
        bend_radius_d5.c bend_radius_data.c bend_radius_drawn.c duct_bore_en61386.c duct_fill_limits.c trunking_fill.c duct_jam.c
        pull_limits.c pull_friction.c separation_en50174.c
        order_packs.c order_allowances.c fixing_surface.c conduit_spacing_d3.c trunking_spacing_d4.c
        containment_practice.c wire_grips_en13411.c gland_range_bs6121.c trench_practice.c tails_practice.c
        voltage_factors.c wall_hole.c site_practice.c takeoff_practice.c
    NEEDS wend_survey m)
