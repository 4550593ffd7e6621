// Layers, lowest first. A package may import only from packages to its left in this list
// that its own package.json names; `npm run lint` fails on anything else.
const layers = [
  'quantity',
  'mechanics',
  'loads',
  'shelter',
  'structure',
  'checks',
  'takeoff',
  'drawing',
  'language',
  'book',
  'review',
  'cli',
  'extension',
];
const pure = [
  'quantity',
  'mechanics',
  'loads',
  'shelter',
  'structure',
  'checks',
  'takeoff',
  'drawing',
  'review',
];

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...layers.slice(0, -1).map((name, index) => ({
      name: `${name}-looks-up`,
      comment: `packages/${name} must not import from a layer above it`,
      severity: 'error',
      from: { path: `^packages/${name}/` },
      to: { path: `^packages/(${layers.slice(index + 1).join('|')})/` },
    })),
    {
      name: 'numbers-know-no-shelter',
      severity: 'error',
      from: { path: '^packages/mechanics/src' },
      to: { path: '^packages/(?!mechanics)[^/]+/' },
    },
    {
      name: 'standards-know-only-quantities',
      severity: 'error',
      from: { path: '^packages/loads/src' },
      to: { path: '^packages/(?!loads|quantity)[^/]+/' },
    },
    {
      name: 'loads-know-no-mechanics',
      severity: 'error',
      from: { path: '^packages/loads/' },
      to: { path: '^packages/mechanics/' },
    },
    {
      name: 'front-doors-only',
      severity: 'error',
      comment: 'another package is entered through its src/index.ts, or a door its package.json exports',
      from: { path: '^packages/([^/]+)/' },
      to: {
        path: '^packages/[^/]+/src/',
        pathNot: [
          '^packages/$1/',
          '^packages/[^/]+/src/index\\.ts$',
          '^packages/[^/]+/src/[a-z-]+-door\\.ts$',
        ],
      },
    },
    { name: 'no-cycles', severity: 'error', from: { pathNot: '/generated/' }, to: { circular: true } },
    {
      name: 'pure-layers-touch-no-system',
      severity: 'error',
      comment:
        'pure packages run in Node, a worker and a browser: no file system, no process, no editor types',
      from: { path: `^packages/(${pure.join('|')})/src/` },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-editor-types-below',
      severity: 'error',
      from: { path: `^packages/(${pure.join('|')}|cli|book)/src/` },
      to: { path: '^(vscode|langium|vscode-language)' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'default'],
      extensions: ['.ts', '.js', '.json'],
    },
    exclude: { path: '(/dist/|/generated/)' },
  },
};
