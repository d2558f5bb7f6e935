/** How much one report descriptor may hold: far above real devices, low enough that no input floods the memory. */
export const limits = {
  /** The class descriptor gives the length in 16 bits (HID 1.11, 6.2.1). */
  descriptorBytes: 65_535,
  items: 16_384,
  /** A report without its id byte; Get_Report gives the length in 16 bits (HID 1.11, 7.2.1). */
  reportBytes: 65_535,
  /** Of all reports together. */
  controls: 32_768,
  /** Choices of arrays and aliases of delimited sets, all together. */
  usages: 131_072,
  /** Alternatives in one delimited set. */
  aliases: 64,
  /** Pushed global states. Linux allows 4. */
  stack: 32,
  collections: 4096,
  collectionDepth: 64,
  /** A constant item with more elements than this is listed as one control that spans them all. */
  paddingElements: 256,
} as const;
