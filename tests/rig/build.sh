#!/usr/bin/env bash
# Builds the guest in the folder given: kernel, base.cpio (node, libraries, busybox, modules, node-hid), app.cpio (the bundled
# tests and command line) and initrd, the two glued together: the kernel unpacks archives one after the other.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
work=$1
mkdir -p "$work/debs" "$work/x"
cd "$work"

fetch() { # name of a Debian package -> x/NAME
  if ! compgen -G "debs/$1_*.deb" >/dev/null; then
    (cd debs && { apt-get download -q "$1" >/dev/null 2>&1 || { apt-get update -qq && apt-get download -q "$1" >/dev/null; }; })
  fi
  [ -d "x/$1" ] || dpkg -x debs/"$1"_*.deb "x/$1"
}

# The ELF inside a bzImage: cut at each place where a compressor's magic stands, keep the first that gives an ELF. It boots
# through PVH, without a BIOS and without unpacking under emulation.
unpack_kernel() {
  local pair position
  for pair in '\x02\x21\x4c\x18|lz4 -dc' '\x28\xb5\x2f\xfd|zstd -dc' '\xfd7zXZ\x00|xz -dc' '\x1f\x8b\x08|gzip -dc'; do
    for position in $(LC_ALL=C grep -abo -P "${pair%%|*}" "$1" | cut -d: -f1); do
      tail -c +$((position + 1)) "$1" | ${pair#*|} >"$2" 2>/dev/null || true
      [ "$(head -c4 "$2" | od -An -tx1 | tr -d ' \n')" = 7f454c46 ] && return 0
    done
  done
  return 1
}

# Same bytes each time, so that a run in virtual time repeats exactly.
archive() {
  find "$1" -exec touch -h -d @1700000000 {} +
  (cd "$1" && find . -print0 | LC_ALL=C sort -z | cpio -0 -o -H newc -R 0:0 --reproducible --quiet) >"$2"
}

if [ ! -f base.cpio ] || [ "$here/build.sh" -nt base.cpio ] || [ "$here/guest/vmtool.c" -nt base.cpio ] || [ "$root/package-lock.json" -nt base.cpio ]; then
  apt-cache depends linux-image-cloud-amd64 >/dev/null 2>&1 || apt-get update -qq
  kernel=$(apt-cache depends linux-image-cloud-amd64 | awk '/Depends: linux-image/{print $2; exit}')
  [ -n "$kernel" ] || { echo "Debian's package lists name no cloud kernel: run apt-get update and try again." >&2; exit 1; }
  for name in "$kernel" busybox-static libusb-1.0-0 libudev1; do fetch "$name"; done
  unpack_kernel "x/$kernel/boot/vmlinuz-${kernel#linux-image-}" vmlinux
  gcc -Os -static -s -o x/vmtool "$here/guest/vmtool.c"

  guest=x/root
  rm -rf $guest
  mkdir -p $guest/{bin,dev,proc,sys,tmp,run,etc,app/node_modules,lib/modules,lib64,lib/x86_64-linux-gnu}
  cp "$(find x/busybox-static -name busybox -type f -perm -1 | head -1)" $guest/bin/busybox
  for applet in sh mount insmod echo stty sleep cat ls; do ln -s busybox $guest/bin/$applet; done
  cp x/vmtool $guest/bin/
  node=$(readlink -f "$(command -v node)")
  cp "$node" $guest/bin/node
  strip --strip-all $guest/bin/node
  libraries=$guest/lib/x86_64-linux-gnu
  addon=$root/node_modules/node-hid/prebuilds/HID_hidraw-linux-x64/node-napi-v4.node
  cp "$(find x/libusb-1.0-0 -name 'libusb-1.0.so.0.*' -type f)" $libraries/libusb-1.0.so.0 # the hidraw addon is linked against it too
  cp "$(find x/libudev1 -name 'libudev.so.1.*' -type f)" $libraries/libudev.so.1
  { ldd "$node"; LD_LIBRARY_PATH=$libraries ldd "$addon"; } | grep -o '/[^ ]*\.so[^ ]*' | sort -u | while read -r library; do
    [ -e "$libraries/${library##*/}" ] || cp -L "$library" $libraries/
  done
  mv $libraries/ld-linux-x86-64.so.2 $guest/lib64/
  for module in hid hid-generic evdev uhid; do
    file=$(find "x/$kernel/lib/modules" -name "$module.ko*" | head -1)
    case "$file" in
      '') ;;
      *.xz) xz -dc "$file" >"$guest/lib/modules/$module.ko" ;;
      *) cp "$file" "$guest/lib/modules/" ;;
    esac
  done
  hid=$guest/app/node_modules/node-hid
  mkdir -p $hid/prebuilds/HID_hidraw-linux-x64
  cp "$root"/node_modules/node-hid/{nodehid.js,binding-options.js,package.json} $hid/
  cp "$addon" $hid/prebuilds/HID_hidraw-linux-x64/
  cp -r "$root/node_modules/pkg-prebuilds" $guest/app/node_modules/
  archive $guest base.cpio
fi

(cd "$root" && node node_modules/vite/bin/vite.js build -c tests/rig/vite.config.ts --logLevel warn >&2)
rm -rf x/app
mkdir -p x/app/app/descriptors
cp "$here/guest/init" x/app/init
chmod 755 x/app/init
cp "$root"/out/rig/bundle/* x/app/app/
cp "$root"/tests/golden/descriptors/*.json x/app/app/descriptors/
echo '{"type":"module"}' >x/app/app/package.json
archive x/app app.cpio
cat base.cpio app.cpio >initrd
