# Makes a C file that holds the starters of `wend new`, so that the program works from any folder:
# cmake -DFOLDER=<starters> -DFILES=a.yaml,b.yaml -DOUT=<file.c> -P embed_starters.cmake
cmake_minimum_required(VERSION 3.25)
string(REPLACE "," ";" names "${FILES}")
set(arrays "")
set(rows "")
set(index 0)
foreach(name ${names})
    file(READ ${FOLDER}/${name} bytes HEX)
    string(LENGTH "${bytes}" digits)
    math(EXPR length "${digits} / 2")
    string(REGEX REPLACE "(................................)" "\\1\n" bytes "${bytes}")
    string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${bytes}")
    string(APPEND arrays "static const unsigned char file_${index}[] = {\n${bytes}\n};\n")
    string(REPLACE ".yaml" "" word ${name})
    string(APPEND rows "    {\"${word}\", (const char *)file_${index}, ${length}},\n")
    math(EXPR index "${index} + 1")
endforeach()
file(WRITE ${OUT} "/* Made from routes/starters/ when the program is built. */\n#include \"cli_private.h\"\n\n${arrays}\n"
    "static const struct Starter starters[] = {\n${rows}};\n\n"
    "const struct Starter *starter_at(int index)\n{\n"
    "    return index >= 0 && index < ${index} ? &starters[index] : NULL;\n}\n")
