import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { compiled } from './compiled.js';

// The file that people start: it fetches the program beside it, compiled before where that is possible.
compiled(path.join(path.dirname(fileURLToPath(import.meta.url)), 'wattwright.js')).run();
