/** The folders of core in the order data meets them; each imports only itself and what stands before it. */
const FLOW = [
  'numeric',
  'geometry',
  'hid',
  'pad',
  'log',
  'capture',
  'mapping',
  'measure',
  'proposal',
  'zones',
  'findings',
  'image',
  'plot',
];

const flowRules = FLOW.slice(0, -1).map((folder, index) => ({
  name: `core-${folder}-imports-no-later-step`,
  comment: `data flows one way: ${FLOW.join(' → ')}`,
  severity: 'error',
  from: { path: `^core/${folder}/` },
  to: { path: `^core/(${FLOW.slice(index + 1).join('|')}|simulate)/` },
}));

/** The rooms of the screen and what each may import; kit and frame know no room, and only App.svelte puts views together. */
const ROOMS = {
  kit: [],
  bench: [],
  frame: ['kit'],
  pads: ['frame', 'kit'],
  surveys: ['pads', 'frame', 'kit'],
  stick: ['frame', 'kit'],
  findings: ['stick', 'surveys', 'frame', 'kit'],
  chain: ['stick', 'surveys', 'pads', 'frame', 'kit'],
  memory: ['stick', 'surveys', 'pads', 'frame', 'kit'],
  workbench: ['chain', 'findings', 'memory', 'stick', 'surveys', 'pads', 'frame', 'kit'],
};

const roomRules = Object.entries(ROOMS).map(([room, below]) => ({
  name: `screen-${room}-imports-only-rooms-below`,
  comment: below.length === 0 ? 'it stands on no other room' : `it stands on ${below.join(', ')}`,
  severity: 'error',
  from: { path: `^renderer/${room}/` },
  to: { path: '^renderer/', pathNot: `^renderer/(${[room, ...below].join('|')})/` },
}));

/** The rooms of the service and what each may import of it; bench.ts alone puts them together. */
const SERVICE = {
  time: [],
  calls: [],
  pads: ['time'],
  measure: ['calls'],
  surveys: ['measure', 'pads', 'time'],
  memory: ['measure', 'pads', 'time', 'calls'],
};

const serviceRules = Object.entries(SERVICE).map(([room, below]) => ({
  name: `service-${room}-imports-only-rooms-below`,
  comment: below.length === 0 ? 'it stands on no other room' : `it stands on ${below.join(', ')}`,
  severity: 'error',
  from: { path: `^electron/bench/${room}/` },
  to: { path: '^electron/bench/', pathNot: `^electron/bench/(${[room, ...below].join('|')})/` },
}));

/** What a shell may know of the bench: the service and what it is given, */
const BENCH_DOOR = [
  'bench',
  'bench-options',
  'calls/bench-port',
  'calls/router',
  'time/clock',
  'time/virtual-clock',
  'time/loop-delay',
  'measure/limits-in-force',
  'pads/pad-key',
  'pads/pad-lock-port',
  'pads/pad-source',
  'memory/write-refusals',
];

/** and, for the command line alone, what works with a file or one pad without the service. */
const BENCH_PIECES = [
  'surveys/captures/capture-run',
  'memory/image-owners',
  'measure/judge-log',
  'measure/log-answers',
  'memory/map-catalogue',
  'memory/known-maps',
  'surveys/one-survey',
  'measure/open-log',
  'pads/pad-session',
  'pads/pad-stream',
  'pads/sample-feed',
  'surveys/survey-plan',
];

const notOf = (modules) => `^electron/bench/(?!(${modules.join('|')})\\.ts$)`;

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...flowRules,
    {
      name: 'evidence-knows-no-guide',
      comment: 'what a log proves does not depend on who guided the hand',
      severity: 'error',
      from: { path: '^core/(capture/evidence|mapping|measure|proposal|zones|findings|image)/' },
      to: { path: '^core/capture/guide/' },
    },
    ...roomRules,
    ...serviceRules,
    {
      name: 'the-simulation-shares-no-code-with-the-analysis',
      severity: 'error',
      from: { path: '^core/simulate/' },
      to: { path: '^core/(geometry|capture|mapping|measure|proposal|zones|findings|image|plot)/' },
    },
    {
      name: 'core-is-pure',
      comment: 'core imports core and packages that only compute, nothing else',
      severity: 'error',
      from: { path: '^core/' },
      to: { pathNot: '^(core/|node_modules/(pure-rand|zod|crc)/)' },
    },
    {
      name: 'shared-is-schemas',
      severity: 'error',
      from: { path: '^shared/' },
      to: { pathNot: '^(core/|shared/|node_modules/zod/)' },
    },
    {
      name: 'only-the-hid-transport-imports-node-hid',
      severity: 'error',
      from: { pathNot: '^electron/transport/node-hid\\.ts$' },
      to: { path: '^node_modules/node-hid/' },
    },
    {
      name: 'only-the-electron-shell-imports-electron',
      severity: 'error',
      from: { pathNot: '^electron/shell/electron/' },
      to: { path: '^node_modules/(electron|electron-store)/' },
    },
    {
      name: 'transport-stands-on-core-and-store',
      comment: 'of the bench it knows the ports that it stands behind',
      severity: 'error',
      from: { path: '^electron/transport/' },
      to: {
        path: '^electron/',
        pathNot: '^electron/(transport|store|bench/time/clock\\.ts|bench/pads/(pad-source|transport)\\.ts)',
      },
    },
    {
      name: 'bench-knows-no-transport',
      comment: 'it is handed what reads a pad, behind ports of its own',
      severity: 'error',
      from: { path: '^electron/bench/' },
      to: { path: '^electron/transport/' },
    },
    {
      name: 'store-stands-on-core-and-shared',
      comment: 'of the bench it knows the ports that it stands behind',
      severity: 'error',
      from: { path: '^electron/store/' },
      to: {
        path: '^electron/',
        pathNot: '^electron/(store/|bench/(time/clock|calls/settings-port|pads/pad-lock-port)\\.ts)',
      },
    },
    {
      name: 'shells-are-outermost',
      comment: 'transports, store and the bench service know no shell',
      severity: 'error',
      from: { path: '^electron/(bench|transport|store)/' },
      to: { path: '^electron/shell/' },
    },
    {
      name: 'shells-call-the-bench',
      comment: 'a shell calls the service and never puts the parts behind its calls together by itself',
      severity: 'error',
      from: { path: '^electron/shell/', pathNot: '^electron/shell/command-line/' },
      to: { path: notOf(BENCH_DOOR) },
    },
    {
      name: 'commands-call-the-bench',
      severity: 'error',
      from: { path: '^electron/shell/command-line/', pathNot: '^electron/shell/command-line/(memory-|command-bench)' },
      to: { path: notOf([...BENCH_DOOR, ...BENCH_PIECES]) },
    },
    {
      name: 'memory-commands-have-no-other-way',
      severity: 'error',
      from: { path: '^electron/shell/command-line/(memory-|command-bench)' },
      to: { path: notOf(BENCH_DOOR) },
    },
    {
      name: 'renderer-not-electron',
      severity: 'error',
      from: { path: '^renderer/' },
      to: { path: '^(electron/|node_modules/(electron|node-hid|electron-store|ws)/)' },
    },
    { name: 'electron-not-renderer', severity: 'error', from: { path: '^electron/' }, to: { path: '^renderer/' } },
    {
      name: 'no-node-builtins-in-renderer',
      severity: 'error',
      from: { path: '^(renderer|core|shared)/' },
      to: { dependencyTypes: ['core'] },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['svelte', 'import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.js', '.svelte', '.d.ts'],
    },
  },
};
