# Makes a C file that holds the templates, so that the program works from any folder:
# cmake -DFOLDER=<templates> -DFILES=a.xsl,b.xsl -DOUT=<file.c> -P embed_templates.cmake
macro(row name length)
    string(APPEND rows "    {\"${name}\", \"${name}\", {(const char *)file_${index}, ${length}}},\n")
endmacro()
include(${CMAKE_CURRENT_LIST_DIR}/../../embed.cmake)
file(WRITE ${OUT} "/* Made from templates/ when the program is built. */\n#include \"template_private.h\"\n\n${arrays}\n"
    "const struct Template template_built_in[] = {\n${rows}};\nconst int template_built_in_count = ${index};\n")
