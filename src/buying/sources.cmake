wend_folder(buying
    SOURCES
        order_cut.c order_merge.c order_prices.c order_text.c parts_cut.c parts_cut_lines.c parts_differ.c parts_prices.c
        unit_codes.c
    NEEDS wend_takeoff wend_cutting m)
