# Debian packages, one a part of src/install.cmake: `cmake --workflow --preset package` leaves them in build/package. The
# version stands in project() alone.
if(NOT CMAKE_INSTALL_PREFIX STREQUAL "/usr")
    return() # the folders were chosen for another place
endif()
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME wend)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(WEND_MAINTAINER "Wend developers <developers@wend.example>" CACHE STRING "Who answers for the Debian packages")
set(CPACK_PACKAGE_CONTACT "${WEND_MAINTAINER}")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ
    WORLD_EXECUTE)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_COMPONENTS_ALL program library development)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS_PRIVATE_DIRS ${PROJECT_BINARY_DIR})
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION TRUE)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)

# The packages that files are from, "a, b": what is loaded late is in no list of the linker.
function(wend_packages out)
    set(all "")
    foreach(name ${ARGN})
        execute_process(COMMAND dpkg-query -S */${name} OUTPUT_VARIABLE said ERROR_QUIET)
        if(said MATCHES "^([^:, ]+)[:,]")
            list(APPEND all ${CMAKE_MATCH_1})
        endif()
    endforeach()
    list(JOIN all ", " all)
    set(${out} "${all}" PARENT_SCOPE)
endfunction()
wend_packages(late ${WEND_XML_FILE} ${WEND_XSLT_FILE})
wend_packages(linked libyaml-0.so.2 libcjson.so.1)

set(soname libwend${PROJECT_VERSION_MAJOR})
set(CPACK_DEBIAN_PROGRAM_PACKAGE_NAME wend)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PROGRAM_PACKAGE_DEPENDS "${late}")
set(CPACK_DEBIAN_PROGRAM_DESCRIPTION "planner for electrical cable runs
From a route file that says what was surveyed, wend works out what a cable
can carry on its way to an outbuilding, picks cable and device, counts what
is ordered, and writes a diagram to scale, a parts list, a brief for the crew,
a design sheet and a test sheet. It works offline.")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME ${soname})
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libs)
# Where CPack looks for what a shared library needs, it also writes scripts that call ldconfig; a trigger does.
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SHLIBDEPS OFF)
execute_process(COMMAND getconf GNU_LIBC_VERSION OUTPUT_VARIABLE libc OUTPUT_STRIP_TRAILING_WHITESPACE)
string(REPLACE "glibc " "" libc "${libc}")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_DEPENDS "libc6 (>= ${libc}), ${linked}, ${late}")
set(CPACK_DEBIAN_LIBRARY_DESCRIPTION "planner for electrical cable runs, shared library
The planner behind the program wend: a route held in memory becomes a plan
and its documents. This package holds the shared library.")
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_NAME libwend-dev)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_DEVELOPMENT_PACKAGE_DEPENDS "${soname} (= ${PROJECT_VERSION}), libyaml-dev, libcjson-dev")
set(CPACK_DEBIAN_DEVELOPMENT_DESCRIPTION "planner for electrical cable runs, for programmers
The header, the static library and what pkg-config and CMake need to build
programs with libwend.")
file(WRITE ${PROJECT_BINARY_DIR}/control/shlibs "libwend ${PROJECT_VERSION_MAJOR} ${soname} (>= ${PROJECT_VERSION})\n")
file(WRITE ${PROJECT_BINARY_DIR}/control/triggers "activate-noawait ldconfig\n")
set(CPACK_DEBIAN_LIBRARY_PACKAGE_CONTROL_EXTRA ${PROJECT_BINARY_DIR}/control/shlibs
    ${PROJECT_BINARY_DIR}/control/triggers)

# Each package brings its licence and says what has changed.
execute_process(COMMAND ${CMAKE_COMMAND} -E env LC_ALL=C date -u -R -d ${WEND_RELEASE_DATE} OUTPUT_VARIABLE date
    OUTPUT_STRIP_TRAILING_WHITESPACE)
set(changes ${PROJECT_BINARY_DIR}/changelog)
file(WRITE ${changes} "wend (${PROJECT_VERSION}) unstable; urgency=medium

  * Version ${PROJECT_VERSION}.

 -- ${CPACK_PACKAGE_CONTACT}  ${date}
")
file(READ LICENSE licence)
string(REGEX REPLACE "\n\n" "\n.\n" licence "${licence}")
string(REGEX REPLACE "\n" "\n " licence "${licence}")
file(WRITE ${PROJECT_BINARY_DIR}/copyright "Format: https://www.debian.org/doc/packaging-manuals/copyright-format/1.0/
Upstream-Name: wend

Files: *
Copyright: 2026 the Wend developers
License: Expat

License: Expat
 ${licence}
")
execute_process(COMMAND gzip -9nf ${changes})
foreach(pair program:wend library:${soname} development:libwend-dev)
    string(REPLACE ":" ";" pair ${pair})
    list(GET pair 0 part)
    list(GET pair 1 package)
    install(FILES ${changes}.gz DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${package} COMPONENT ${part})
    install(FILES ${PROJECT_BINARY_DIR}/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${package} COMPONENT ${part})
endforeach()
include(CPack)
