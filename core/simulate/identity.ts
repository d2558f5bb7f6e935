/** Who the simulated pads say they are: two made-up families under a vendor number that is open to anyone's experiments. */

/** The family with 12-bit sensor counts, known to the program by a profile. */
export const sensorFamily = { vendorId: 0x1209, productId: 0x000a } as const;

/** An ordinary pad with an 8-bit descriptor and no profile. */
export const plainFamily = { vendorId: 0x1209, productId: 0x000b } as const;

/** Numbers of the buttons that clicking a stick in presses, the same in both families. */
export const clickButtons = { left: 11, right: 12 } as const;
