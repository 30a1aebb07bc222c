#!/usr/bin/env bash
# Installs the C library on Linux: headers, static and shared library, and a file for pkg-config, whose module is `deck`.
#
#     bash deck-ffi/install.sh --prefix=/usr/local
#
#     --prefix=DIR       /usr/local where it is left out
#     --libdir=DIR       PREFIX/lib
#     --includedir=DIR   PREFIX/include
#     --disable-shared   only the static library; --disable-static: only the shared one
#     --built=DIR        takes libdeck_ffi.a from there, in place of building it
#     DESTDIR=DIR        in the environment: puts all of it below DIR, for a package
#
# The shared library is linked here from the static one, as libdeck_ffi.so.N with N from DECK_ABI_VERSION. Cargo's own
# libdeck_ffi.so has no such name in it on purpose: a program linked to it would look for a file that the build does not make.
set -euo pipefail
cd "$(dirname "$0")"

prefix=/usr/local libdir="" includedir="" shared=yes static=yes built=""
for option in "$@"; do
    value=${option#*=}
    case $option in
    --prefix=*) prefix=$value ;;
    --libdir=*) libdir=$value ;;
    --includedir=*) includedir=$value ;;
    --built=*) built=$value ;;
    --disable-shared) shared=no ;;
    --disable-static) static=no ;;
    *) sed -n '2,/^set/s/^# \{0,1\}//p' install.sh >&2 && exit 2 ;;
    esac
done
libdir=${libdir:-$prefix/lib} includedir=${includedir:-$prefix/include}
for folder in "$prefix" "$libdir" "$includedir"; do
    case $folder in
    /*) ;;
    *) echo "$folder: give folders from the root on" >&2 && exit 2 ;;
    esac
    case $folder in *[[:space:]\|\&\\]*) echo "$folder: pkg-config takes no such name" >&2 && exit 2 ;; esac
done
if [ "$(uname -s)" != Linux ]; then
    echo "This script knows Linux only. Elsewhere: cargo build --release -p deck-ffi, and copy include/ and the library." >&2
    exit 1
fi

if [ -z "$built" ]; then
    cargo build --locked --release -p deck-ffi
    built=${CARGO_TARGET_DIR:-../target}/release
fi
abi=$(sed -n 's/^#define DECK_ABI_VERSION //p' include/deck.h)
version=$(sed -n 's/^version = "\(.*\)"$/\1/p' ../Cargo.toml | head -n 1)
# What the library leaves to the system, as `rustc --print native-static-libs` tells it.
system="-lgcc_s -lutil -lrt -lpthread -lm -ldl"
lib=${DESTDIR:-}$libdir include=${DESTDIR:-}$includedir

install -d "$lib/pkgconfig" "$include"
install -m 644 include/deck.h include/deck.hpp "$include"
[ $static = no ] || install -m 644 "$built/libdeck_ffi.a" "$lib/libdeck_ffi.a"
if [ $shared = yes ]; then
    scratch=$(mktemp -d)
    trap 'rm -rf "$scratch"' EXIT
    echo '{ global: deck_*; local: *; };' >"$scratch/exported"
    # shellcheck disable=SC2086 # a list of libraries
    ${CC:-cc} -shared -o "$scratch/library" "-Wl,-soname,libdeck_ffi.so.$abi" -Wl,--version-script="$scratch/exported" \
        -Wl,--gc-sections -Wl,--no-undefined -Wl,-z,relro,-z,now \
        -Wl,--whole-archive "$built/libdeck_ffi.a" -Wl,--no-whole-archive $system -lc
    # Replaced as a whole: a program that runs keeps the file it has.
    install -m 755 "$scratch/library" "$lib/libdeck_ffi.so.$abi.new"
    mv -f "$lib/libdeck_ffi.so.$abi.new" "$lib/libdeck_ffi.so.$abi"
    ln -sf "libdeck_ffi.so.$abi" "$lib/libdeck_ffi.so"
fi
sed -e "s|@prefix@|$prefix|; s|@version@|$version|; s|@system@|$system|" \
    -e "s|@libdir@|$libdir|; s|@includedir@|$includedir|" deck.pc.in >"$lib/pkgconfig/deck.pc"
chmod 644 "$lib/pkgconfig/deck.pc"
echo "installed in ${DESTDIR:-}$prefix; where $libdir is a folder of the system's, run ldconfig"
