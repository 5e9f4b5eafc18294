wend_folder(documents
    SOURCES
        check_titles.c earth_ends.c measured_said.c shown_text.c
        diagram/bands.c diagram/below.c diagram/cells.c diagram/cells_conditions.c diagram/cells_end.c diagram/cells_marks.c
        diagram/cells_way.c diagram/drawing.c diagram/dress.c diagram/flags.c diagram/layout_cables.c
        diagram/layout_ends.c diagram/layout_heights.c diagram/layout_route.c diagram/layout_strips.c
        diagram/layout_view.c diagram/view_draw.c diagram/marks.c diagram/narrow.c diagram/profile.c diagram/profile_marks.c diagram/sheet.c diagram/sheet_facts.c
        diagram/signs.c diagram/strip_block.c diagram/type_width.c diagram/write_sheets.c diagram/write_svg.c
        papers/caution_places.c papers/page_save.c papers/papers.c papers/papers_articles.c
        papers/papers_card.c papers/papers_cells.c papers/papers_chart.c papers/papers_cores.c papers/papers_as_laid.c papers/papers_day.c papers/papers_ends.c papers/papers_given.c papers/papers_open.c
        papers/papers_pulling.c papers/papers_readings.c papers/papers_rods.c papers/papers_sheet.c papers/papers_strip.c papers/papers_summary.c
        papers/papers_table.c papers/papers_tests.c papers/papers_tools.c papers/papers_watch.c
        papers/papers_labels.c papers/papers_xml.c papers/page_whole.c papers/template_tree.c papers/template_vet.c papers/xslt_run.c
        summary/day_text.c summary/decides_text.c summary/decision_text.c summary/explain_text.c summary/options_more_text.c summary/options_text.c summary/reach_text.c summary/summary_page.c
        summary/summary_parts.c
        summary/summary_run.c summary/summary_text.c
        diff/diff_rows.c diff/diff_text.c diff/readings_text.c
        xml/late_xml.c xml/memory_watch.c xml/order_ubl.c xml/plan_mark.c xml/plan_write.c xml/plan_xml.c xml/xml_out.c xml/xml_tree.c
        json/check_json.c json/day_json.c json/json_out.c json/known_json.c json/order_json.c json/plan_json.c
        lists/cable_text.c lists/csv_out.c lists/day_ics.c lists/order_csv.c lists/order_words.c lists/parts_csv.c lists/table_text.c
    NEEDS wend_plan wend_takeoff wend_buying wend_labour wend_words PkgConfig::JSON Threads::Threads)
include(${CMAKE_CURRENT_LIST_DIR}/xml/late_xml.cmake)

# The templates become part of the program.
set(WEND_TEMPLATES papers.xsl house.xsl brief.xsl card.xsl parts.xsl design.xsl test.xsl readings.xsl as-laid.xsl quotation.xsl house.css)
list(TRANSFORM WEND_TEMPLATES PREPEND ${PROJECT_SOURCE_DIR}/templates/ OUTPUT_VARIABLE WEND_TEMPLATE_FILES)
set(WEND_TEMPLATE_FILES ${WEND_TEMPLATE_FILES} PARENT_SCOPE) # they are installed too
list(JOIN WEND_TEMPLATES "," WEND_TEMPLATE_NAMES)
add_custom_command(OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/template_built_in.c
    COMMAND ${CMAKE_COMMAND} -DFOLDER=${PROJECT_SOURCE_DIR}/templates -DFILES=${WEND_TEMPLATE_NAMES}
        -DOUT=${CMAKE_CURRENT_BINARY_DIR}/template_built_in.c -P ${CMAKE_CURRENT_LIST_DIR}/papers/embed_templates.cmake
    DEPENDS ${WEND_TEMPLATE_FILES} ${CMAKE_CURRENT_LIST_DIR}/papers/embed_templates.cmake VERBATIM)
target_sources(wend_documents PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/template_built_in.c)
target_include_directories(wend_documents PRIVATE ${CMAKE_CURRENT_LIST_DIR}/papers)
