#!/usr/bin/env bash
# `npm run test:rig`: boots Debian's kernel in a software machine and runs the project's own HID transport and command line
# there against virtual pads on real hidraw nodes. Arguments go to the guest (rig.seconds=10 rig.rates=125,250,1000 rig.samples=200
# rig.only=streams or memory).
# MODE=virtual (default): guest time is counted in instructions, so results repeat. MODE=real: real time, the host's jitter shows.
set -uo pipefail
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
work="$root/out/rig"
mkdir -p "$work" "$root/out/results"

packages=(qemu-system-x86 cpio lz4 xz-utils zstd gcc libc6-dev binutils)
if ! dpkg -s "${packages[@]}" >/dev/null 2>&1; then
  if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    apt-get update -qq
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${packages[@]}" >/dev/null
  else
    echo "The rig needs Debian and: sudo apt-get install --no-install-recommends ${packages[*]}" >&2
    exit 1
  fi
fi

bash "$here/build.sh" "$work" || exit 1
bash "$here/boot.sh" "$work" "$@"
code=$?
node "$here/report.js" "$work/results" "$root/out/results/rig.json" "$code"
