// npm run package: the extension as dist/wattwright.vsix, from what is built. Needs no network.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { root } from './prepare.mjs';

const vsix = 'dist/wattwright.vsix';

if (!existsSync(path.join(root, 'dist/server/lsp.js'))) {
  console.error('Nothing is built yet: run npm run build first.');
  process.exit(1);
}
// Everything is bundled, so no dependency is packed; the project names no repository that links could lead to.
const options = [
  'package',
  '--no-dependencies',
  '--allow-missing-repository',
  '--no-rewrite-relative-links',
  '--out',
  vsix,
];
const packed = spawnSync(process.execPath, [path.join(root, 'node_modules/@vscode/vsce/vsce'), ...options], {
  cwd: root,
  encoding: 'utf8',
});
if (packed.status !== 0) {
  console.error(`The extension could not be packaged:\n${packed.stdout}${packed.stderr}`);
  process.exit(1);
}
console.log(packed.stdout.trim());
