# find_package(beamcraft CONFIG): the targets beamcraft::beamcraft (shared) and beamcraft::static.
get_filename_component(_beamcraft_prefix "${CMAKE_CURRENT_LIST_DIR}/../../.." ABSOLUTE)

if(NOT TARGET beamcraft::beamcraft)
  add_library(beamcraft::beamcraft SHARED IMPORTED)
  set_target_properties(beamcraft::beamcraft PROPERTIES
    IMPORTED_LOCATION "${_beamcraft_prefix}/lib/libbeamcraft.so"
    IMPORTED_SONAME "libbeamcraft.so.0"
    INTERFACE_INCLUDE_DIRECTORIES "${_beamcraft_prefix}/include")
endif()

if(NOT TARGET beamcraft::static)
  add_library(beamcraft::static STATIC IMPORTED)
  set_target_properties(beamcraft::static PROPERTIES
    IMPORTED_LOCATION "${_beamcraft_prefix}/lib/libbeamcraft.a"
    INTERFACE_INCLUDE_DIRECTORIES "${_beamcraft_prefix}/include"
    INTERFACE_LINK_LIBRARIES "pthread;m;dl")
endif()

unset(_beamcraft_prefix)
