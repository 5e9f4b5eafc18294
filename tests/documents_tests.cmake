# The documents: read back, measured, and rendered by a browser.
set(WEND_FIXTURES unit/plan_fixture.c unit/fixture_scenes.c unit/fixture_chance.c)
wend_check_program(test_documents LABEL unit
    SOURCES unit/test_documents.c unit/test_plan_xml.c unit/test_parts_csv.c unit/test_summary.c unit/test_diagram.c
            unit/test_diagram_svg.c unit/test_document_faults.c ${WEND_FIXTURES}
    NEEDS wend_documents m)

# Writes every fixture's documents into a folder; the rendering tests look at them.
add_executable(documents_samples unit/documents_samples.c ${WEND_FIXTURES})
target_link_libraries(documents_samples PRIVATE wend_documents wend_warnings m)
target_include_directories(documents_samples PRIVATE ${PROJECT_SOURCE_DIR}/tests/unit)
