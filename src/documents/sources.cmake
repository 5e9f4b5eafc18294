wend_folder(documents SOURCES
    xml_out.c plan_xml.c plan_xml_run.c plan_xml_mechanics.c plan_xml_work.c parts_csv.c csv_out.c
    order_words.c order_csv.c order_ubl.c
    shown_text.c summary_page.c summary_run.c summary_text.c
    options_text.c explain_text.c
    drawing.c type_width.c write_svg.c
    layout_route.c layout_heights.c layout_ends.c layout_scale.c layout_up.c layout_labels.c layout_slots.c
    layout_strip.c layout_chainage.c layout_boxes.c layout_signs.c layout_marks.c layout_legend.c layout_sheet.c layout_runs.c
    NEEDS wend_plan wend_parts PkgConfig::XML)
