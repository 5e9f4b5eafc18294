# Whether libxml2 and libxslt are loaded when they are needed (late_xml.h), and by which names. A system whose libraries do
# not tell their names gets them linked.
option(WEND_LATE_XML "Load libxml2 and libxslt when the first document needs them" ON)

function(wend_soname library out)
    pkg_get_variable(folder ${library} libdir)
    set(name "")
    if(CMAKE_READELF)
        execute_process(COMMAND ${CMAKE_READELF} -d ${folder}/${ARGN} OUTPUT_VARIABLE said ERROR_QUIET)
        if(said MATCHES "soname: \\[([^]]+)\\]")
            set(name ${CMAKE_MATCH_1})
        endif()
    endif()
    set(${out} "${name}" PARENT_SCOPE)
endfunction()

if(NOT WEND_ENGINE)
    wend_soname(libxml-2.0 WEND_XML_FILE libxml2.so)
    wend_soname(libxslt WEND_XSLT_FILE libxslt.so)
endif()
target_include_directories(wend_documents PRIVATE ${XML_INCLUDE_DIRS} ${XSLT_INCLUDE_DIRS})
if(WEND_LATE_XML AND WEND_XML_FILE AND WEND_XSLT_FILE)
    target_compile_definitions(wend_documents PRIVATE WEND_LATE_XML WEND_XML_FILE="${WEND_XML_FILE}"
        WEND_XSLT_FILE="${WEND_XSLT_FILE}")
    target_link_libraries(wend_documents PUBLIC ${CMAKE_DL_LIBS})
    set(WEND_PC_XML "" PARENT_SCOPE)
else()
    target_link_libraries(wend_documents PUBLIC PkgConfig::XML PkgConfig::XSLT)
    set(WEND_PC_XML "libxml-2.0 libxslt" PARENT_SCOPE)
endif()
set(WEND_XML_FILE "${WEND_XML_FILE}" PARENT_SCOPE) # what a package must ask for
set(WEND_XSLT_FILE "${WEND_XSLT_FILE}" PARENT_SCOPE)
