wend_folder(parts
    SOURCES
        aisle.c parts.c parts_use.c parts_lengths.c parts_notes.c parts_ways.c parts_of.c
        parts_cable.c parts_fixings.c parts_glands.c parts_duct.c parts_trench.c parts_holes.c
        parts_containment.c parts_catenary.c parts_enclosures.c parts_marking.c parts_supply.c parts_earthing.c
        order_merge.c order_cut.c order_prices.c order_words.c unit_codes.c
        parts_cut.c parts_cut_asked.c parts_cut_lines.c parts_prices.c
        cutting.c cutting_kinds.c cutting_case.c cutting_search.c cutting_filling.c cutting_bound.c cutting_lp.c
        cutting_simplex.c cutting_knapsack.c cutting_greedy.c cutting_bins.c cutting_reach.c cutting_result.c
    NEEDS wend_plan wend_tables m)
