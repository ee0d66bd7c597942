import { execFileSync } from 'node:child_process';
import { missingForWorkbench, root } from './readiness.js';

/** Packs the extension once before the tests in editors, so that they install what was built last. */
export default function setup(): void {
  if (missingForWorkbench()) return;
  execFileSync(process.execPath, ['server/make/package.mjs'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
}
