wend_folder(cutting
    SOURCES
        cutting.c cutting_bins.c cutting_bound.c cutting_case.c cutting_filling.c cutting_greedy.c cutting_kinds.c
        cutting_knapsack.c cutting_lp.c cutting_reach.c cutting_result.c cutting_search.c cutting_simplex.c
    NEEDS wend_base m)
