// One bundle for each host, with its size held to a limit.
import { build, context } from 'esbuild';
import { chmodSync, existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './prepare.mjs';

const KB = 1000;

/** What runs where. Sizes are limits in bytes of the minified file; the server's and the client's are promised to users. */
const bundles = [
  { entry: 'server/lsp/main.ts', out: 'dist/server/lsp.js', host: 'node', limit: 1500 * KB },
  { entry: 'server/cli/start.ts', out: 'dist/server/cli.js', host: 'node', limit: 10 * KB, executable: true },
  { entry: 'server/cli/main.ts', out: 'dist/server/wattwright.js', host: 'node', limit: 1500 * KB },
  {
    entry: 'client/extension.ts',
    out: 'dist/client/extension.cjs',
    host: 'node',
    limit: 400 * KB,
    external: ['vscode'],
  },
  { entry: 'client/preview/main.ts', out: 'dist/client/preview.js', host: 'browser', limit: 400 * KB },
];

/** Builds every bundle; throws when an entry is missing or a bundle is over its limit. */
export async function bundle() {
  requireEntries();
  const results = await Promise.all(bundles.map(one => build(options(one))));
  finish();
  return bundles.map((one, i) => ({ ...one, bytes: sizeOf(one), metafile: results[i].metafile }));
}

/** Builds again whenever a source changes, until the process ends. */
export async function watch() {
  requireEntries();
  const contexts = await Promise.all(bundles.map(one => context({ ...options(one), logLevel: 'info' })));
  await Promise.all(contexts.map(one => one.rebuild()));
  finish();
  await Promise.all(contexts.map(one => one.watch()));
}

/** One line for each bundle; throws when one has grown over its limit. */
export function report(built) {
  for (const { out, bytes, limit } of built)
    console.log(`${out.padEnd(28)} ${(bytes / KB).toFixed(0).padStart(6)} kB of at most ${limit / KB} kB`);
  const over = built.filter(({ bytes, limit }) => bytes > limit);
  if (over.length) throw new Error(`Over its limit of size: ${over.map(({ out }) => out).join(', ')}`);
}

function options({ entry, out, host, executable, external }) {
  const shebang = executable ? '#!/usr/bin/env node\n' : '';
  const node = {
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    // The published UMD builds of some packages hide their imports; their module builds can be bundled.
    mainFields: ['module', 'main'],
    define: { 'import.meta.url': 'bundleUrl' },
    banner: { js: `${shebang}const bundleUrl = require('node:url').pathToFileURL(__filename).href;` },
  };
  const browser = { platform: 'browser', target: 'es2022', format: 'iife' };
  return {
    ...(host === 'node' ? node : browser),
    entryPoints: [path.join(root, entry)],
    outfile: path.join(root, out),
    external: external ?? [],
    bundle: true,
    minify: true,
    sourcemap: 'external',
    legalComments: 'none',
    metafile: true,
    logLevel: 'warning',
  };
}

function requireEntries() {
  const missing = bundles.filter(({ entry }) => !existsSync(path.join(root, entry)));
  if (missing.length) throw new Error(`Nothing to bundle from: ${missing.map(({ entry }) => entry).join(', ')}`);
}

/** The project is of type "module", while its bundles for Node are CommonJS, which starts faster and can be loaded by the editor. */
function finish() {
  const folder = path.join(root, 'dist/server');
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, 'package.json'), '{ "type": "commonjs" }\n');
  // What Node compiled of former bundles; the build makes it anew.
  for (const file of readdirSync(folder)) if (file.endsWith('.cache')) rmSync(path.join(folder, file));
  for (const { out, executable } of bundles) if (executable) chmodSync(path.join(root, out), 0o755);
}

const sizeOf = ({ out }) => statSync(path.join(root, out)).size;
