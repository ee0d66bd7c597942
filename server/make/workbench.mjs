// npm run workbench: installs what the tests in real editors need. They skip themselves, and say so, while it is missing.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { prepare, root } from './prepare.mjs';

/** Programs from the system's packages, and the package of Debian that brings each. */
const programs = [
  { command: 'chromium', packages: ['chromium', 'fonts-dejavu-core'] },
  { command: 'nvim', packages: ['neovim'] },
  { command: 'emacs', packages: ['emacs-nox', 'elpa-eglot'] },
];

const folder = path.join(root, 'test/workbench');
const editor = path.join(folder, 'node_modules/code-server/lib/vscode');

installPrograms();
prepare(folder);
installEditorModules();
console.log('The tests in real editors can run: npm test');

function installPrograms() {
  const missing = programs.filter(({ command }) => !onPath(command)).flatMap(({ packages }) => packages);
  if (!missing.length) return;
  if (!onPath('apt-get') || process.getuid?.() !== 0) {
    console.log(`Install these with the system's package manager for all editor tests to run: ${missing.join(' ')}`);
    return;
  }
  run('apt-get', ['update', '-qq']);
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missing]);
}

/** The workbench carries modules of its own, which its npm package leaves to be installed; none is built from source. */
function installEditorModules() {
  if (existsSync(path.join(editor, 'node_modules/.package-lock.json'))) return;
  run('npm', ['install', '--ignore-scripts', '--omit=dev', '--no-audit', '--no-fund'], editor);
}

function onPath(command) {
  return (process.env.PATH ?? '').split(path.delimiter).some(place => existsSync(path.join(place, command)));
}

function run(command, args, cwd = root) {
  console.log(`${command} ${args.join(' ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const done = spawnSync(command, args, {
    cwd,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (done.status === 0) return;
  console.error(`${command} failed; the tests in real editors stay skipped until it succeeds.`);
  process.exit(1);
}
