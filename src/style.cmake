# `cmake --build BUILD --target style` checks the form of the code; `tidy` runs the static checks; `format` mends the form.
find_program(CLANG_FORMAT NAMES clang-format)
find_program(RUN_CLANG_TIDY NAMES clang-tidy)
include(ProcessorCount)
ProcessorCount(WEND_CORES)
file(GLOB_RECURSE WEND_ALL_C CONFIGURE_DEPENDS
    ${PROJECT_SOURCE_DIR}/src/*.c ${PROJECT_SOURCE_DIR}/src/*.h ${PROJECT_SOURCE_DIR}/include/*.h
    ${PROJECT_SOURCE_DIR}/tests/*.c ${PROJECT_SOURCE_DIR}/tests/*.h)
set(WEND_OWN_C ${WEND_ALL_C})
list(FILTER WEND_OWN_C INCLUDE REGEX "/src/.*\\.c$")
if(CLANG_FORMAT)
    add_custom_target(style COMMAND ${CLANG_FORMAT} --dry-run --Werror ${WEND_ALL_C} VERBATIM)
    add_custom_target(format COMMAND ${CLANG_FORMAT} -i ${WEND_ALL_C} VERBATIM)
endif()
if(RUN_CLANG_TIDY)
    list(JOIN WEND_OWN_C "\n" WEND_OWN_LINES)
    file(WRITE ${PROJECT_BINARY_DIR}/own-files.txt "${WEND_OWN_LINES}\n")
    add_custom_target(tidy COMMAND xargs -a ${PROJECT_BINARY_DIR}/own-files.txt -n 8 -P ${WEND_CORES}
        ${RUN_CLANG_TIDY} --quiet -p ${PROJECT_BINARY_DIR} VERBATIM)
endif()
