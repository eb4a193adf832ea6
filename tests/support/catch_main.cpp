// The one place that compiles Catch2's main; every test program links it.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
