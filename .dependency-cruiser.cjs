/** The one way that dependencies run; test/architecture.test.ts runs it and asserts that it saw the modules. */
const rooms = [
  'outcome',
  'units',
  'numerics',
  'section',
  'steel',
  'phenomena',
  'bar',
  'stations',
  'line',
  'design',
];

/** Each room may look only at the rooms before it. outcome and units form the ground floor and know each other. */
const downOnly = rooms.map((room, i) => ({
  name: `${room}-looks-only-down`,
  severity: 'error',
  from: { path: `^engine/src/${room}/`, pathNot: '\\.(test|bench)\\.ts$' },
  to: { path: `^engine/src/(${rooms.slice(room === 'outcome' ? 2 : i + 1).join('|') || 'nothing-above'})/` },
}));

module.exports = {
  forbidden: [
    ...downOnly,
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true, dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'engine-stands-alone',
      severity: 'error',
      from: { path: '^engine/src', pathNot: '\\.(test|bench)\\.ts$' },
      to: { path: '^(sheets|cli|workbench|test)/' },
    },
    {
      name: 'sheets-know-only-the-engine',
      severity: 'error',
      from: { path: '^sheets/src' },
      to: { path: '^(cli|workbench|test)/' },
    },
    {
      name: 'stations-do-not-know-each-other',
      severity: 'error',
      from: { path: '^engine/src/stations/([^/]+)/', pathNot: '\\.(test|bench)\\.ts$' },
      to: { path: '^engine/src/stations/([^/]+)/', pathNot: '^engine/src/stations/$1/' },
    },
    {
      name: 'engine-uses-no-machine',
      severity: 'error',
      from: { path: '^engine/src', pathNot: '\\.(test|bench)\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'resolvable',
      severity: 'error',
      from: { pathNot: '\\.(test|bench)\\.ts$' },
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: 'node_modules|/dist/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
};
