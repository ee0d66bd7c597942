// Reads the built-in library's texts and writes them in the form in which they are shipped; a fault in them stops the build.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { declare, pack, Report } from '../../language/build/index.js';
import { parse } from '../../language/grammar/index.js';

const target = process.argv[2];
if (target === undefined) throw new Error('Say where the resolved library shall be written.');
const folder = path.dirname(target);

const problems: string[] = [];
const files = readdirSync(folder)
  .filter(name => name.endsWith('.house'))
  .sort()
  .map(name => {
    const text = readFileSync(path.join(folder, name), 'utf8');
    const syntax = parse(text);
    const uri = `wattwright-library:/${name}`;
    const report = new Report(uri);
    const file = declare(syntax, uri, () => undefined, report, { stands: () => false, text: () => undefined });
    for (const { code, from, message } of [...syntax.problems, ...report.problems])
      problems.push(`${name}:${text.slice(0, from).split('\n').length} ${code} ${message}`);
    return pack(file);
  });

if (problems.length) {
  console.error(problems.join('\n'));
  process.exit(1);
}
writeFileSync(target, JSON.stringify(files));
