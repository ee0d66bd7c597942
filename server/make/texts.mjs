// Texts that the programs show and do not contain: the built-in library, which go-to-definition opens, and the findings' pages.
import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { root } from './prepare.mjs';

/** From where, which files, to where: `language/rules/heat/no-heat.md` becomes `dist/rules/heat/no-heat.md`. */
const texts = [
  { from: 'language/library', ending: '.house', to: 'dist/library' },
  { from: 'language/rules', ending: '.md', to: 'dist/rules' },
];

/** Copies them beside the bundles, so that what was removed from the sources is not left there. */
export function copyTexts() {
  for (const { from, ending, to } of texts) {
    rmSync(path.join(root, to), { recursive: true, force: true });
    for (const file of readdirSync(path.join(root, from), { recursive: true })) {
      if (!file.endsWith(ending)) continue;
      const target = path.join(root, to, file);
      mkdirSync(path.dirname(target), { recursive: true });
      cpSync(path.join(root, from, file), target);
    }
  }
}
