# Makes a C file that holds the labour figures that the program has of its own:
# cmake -DFOLDER=<folder> -DFILES=labour.yaml -DOUT=<file.c> -P embed_labour.cmake
macro(row name length)
    set(bytes_long ${length})
endmacro()
include(${CMAKE_CURRENT_LIST_DIR}/../embed.cmake)
file(WRITE ${OUT} "/* Made from routes/labour/ when the program is built. */\n#include \"read/read.h\"\n\n${arrays}\n"
    "struct Bytes read_labour_built_in(void)\n{\n"
    "    return (struct Bytes){(const char *)file_0, ${bytes_long}};\n}\n")
