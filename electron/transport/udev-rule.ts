/** The rule that lets the person at a Linux machine open one kind of pad. */
import type { PadIdentity } from '../../core/pad/identity.ts';
import type { AccessRule } from '../bench/pads/pad-source.ts';

/**
 * The exact rule for this pad's ids, and for whoever sits at the machine only (`uaccess`). The file's number must stay
 * below 73, where systemd turns that tag into rights (systemd, 73-seat-late.rules).
 */
export function udevRule(identity: PadIdentity): AccessRule {
  const vendor = identity.vendorId.toString(16).padStart(4, '0');
  const product = identity.productId.toString(16).padStart(4, '0');
  return {
    file: `/etc/udev/rules.d/70-stickwright-${vendor}-${product}.rules`,
    text: `KERNEL=="hidraw*", SUBSYSTEM=="hidraw", ${matchOf(identity, vendor, product)}, TAG+="uaccess"`,
    then: 'sudo /usr/bin/udevadm control --reload-rules, then unplug the pad and plug it in again',
  };
}

/** USB devices say their ids in attributes; over Bluetooth only the kernel's name of the HID device has them, in upper case. */
function matchOf(identity: PadIdentity, vendor: string, product: string): string {
  if (identity.transport === 'bluetooth') return `KERNELS=="0005:${vendor.toUpperCase()}:${product.toUpperCase()}.*"`;
  return `ATTRS{idVendor}=="${vendor}", ATTRS{idProduct}=="${product}"`;
}
