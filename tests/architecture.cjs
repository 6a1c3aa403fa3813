/** Stages import only downward; statistics and steam know nothing of the others; no cycles. */
const ORDER = [
  'site',
  'ingest',
  'learn',
  'transform',
  'findings',
  'report',
  'templates',
  'library',
  'commands',
];
/** Types that a package gives without a file of code beside them. */
const TYPES_ONLY = 'types_unstable';
const upward = ORDER.map((stage, index) => ({
  name: `${stage}-imports-no-later-stage`,
  severity: 'error',
  from: { path: `^pipeline/${stage}/` },
  to: { path: `^pipeline/(${[...ORDER.slice(index + 1), 'reference'].join('|')})/` },
}));
module.exports = {
  forbidden: [
    ...upward,
    {
      name: 'pure-methods-know-nothing',
      severity: 'error',
      from: { path: '^pipeline/(statistics|steam)/' },
      to: { path: '^pipeline/', pathNot: '^pipeline/(statistics|steam)/' },
    },
    {
      name: 'learn-stands-apart',
      severity: 'error',
      from: { path: '^pipeline/learn/' },
      to: { path: '^pipeline/', pathNot: '^pipeline/(learn|site|ingest|steam)/|^pipeline/user-error' },
    },
    {
      name: 'nothing-needs-learn',
      severity: 'error',
      from: { path: '^pipeline/', pathNot: '^pipeline/(learn|commands)/' },
      to: { path: '^pipeline/learn/' },
    },
    {
      name: 'steam-and-statistics-apart',
      severity: 'error',
      from: { path: '^pipeline/statistics/' },
      to: { path: '^pipeline/steam/' },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'pipeline-needs-no-tests',
      severity: 'error',
      from: { path: '^pipeline/' },
      to: { path: '^(tests|data-samples|notebooks)/' },
    },
    {
      // What the pipeline needs is bundled into the package: it is installed with the project, not with the package.
      name: 'declared-dependencies',
      severity: 'error',
      from: { path: '^pipeline/' },
      to: { dependencyTypes: ['npm-no-pkg', 'unknown'], pathNot: TYPES_ONLY },
    },
    { name: 'found', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: TYPES_ONLY } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'node'],
      extensions: ['.ts', '.mjs', '.js', '.json'],
    },
  },
};
