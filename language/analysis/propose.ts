import { fileName, inputCodes, type Declared, type DeclaredFile } from '../build/index.js';
import { contextAt, type Context, type Enclosing } from '../grammar/index.js';
import { resultOf, results, resultsOf } from '../results/index.js';
import { rules } from '../rules/index.js';
import { blocks, parentsOf, type BlockType, type Property } from '../vocabulary/index.js';
import { describeBlock } from './describe.js';
import type { AnalyzedHouse } from './house.js';
import { kindsOf } from './mentions.js';
import { pointedAt } from './pointed.js';
import type { Proposal } from './proposal.js';
import { addable, childrenOf, propertiesOf, topBlocks, type NamesFor } from './propose-blocks.js';
import { cellsFor, columnsFor, columnUnits, unitProposals, valuesFor } from './propose-values.js';
import type { Analysis } from './session.js';
import { Standing } from './standing.js';

/** What may be written at the cursor, and which text it takes the place of. */
export interface Proposals {
  readonly from: number;
  readonly to: number;
  readonly list: readonly Proposal[];
  /** A blank behind which something is expected: the value, a unit, a name. Elsewhere nobody asks by typing a blank. */
  readonly isAwaited: boolean;
}

/** Files of the workspace that could be imported. */
export type Beside = readonly DeclaredFile[];

/** Only what may stand at the cursor, by the vocabulary and the names that stand in the stage. */
export function proposalsAt(analysis: Analysis, offset: number, today: string, beside: Beside = []): Proposals {
  const { syntax } = analysis.file;
  const context = contextAt(syntax, offset);
  const word = /^[\w°%¢$²³/·().-]*/.exec(syntax.text.slice(offset))![0];
  const inText = context.place === 'import-path' && context.prefix.startsWith('"');
  const rest = inText ? (/^[^"\r\n]*"?/.exec(syntax.text.slice(offset))?.[0] ?? '') : restOfWord(context, word);
  const to = offset + rest.length;
  const behind = /^[ \t]*([^\s}]?)/.exec(syntax.text.slice(to, to + 200))![1];
  const list = new Proposer(analysis, offset, context, today, beside).list().map(p => fitted(p, behind));
  return { from: context.from, to, list, isAwaited: isAwaited(context) };
}

/** Where a word is changed in front of what stands already, its own colon, braces and places to fill in are left out. */
function fitted(p: Proposal, behind: string): Proposal {
  const isFrame =
    (behind === ':' && (p.kind === 'property' || p.kind === 'result')) ||
    (behind === '{' && p.kind === 'name') ||
    (behind !== '' && behind !== ':' && (p.kind === 'block' || p.kind === 'code'));
  return isFrame ? { ...p, insert: p.label, snippet: p.label } : p;
}

function isAwaited({ place, header }: Context): boolean {
  if (place === 'value' || place === 'unit') return true;
  if (header?.keyword !== undefined) return true;
  return place === 'header' && header?.instruction !== undefined && header.name === undefined;
}

/** A word is replaced as a whole; a colon behind it stays, and so does a unit's neighbour. */
const restOfWord = ({ place, prefix }: Context, word: string): string =>
  prefix && place !== 'unit' ? (/^[\w-]*/.exec(word)?.[0] ?? '') : '';

class Proposer {
  private readonly house: AnalyzedHouse | undefined;
  private readonly block: Declared | undefined;
  private readonly standing: Standing;
  private readonly names: NamesFor;

  constructor(
    private readonly analysis: Analysis,
    private readonly offset: number,
    private readonly context: Context,
    private readonly today: string,
    private readonly beside: Beside,
  ) {
    const pointed = pointedAt(analysis, offset);
    this.house = pointed?.house;
    const kind = context.enclosing.at(-1)?.kind;
    this.block = pointed?.chain.findLast(b => b.kind === kind);
    const stage = context.enclosing.find(e => e.kind === 'stage')?.name;
    this.standing = new Standing(analysis, this.house, stage);
    this.names = property => this.standing.names(kindsOf(property));
  }

