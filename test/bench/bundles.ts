import { statSync } from 'node:fs';
import type { Figure } from './figure.js';

/** Size of what is shipped, minified. */
const bundle = (name: string, file: string, goal: string): Figure => ({
  name,
  unit: 'kB',
  goal,
  measure: () => Promise.resolve([statSync(file).size / 1000]),
});

export const bundles: readonly Figure[] = [
  bundle('bundle.server', 'dist/server/lsp.js', 'median 1500'),
  bundle('bundle.client', 'dist/client/extension.cjs', 'median 400'),
];
