/** Reads profile files: `{"kind":"stickwright-profile","version":1, …}` with the keys of a profile. */
import { z } from 'zod';
import { domainSchema } from './stick.ts';
import { readSchema } from '../read-schema.ts';
import { done, failed, type Problem, type Result } from '../result.ts';
import type { Profile, ProfileField } from './profile.ts';

const usbNumber = z.int().min(0).max(0xffff);
const reportId = z.int().min(0).max(255);
const bitOffset = z.int().min(0).max(524_279);
const bitSize = z.int().min(1).max(32);
const usage = z.int().min(1).max(128);
/** Pairs of hex digits; `nn` where the text may hold a running number. */
const stepHex = z
  .string()
  .regex(/^\s*(?:(?:[0-9a-fA-F]{2}|nn)\s*)*$/, 'must be pairs of hex digits, or nn for the running number');
const replyHex = z.string().regex(/^\s*(?:[0-9a-fA-F]{2}\s*)+$/, 'must be pairs of hex digits');

const fieldSchema = z.strictObject({
  bitOffset,
  bitSize,
  minimum: z.int(),
  maximum: z.int(),
  up: z.union([z.literal(1), z.literal(-1)]),
});
const stickSchema = z.strictObject({ x: fieldSchema, y: fieldSchema });
const stepSchema = z.strictObject({
  kind: z.enum(['output', 'feature']),
  only: z.enum(['usb', 'bluetooth']).optional(),
  reportId,
  hex: stepHex,
  reply: z.strictObject({ reportId, offset: z.int().min(0).max(65_534), hex: replyHex }).nullable(),
  timeoutMillis: z.int().min(1).max(10_000),
});

const profileFileSchema = z.strictObject({
  kind: z.literal('stickwright-profile'),
  version: z.literal(1),
  id: z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/, 'must be lower-case words joined by hyphens'),
  pads: z.array(z.strictObject({ vendorId: usbNumber, productId: usbNumber })).min(1),
  report: z.strictObject({ reportId, byteLength: z.int().min(1).max(65_535) }),
  domain: domainSchema,
  sticks: z.strictObject({ left: stickSchema.optional(), right: stickSchema.optional() }),
  triggers: z.strictObject({ left: fieldSchema.optional(), right: fieldSchema.optional() }),
  hat: z.strictObject({ bitOffset, bitSize, minimum: z.int(), maximum: z.int() }).optional(),
  buttons: z.array(z.strictObject({ usage, bitOffset })),
  clicks: z.strictObject({ left: usage.optional(), right: usage.optional() }),
  start: z.array(stepSchema).max(64),
});

/**
 * Problems: `profile-invalid` with the key at fault for a wrong shape; `profile-field-range`, `profile-field-outside`,
 * `profile-button-twice`, `profile-click-unknown`, `profile-stick-order` for values that contradict each other.
 */
export function parseProfileFile(value: unknown): Result<Profile> {
  const read = readSchema(profileFileSchema, value, 'profile-invalid', 'The profile file');
  if (!read.ok) return read;
  const profile = profileOf(read.value);
  const problem = checkFields(profile) ?? checkButtons(profile);
  return problem === null ? done(profile) : { ok: false, problem };
}

/** Keys that are not given are left out, not undefined. */
function profileOf(file: z.infer<typeof profileFileSchema>): Profile {
  const { id, pads, report, domain, sticks, triggers, hat, buttons, clicks, start } = file;
  return {
    id,
    pads,
    report,
    domain,
    sticks: { ...(sticks.left && { left: sticks.left }), ...(sticks.right && { right: sticks.right }) },
    triggers: { ...(triggers.left && { left: triggers.left }), ...(triggers.right && { right: triggers.right }) },
    ...(hat && { hat }),
    buttons,
    clicks: { ...(clicks.left && { left: clicks.left }), ...(clicks.right && { right: clicks.right }) },
    start,
  };
}

function checkFields(profile: Profile): Problem | null {
  const { sticks, triggers, hat, report } = profile;
  if (sticks.left === undefined && sticks.right !== undefined)
    return refuse('profile-stick-order', 'names a right stick alone; a pad with one stick has it as sticks.left');
  const fields: readonly (readonly [string, Omit<ProfileField, 'up'> | undefined])[] = [
    ['sticks.left.x', sticks.left?.x],
    ['sticks.left.y', sticks.left?.y],
    ['sticks.right.x', sticks.right?.x],
    ['sticks.right.y', sticks.right?.y],
    ['triggers.left', triggers.left],
    ['triggers.right', triggers.right],
    ['hat', hat],
  ];
  for (const [name, field] of fields) {
    if (field === undefined) continue;
    const codes = 2 ** field.bitSize;
    const [least, greatest] = field.minimum < 0 ? [-codes / 2, codes / 2 - 1] : [0, codes - 1];
    if (field.minimum >= field.maximum || field.minimum < least || field.maximum > greatest)
      return refuse(
        'profile-field-range',
        `gives ${name} the range ${field.minimum} … ${field.maximum}, which ${field.bitSize} bits cannot hold`,
      );
    if (field.bitOffset + field.bitSize > report.byteLength * 8)
      return refuse('profile-field-outside', `has ${name} beyond the ${report.byteLength} bytes of its report`);
  }
  return null;
}

function checkButtons({ buttons, clicks, report }: Profile): Problem | null {
  const usages = new Set<number>();
  for (const button of buttons) {
    if (usages.has(button.usage)) return refuse('profile-button-twice', `has button ${button.usage} twice`);
    if (button.bitOffset >= report.byteLength * 8)
      return refuse(
        'profile-field-outside',
        `has button ${button.usage} beyond the ${report.byteLength} bytes of its report`,
      );
    usages.add(button.usage);
  }
  for (const [stick, usage] of Object.entries(clicks))
    if (!usages.has(usage))
      return refuse('profile-click-unknown', `names button ${usage} in clicks.${stick} but not in buttons`);
  return null;
}

function refuse(code: string, what: string): Problem {
  return failed(code, `The profile file ${what}; correct it and try again.`).problem;
}
