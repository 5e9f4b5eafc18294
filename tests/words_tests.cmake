# Words: facts in, sentences out; and that no other room makes any.
wend_check_program(test_words LABEL unit SOURCES unit/test_words.c NEEDS wend_words m)
wend_check_program(test_languages LABEL unit SOURCES unit/test_languages.c NEEDS wend_library m)
wend_check_program(test_sayings LABEL unit SOURCES unit/test_sayings.c NEEDS wend_words m)
add_test(NAME words-in-one-room COMMAND sh ${CMAKE_CURRENT_SOURCE_DIR}/check_words.sh)
set_tests_properties(words-in-one-room PROPERTIES LABELS unit)
