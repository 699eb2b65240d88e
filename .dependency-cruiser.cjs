// Imports point one way: shared <- state-machines <- src/features <- src/app.ts (see DEVELOPERS.md).
const nodeCore = ['core'];

/** Each folder of shared, with those that it may import. */
const sharedInOrder = [
  ['contract', []],
  ['message', ['contract']],
  ['chain', ['contract', 'message']],
  ['signal', ['contract', 'message', 'chain']],
  ...['audit', 'logs', 'isolation'].map((folder) => [folder, ['contract', 'message', 'chain', 'signal']]),
];

/** The client's folders, as deep as they lie: src/web, those in it, and those in these. */
const clientFolders = ['src/web', 'src/web/[^/]+', 'src/web/[^/]+/[^/]+'];

module.exports = {
  forbidden: [
    {
      name: 'shared-is-pure',
      comment: 'shared/ runs on a phone and in tests alike: it may import itself and pure packages only.',
      severity: 'error',
      from: { path: '^shared/' },
      to: { path: '^(state-machines|src|seed|tests|prisma)/' },
    },
    {
      name: 'no-node-in-pure-code',
      comment: 'Everything that decides or computes knows nothing of Node.',
      severity: 'error',
      from: { path: '^(shared|state-machines)/' },
      to: { dependencyTypes: nodeCore },
    },
    {
      name: 'no-io-packages-in-pure-code',
      severity: 'error',
      from: { path: '^(shared|state-machines)/' },
      to: {
        path: 'node_modules/(fastify|@fastify|@prisma|prisma|pg|pino|@tus|sharp|@electric-sql|yazl)(/|$)',
      },
    },
    {
      name: 'machines-know-only-shared',
      severity: 'error',
      from: { path: '^state-machines/' },
      to: { path: '^(src|seed|tests|prisma)/' },
    },
    {
      name: 'features-keep-to-themselves',
      comment: "No feature reaches into another's insides: only its index.ts is a door.",
      severity: 'error',
      from: { path: '^src/features/([^/]+)/', pathNot: '\\.work\\.ts$' },
      to: { path: '^src/features/[^/]+/', pathNot: ['^src/features/$1/', '^src/features/[^/]+/index\\.ts$'] },
    },
    {
      name: 'worker-threads-load-what-they-need',
      comment: 'What runs in a worker thread has no request and no database, and a thread loads neither.',
      severity: 'error',
      from: { path: '^src/features/.+\\.work\\.ts$' },
      to: { path: '^src/(http|database|evidence-store)/', reachable: true },
    },
    {
      name: 'features-do-not-know-the-app',
      severity: 'error',
      from: { path: '^src/(features|database|evidence-store|heavy-work|http|page|replies)/' },
      to: { path: '^src/(app|main)\\.ts$' },
    },
    {
      name: 'plumbing-does-not-know-features',
      severity: 'error',
      from: { path: '^src/(database|evidence-store|heavy-work|http|page|replies)/' },
      to: { path: '^src/features/' },
    },
    {
      name: 'client-takes-only-pure-code',
      severity: 'error',
      from: { path: '^src/web/' },
      to: { path: '^(src|seed|tests|prisma)/', pathNot: '^src/web/' },
    },
    {
      name: 'no-node-in-the-client',
      severity: 'error',
      from: { path: '^src/web/' },
      to: { dependencyTypes: nodeCore },
    },
    {
      name: 'server-does-not-know-the-client',
      severity: 'error',
      from: { path: '^(src|shared|state-machines|seed)/', pathNot: '^src/web/' },
      to: { path: '^src/web/' },
    },
    {
      name: 'product-does-not-import-tests-or-seed',
      severity: 'error',
      from: { path: '^(shared|state-machines|src)/' },
      to: { path: '^(tests|seed)/' },
    },
    ...sharedInOrder.map(([folder, below]) => ({
      name: `shared-${folder}-takes-what-is-below`,
      comment: 'Inside shared: contract <- message <- chain <- signal <- audit, logs, isolation.',
      severity: 'error',
      from: { path: `^shared/${folder}/` },
      to: { path: '^shared/', pathNot: `^shared/(${[folder, ...below].join('|')})/` },
    })),
    {
      name: 'no-circles-between-folders',
      severity: 'error',
      scope: 'folder',
      from: { path: '^(shared|state-machines|src)/.+' },
      to: { path: '^(shared|state-machines|src)/.+', circular: true },
    },
    ...clientFolders.map((folder) => ({
      name: 'a-folder-of-the-client-stands-on-those-in-it',
      comment:
        'What a folder and those in it both need lies in a folder of its own, so that neither needs the other.',
      severity: 'error',
      from: { path: `^(${folder})/[^/]+/` },
      to: { path: '^$1/[^/]+$' },
    })),
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'no-unresolved',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^src/database/generated/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
