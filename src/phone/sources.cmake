# The engine for a browser. WEND_ENGINE is the build that makes it; WEND_PHONE has that build made beside the program's own.
if(WEND_ENGINE)
    add_executable(engine phone/engine.c)
    target_link_libraries(engine PRIVATE wend_library wend_warnings)
    target_link_options(engine PRIVATE -mexec-model=reactor LINKER:--gc-sections,--strip-all,-z,stack-size=1048576)
    set_target_properties(engine PROPERTIES SUFFIX .wasm RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
elseif(WEND_PHONE)
    set(WEND_PHONE_SOURCES ${PROJECT_BINARY_DIR}/phone-sources CACHE PATH "Where the sources of libyaml, libxml2, libxslt, cJSON are")
    set(engine ${PROJECT_BINARY_DIR}/engine)
    include(ProcessorCount)
    ProcessorCount(cores)
    add_custom_target(engine_built
        COMMAND sh ${CMAKE_CURRENT_LIST_DIR}/sources.sh ${WEND_PHONE_SOURCES}
        COMMAND ${CMAKE_COMMAND} -S ${PROJECT_SOURCE_DIR} -B ${engine} -DCMAKE_TOOLCHAIN_FILE=${CMAKE_CURRENT_LIST_DIR}/wasi.cmake
            -DCMAKE_BUILD_TYPE=MinSizeRel -DWEND_PHONE_SOURCES=${WEND_PHONE_SOURCES} -DWEND_WERROR=${WEND_WERROR}
        COMMAND ${CMAKE_COMMAND} --build ${engine} --target engine --parallel ${cores}
        BYPRODUCTS ${engine}/engine.wasm VERBATIM)
    # unpacked by the browser; without the time at which it was packed
    add_custom_command(OUTPUT ${PROJECT_BINARY_DIR}/phone/engine.wasm.gz
        COMMAND gzip -9nc ${engine}/engine.wasm > ${PROJECT_BINARY_DIR}/phone/engine.wasm.gz
        DEPENDS ${engine}/engine.wasm engine_built)
    file(MAKE_DIRECTORY ${PROJECT_BINARY_DIR}/phone)
    set(WEND_ENGINE_FILES ${CMAKE_CURRENT_LIST_DIR}/engine.js ${PROJECT_BINARY_DIR}/phone/engine.wasm.gz)
endif()