  list(): Proposal[] {
    switch (this.context.place) {
      case 'member-head':
        return this.members();
      case 'header':
        return this.header();
      case 'value':
      case 'list':
        return this.values();
      case 'unit':
        return this.units();
      case 'after-value':
        return this.afterValue();
      case 'table-head': {
        const type = this.property();
        return type?.is === 'table' ? columnsFor(type, this.context.columns ?? []) : [];
      }
      case 'table-cell': {
        const type = this.property();
        const column = this.context.columns?.[this.context.cell ?? 0];
        return type?.is === 'table' && column !== undefined ? cellsFor(type, column) : [];
      }
      case 'import-path':
        return this.imports();
      default:
        return [];
    }
  }

  private get around(): Enclosing | undefined {
    return this.context.enclosing.at(-1);
  }

  /** The kind of the block around; of `change`, that of its target. */
  private type(): BlockType | undefined {
    const { around } = this;
    if (around?.instruction !== 'change') return blocks.get(around?.kind ?? '');
    return blocks.get(this.standing.changeable(this.offset).find(b => b.name === around.name)?.kind ?? '');
  }

  private property(): Property | undefined {
    return this.type()?.properties[this.context.property ?? ''];
  }

  private readonly fresh = (wish: string): string => {
    const taken = (n: string) => blocks.has(n) || (this.house?.built.names.named(n).length ?? 0) > 0;
    if (!taken(wish)) return wish;
    let n = 2;
    while (taken(`${wish}-${n}`)) n++;
    return `${wish}-${n}`;
  };

  private members(): Proposal[] {
    const { around, names, fresh } = this;
    if (!around) {
      const imported = word('import', 'names of another file', 'import "$1"', 'import "');
      const isAbove = !this.analysis.file.declared.blocks.some(
        b => b.span.from < this.offset && b.span.to <= this.offset,
      );
      return [...(isAbove ? [imported] : []), ...topBlocks(names, fresh)];
    }
    const type = this.type();
    if (!type) return [];
    if (type.bounds) return this.expectable();
    const given = new Set(this.given());
    if (around.instruction === 'change') return propertiesOf(type, given, names, false);
    const { kind } = type;
    const isLike = Boolean(this.block?.like);
    const list = [
      ...propertiesOf(type, given, names, !isLike),
      ...childrenOf(type, this.block?.children ?? [], names, fresh),
    ];
    if (kind === 'stage')
      list.push(
        word('add', 'brings a block from this stage on', 'add ', 'add '),
        word('change', 'sets properties of a block from this stage on', 'change ', 'change '),
        word('remove', 'takes a block away from this stage on', 'remove ', 'remove '),
      );
    if (this.house)
      list.push({
        ...word('accept', 'silences a finding, with its reason', 'accept ${1:code} because "${2}"', 'accept '),
        rank: 900,
      });
    return list;
  }

  /** Keys that the block or the change already has; one that is being written does not count. */
  private given(): readonly string[] {
    const { block, around, offset } = this;
    const instruction =
      around?.instruction === 'change'
        ? block?.instructions.find(i => i.span.from <= offset && offset <= i.span.to)
        : undefined;
    const properties =
      around?.instruction === 'change' ? (instruction ?? this.changeAround())?.properties : block?.properties;
    return [...(properties?.values() ?? [])]
      .filter(p => p.keySpan.to < offset || p.keySpan.from > offset)
      .map(p => p.key);
  }

  private changeAround() {
    const { house, offset } = this;
    return house?.built.declared.children
      .flatMap(c => c.instructions)
      .find(i => i.does === 'change' && i.span.from <= offset && offset <= i.span.to);
  }

  private expectable(): Proposal[] {
    const given = new Set(this.block?.properties.keys());
    const ofHouse = results.filter(r => r.of === 'house').map(r => ({ name: r.name, result: r }));
    const ofBlocks = (this.house?.built.names.all() ?? []).flatMap(b =>
      resultsOf(b.kind).map(result => ({ name: `${b.name}.${result.name}`, result })),
    );
    return [...ofHouse, ...ofBlocks]
      .filter(({ name }) => !given.has(name))
      .map(({ name, result }) => ({
        label: name,
        kind: 'result' as const,
        detail: result.doc,
        insert: `${name}: `,
        snippet: `${name}: \${1|at least,at most|} $2`,
        rank: result.headline ? 100 : 200,
      }));
  }

