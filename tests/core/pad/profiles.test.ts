import { describe, expect, it } from 'vitest';
import { demoPads, demoProfile } from '../../../core/pad/demo-profile.ts';
import { findLayout } from '../../../core/pad/find-layout.ts';
import { parseProfileFile } from '../../../core/pad/profile-file.ts';
import { bundledProfiles, findProfile, profileById } from '../../../core/pad/profiles.ts';
import { startSteps } from '../../../core/pad/start-steps.ts';
import { plainReport, sensorReport } from '../../../core/simulate/reports.ts';
import { parsed } from '../../support/hid-bytes.ts';
import { toHex } from '../../../core/hid/hex.ts';

describe('the bundled profiles', () => {
  it.each(bundledProfiles)('pass the schema for profile files: $id', (profile) => {
    const file = JSON.parse(JSON.stringify({ kind: 'stickwright-profile', version: 1, ...profile })) as unknown;
    expect(parseProfileFile(file)).toEqual({ ok: true, value: profile });
  });

  it('are found by number and by id, and each once', () => {
    expect(new Set(bundledProfiles.map((profile) => profile.id)).size).toBe(bundledProfiles.length);
    const pads = bundledProfiles.flatMap((profile) => profile.pads.map((pad) => `${pad.vendorId}:${pad.productId}`));
    expect(new Set(pads).size).toBe(pads.length);
    for (const profile of bundledProfiles) {
      expect(profileById(profile.id)).toBe(profile);
      for (const pad of profile.pads) expect(findProfile(pad.vendorId, pad.productId)).toBe(profile);
    }
    expect(findProfile(0x1209, 0xffff)).toBeNull();
    expect(findProfile(0, 0)).toBeNull();
    expect(profileById('none')).toBeNull();
  });

  it('claim sensor counts with a stick at least', () => {
    for (const profile of bundledProfiles)
      expect(findLayout(null, profile)).toMatchObject({ noSticks: null, domain: profile.domain });
  });
});

describe('the profile of the simulated pads', () => {
  it('is that of the sensor pads alone', () => {
    expect(findProfile(demoPads.sensor.vendorId, demoPads.sensor.productId)).toBe(demoProfile);
    expect(findProfile(demoPads.plain.vendorId, demoPads.plain.productId)).toBeNull();
  });

  it('says of their report what its descriptor says', () => {
    const descriptor = parsed(toHex(sensorReport.descriptor));
    const byProfile = findLayout(descriptor, demoProfile);
    const byUsages = findLayout(descriptor, null);
    expect(byProfile.profile).toBe(demoProfile.id);
    expect(byProfile.sticks).toEqual(byUsages.sticks);
    const placeOf = (source: { control: { bitOffset: number; bitSize: number } } | null | undefined): unknown =>
      source && [source.control.bitOffset, source.control.bitSize];
    for (const stick of ['left', 'right'] as const) {
      expect(placeOf(byProfile.stickSources[stick]?.x)).toEqual(placeOf(byUsages.stickSources[stick]?.x));
      expect(placeOf(byProfile.stickSources[stick]?.y)).toEqual(placeOf(byUsages.stickSources[stick]?.y));
      expect(placeOf(byProfile.triggers[stick])).toEqual(placeOf(byUsages.triggers[stick]));
    }
    expect(placeOf(byProfile.hat)).toEqual(placeOf(byUsages.hat));
    expect(byProfile.buttons.map(({ usage, source }) => [usage, placeOf(source)])).toEqual(
      byUsages.buttons.map(({ usage, source }) => [usage, placeOf(source)]),
    );
  });

  it('leaves the plain pads to their descriptor', () => {
    const layout = findLayout(parsed(toHex(plainReport.descriptor)), null);
    expect(Object.keys(layout.sticks)).toEqual(['left', 'right']);
    expect(Object.keys(layout.triggers)).toEqual(['left', 'right']);
    expect(layout.domain).toBe('reported');
  });
});

describe('startSteps', () => {
  const profile = profileById('packed-12-bit-both');

  it('leaves the steps for a cable out over the air', () => {
    expect(profile && startSteps(profile, 'usb').map((step) => step.hex)).toEqual([
      '02',
      '03',
      '02',
      '04',
      'nn 00 01 40 40 00 01 40 40 03 30',
    ]);
    expect(profile && startSteps(profile, 'bluetooth').map((step) => step.hex)).toEqual([
      'nn 00 01 40 40 00 01 40 40 03 30',
    ]);
  });

  it('has none for the simulated pads', () => {
    expect(startSteps(demoProfile, 'simulated')).toEqual([]);
  });
});
