#!/usr/bin/env bash
# Installs the C library: bash beamcraft-ffi/install.sh PREFIX [PROFILE]
#
# Builds libbeamcraft (PROFILE is a cargo profile, release unless said otherwise) and puts under PREFIX:
#   include/beamcraft.h, lib/libbeamcraft.so.0 with the link libbeamcraft.so, lib/libbeamcraft.a,
#   lib/pkgconfig/beamcraft.pc, lib/cmake/beamcraft/
# DESTDIR, if set, goes before PREFIX and stays out of what is written into the files.
set -eu

if [ $# -lt 1 ] || [ $# -gt 2 ]; then
  echo "usage: install.sh PREFIX [PROFILE]" >&2
  exit 2
fi
case $1 in
/*) prefix=$1 ;;
*) prefix=$PWD/$1 ;;
esac
profile=${2:-release}
here=$(cd "$(dirname "$0")" && pwd)
top=$(dirname "$here")
root=${DESTDIR:-}$prefix

(cd "$top" && cargo build --quiet -p beamcraft-ffi --profile "$profile")
case $profile in
dev | test) folder=debug ;;
*) folder=$profile ;;
esac
built=${CARGO_TARGET_DIR:-$top/target}/$folder

# The header is the one place that states the version as numbers.
number() { awk -v name="BEAMCRAFT_VERSION_$1" '$2 == name { print $3 }' "$here/include/beamcraft.h"; }
major=$(number MAJOR)
minor=$(number MINOR)
version=$major.$minor.$(number PATCH)

fill() { sed -e "s|@PREFIX@|$prefix|g; s|@VERSION@|$version|g; s|@MAJOR@|$major|g; s|@MINOR@|$minor|g" "$1"; }

install -d "$root/include" "$root/lib/pkgconfig" "$root/lib/cmake/beamcraft"
install -m 644 "$here/include/beamcraft.h" "$root/include/beamcraft.h"
install -m 755 "$built/libbeamcraft.so" "$root/lib/libbeamcraft.so.0"
ln -sf libbeamcraft.so.0 "$root/lib/libbeamcraft.so"
install -m 644 "$built/libbeamcraft.a" "$root/lib/libbeamcraft.a"
fill "$here/beamcraft.pc.in" >"$root/lib/pkgconfig/beamcraft.pc"
install -m 644 "$here/cmake/beamcraft-config.cmake" "$root/lib/cmake/beamcraft/beamcraft-config.cmake"
fill "$here/cmake/beamcraft-config-version.cmake.in" >"$root/lib/cmake/beamcraft/beamcraft-config-version.cmake"
