add_executable(wend cli/main.c cli/shown.c cli/new.c cli/ask.c cli/ask_file.c cli/form.c cli/survey_page.c cli/survey_files.c cli/options.c cli/options_read.c cli/run.c cli/run_asked.c cli/run_day.c cli/plan_files.c cli/run_json.c cli/run_order.c cli/check_papers.c cli/check_jobs.c cli/source_file.c cli/outfile.c cli/outfile_commit.c cli/outfolder.c cli/outfile_guard.c cli/outfile_aside.c cli/own_templates.c cli/progress.c cli/other_job.c cli/run_known.c cli/help_word.c cli/watch.c cli/complete.c cli/man_page.c)
target_link_libraries(wend PRIVATE wend_library wend_warnings Threads::Threads)
set_target_properties(wend PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
target_compile_definitions(wend PRIVATE WEND_RELEASE_DATE="${WEND_RELEASE_DATE}")

# The starters become part of the program. Their order is that of help; the first is taken when none is named.
set(WEND_STARTERS outbuilding.yaml island.yaml workshop.yaml path-lighting.yaml pond-pump.yaml caravan-pitch.yaml)
list(JOIN WEND_STARTERS "," WEND_STARTER_NAMES)
list(TRANSFORM WEND_STARTERS PREPEND ${PROJECT_SOURCE_DIR}/routes/starters/ OUTPUT_VARIABLE WEND_STARTER_FILES)
add_custom_command(OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/starter_built_in.c
    COMMAND ${CMAKE_COMMAND} -DFOLDER=${PROJECT_SOURCE_DIR}/routes/starters -DFILES=${WEND_STARTER_NAMES}
        -DOUT=${CMAKE_CURRENT_BINARY_DIR}/starter_built_in.c -P ${CMAKE_CURRENT_LIST_DIR}/embed_starters.cmake
    DEPENDS ${WEND_STARTER_FILES} ${CMAKE_CURRENT_LIST_DIR}/embed_starters.cmake VERBATIM)
target_sources(wend PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/starter_built_in.c)
target_include_directories(wend PRIVATE ${CMAKE_CURRENT_LIST_DIR})
set(WEND_STARTER_FILES ${WEND_STARTER_FILES} PARENT_SCOPE) # they are installed too

# So does the survey page, its scripts in the order of files.txt; with WEND_PHONE the engine too (phone/sources.cmake).
file(STRINGS ${PROJECT_SOURCE_DIR}/templates/survey/files.txt WEND_SURVEY_SCRIPTS)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/templates/survey/files.txt)
list(TRANSFORM WEND_SURVEY_SCRIPTS PREPEND ${PROJECT_SOURCE_DIR}/templates/survey/)
set(WEND_SURVEY_FILES ${PROJECT_SOURCE_DIR}/templates/survey.html ${WEND_SURVEY_SCRIPTS} ${WEND_ENGINE_FILES})
foreach(name survey-worker.js survey.webmanifest survey-icon.svg)
    list(APPEND WEND_SURVEY_FILES ${PROJECT_SOURCE_DIR}/templates/survey-host/${name})
endforeach()
list(JOIN WEND_SURVEY_FILES "," WEND_SURVEY_NAMES)
add_custom_command(OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/survey_built_in.c
    COMMAND ${CMAKE_COMMAND} -DFOLDER= -DFILES=${WEND_SURVEY_NAMES} -DOUT=${CMAKE_CURRENT_BINARY_DIR}/survey_built_in.c
        -P ${CMAKE_CURRENT_LIST_DIR}/embed_survey.cmake
    DEPENDS ${WEND_SURVEY_FILES} ${CMAKE_CURRENT_LIST_DIR}/embed_survey.cmake VERBATIM)
target_sources(wend PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/survey_built_in.c)
