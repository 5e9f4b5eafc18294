# Makes a C file that holds the survey page's files, so that the program works from any folder:
# cmake -DFOLDER= -DFILES=/a/survey.html,/b/engine.js -DOUT=<file.c> -P embed_survey.cmake
macro(row name length)
    get_filename_component(file ${name} NAME)
    get_filename_component(place ${name} DIRECTORY)
    get_filename_component(place ${place} NAME)
    string(APPEND rows "    {\"${place}/${file}\", {(const char *)file_${index}, ${length}}},\n")
endmacro()
include(${CMAKE_CURRENT_LIST_DIR}/../embed.cmake)
file(WRITE ${OUT} "/* Made from templates/ and src/phone/ when the program is built. */\n#include \"survey_page.h\"\n\n${arrays}\n"
    "static const struct SurveyFile files[] = {\n${rows}};\n\n"
    "const struct SurveyFile *survey_file_at(int index)\n{\n"
    "    return index >= 0 && index < ${index} ? &files[index] : NULL;\n}\n")
