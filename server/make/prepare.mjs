// Installs what is missing. Plain Node without dependencies: this runs in a fresh clone before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

/** Installs the packages of `folder` as its lock file says, when they are absent or not those of the lock. */
export function prepare(folder = root) {
  requireNode(process.versions.node);
  if (installed(folder)) return;
  console.log(`Installing the packages of ${path.relative(process.cwd(), folder) || 'the project'} (npm ci) ...`);
  const done = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: folder,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
  if (done.status === 0) return;
  console.error(
    '\nThe packages could not be installed. Is the npm registry reachable from here? Then run the command again.',
  );
  process.exit(1);
}

/** True when every package of the lock file stands in node_modules with the locked version. */
export function installed(folder) {
  const wanted = packagesOf(path.join(folder, 'package-lock.json'));
  const present = packagesOf(path.join(folder, 'node_modules/.package-lock.json'));
  if (!wanted || !present) return false;
  return Object.entries(wanted).every(([place, { version, optional, link }]) => {
    if (place === '' || link) return true;
    // Optional packages are builds for other machines: absent here, or present and then of the locked version.
    if (!present[place]) return optional === true;
    return present[place].version === version && existsSync(path.join(folder, place));
  });
}

function packagesOf(lockFile) {
  try {
    return JSON.parse(readFileSync(lockFile, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

function requireNode(version) {
  const [major, minor] = version.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(`Wattwright needs Node 20.19 or later; this is Node ${version}.`);
  process.exit(1);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) prepare();
