# What `cmake --install BUILD` puts where GNUInstallDirs says, and `cmake --build BUILD --target uninstall` takes away. In
# three parts, which are packages of their own: the program, the shared library, what a programmer needs.
include(CMakePackageConfigHelpers)
set(wend_package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/wend)
set(wend_doc_dir ${CMAKE_INSTALL_DATADIR}/doc/wend)

install(TARGETS wend RUNTIME COMPONENT program)
install(TARGETS wend_shared EXPORT wend LIBRARY COMPONENT library NAMELINK_COMPONENT development)
install(FILES ${PROJECT_BINARY_DIR}/libwend.a DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT development)
install(FILES include/wend/wend.h DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/wend COMPONENT development)

# To begin with: routes, templates, the schemas of what is written, the pages on the formats.
install(FILES templates/plan.rng templates/papers.rng DESTINATION ${CMAKE_INSTALL_DATADIR}/wend COMPONENT program)
install(FILES ${WEND_TEMPLATE_FILES} DESTINATION ${CMAKE_INSTALL_DATADIR}/wend/templates COMPONENT program)
file(GLOB starters routes/*.yaml routes/*.csv)
install(FILES ${starters} DESTINATION ${wend_doc_dir}/examples COMPONENT program)
install(FILES routes/labour/labour.yaml DESTINATION ${wend_doc_dir}/examples/labour COMPONENT program)
install(FILES ${WEND_STARTER_FILES} DESTINATION ${wend_doc_dir}/examples/starters COMPONENT program)
install(FILES README.md routes/route-format.md routes/order-format.md routes/plan-format.md DESTINATION ${wend_doc_dir} COMPONENT program)
install(FILES routes/well-pump.svg DESTINATION ${wend_doc_dir}/routes COMPONENT program) # its picture
if(NOT CMAKE_INSTALL_PREFIX STREQUAL "/usr") # a package has it in Debian's form, see package.cmake
    install(FILES LICENSE DESTINATION ${wend_doc_dir} RENAME copyright COMPONENT program)
endif()

# Completion, where each shell looks for what others bring. Debian's zsh has a folder of its own for that.
set(zsh_folder site-functions)
if(EXISTS /etc/debian_version AND CMAKE_INSTALL_PREFIX STREQUAL "/usr")
    set(zsh_folder vendor-completions)
endif()
install(FILES src/cli/shells/wend.bash DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions RENAME wend
    COMPONENT program)
install(FILES src/cli/shells/_wend DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/${zsh_folder} COMPONENT program)
install(FILES src/cli/shells/wend.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT program)

# The pages of the manual are printed by the program that was built; a cross build needs something to run it with.
if(NOT CMAKE_CROSSCOMPILING OR CMAKE_CROSSCOMPILING_EMULATOR)
    find_program(WEND_GZIP gzip)
    set(pages "")
    foreach(page wend.1 wend-route.5 wend-order.5 wend-labour.5)
        string(REGEX REPLACE "\\..*" "" name ${page})
        string(REGEX REPLACE ".*\\." "" section ${page})
        set(made ${PROJECT_BINARY_DIR}/${page})
        set(squeeze "")
        if(WEND_GZIP)
            set(squeeze COMMAND ${WEND_GZIP} -9nf ${made})
            set(made ${made}.gz)
        endif()
        add_custom_command(OUTPUT ${made} COMMAND wend man ${name} > ${PROJECT_BINARY_DIR}/${page} ${squeeze} DEPENDS wend
            VERBATIM)
        list(APPEND pages ${made})
        install(FILES ${made} DESTINATION ${CMAKE_INSTALL_MANDIR}/man${section} COMPONENT program)
    endforeach()
    add_custom_target(wend_pages ALL DEPENDS ${pages})
endif()

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
install(FILES ${PROJECT_BINARY_DIR}/wend.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig COMPONENT development)

install(EXPORT wend NAMESPACE wend:: FILE wendConfig.cmake DESTINATION ${wend_package_dir} COMPONENT development)
write_basic_package_version_file(${PROJECT_BINARY_DIR}/wendConfigVersion.cmake COMPATIBILITY SameMajorVersion)
install(FILES ${PROJECT_BINARY_DIR}/wendConfigVersion.cmake DESTINATION ${wend_package_dir} COMPONENT development)

add_custom_target(uninstall COMMAND ${CMAKE_COMMAND} -DMANIFEST=${PROJECT_BINARY_DIR}/install_manifest.txt
    -P ${PROJECT_SOURCE_DIR}/src/uninstall.cmake VERBATIM)
