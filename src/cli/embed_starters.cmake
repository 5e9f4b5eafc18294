# Makes a C file that holds the starters of `wend new`, so that the program works from any folder:
# cmake -DFOLDER=<starters> -DFILES=a.yaml,b.yaml -DOUT=<file.c> -P embed_starters.cmake
macro(row name length)
    string(REPLACE ".yaml" "" word ${name})
    string(APPEND rows "    {\"${word}\", (const char *)file_${index}, ${length}},\n")
endmacro()
include(${CMAKE_CURRENT_LIST_DIR}/../embed.cmake)
file(WRITE ${OUT} "/* Made from routes/starters/ when the program is built. */\n#include \"cli_private.h\"\n\n${arrays}\n"
    "static const struct Starter starters[] = {\n${rows}};\n\n"
    "const struct Starter *starter_at(int index)\n{\n"
    "    return index >= 0 && index < ${index} ? &starters[index] : NULL;\n}\n")
