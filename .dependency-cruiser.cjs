/**
 * The table of rooms: what each folder may import. Everything not named here is forbidden, so that a new arrow between
 * rooms is a decision made in this file.
 */
const rooms = {
  'language/units': [],
  'language/vocabulary': ['language/units'],
  'language/grammar': ['language/units', 'language/vocabulary'],
  'language/library': ['language/build'],
  'language/model': ['language/units'],
  'language/build': ['language/grammar', 'language/vocabulary', 'language/model', 'language/units'],
  'language/codes': ['language/units'],
  'language/engine': ['language/units', 'language/model', 'language/codes'],
  'language/results': ['language/engine', 'language/model', 'language/units'],
  'language/rules': ['language/results', 'language/engine', 'language/model', 'language/codes', 'language/units'],
  'language/analysis': ['language'],
  'server/lsp': ['language', 'server/protocol', 'server/report'],
  'server/cli': ['language', 'server/report', 'server/lsp'],
  'server/report': ['language'],
  'server/protocol': [],
  client: ['server/protocol'],
};

/** Rooms of numbers and meaning: they work in any host, so nothing of Node or of an editor is in them. */
const pure = [
  'units',
  'vocabulary',
  'grammar',
  'library',
  'model',
  'build',
  'codes',
  'engine',
  'results',
  'rules',
  'analysis',
];

/** Rooms of which only the types may be imported: what a block is called and holds, not the table that says so. */
const typesOnly = {
  'language/model': ['language/vocabulary'],
  'language/results': ['language/vocabulary'],
  'language/rules': ['language/vocabulary'],
};

const inRoom = folder => `^${folder}(/|\\.ts$)`;

const forbidden = [
  { name: 'no-cycles', from: {}, to: { circular: true } },
  { name: 'no-unresolved', from: {}, to: { couldNotResolve: true, pathNot: '^vscode$' } },
  ...Object.entries(rooms).map(([room, allowed]) => ({
    name: `${room.replace('/', '-')}-imports`,
    comment: `${room} may import ${allowed.join(', ') || 'no other room'}.`,
    from: { path: inRoom(room) },
    to: {
      path: '^(language|server|client|test|samples)/',
      pathNot: [room, ...allowed, ...(typesOnly[room] ?? [])].map(inRoom),
    },
  })),
  ...Object.entries(typesOnly).map(([room, types]) => ({
    name: `${room.replace('/', '-')}-imports-types`,
    comment: `${room} may import types only of ${types.join(', ')}.`,
    from: { path: inRoom(room) },
    to: { path: types.map(inRoom), dependencyTypesNot: ['type-only'] },
  })),
  {
    name: 'every-room-is-in-the-table',
    from: { path: '^language/[^/]+/', pathNot: Object.keys(rooms).map(inRoom) },
    to: {},
  },
  {
    name: 'language-without-packages',
    comment: 'Only the parser and the reading of tables rest on published packages; the calculation is ours alone.',
    from: { path: '^language/', pathNot: '^language/(grammar|build)/' },
    to: { path: 'node_modules/' },
  },
  {
    name: 'pure-rooms-without-node',
    from: { path: `^language/(${pure.join('|')})/` },
    to: { dependencyTypes: ['core'] },
  },
  {
    name: 'editor-api-in-client-only',
    from: { pathNot: '^client/' },
    to: { path: '(^|node_modules/(@types/)?)(vscode|vscode-languageclient)(/|$)' },
  },
  {
    name: 'protocol-in-hosts-only',
    from: { path: '^language/' },
    to: { path: 'node_modules/(vscode-languageserver|vscode-jsonrpc)' },
  },
  {
    name: 'langium-in-grammar-only',
    from: { pathNot: '^(language/(grammar|build)|server/lsp)/' },
    to: { path: 'node_modules/(langium|chevrotain|@chevrotain)' },
  },
  {
    name: 'no-test-in-product',
    from: { path: '^(language|server|client)/' },
    to: { path: '^test/' },
  },
];

module.exports = {
  forbidden: forbidden.map(rule => ({ severity: 'error', ...rule })),
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|server/make)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
