import { LIBRARY_SCHEME } from '../../language/library/index.js';
import type { Severity } from '../../language/rules/index.js';
import { excerpt } from './excerpt.js';
import { count, rangeIn, type Findings, type Told } from './findings.js';
import type { Paint, Style } from './paint.js';
import { visible, wrap } from './width.js';

interface Look {
  readonly paint: Paint;
  readonly columns: number;
}

const COLOUR: Record<Severity, Style> = { error: 'red', warning: 'yellow', info: 'cyan' };
const INDENT = '  ';

/** Findings as people read them in a terminal: place, message, source line with squiggle, related places, what to do. */
export function findingsText(run: Findings, look: Look): string {
  return [...run.findings.map(told => findingText(told, run, look)), summaryLine(run, look.paint)].join('\n');
}

function findingText({ finding, someStages }: Told, run: Findings, look: Look): string {
  const { paint, columns } = look;
  const { code, severity, uri, message } = finding;
  const { from } = rangeIn(run, finding);
  const place = `${visible(run.shown(uri))}:${from.line}:${from.column}`;
  const lines = [`${paint('bold', place)}  ${paint(COLOUR[severity], severity)} ${code}`];
  lines.push(...wrap(visible(message), columns - INDENT.length).map(line => INDENT + line));
  lines.push(...quoted(finding, severity, run, look));
  for (const r of finding.related) {
    if (r.uri.startsWith(LIBRARY_SCHEME)) continue; // Its text is not at hand here.
    const at = rangeIn(run, r).from;
    const where = r.uri === uri ? `line ${at.line}` : `${visible(run.shown(r.uri))}:${at.line}:${at.column}`;
    lines.push(...hanging(`see ${where}: ${visible(r.message)}`, columns));
  }
  if (someStages.length) lines.push(...hanging(`in ${stagesText(someStages)}`, columns));
  lines.push(paint('dim', `${INDENT}help: wattwright explain ${code}`));
  return `${lines.join('\n')}\n`;
}

function quoted(finding: Told['finding'], severity: Severity, run: Findings, { paint, columns }: Look): string[] {
  const { uri, from, to } = finding;
  const text = run.text(uri);
  if (!text.trim()) return [];
  const lines = run.lines(uri);
  const number = String(lines.at(from).line);
  const gutter = Math.max(4, number.length);
  const { source, marks } = excerpt(text, lines, from, to, columns - gutter - 3);
  return [
    `${paint('dim', `${number.padStart(gutter)} |`)} ${source}`,
    `${paint('dim', `${' '.repeat(gutter)} |`)} ${paint(COLOUR[severity], marks)}`,
  ];
}

const hanging = (text: string, columns: number): string[] =>
  wrap(text, columns - 2 * INDENT.length).map((line, i) => (i ? INDENT + INDENT : INDENT) + line);

function stagesText(stages: readonly string[]): string {
  const names = stages.map(s => (s === 'today' ? 'the house today' : s));
  if (names.length === 1) return names[0] === 'the house today' ? names[0] : `stage ${names[0]}`;
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

/** One line that closes a run: how much was looked at, what was found. */
export function summaryLine(run: Findings, paint: Paint): string {
  const found = (['error', 'warning', 'info'] as const)
    .map(severity => ({ severity, n: count(run, severity) }))
    .filter(({ n }) => n)
    .map(({ severity, n }) => paint(COLOUR[severity], amount(n, severity === 'info' ? 'note' : severity)));
  const looked = `${amount(run.houses, 'house')} in ${amount(run.files, 'file')}`;
  const silent = run.houses ? paint('green', 'nothing found') : 'no house found';
  return `${found.length ? found.join(', ') : silent} (${looked})\n`;
}

export const amount = (n: number, thing: string): string =>
  `${n.toLocaleString('en-US')} ${thing}${n === 1 ? '' : 's'}`;
