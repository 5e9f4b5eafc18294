# Makes a C file that holds the templates, so that the program works from any folder:
# cmake -DFOLDER=<templates> -DFILES=a.xsl,b.xsl -DOUT=<file.c> -P embed_templates.cmake
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
    string(APPEND rows "    {\"${name}\", \"${name}\", {(const char *)file_${index}, ${length}}},\n")
    math(EXPR index "${index} + 1")
endforeach()
file(WRITE ${OUT} "/* Made from templates/ when the program is built. */\n#include \"template_private.h\"\n\n${arrays}\n"
    "const struct Template template_built_in[] = {\n${rows}};\nconst int template_built_in_count = ${index};\n")
