wend_folder(library SOURCES library.c questions.c order.c templates.c NEEDS wend_read wend_design wend_buying wend_documents)
