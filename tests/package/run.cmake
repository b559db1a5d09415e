# Installs the build tree BUILD below itself, builds the backend of this folder against what is installed, and has
# the installed program use it on the design DESIGN. Run as `cmake -DBUILD=... -DCOMPILER=... -DDESIGN=... -P run.cmake`.
set(ROOT ${BUILD}/package_test)
file(REMOVE_RECURSE ${ROOT})

function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE RESULT OUTPUT_VARIABLE OUTPUT ERROR_VARIABLE ERRORS)
  if(NOT RESULT EQUAL 0)
    message(FATAL_ERROR "`${ARGN}` ends with ${RESULT}:\n${OUTPUT}${ERRORS}")
  endif()
  set(OUTPUT "${OUTPUT}" PARENT_SCOPE)
endfunction()

function(expect FILE)
  if(NOT EXISTS ${FILE})
    message(FATAL_ERROR "${FILE} is not there")
  endif()
endfunction()

run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${ROOT}/prefix)
foreach(NAME cutlist steps graph packet model)
  expect(${ROOT}/prefix/lib/rodwright/backends/${NAME}.so)
endforeach()

run(${CMAKE_COMMAND} -S ${CMAKE_CURRENT_LIST_DIR} -B ${ROOT}/plugin -DCMAKE_PREFIX_PATH=${ROOT}/prefix
    -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_COMPILER=${COMPILER} -DCMAKE_CXX_FLAGS=${FLAGS})
run(${CMAKE_COMMAND} --build ${ROOT}/plugin)

# By its path on the command line ...
run(${ROOT}/prefix/bin/rodwright build ${DESIGN} --plugin ${ROOT}/plugin/part_count.so --only part_count
    --out ${ROOT}/by_path)
file(READ ${ROOT}/by_path/parts.txt BY_PATH)
if(NOT BY_PATH MATCHES "^parts [1-9][0-9]*, ")
  message(FATAL_ERROR "parts.txt says: ${BY_PATH}")
endif()

# ... and from the folder of the install, with an option of its own.
file(COPY ${ROOT}/plugin/part_count.so DESTINATION ${ROOT}/prefix/lib/rodwright/backends)
run(${ROOT}/prefix/bin/rodwright list backends)
if(NOT OUTPUT MATCHES "part_count")
  message(FATAL_ERROR "`list backends` does not know the installed backend:\n${OUTPUT}")
endif()
run(${ROOT}/prefix/bin/rodwright build ${DESIGN} --only part_count --greeting pieces --out ${ROOT}/by_folder)
file(READ ${ROOT}/by_folder/parts.txt BY_FOLDER)
string(REPLACE "parts " "pieces " EXPECTED "${BY_PATH}")
if(NOT BY_FOLDER STREQUAL EXPECTED)
  message(FATAL_ERROR "parts.txt says: ${BY_FOLDER}, not ${EXPECTED}")
endif()
