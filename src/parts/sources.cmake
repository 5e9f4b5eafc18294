wend_folder(parts SOURCES aisle.c parts.c parts_cable.c parts_fixings.c parts_glands.c parts_duct.c NEEDS wend_plan wend_tables)
