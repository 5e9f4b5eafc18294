wend_folder(library SOURCES asked.c day.c decides.c language.c language_json.c schema_json.c schema_values.c tree_json.c diff.c library.c ranges.c reach.c replan.c known.c known_cable.c names.c options_more.c diagnostics.c questions.c order.c order_kept.c order_told.c templates.c
    NEEDS wend_read wend_design wend_buying wend_documents)
target_compile_definitions(wend_library PRIVATE WEND_BUILT_MAJOR=${PROJECT_VERSION_MAJOR}
    WEND_BUILT_MINOR=${PROJECT_VERSION_MINOR} WEND_BUILT_PATCH=${PROJECT_VERSION_PATCH})

if(WEND_ENGINE)
    return()
endif()

# The shared library: everything but what wend.h names is hidden.
add_library(wend_shared SHARED $<TARGET_OBJECTS:wend_library>)
target_link_libraries(wend_shared PRIVATE wend_read wend_design wend_buying wend_documents wend_warnings)
target_include_directories(wend_shared INTERFACE $<BUILD_INTERFACE:${PROJECT_SOURCE_DIR}/include>
    $<INSTALL_INTERFACE:${CMAKE_INSTALL_INCLUDEDIR}>)
set_target_properties(wend_shared PROPERTIES OUTPUT_NAME wend EXPORT_NAME wend LINKER_LANGUAGE C
    VERSION ${PROJECT_VERSION} SOVERSION ${PROJECT_VERSION_MAJOR} LIBRARY_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})

# The static one: a single object, so that hidden names stay hidden there too and meet no others.
list(TRANSFORM WEND_FOLDERS PREPEND wend_ OUTPUT_VARIABLE WEND_LIBRARIES)
list(TRANSFORM WEND_LIBRARIES REPLACE ".+" "$<TARGET_OBJECTS:\\0>" OUTPUT_VARIABLE WEND_OBJECTS)
add_custom_command(OUTPUT ${PROJECT_BINARY_DIR}/libwend.a
    COMMAND ${CMAKE_COMMAND} -E rm -f ${PROJECT_BINARY_DIR}/libwend.a
    COMMAND ${CMAKE_C_COMPILER} -r -nostdlib -o ${PROJECT_BINARY_DIR}/wend.o ${WEND_OBJECTS}
    COMMAND ${CMAKE_OBJCOPY} --localize-hidden ${PROJECT_BINARY_DIR}/wend.o
    COMMAND ${CMAKE_AR} rcs ${PROJECT_BINARY_DIR}/libwend.a ${PROJECT_BINARY_DIR}/wend.o
    DEPENDS ${WEND_LIBRARIES} COMMAND_EXPAND_LISTS VERBATIM)
add_custom_target(wend_static ALL DEPENDS ${PROJECT_BINARY_DIR}/libwend.a)
