wend_folder(parts SOURCES
    parts.c parts_cable.c parts_fixings.c parts_glands.c parts_duct.c
    cutting.c cutting_kinds.c cutting_case.c cutting_search.c cutting_filling.c cutting_bound.c cutting_lp.c
    cutting_simplex.c cutting_knapsack.c cutting_greedy.c cutting_bins.c cutting_reach.c cutting_result.c
    NEEDS wend_plan wend_tables)
