/** What the bench asks of the HID library: so little that a test can stand in for it. */

/** One top-level collection of a device, as the system lists it; several may share a path. */
export interface HidDevice {
  readonly vendorId: number;
  readonly productId: number;
  readonly path?: string | undefined;
  readonly serialNumber?: string | undefined;
  readonly product?: string | undefined;
  /** −1 where the device has no interfaces, or the system does not say. */
  readonly interface: number;
  readonly usagePage?: number | undefined;
  readonly usage?: number | undefined;
}

/** An open device. Bytes begin with the report id where the device has ids; what is sent always begins with it. */
export interface HidHandle {
  on(event: 'error', hear: (thrown: unknown) => void): unknown;
  on(event: 'data', hear: (bytes: Uint8Array) => void): unknown;
  write(bytes: Buffer): Promise<number>;
  sendFeatureReport(bytes: Buffer): Promise<number>;
  getFeatureReport(reportId: number, length: number): Promise<Uint8Array>;
  close(): Promise<void>;
}

export interface HidPort {
  devices(): Promise<readonly HidDevice[]>;
  /** Rejects with the system's words. */
  open(path: string): Promise<HidHandle>;
}
