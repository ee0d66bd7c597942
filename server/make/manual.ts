// Writes the reference manual, made from the tables of the language, to the folder that is named.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { manual, type FindingPage } from '../report/manual.js';

const target = process.argv[2];
if (target === undefined) throw new Error('Say where the manual shall be written.');
const rules = path.resolve('language/rules');

const findings = readdirSync(rules, { recursive: true, encoding: 'utf8' })
  .filter(file => file.endsWith('.md'))
  .sort()
  .map((file): FindingPage => {
    const text = readFileSync(path.join(rules, file), 'utf8');
    const summary = text.split(/\n\s*\n/)[1]?.replaceAll('\n', ' ') ?? '';
    return { code: file.slice(0, -'.md'.length).split(path.sep).join('/'), text, summary };
  });

rmSync(target, { recursive: true, force: true });
for (const { file, text } of manual(findings)) {
  const at = path.join(target, file);
  mkdirSync(path.dirname(at), { recursive: true });
  writeFileSync(at, text);
}
