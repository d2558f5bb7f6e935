#!/usr/bin/env bash
# Boots the guest that build.sh made; its checks arrive in WORK/results, one JSON line each. Exit 0 only if the guest said so.
# The limit only ends a guest that hangs: on a machine with much else to do it may take many times what it takes alone.
# No -M microvm (hung in some boots) and no -icount with two processors (hangs).
set -uo pipefail
work=$1
shift
cd "$work"
rm -f results console qemu.err
kernel_arguments="console=ttyS0 quiet panic=-1 reboot=t mitigations=off tsc=reliable cryptomgr.notests"
case ${MODE:-virtual} in
  virtual)
    machine="-accel tcg,thread=single -smp 1 -icount shift=0,sleep=off -rtc base=2026-01-01,clock=vm -seed 1 -cpu max,rdrand=off,rdseed=off"
    kernel_arguments="$kernel_arguments nolapic_timer"
    ;;
  real) machine="-accel tcg,thread=multi -smp 2 -cpu max" ;;
  *) echo "MODE is virtual or real, not $MODE" >&2; exit 2 ;;
esac
timeout -k 5 "${LIMIT:-1800}" qemu-system-x86_64 -M pc $machine -m 1024 -nodefaults -no-user-config -nographic -no-reboot \
  -serial file:console -serial file:results -device isa-debug-exit,iobase=0xf4,iosize=4 \
  -kernel vmlinux -initrd initrd -append "$kernel_arguments rig.mode=${MODE:-virtual} $*" </dev/null 2>qemu.err
code=$?
# 33 passed, 35 failed, 37 a kernel module is missing, 39 watchdog, 0 panic or reboot, 1 qemu refused, 124 time-out.
[ $code = 33 ] && exit 0
echo "The guest did not say that all is well (qemu ended with $code)." >&2
tail -20 console >&2
cat qemu.err >&2
exit 1