  private header(): Proposal[] {
    const { instruction, kind, name, keyword } = this.context.header ?? {};
    const type = blocks.get(kind ?? '');
    if (keyword === 'like') return type ? this.named([type.kind], { notLike: this.ownName() }) : [];
    if (keyword === 'from') return this.sources();
    if (keyword === 'in') return type ? this.named(parentsOf.get(type.kind) ?? [], { own: true }) : [];
    if (keyword === 'because' || keyword === 'until') return [];
    if (instruction === 'accept')
      return name === undefined ? acceptable() : [word('because', 'the reason', 'because "$1"', 'because "')];
    if (instruction === 'change' || instruction === 'remove')
      return name === undefined ? this.targets(instruction) : [];
    if (instruction === 'add' && kind === undefined) return addable(this.names, this.fresh);
    if (!type) return [];
    const line = this.lineSoFar();
    const list: Proposal[] = [];
    if (name === undefined && type.names && !/"/.test(line))
      list.push(
        ...type.names.map((label, i) => ({ label, kind: 'name' as const, insert: label, rank: 100 + i / 1000 })),
      );
    if (type.section || type.bounds) return list;
    if (!/\slike\s/.test(line)) list.push(word('like', `copies another ${type.kind}`, 'like ', 'like '));
    if (!/\sfrom\s/.test(line) && this.sources().length)
      list.push(word('from', 'where its values come from', 'from ', 'from '));
    if (instruction === 'add' && !/\sin\s/.test(line)) list.push(word('in', 'the block that holds it', 'in ', 'in '));
    return list;
  }

  private lineSoFar(): string {
    const { text } = this.analysis.file.syntax;
    return text.slice(text.lastIndexOf('\n', this.offset - 1) + 1, this.context.from);
  }

  private ownName(): string | undefined {
    return this.context.header?.name;
  }

  private targets(does: 'change' | 'remove'): Proposal[] {
    return this.standing
      .changeable(this.offset)
      .filter(b => does === 'change' || !blocks.get(b.kind)?.section)
      .map((b, i) => ({
        label: b.name,
        kind: 'name' as const,
        detail: [b.named ? b.kind : '', b.title].filter(Boolean).join(' · '),
        insert: does === 'change' ? `${b.name} { ` : b.name,
        snippet: does === 'change' ? `${b.name} { $0 }` : b.name,
        rank: 100 + i / 1000,
      }));
  }

  private values(): Proposal[] {
    const key = this.context.property ?? '';
    const type = this.type();
    if (type?.bounds)
      return this.isFirst() ? ['at least', 'at most'].map(w => word(w, 'a bound', `${w} `, `${w} `)) : [];
    const property = this.property();
    if (!property) return [];
    const isList = this.context.place === 'list';
    if (!isList && !this.isFirst() && property.is !== 'months') return [];
    if (isList && (property.is === 'table' || property.is === 'text')) return [];
    const values = valuesFor(key, property, this.today);
    const none =
      this.around?.instruction === 'change' &&
      property.presence !== 'required' &&
      !isList &&
      !values.some(v => v.label === 'none');
    return [
      ...this.named(kindsOf(property), { own: false }),
      ...values,
      ...(none ? [{ ...word('none', 'unsets the property', 'none', 'none'), rank: 900 }] : []),
    ];
  }

  /** Whether nothing of the value is written yet. */
  private isFirst(): boolean {
    const before = this.analysis.file.syntax.text.slice(0, this.context.from).trimEnd();
    return before.endsWith(':');
  }

  private units(): Proposal[] {
    const { property: key, columns } = this.context;
    const currency = this.house?.currency;
    const type = this.type();
    if (type?.bounds) {
      const dot = (key ?? '').lastIndexOf('.');
      const [first] = this.house?.built.names.named((key ?? '').slice(0, dot)) ?? [];
      const result = resultOf(key ?? '', 'house') ?? (first && resultOf((key ?? '').slice(dot + 1), first.kind));
      return result ? unitProposals(result.dimension, currency) : [];
    }
    const property = this.property();
    if (property?.is === 'table') return columnUnits(property, columns?.at(-1) ?? '', currency);
    if (property?.is === 'quantity' || property?.is === 'quantities')
      return unitProposals(property.dimension, currency);
    return [];
  }

  private afterValue(): Proposal[] {
    if (this.context.header?.keyword === 'from') return this.sources();
    const type = this.type();
    if (!type || type.bounds || !this.sources().length) return [];
    return [word('from', 'where the value comes from', 'from ', 'from ')];
  }

  private sources(): Proposal[] {
    return this.standing.sources().map((b, i) => ({
      label: b.name,
      kind: 'source',
      ...(b.title ? { detail: b.title } : {}),
      insert: b.name,
      rank: 100 + i / 1000,
    }));
  }

  /** Blocks of some kinds by name: the house's own, then what the file sees, then what it could import. */
  private named(kinds: readonly string[], only: { own?: boolean; notLike?: string | undefined }): Proposal[] {
    if (!kinds.length) return [];
    const { standing } = this;
    const own = standing.own(kinds).filter(b => b.name !== only.notLike);
    const seen = only.own ? [] : standing.seen(kinds);
    const known = new Set([...own, ...seen].map(b => b.name));
    const proposal = (b: Declared, rank: number, where: string): Proposal => ({
      label: b.name,
      kind: 'name',
      detail: [b.kind, b.title, where].filter(Boolean).join(' · '),
      doc: b.doc ?? describeBlock(blocks.get(b.kind)!),
      insert: b.name,
      rank,
    });
    const list = [
      ...own.map((b, i) => proposal(b, 100 + i / 1000, '')),
      ...seen.map((b, i) => proposal(b, (b.uri.startsWith('file') ? 200 : 300) + i / 1000, fileName(b.uri))),
    ];
    if (only.own) return list;
    for (const file of this.importable())
      for (const b of file.blocks)
        if (kinds.includes(b.kind) && !known.has(b.name))
          list.push({ ...proposal(b, 400, `imports ${fileName(file.uri)}`), extra: [this.importOf(file)] });
    return list;
  }

  private importable(): readonly DeclaredFile[] {
    const { uri, declared } = this.analysis.file;
    return this.beside.filter(f => f.uri !== uri && !declared.imports.some(i => i.target === f.uri));
  }

  private importOf(file: DeclaredFile) {
    const { uri, declared, syntax } = this.analysis.file;
    const line = `import "${relativePath(uri, file.uri)}"`;
    const last = declared.imports.at(-1)?.span.to;
    if (last !== undefined) return { uri, from: last, to: last, text: `\n${line}` };
    const from = syntax.tokens[0]?.startOffset ?? 0;
    const above = declared.blocks[0]?.doc === undefined ? from : 0;
    return { uri, from: above, to: above, text: `${line}\n` };
  }

  private imports(): Proposal[] {
    return this.importable()
      .filter(f => f.blocks.some(b => b.kind !== 'house'))
      .map(f => {
        const path = relativePath(this.analysis.uri, f.uri);
        return { label: path, kind: 'file' as const, insert: `"${path}"`, also: [`"${path}"`], rank: 100 };
      });
  }
}

const word = (label: string, detail: string, snippet: string, insert: string): Proposal => ({
  label,
  kind: 'word',
  detail,
  insert,
  snippet,
  rank: 800,
});

function acceptable(): Proposal[] {
  const ofRules = rules.map(r => ({ code: r.code, detail: r.title }));
  const ofText = Object.entries(inputCodes)
    .filter(([code, severity]) => severity !== 'error' && !code.startsWith('accept/'))
    .map(([code]) => ({ code, detail: 'of the text' }));
  return [...ofRules, ...ofText].map(({ code, detail }) => ({
    label: code,
    kind: 'code',
    detail,
    insert: `${code} because ""`,
    snippet: `${code} because "\${1}"`,
    rank: 100,
  }));
}

/** The way from one file to another as an import writes it. */
function relativePath(from: string, to: string): string {
  const start = from.split('/').slice(0, -1);
  const end = to.split('/');
  let same = 0;
  while (same < start.length && start[same] === end[same]) same++;
  return decodeURIComponent([...start.slice(same).map(() => '..'), ...end.slice(same)].join('/'));
}
