# Compiler settings shared by every target, kept on one interface target so that nothing else sets flags.
set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)
set(CMAKE_EXPORT_COMPILE_COMMANDS ON)
if(NOT CMAKE_BUILD_TYPE)
    set(CMAKE_BUILD_TYPE Release CACHE STRING "" FORCE)
endif()

find_program(CCACHE ccache)
if(CCACHE)
    set(CMAKE_CXX_COMPILER_LAUNCHER ${CCACHE})
endif()

add_library(lanternleaf_options INTERFACE)
target_compile_options(lanternleaf_options INTERFACE -Wall -Wextra -Wconversion -Wshadow -Werror)
# Fused multiply-add differs between machines; without it a card gives the same figures everywhere.
target_compile_options(lanternleaf_options INTERFACE -ffp-contract=off)
if(LANTERNLEAF_SANITIZE)
    target_compile_options(lanternleaf_options INTERFACE -fsanitize=address,undefined -fno-sanitize-recover=all
                                                         -fno-omit-frame-pointer)
    # Instrumented code makes the compiler suspect what it does not suspect otherwise: shown, not fatal.
    target_compile_options(lanternleaf_options INTERFACE -Wno-error)
    target_link_options(lanternleaf_options INTERFACE -fsanitize=address,undefined)
endif()
if(EMSCRIPTEN)
    include(web)
endif()
