# One program holds the doctest cases of unit/ and reference/; each folder below them is one CTest test, named by
# the doctest suite of the same name (TEST_SUITE("unit/quantity")), so that a failure says where to look.
file(GLOB_RECURSE TEST_SOURCES CONFIGURE_DEPENDS unit/*.cpp reference/*.cpp support/*.cpp)
add_executable(rodwright_tests ${TEST_SOURCES})
# Proves optima that cutting plans are compared with; nothing but tests needs it.
find_library(GLPK_LIBRARY glpk REQUIRED)
target_link_libraries(rodwright_tests PRIVATE librodwright doctest::doctest nlohmann_json::nlohmann_json yaml-cpp
                      Eigen3::Eigen ${GLPK_LIBRARY} ${CMAKE_DL_LIBS})
target_compile_definitions(rodwright_tests PRIVATE RODWRIGHT_SOURCE_DIR="${CMAKE_SOURCE_DIR}"
                           RODWRIGHT_BINARY_DIR="${CMAKE_BINARY_DIR}")
# A case is mostly doctest and the common headers to the compiler. The main function's file defines what the
# precompiled header declares, so it goes without.
target_precompile_headers(rodwright_tests PRIVATE ${COMMON_HEADERS} <doctest/doctest.h>)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/support/main.cpp PROPERTIES SKIP_PRECOMPILE_HEADERS ON SKIP_UNITY_BUILD_INCLUSION ON)
target_compile_options(rodwright_tests PRIVATE $<$<CXX_COMPILER_ID:GNU>:-fpch-preprocess>)
compile_by_folder(rodwright_tests)
# What is tested is in librodwright, optimized as it is built; to optimize the cases themselves takes a third of the
# time that they take to compile.
target_compile_options(rodwright_tests PRIVATE -O0)
# An exhaustive search is what its time is spent on.
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/unit/cutting/patterns.cpp
                            PROPERTIES COMPILE_OPTIONS -O2 SKIP_PRECOMPILE_HEADERS ON)
# Eigen's prefetching needs constants that g++ only folds when it optimizes.
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/reference/place/linear_system_test.cpp
                            PROPERTIES COMPILE_OPTIONS -O1 SKIP_PRECOMPILE_HEADERS ON)
# The grammar has more rules than clang folds by itself.
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/unit/grammar/coverage_test.cpp
                            PROPERTIES COMPILE_OPTIONS $<$<CXX_COMPILER_ID:Clang>:-fbracket-depth=1024>)
# With sanitizers a few cases try fewer of the same kind.
target_compile_definitions(rodwright_tests PRIVATE $<$<BOOL:${RODWRIGHT_SANITIZE}>:RODWRIGHT_SANITIZED>)
# The solid kernel is loaded when a solid is asked for; the program is asked for its help.
add_dependencies(rodwright_tests rodwright_solid rodwright)
# Our backends are in librodwright and in modules of their own; that is no mistake for AddressSanitizer to report. Freed
# memory is kept from use, but not given back to the system and asked for again at every turn: a third of the time.
set(BACKENDS_STAND_TWICE
    ASAN_OPTIONS=detect_odr_violation=0:malloc_context_size=8:quarantine_size_mb=32:allocator_release_to_os_interval_ms=-1)
file(GLOB SUITE_FOLDERS CONFIGURE_DEPENDS RELATIVE ${CMAKE_CURRENT_LIST_DIR} unit/* reference/*)
# They draw what unit/drawing draws, in more formats and onto paper: no other code of ours, and twenty times slower.
if(RODWRIGHT_SANITIZE)
  list(REMOVE_ITEM SUITE_FOLDERS unit/fit reference/drawing)
endif()
foreach(SUITE IN LISTS SUITE_FOLDERS)
  if(IS_DIRECTORY ${CMAKE_CURRENT_LIST_DIR}/${SUITE})
    add_test(NAME ${SUITE} COMMAND rodwright_tests --test-suite=${SUITE} --no-skip)
    # doctest calls a filter that matches nothing a success; here it is a failure.
    set_tests_properties(${SUITE} PROPERTIES FAIL_REGULAR_EXPRESSION "test cases: +0 "
                                             ENVIRONMENT ${BACKENDS_STAND_TWICE})
  endif()
endforeach()
# The longest begin first, so that no core waits for one of them at the end.
foreach(LONG unit/wood unit/drawing unit/fit unit/limits)
  if(TEST ${LONG})
    set_tests_properties(${LONG} PROPERTIES COST 1000)
  endif()
endforeach()
if(RODWRIGHT_BENCHMARKS)
  add_subdirectory(benchmark)
endif()
