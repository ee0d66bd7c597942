// Writes the reference manual, made from the tables of the language, to the folder that is named.
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { run } from '../cli/program.js';
import { manual, type CommandHelp, type FindingPage } from '../report/manual.js';
import { plain } from '../report/paint.js';

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

const commands: CommandHelp[] = [];
for (const name of ['check', 'calc', 'format', 'explain', 'lsp']) {
  let help = '';
  await run(['help', name], {
    folder: '.',
    today: '',
    columns: 80,
    paint: plain,
    watched: false,
    debug: false,
    input: () => Promise.resolve(Buffer.of()),
    print: text => void (help += text),
    complain: text => process.stderr.write(text),
  });
  commands.push({ name, help });
}

rmSync(target, { recursive: true, force: true });
for (const { file, text } of manual(findings, commands)) {
  const at = path.join(target, file);
  mkdirSync(path.dirname(at), { recursive: true });
  writeFileSync(at, text);
}
