import { results, type Result } from '../../language/results/index.js';
import { rules } from '../../language/rules/index.js';
import { nearest, type UnitSystem } from '../../language/units/index.js';
import { blocks } from '../../language/vocabulary/index.js';
import { markdownText } from '../report/markdown-terminal.js';
import { blockPage, blocksPage, firstSentence, propertyItem, resultPage, resultsPage } from '../report/reference.js';
import { wrap } from '../report/width.js';
import { EXIT, WrongUse } from './exit.js';
import { pageCodes, pageOf, pagesFolder, summaryOf } from './pages.js';
import type { Terminal } from './terminal.js';

export interface ExplainOptions {
  readonly in?: string;
  readonly stage?: readonly string[];
  readonly units?: UnitSystem;
  readonly date?: string;
}

/** What a search may find, with the page that it leads to. */
interface Entry {
  readonly name: string;
  readonly about: string;
  readonly words: readonly string[];
  readonly page: () => string;
}

/** Explains a finding, a result, a block, a property, or whatever goes by the words; without words, what there is. */
export async function explain(words: readonly string[], options: ExplainOptions, terminal: Terminal): Promise<number> {
  const wish = words.join(' ').trim();
  const known = entries();
  if (!wish) {
    terminal.print(markdownText(contents(known), terminal));
    return EXIT.clean;
  }
  const exact = named(wish, known);
  if (options.in !== undefined) return worksheetOf(exact, wish, options, terminal);
  const found = search(wish, known);
  const isCalled = (e: Entry) => e.words.some(w => w.toLowerCase() === wish.toLowerCase());
  const told = exact.length ? exact : found.length === 1 || found.some(isCalled) ? found.slice(0, 1) : [];
  if (told.length) {
    terminal.print(told.map(e => markdownText(e.page(), terminal)).join('\n'));
    const others = found.filter(e => isCalled(e) && !told.includes(e)).map(e => e.name);
    if (others.length) terminal.print(`\n${wrap(`See also: ${others.join(', ')}`, terminal.columns).join('\n')}\n`);
    return EXIT.clean;
  }
  if (found.length) {
    const list = found.slice(0, SHOWN).map(e => `- \`${e.name}\`: ${firstSentence(e.about)}`);
    terminal.print(markdownText(`"${wish}" is spoken of by:\n\n${list.join('\n')}\n\nExplain one of these.`, terminal));
    return EXIT.clean;
  }
  const near = nearest(
    wish,
    known.map(e => e.name),
  );
  throw new WrongUse(
    `nothing goes by the name "${wish}"${near ? `; the nearest is ${near}` : ''}: wattwright explain alone lists all there is`,
  );
}

const SHOWN = 12;

function entries(): Entry[] {
  const folder = pagesFolder();
  if (folder === undefined) throw new Error('the pages of the findings are missing from the installation');
  const titles = new Map(rules.map(r => [r.code as string, r.title]));
  const findings = pageCodes(folder).map((code): Entry => {
    const page = pageOf(folder, code);
    return { name: code, about: titles.get(code) ?? summaryOf(page), words: [code.split('/')[1]], page: () => page };
  });
  const byName = new Map<string, Result[]>();
  for (const r of results) byName.set(r.name, [...(byName.get(r.name) ?? []), r]);
  return [
    ...[...blocks.values()].map(b => ({
      name: b.kind,
      about: b.doc,
      words: b.also ?? [],
      page: () => blockPage(b),
    })),
    ...[...byName].map(([name, some]) => ({
      name,
      about: some[0].doc,
      words: [name.slice(name.indexOf('.') + 1).replaceAll('-', ' ')],
      page: () => some.map(resultPage).join('\n'),
    })),
    ...findings,
  ];
}

/** Everything of exactly this name; of a name with a dot, the property of a block or the result of one. */
function named(wish: string, known: readonly Entry[]): Entry[] {
  const exact = known.filter(e => e.name === wish);
  if (exact.length) return exact;
  const [first, second, ...rest] = wish.split('.');
  if (second === undefined || rest.length) return [];
  const property = blocks.get(first)?.properties[second];
  if (property)
    return [
      { name: wish, about: property.doc, words: [], page: () => `# ${wish}\n\n${propertyItem(second, property)}\n` },
    ];
  return known.filter(e => e.name === second && results.some(r => r.name === second && r.of !== 'house'));
}

/** By what people call it; then by its own name, then by what is said of it. */
function search(wish: string, known: readonly Entry[]): Entry[] {
  const sought = wish.toLowerCase();
  const as = (matches: (e: Entry) => boolean) => known.filter(matches);
  const found = [
    ...as(e => e.words.some(w => w.toLowerCase() === sought) || e.name.replaceAll('-', ' ') === sought),
    ...as(e => e.words.some(w => w.toLowerCase().includes(sought)) || e.name.includes(sought.replaceAll(' ', '-'))),
    ...as(e => new RegExp(`\\b${sought.replace(/[^\p{L}\p{N} ]/gu, '.')}\\b`, 'iu').test(e.about)),
  ];
  return [...new Set(found)];
}

/** The worksheet of a result in a house. */
async function worksheetOf(
  exact: readonly Entry[],
  wish: string,
  { in: file, ...options }: ExplainOptions,
  terminal: Terminal,
): Promise<number> {
  const [, second] = wish.split('.');
  const isResult = results.some(r => r.name === wish || (r.of !== 'house' && (r.name === second || r.name === wish)));
  if (!isResult)
    throw new WrongUse(
      exact.length ? `${wish} is no result: --in shows the worksheet of one` : `there is no result ${wish}`,
    );
  const { calc } = await import('./calc.js');
  return calc([file!], { ...options, result: [wish], worksheet: true, format: 'table' }, terminal);
}

function contents(known: readonly Entry[]): string {
  const pages = known.filter(e => e.name.includes('/')).map(e => `- \`${e.name}\`: ${firstSentence(e.about)}`);
  return [blocksPage(), resultsPage(), `# Findings\n\n${pages.join('\n')}`].join('\n');
}
