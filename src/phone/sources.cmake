# The engine for a browser. WEND_ENGINE is the build that makes it; WEND_PHONE has that build made beside the program's own.
if(WEND_ENGINE)
    add_executable(engine phone/engine.c)
    target_link_libraries(engine PRIVATE wend_library wend_warnings)
    target_link_options(engine PRIVATE -mexec-model=reactor LINKER:--gc-sections,--strip-all,-z,stack-size=1048576)
    set_target_properties(engine PROPERTIES SUFFIX .wasm RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
endif()
