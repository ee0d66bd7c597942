// Makes what is derived from other files and is not kept in git: the parser, then the resolved form of the built-in library.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './prepare.mjs';
import { run } from './run.mjs';

const grammar = path.join(root, 'language/grammar');
const library = path.join(root, 'language/library');
const resolver = path.join(root, 'server/make/resolve-library.ts');

/** The order matters: the library is resolved by the parser. */
export async function generate() {
  generateParser();
  await resolveLibrary();
}

function generateParser() {
  const config = path.join(grammar, 'langium-config.json');
  const sources = [config, ...files(grammar, '.langium')];
  if (sources.length < 2)
    throw new Error('No grammar in language/grammar: a .langium file and langium-config.json are needed.');
  if (newest(sources) <= oldest(files(path.join(grammar, 'generated'), '.ts'))) return;
  const langium = path.join(root, 'node_modules/langium-cli/bin/langium.js');
  const done = spawnSync(process.execPath, [langium, 'generate', '-f', config], { cwd: root, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`The parser could not be generated:\n${done.stdout}${done.stderr}`);
}

/** The command line starts cold: it reads the built-in library resolved, instead of parsing it at each start. */
async function resolveLibrary() {
  const resolved = path.join(library, 'resolved.json');
  const rooms = ['units', 'vocabulary', 'grammar', 'build'].flatMap(room =>
    files(path.join(root, 'language', room), '.ts'),
  );
  const sources = [resolver, ...files(library, '.house'), ...rooms];
  if (existsSync(resolved) && newest(sources) <= oldest([resolved])) return;
  const status = await run(resolver, [resolved]);
  if (status !== 0) throw new Error('The built-in library could not be resolved.');
}

function files(folder, ending) {
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder).filter(name => name.endsWith(ending));
  return names.map(name => path.join(folder, name));
}

const newest = paths => Math.max(...paths.map(file => statSync(file).mtimeMs));
const oldest = paths => (paths.length ? Math.min(...paths.map(file => statSync(file).mtimeMs)) : -Infinity);

if (process.argv[1] === fileURLToPath(import.meta.url)) await generate();
