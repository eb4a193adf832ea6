# What the browser build sets for every target; included by options.cmake. LANTERNLEAF_PREFIX is the folder that
# platforms/web/libraries/build filled.
set(LANTERNLEAF_PREFIX "" CACHE PATH "Folder with the libraries compiled for the browser")
# The browser's own exceptions: the other kind makes every call slower and the program half as large again.
add_compile_options($<$<COMPILE_LANGUAGE:CXX>:-fwasm-exceptions>)
add_link_options(-fwasm-exceptions)
include_directories(SYSTEM ${LANTERNLEAF_PREFIX}/include)
link_directories(${LANTERNLEAF_PREFIX}/lib)
add_compile_options("$<$<COMPILE_LANGUAGE:CXX>:SHELL:-include ${CMAKE_SOURCE_DIR}/platforms/web/charconv_double.h>")
