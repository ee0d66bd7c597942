import type { FindingCount, StageSummary } from '../../server/protocol/summary.js';
import type { PreviewMessage } from './message.js';

/** The page as elements: text goes in as text, so nothing written in a house file is read as markup. */
export function render({ file, summary }: PreviewMessage): HTMLElement[] {
  const heading = element('h1', file);
  if (!summary) return [heading, status('No results yet: the house holds none, or the server has not answered.')];
  const findings = status(countOf(summary.findings));
  const [today] = summary.stages;
  if (!today) return [heading, findings];
  heading.textContent = titleOf(today);
  return [heading, findings, tableOf(summary.stages), ...reasonsOf(summary.stages)];
}

/** Results down, stages across, so that a change from one stage to the next is read along a line. */
function tableOf(stages: readonly StageSummary[]): HTMLElement {
  const names = [...new Set(stages.flatMap(stage => stage.results.map(result => result.name)))];
  const head = element(
    'tr',
    headerCell('Result', 'col'),
    ...stages.map((stage, i) => headerCell(columnOf(stage, i), 'col')),
  );
  const rows = names.map(name => element('tr', headerCell(name, 'row'), ...stages.map(stage => cell(stage, name))));
  return element('table', element('caption', 'Headline results'), element('thead', head), element('tbody', ...rows));
}

/** The first column is the house itself, whose title stands above the table. */
function columnOf(stage: StageSummary, index: number): string {
  return index === 0 ? 'Today' : titleOf(stage);
}

function titleOf({ title, name }: StageSummary): string {
  return title || name;
}

function cell(stage: StageSummary, name: string): HTMLElement {
  const result = stage.results.find(one => one.name === name);
  if (!result?.text) return element('td', '–');
  return result.move ? element('td', result.text, element('small', result.move)) : element('td', result.text);
}

/** Why results are missing, each reason once, with the results that it concerns. */
function reasonsOf(stages: readonly StageSummary[]): HTMLElement[] {
  const reasons = new Map<string, Set<string>>();
  for (const { name, withheld } of stages.flatMap(stage => stage.results))
    if (withheld !== undefined) reasons.set(withheld, (reasons.get(withheld) ?? new Set()).add(name));
  if (!reasons.size) return [];
  const items = [...reasons].map(([why, names]) => element('li', `${why}: ${[...names].join(', ')}`));
  return [element('h2', 'Without a value'), element('ul', ...items)];
}

function headerCell(text: string, scope: 'col' | 'row'): HTMLElement {
  const header = element('th', text);
  header.setAttribute('scope', scope);
  return header;
}

/** Announced by a screen reader when it changes, without taking the focus. */
function status(text: string): HTMLElement {
  const line = element('p', text);
  line.setAttribute('role', 'status');
  return line;
}

function countOf({ errors, warnings, infos }: FindingCount): string {
  if (errors + warnings + infos === 0) return 'No findings.';
  return `${number(errors, 'error')}, ${number(warnings, 'warning')}, ${number(infos, 'notice')}.`;
}

function number(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

function element(tag: keyof HTMLElementTagNameMap, ...content: (HTMLElement | string)[]): HTMLElement {
  const made = document.createElement(tag);
  made.append(...content);
  return made;
}
