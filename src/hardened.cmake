# Every release is a position-independent program whose tables of addresses are read-only once it runs, with checks of the
# stack, of buffers and of jumps where the compiler has them.
include(CheckPIESupported)
include(CheckCCompilerFlag)
include(CheckLinkerFlag)
check_pie_supported(LANGUAGES C)
set(CMAKE_POSITION_INDEPENDENT_CODE ON)

add_library(wend_hardened INTERFACE)
set(release "$<CONFIG:Release,RelWithDebInfo,MinSizeRel>")
foreach(flag -fstack-protector-strong -fstack-clash-protection -fcf-protection)
    string(MAKE_C_IDENTIFIER "WEND_HAS${flag}" has)
    check_c_compiler_flag(${flag} ${has})
    if(${has})
        target_compile_options(wend_hardened INTERFACE $<${release}:${flag}>)
    endif()
endforeach()
# a distribution may have set it to another figure
target_compile_options(wend_hardened INTERFACE "$<${release}:-U_FORTIFY_SOURCE;-D_FORTIFY_SOURCE=2>")
check_linker_flag(C LINKER:-z,relro,-z,now WEND_HAS_RELRO)
if(WEND_HAS_RELRO)
    target_link_options(wend_hardened INTERFACE $<${release}:LINKER:-z,relro,-z,now>)
endif()
