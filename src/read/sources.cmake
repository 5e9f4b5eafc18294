wend_folder(read
    SOURCES source_check.c yaml_tree.c yaml_plain.c tree_as_laid.c tree_digest.c tree_steps.c tree_ranges.c tree_set.c
        quantities.c suggest.c spoken.c fields.c unknown_keys.c field_values.c field_numbers.c survey_fields.c survey_fields_runs.c survey_fields_segments.c
        reader.c read_survey.c read_segments.c read_landmarks.c read_runs.c read_device.c read_stock.c read_prices.c read_readings.c csv_rows.c relations.c asked.c survey_relations.c manual.c
        read_order.c order_fields.c read_labour.c labour_fields.c country_codes.c currency_codes.c
    NEEDS wend_survey PkgConfig::YAML)

# The labour figures become part of the program.
add_custom_command(OUTPUT ${CMAKE_CURRENT_BINARY_DIR}/labour_built_in.c
    COMMAND ${CMAKE_COMMAND} -DFOLDER=${PROJECT_SOURCE_DIR}/routes/labour -DFILES=labour.yaml
        -DOUT=${CMAKE_CURRENT_BINARY_DIR}/labour_built_in.c -P ${CMAKE_CURRENT_LIST_DIR}/embed_labour.cmake
    DEPENDS ${PROJECT_SOURCE_DIR}/routes/labour/labour.yaml ${CMAKE_CURRENT_LIST_DIR}/embed_labour.cmake
        ${CMAKE_CURRENT_LIST_DIR}/../embed.cmake VERBATIM)
target_sources(wend_read PRIVATE ${CMAKE_CURRENT_BINARY_DIR}/labour_built_in.c)
target_include_directories(wend_read PRIVATE ${PROJECT_SOURCE_DIR}/src)
