add_executable(wend cli/main.c cli/options.c cli/options_read.c cli/run.c cli/run_asked.c cli/plan_files.c cli/run_json.c cli/run_order.c cli/check_papers.c cli/source_file.c cli/outfile.c cli/outfile_commit.c cli/outfolder.c cli/outfile_guard.c cli/outfile_aside.c cli/own_templates.c cli/progress.c cli/other_job.c cli/run_known.c cli/help_word.c cli/watch.c cli/complete.c cli/man_page.c)
target_link_libraries(wend PRIVATE wend_library wend_warnings Threads::Threads)
set_target_properties(wend PROPERTIES RUNTIME_OUTPUT_DIRECTORY ${PROJECT_BINARY_DIR})
target_compile_definitions(wend PRIVATE WEND_RELEASE_DATE="${WEND_RELEASE_DATE}")
