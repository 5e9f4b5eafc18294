# Orders: the file read, lists merged, documents read back, the published schema, the program as it is typed.
set(WEND_UBL_SCHEMAS ${PROJECT_SOURCE_DIR}/../shared/ubl-2.1 CACHE PATH
    "Folder of the OASIS UBL 2.1 schemas (it holds xsdrt/); without it the test of orders against them is skipped")
wend_check_program(test_order LABEL unit
    SOURCES unit/test_order.c unit/test_order_merge.c unit/test_order_read.c unit/test_order_documents.c
            unit/test_order_library.c unit/order_rig.c unit/read_route.c
    NEEDS wend_library m)
