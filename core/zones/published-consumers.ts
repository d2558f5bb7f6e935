/**
 * Consumers to start from: published dead-zone rules of operating systems, interfaces and general engines, each naming the
 * document that publishes it, and two examples that are made up and say so. Numbers are as published; where a document
 * does not say what happens outside of the zone, the rule is left out rather than guessed.
 */
import type { Stage } from './chain.ts';
import type { Consumer } from './consumer.ts';

type Chains = Consumer['chains'];

const both = (...stages: readonly Stage[]): Chains => ({ left: { stages }, right: { stages } });
const withTrigger = (chains: Chains, ...stages: readonly Stage[]): Chains => ({ ...chains, trigger: { stages } });
const apart = (left: Stage, right: Stage): Chains => ({ left: { stages: [left] }, right: { stages: [right] } });

const axial = (inner: number, outer = 1): Stage => ({ zone: 'axial', inner, outer, rescale: true });
const axialJump = (inner: number): Stage => ({ zone: 'axial', inner });
const radial = (inner: number, outer = 1): Stage => ({ zone: 'scaledRadial', inner, outer });

/** Dead zones of the Win32 page in counts of 32,767: left thumb, right thumb; its trigger threshold is 30 of 255. */
const WIN32 = { left: 7849 / 32767, right: 8689 / 32767, trigger: 30 / 255 };
/** Linux gives gamepads a flat of (maximum − minimum) >> 4 counts about the middle: 15 of 255, 4,095 of 65,535. */
const FLAT_8_BIT = 15 / 127.5;
const FLAT_16_BIT = 4095 / 32767.5;

const published: readonly (readonly [name: string, chains: Chains, source: string])[] = [
  [
    'Desktop gamepad interface, thumbs, rescaled disc',
    withTrigger(apart(radial(WIN32.left), radial(WIN32.right)), axial(WIN32.trigger)),
    'Win32 API documentation, Getting started with XInput: dead zone',
  ],
  [
    'Desktop gamepad interface, app example, disc that jumps',
    both({ zone: 'radial', inner: 0.1 }),
    'Windows developer documentation, Gamepad and vibration: reading the thumbsticks',
  ],
  ['Browser gamepad interface, no zone', withTrigger(both()), 'W3C Gamepad specification'],
  [
    'Kernel joystick interface, 16-bit axes, per axis',
    both(axial(FLAT_16_BIT, 1 - FLAT_16_BIT)),
    'Linux kernel source, joydev correction with the flat value of hid-input',
  ],
  [
    'Kernel joystick interface, 8-bit axes, per axis',
    both(axial(FLAT_8_BIT, 1 - FLAT_8_BIT)),
    'Linux kernel source, joydev correction with the flat value of hid-input',
  ],
  [
    'Engine input system, whole stick, disc',
    withTrigger(both(radial(0.125, 0.925)), axial(0.125, 0.925)),
    'Unity Input System package, stick dead zone processor and settings',
  ],
  [
    'Engine input system, x and y read apart, per axis',
    both(axial(0.125, 0.925)),
    'Unity Input System package, axis dead zone processor and settings',
  ],
  [
    'Engine input modifier, default, disc',
    both(radial(0.2)),
    'Unreal Engine API documentation, Enhanced Input: dead zone modifier',
  ],
  [
    'Engine input modifier, per axis',
    both(axial(0.2)),
    'Unreal Engine API documentation, Enhanced Input: dead zone modifier',
  ],
  [
    'Engine input modifier, disc that jumps',
    both({ zone: 'radial', inner: 0.2 }),
    'Unreal Engine API documentation, Enhanced Input: dead zone modifier',
  ],
  ['Engine axis settings of old, per axis', both(axial(0.25)), 'Unreal Engine default input configuration'],
  [
    'Engine input map, vector, disc',
    both(radial(0.2)),
    'Godot Engine documentation, Input.get_vector, from version 4.4',
  ],
  [
    'Engine input map, vector, disc, older default',
    both(radial(0.5)),
    'Godot Engine documentation, Input.get_vector, up to version 4.3',
  ],
  [
    'Engine input map, action strength, per axis',
    withTrigger(both(axial(0.2)), axial(0.2)),
    'Godot Engine documentation, InputMap, from version 4.4',
  ],
  ['Engine axis settings, per axis', both(axial(0.05)), 'Bevy documentation, bevy_input gamepad axis settings'],
  [
    'Framework, independent axes',
    apart(axial(0.24), axial(0.265)),
    'MonoGame documentation, GamePad dead zone, independent axes',
  ],
  ['Framework, circular', apart(radial(0.24), radial(0.265)), 'MonoGame documentation, GamePad dead zone, circular'],
  ['Input library, default filter, disc', both(radial(0.1)), 'gilrs documentation, default filters'],
  ['Media library, no zone', withTrigger(both()), 'SDL 3 header documentation, SDL_gamepad.h'],
  ['Window library, no zone', withTrigger(both()), 'GLFW documentation, input guide'],
  ['Web engine, per axis, jumps', both(axialJump(0.1)), 'Phaser documentation, Gamepad axis'],
];

const madeUp: readonly (readonly [name: string, chains: Chains, needs: number])[] = [
  ['Made-up example: aiming with a curve', both(radial(0.08, 0.95), { curve: { exponent: 1.6 } }), 0.95],
  ['Made-up example: ways of a menu', both({ digital: { ways: 8, threshold: 0.5 } }), 1],
];

/** All of them take the driver's output: what stands between pad and program is the technician's to say. */
export const startingConsumers: readonly Consumer[] = [
  ...published.map(([name, chains, source]) => consumer(name, chains, null, source)),
  ...madeUp.map(([name, chains, needs]) => consumer(name, chains, needs, null)),
];

function consumer(name: string, chains: Chains, needs: number | null, source: string | null): Consumer {
  return { kind: 'stickwright-consumer', version: 1, name, takes: 'driver', chains, needs, source };
}
