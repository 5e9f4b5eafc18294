wend_folder(documents SOURCES
    xml_out.c plan_xml.c plan_xml_run.c plan_xml_mechanics.c plan_xml_work.c plan_xml_parts.c parts_csv.c csv_out.c
    order_words.c order_csv.c order_ubl.c
    shown_text.c caution_places.c summary_page.c summary_run.c summary_parts.c summary_text.c
    options_text.c explain_text.c
    papers.c xslt_run.c template_tree.c template_vet.c page_save.c diagram_sheets.c
    earth_ends.c papers_xml.c papers_said.c papers_cores.c papers_ends.c papers_rods.c papers_work.c papers_surroundings.c papers_hands.c papers_pulling.c papers_day.c papers_tools.c papers_articles.c papers_sheet.c papers_tests.c papers_tests_dead.c papers_tests_live.c papers_chart.c
    drawing.c type_width.c write_svg.c
    layout_route.c layout_heights.c layout_ends.c layout_scale.c layout_up.c layout_labels.c layout_label_stretch.c layout_label_work.c layout_label_end.c layout_slots.c
    layout_blocks.c layout_cables.c layout_conditions.c layout_ribbon.c layout_pulls.c layout_flags.c layout_view.c
    layout_strip.c layout_chainage.c layout_boxes.c layout_signs.c layout_marks.c layout_legend.c layout_sheet.c layout_runs.c
    NEEDS wend_plan wend_parts PkgConfig::XML PkgConfig::XSLT)

# The templates become part of the program.
set(WEND_TEMPLATES papers.xsl house.xsl brief.xsl parts.xsl design.xsl test.xsl house.css)
list(TRANSFORM WEND_TEMPLATES PREPEND ${PROJECT_SOURCE_DIR}/templates/ OUTPUT_VARIABLE WEND_TEMPLATE_FILES)
list(JOIN WEND_TEMPLATES "," WEND_TEMPLATE_NAMES)
add_custom_command(OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/template_built_in.c
    COMMAND ${CMAKE_COMMAND} -DFOLDER=${PROJECT_SOURCE_DIR}/templates -DFILES=${WEND_TEMPLATE_NAMES}
        -DOUT=${CMAKE_CURRENT_BINARY_DIR}/template_built_in.c -P ${CMAKE_CURRENT_LIST_DIR}/embed_templates.cmake
    DEPENDS ${WEND_TEMPLATE_FILES} ${CMAKE_CURRENT_LIST_DIR}/embed_templates.cmake VERBATIM)
target_sources(wend_documents PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/template_built_in.c)
target_include_directories(wend_documents PRIVATE ${CMAKE_CURRENT_LIST_DIR})
