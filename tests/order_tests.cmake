# Orders: the file read, lists merged, documents read back, the published schema, the program as it is typed.
set(WEND_UBL_SCHEMAS ${PROJECT_SOURCE_DIR}/../shared/ubl-2.1 CACHE PATH
    "Folder of the OASIS UBL 2.1 schemas (it holds xsdrt/); without it the test of orders against them is skipped")
wend_check_program(test_order LABEL unit
    SOURCES unit/test_order.c unit/test_order_merge.c unit/test_order_cut.c unit/test_order_prices.c unit/test_order_read.c unit/test_order_documents.c
            unit/test_order_library.c unit/order_rig.c unit/read_route.c
    NEEDS wend_library PkgConfig::XML m)
wend_deep(test_order)
add_executable(order_samples unit/order_samples.c unit/order_rig.c)
target_link_libraries(order_samples PRIVATE wend_documents wend_warnings PkgConfig::CHECK m)
target_include_directories(order_samples PRIVATE ${PROJECT_SOURCE_DIR}/tests/unit)
add_test(NAME order-schema COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/order/ubl_schema.sh
    ${WEND_UBL_SCHEMAS} $<TARGET_FILE:wend> $<TARGET_FILE:order_samples>)
set_tests_properties(order-schema PROPERTIES SKIP_RETURN_CODE 77 TIMEOUT 600)
add_test(NAME order-golden COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/order/compare.sh $<TARGET_FILE:wend>)
add_test(NAME order-command-line COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/cli/order.sh $<TARGET_FILE:wend>)
set_tests_properties(order-schema order-golden order-command-line PROPERTIES LABELS golden)
