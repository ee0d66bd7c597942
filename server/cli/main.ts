import module from 'node:module';
import { EXIT } from './exit.js';
import { run } from './program.js';
import { terminal } from './terminal.js';

// Newer versions of Node keep what they compiled from one start to the next.
(module as { enableCompileCache?: () => void }).enableCompileCache?.();

// What nothing else caught is a fault of ours, and no finding, which is what Node's own exit code of 1 would say.
process.on('uncaughtException', error => {
  console.error(`internal fault: ${(process.env.WATTWRIGHT_DEBUG && error.stack) || error.message}`);
  process.exit(EXIT.fault);
});

// Set rather than called: what was printed is written to its end first.
void run(process.argv.slice(2), terminal()).then(exit => (process.exitCode = exit));
