wend_folder(takeoff
    SOURCES
        parts.c parts_amounts.c parts_cable.c parts_catenary.c parts_containment.c parts_cut_asked.c parts_duct.c
        parts_earthing.c parts_enclosures.c parts_fixings.c parts_glands.c parts_holes.c parts_lengths.c
        parts_kept.c parts_marking.c parts_notes.c parts_queries.c parts_supply.c parts_trench.c parts_use.c parts_ways.c
    NEEDS wend_plan wend_tables m)
