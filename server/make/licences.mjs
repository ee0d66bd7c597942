// Which packages are inside the bundles, under which licence: permissive ones only, and their notices go along with ours.
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './prepare.mjs';

/** Licences that ask for no more than their notice. */
const ALLOWED = new Set(['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD']);

/** Packages in the bundles, from what the bundler says it read; throws on a licence that is not allowed. */
export function licences(built) {
  const inputs = new Set(built.flatMap(one => Object.keys(one.metafile.inputs)));
  const folders = new Set([...inputs].map(folderOf).filter(folder => folder !== undefined));
  const packages = [...folders].sort().map(read);
  const refused = packages.filter(({ licence }) => !ALLOWED.has(licence));
  if (refused.length) {
    const list = refused.map(({ name, version, licence }) => `${name} ${version}: ${licence ?? 'no licence stated'}`);
    throw new Error(`Licences that may not be bundled:\n  ${list.join('\n  ')}`);
  }
  return packages;
}

/** The notices that those licences ask for, shipped beside the bundles. */
export function writeNotices(packages) {
  const parts = packages.map(
    ({ name, version, licence, text }) => `${name} ${version} (${licence})\n\n${text.trim()}\n`,
  );
  const opening = 'Wattwright contains the following packages, each under its own licence.\n';
  writeFileSync(path.join(root, 'dist/third-party-notices.txt'), [opening, ...parts].join(`\n${'-'.repeat(80)}\n\n`));
}

/** The innermost package that a bundled file belongs to, as a path from the root; none for the project's own files. */
function folderOf(input) {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(input)?.[0];
}

function read(folder) {
  const { name, version, license } = JSON.parse(readFileSync(path.join(root, folder, 'package.json'), 'utf8'));
  const file = readdirSync(path.join(root, folder)).find(entry => /^(licen[cs]e|copying)(\.|$)/i.test(entry));
  const text = file ? readFileSync(path.join(root, folder, file), 'utf8') : `Licensed under ${license}.`;
  return { name, version, licence: license, text };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { bundle } = await import('./bundle.mjs');
  const packages = licences(await bundle());
  for (const { name, version, licence } of packages) console.log(`${licence.padEnd(14)} ${name} ${version}`);
}
