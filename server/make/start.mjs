// npm start: installs what is missing, builds, analyzes the samples with the built command line, and says what to do next.
import { spawnSync } from 'node:child_process';
import { prepare, root } from './prepare.mjs';

/** Exit code of the command line when it found something: expected here, as one sample holds faults on purpose. */
const FINDINGS = 1;
const cli = 'dist/server/cli.js';

prepare();
step('Building', ['server/make/build.mjs']);
step('Headline results of the samples', [cli, 'calc', 'samples']);
step('Findings in the samples', [cli, 'check', 'samples']);
console.log(`
What to do next
  Read a sample:       samples/
  Check it:            node dist/server/cli.js check samples
  Its numbers:         node dist/server/cli.js calc samples --worksheet
  Why a finding:       node dist/server/cli.js explain CODE
  In VS Code:          npm run package, then install dist/wattwright.vsix and open a file that ends in .house
  In another editor:   node dist/server/lsp.js --stdio is the language server
  Run all the tests:   npm test`);

function step(title, args) {
  console.log(`\n${title}\n`);
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
  if (done.status === 0 || (done.status === FINDINGS && args[0] === cli)) return;
  process.exit(done.status ?? 1);
}
