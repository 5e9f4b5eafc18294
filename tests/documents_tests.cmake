# The documents: read back, measured, and rendered by a browser.
set(WEND_FIXTURES unit/plan_fixture.c unit/fixture_scenes.c unit/fixture_chance.c unit/fixture_money.c unit/fixture_rich.c)
wend_check_program(test_documents LABEL unit
    SOURCES unit/test_documents.c unit/test_plan_xml.c unit/schema_rig.c unit/test_parts_csv.c unit/test_summary.c unit/test_diagram.c
            unit/test_diagram_svg.c unit/test_document_faults.c unit/test_papers.c ${WEND_FIXTURES}
    NEEDS wend_documents PkgConfig::XML PkgConfig::JSON m)
wend_deep(test_documents)

# Writes every fixture's documents into a folder; the rendering tests look at them.
add_executable(documents_samples unit/documents_samples.c ${WEND_FIXTURES})
target_link_libraries(documents_samples PRIVATE wend_documents wend_warnings m)
target_include_directories(documents_samples PRIVATE ${PROJECT_SOURCE_DIR}/tests/unit)

# The schema of the plan and the page on it, as the list has them that it is written from.
add_executable(plan_format unit/plan_format_main.c unit/plan_format.c)
target_link_libraries(plan_format PRIVATE wend_survey wend_warnings)
target_include_directories(plan_format PRIVATE ${PROJECT_SOURCE_DIR}/tests/unit)
wend_check_program(test_plan_routes LABEL golden
    SOURCES unit/test_plan_routes.c unit/plan_routes.c unit/plan_format.c unit/schema_rig.c NEEDS wend_library PkgConfig::XML m)
wend_deep(test_plan_routes)
wend_check_program(test_plan_json LABEL golden
    SOURCES unit/test_plan_json.c unit/plan_routes.c unit/plan_format.c unit/schema_rig.c
    NEEDS wend_library PkgConfig::XML PkgConfig::JSON m)
wend_check_program(test_phone LABEL unit SOURCES unit/test_phone.c ${PROJECT_SOURCE_DIR}/src/phone/engine.c
    NEEDS wend_library PkgConfig::JSON m)
add_test(NAME json-command-line COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/json.sh $<TARGET_FILE:wend>)
set_tests_properties(json-command-line PROPERTIES LABELS golden)
add_test(NAME plan-format COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/plan_format.sh $<TARGET_FILE:plan_format>)
set_tests_properties(plan-format PROPERTIES LABELS unit)

# Draws routes by lot from 1 to 200 stretches; the rendering test looks at them too.
add_executable(diagram_samples unit/diagram_samples.c ${WEND_FIXTURES})
target_link_libraries(diagram_samples PRIVATE wend_documents wend_warnings m)
target_include_directories(diagram_samples PRIVATE ${PROJECT_SOURCE_DIR}/tests/unit)

# Skipped, with the reason printed, only where node or chromium is missing.
find_program(WEND_NODE node)
if(WEND_NODE)
    add_test(NAME rendered COMMAND ${WEND_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/rendered/rendered.mjs
        $<TARGET_FILE:documents_samples> $<TARGET_FILE:diagram_samples> ${CMAKE_CURRENT_BINARY_DIR}/rendered)
    add_test(NAME rendered-papers COMMAND ${WEND_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/rendered/papers.mjs $<TARGET_FILE:wend>
        ${PROJECT_SOURCE_DIR}/routes $<TARGET_FILE:documents_samples> ${CMAKE_CURRENT_BINARY_DIR}/rendered-papers)
    add_test(NAME rendered-templates COMMAND ${WEND_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/rendered/templates.mjs $<TARGET_FILE:wend>
        ${PROJECT_SOURCE_DIR}/routes/well-pump.yaml ${CMAKE_CURRENT_BINARY_DIR}/rendered-templates)
else()
    add_test(NAME rendered-templates COMMAND sh -c "echo 'skipped: there is no node on this machine'; exit 77")
    add_test(NAME rendered-papers COMMAND sh -c "echo 'skipped: there is no node on this machine'; exit 77")
    add_test(NAME rendered COMMAND sh -c "echo 'skipped: there is no node on this machine'; exit 77")
endif()
# The schema of the route file: what it takes and refuses.
wend_check_program(test_schema LABEL unit SOURCES unit/test_schema.c NEEDS wend_library PkgConfig::JSON)
# The schema of the route file by a validator from the npm registry, which the quick run does without.
if(WEND_NODE)
    add_test(NAME route-schema-deep COMMAND ${WEND_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/schema/schema.mjs $<TARGET_FILE:wend>
        ${PROJECT_SOURCE_DIR} ${CMAKE_CURRENT_BINARY_DIR}/schema)
    set_tests_properties(route-schema-deep PROPERTIES LABELS "deep;rendered" TIMEOUT 600)
endif()
set_tests_properties(rendered rendered-papers rendered-templates PROPERTIES LABELS rendered SKIP_RETURN_CODE 77 TIMEOUT 900)

# The survey page: what it writes, and the whole of it in a browser as on a phone.
if(WEND_NODE)
    add_test(NAME survey-texts COMMAND ${WEND_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/survey/texts.mjs $<TARGET_FILE:wend>
        ${CMAKE_CURRENT_BINARY_DIR}/survey-texts)
    add_test(NAME survey-page COMMAND ${WEND_NODE} ${CMAKE_CURRENT_SOURCE_DIR}/survey/page.mjs $<TARGET_FILE:wend>
        ${CMAKE_CURRENT_BINARY_DIR}/survey-page)
else()
    add_test(NAME survey-texts COMMAND sh -c "echo 'skipped: there is no node on this machine'; exit 77")
    add_test(NAME survey-page COMMAND sh -c "echo 'skipped: there is no node on this machine'; exit 77")
endif()
set_tests_properties(survey-texts PROPERTIES LABELS "deep" SKIP_RETURN_CODE 77 TIMEOUT 300)
set_tests_properties(survey-page PROPERTIES LABELS "deep;rendered" SKIP_RETURN_CODE 77 TIMEOUT 900)

# The third compiler: the engine for a browser. It is the same whoever built the program: once, with the release build.
add_test(NAME phone-bytes COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/phone/bytes.sh $<TARGET_FILE:wend> ${CMAKE_CURRENT_BINARY_DIR})
set_tests_properties(phone-bytes PROPERTIES LABELS "deep;rendered" SKIP_RETURN_CODE 77 TIMEOUT 1800)

# The brief and the card of whole routes: nothing that a route calls for is lost between them.
wend_check_program(test_brief LABEL unit SOURCES unit/test_brief.c unit/fault_rig.c unit/read_route.c NEEDS wend_library m)
add_test(NAME settled-keys COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/check_settled.sh)
# What is joined to earth at the two ends, in whole routes.
wend_check_program(test_earth_ends LABEL unit
    SOURCES unit/test_earth_ends.c unit/fault_rig.c
    NEEDS wend_library m)
