// npm start: installs what is missing, builds, analyzes the samples with the built command line, and says what to do next.
import { spawnSync } from 'node:child_process';
import { prepare, root } from './prepare.mjs';

const cli = 'dist/server/cli.js';
/** Houses as they should be, and one file with faults on purpose. */
const houses = ['samples/tamarack', 'samples/juniper', 'samples/start'];
const faults = 'samples/faults';

prepare();
step('Building', ['server/make/build.mjs']);
step('Headline results of the sample houses, stage by stage', [cli, 'calc', ...houses]);
step('Findings in them', [cli, 'check', ...houses]);
printFaults();
console.log(`
What to do next
  Read a sample           samples/start/start.house is the shortest
  Check it                node ${cli} check samples/start
  See how it is computed  node ${cli} calc samples/start --worksheet
  See what faults do      node ${cli} check samples/faults
  Learn why               node ${cli} explain service/overloaded
  Open it in VS Code      npm run package, then install dist/wattwright.vsix
  In another editor       node dist/server/lsp.js --stdio is the language server
  Read the reference      dist/manual/README.md
  Run all tests           npm test`);

/** Findings of the samples are no failure here; anything else is. */
function step(title, args) {
  console.log(`\n${title}\n`);
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' });
  if (done.status !== 0 && !(done.status === 1 && args[0] === cli)) process.exit(done.status ?? 1);
}

/** What is found in the file with faults, by its codes: the whole would fill many screens. */
function printFaults() {
  const done = spawnSync(process.execPath, [cli, 'check', faults, '--format', 'json'], { cwd: root, encoding: 'utf8' });
  if (done.status !== 1) {
    console.error(done.stderr || `Nothing was found in ${faults}, which has faults on purpose.`);
    process.exit(done.status || 1);
  }
  const { findings } = JSON.parse(done.stdout);
  console.log(`\nFindings in ${faults}, whose faults are deliberate\n`);
  for (const severity of ['error', 'warning', 'info']) {
    const codes = findings.filter(f => f.severity === severity).map(f => f.code);
    if (!codes.length) continue;
    console.log(
      `${String(codes.length).padStart(4)} ${severity}${severity === 'info' || codes.length === 1 ? '' : 's'}`,
    );
    for (const line of wrapped([...new Set(codes)].sort().join(', '))) console.log(`     ${line}`);
  }
}

/** Lines of at most 75 characters, broken between words. */
function wrapped(text) {
  return text.match(/.{1,75}(?= |$)/g).map(line => line.trim());
}
