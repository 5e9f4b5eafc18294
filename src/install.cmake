# What `cmake --install BUILD` puts where GNUInstallDirs says, and `cmake --build BUILD --target uninstall` takes away.
include(CMakePackageConfigHelpers)
set(wend_package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/wend)

install(TARGETS wend RUNTIME)
install(TARGETS wend_shared EXPORT wend LIBRARY)
install(FILES ${PROJECT_BINARY_DIR}/libwend.a DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(FILES include/wend/wend.h DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/wend)
install(FILES templates/plan.rng templates/papers.rng DESTINATION ${CMAKE_INSTALL_DATADIR}/wend)

# Found from where the file itself lies, so that an installed tree can be moved.
if(IS_ABSOLUTE ${CMAKE_INSTALL_LIBDIR} OR IS_ABSOLUTE ${CMAKE_INSTALL_INCLUDEDIR})
    set(WEND_PC_PREFIX ${CMAKE_INSTALL_PREFIX})
    set(WEND_PC_LIBDIR ${CMAKE_INSTALL_FULL_LIBDIR})
    set(WEND_PC_INCLUDEDIR ${CMAKE_INSTALL_FULL_INCLUDEDIR})
else()
    file(RELATIVE_PATH up /prefix/${CMAKE_INSTALL_LIBDIR}/pkgconfig /prefix)
    string(REGEX REPLACE "/$" "" up "${up}")
    set(WEND_PC_PREFIX "\${pcfiledir}/${up}")
    set(WEND_PC_LIBDIR "\${prefix}/${CMAKE_INSTALL_LIBDIR}")
    set(WEND_PC_INCLUDEDIR "\${prefix}/${CMAKE_INSTALL_INCLUDEDIR}")
endif()
list(TRANSFORM CMAKE_DL_LIBS PREPEND -l OUTPUT_VARIABLE WEND_PC_DL)
configure_file(src/library/wend.pc.in ${PROJECT_BINARY_DIR}/wend.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/wend.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig)

install(EXPORT wend NAMESPACE wend:: FILE wendConfig.cmake DESTINATION ${wend_package_dir})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/wendConfigVersion.cmake COMPATIBILITY SameMajorVersion)
install(FILES ${PROJECT_BINARY_DIR}/wendConfigVersion.cmake DESTINATION ${wend_package_dir})

add_custom_target(uninstall COMMAND ${CMAKE_COMMAND} -DMANIFEST=${PROJECT_BINARY_DIR}/install_manifest.txt
    -P ${PROJECT_SOURCE_DIR}/src/uninstall.cmake VERBATIM)
