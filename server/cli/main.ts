import module from 'node:module';
import { run } from './program.js';
import { terminal } from './terminal.js';

// Newer versions of Node keep what they compiled from one start to the next.
(module as { enableCompileCache?: () => void }).enableCompileCache?.();

// Set rather than called: what was printed is written to its end first.
void run(process.argv.slice(2), terminal()).then(exit => (process.exitCode = exit));
