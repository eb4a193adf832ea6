# Compiles assets/words/en.json into engine/words, so that the program can speak before it has found a file.
set(english_file ${CMAKE_SOURCE_DIR}/assets/words/en.json)
set_property(DIRECTORY ${CMAKE_SOURCE_DIR} APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${english_file})
file(READ ${english_file} LANTERNLEAF_ENGLISH)
configure_file(${CMAKE_SOURCE_DIR}/engine/words/english.cpp.in ${CMAKE_BINARY_DIR}/words/english.cpp @ONLY)
target_sources(engine_words PRIVATE ${CMAKE_BINARY_DIR}/words/english.cpp)
