import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { results } from '../../language/results/index.js';
import { rules } from '../../language/rules/index.js';
import { dimensions } from '../../language/units/index.js';
import { blocks } from '../../language/vocabulary/index.js';

/** As the build wrote it. */
const MANUAL = path.resolve(import.meta.dirname, '../../dist/manual');
const page = (file: string): string => readFileSync(path.join(MANUAL, file), 'utf8');

it('tells every block with every property, and where each stands', () => {
  const list = page('blocks.md');
  for (const { kind, properties, holds } of blocks.values()) {
    expect(list).toContain(`(blocks/${kind}.md)`);
    const own = page(`blocks/${kind}.md`);
    for (const [name, { doc, presence }] of Object.entries(properties)) {
      const item = own.split('\n').find(line => line.startsWith(`- \`${name}\`: `));
      expect(item, `${kind}.${name}`).toContain(doc);
      if (presence === 'required') expect(item, `${kind}.${name}`).toContain('required');
      else if (presence === 'default') expect(item, `${kind}.${name}`).toContain('unless said');
    }
    for (const child of holds ?? [])
      expect(page(`blocks/${child}.md`)).toMatch(new RegExp(`Stands in: .*\\b${kind}\\b`));
  }
});

it('tells every result, finding and dimension', () => {
  const numbers = page('results.md');
  for (const { name, doc } of results) {
    const items = numbers.split('\n').filter(line => line.startsWith(`- \`${name}\` (`));
    expect(
      items.some(item => item.endsWith(doc)),
      name,
    ).toBe(true);
  }
  const list = page('findings.md');
  for (const { code, severity } of rules) {
    expect(list).toContain(`(findings/${code}.md)`);
    const heading = { error: '## Errors', warning: '## Warnings', info: '## Notes' }[severity];
    const section = list.split(/^(?=## )/m).find(s => s.startsWith(heading));
    expect(section, code).toContain(`\`${code}\``);
  }
  const units = page('units.md');
  for (const name of Object.keys(dimensions)) expect(units).toContain(`| ${name} |`);
});

it('tells every command with its options', () => {
  const commands = page('commands.md');
  for (const name of ['check', 'calc', 'format', 'explain', 'lsp'])
    expect(commands).toContain(`Usage: wattwright ${name} `);
  for (const option of ['--fail-on <severity>', '--worksheet', '--check', '--in <file>'])
    expect(commands).toContain(option);
});

it('has no link that leads nowhere', () => {
  const files = readdirSync(MANUAL, { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.md'));
  expect(files.length).toBeGreaterThan(100);
  for (const file of files) {
    // Examples are no text of the page.
    const text = page(file).replace(/^```[\s\S]*?^```$/gm, '');
    for (const [, to] of text.matchAll(/\]\(([^)#:]+\.md)\)/g))
      expect(existsSync(path.join(MANUAL, path.dirname(file), to)), `${file} to ${to}`).toBe(true);
  }
});
