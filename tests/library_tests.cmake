# The library as it is installed, and what a release is hardened with.
# What is built for sanitizers or coverage asks for the same of whoever is linked with it.
if(NOT CMAKE_C_FLAGS MATCHES "-fsanitize|--coverage")
    add_test(NAME installed COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/library/installed.sh ${PROJECT_BINARY_DIR})
    set_tests_properties(installed PROPERTIES LABELS unit TIMEOUT 300)
endif()
if(CMAKE_BUILD_TYPE MATCHES "^(Release|RelWithDebInfo|MinSizeRel)$")
    add_test(NAME hardened COMMAND bash ${CMAKE_CURRENT_SOURCE_DIR}/library/hardened.sh ${PROJECT_BINARY_DIR})
    set_tests_properties(hardened PROPERTIES LABELS unit)
endif()
