import {
  docComment,
  headerRange,
  isAccept,
  isAdd,
  isBlock,
  isBodyDamaged,
  isChange,
  isDamaged,
  isProperty,
  isRemove,
  rangeOf,
  rangeOfProperty,
  type Accept,
  type Add,
  type Block,
  type Change,
  type Member,
  type Property as WrittenProperty,
  type Remove,
  type Syntax,
} from '../grammar/index.js';
import { nearest } from '../units/index.js';
import { blocks, parentsOf, propertyOf, sections, type BlockType } from '../vocabulary/index.js';
import type { Declared, DeclaredFile, DeclaredProperty, Instruction, Name } from './declared.js';
import { fittingKind } from './fitting.js';
import { layoutOf } from './layout.js';
import type { Report, Span } from './problem.js';
import type { Beside } from './table.js';
import { boundsOf, evaluate } from './value.js';

/** What one file says, held against the vocabulary. Problems go to the report. */
export function declare(
  syntax: Syntax,
  uri: string,
  resolve: (path: string) => string | undefined,
  report: Report,
  beside: Beside,
): DeclaredFile {
  const context: Context = { uri, text: syntax.text, report, beside, kinds: new Map() };
  const imports = syntax.file.imports.flatMap(node => {
    const span = rangeOfProperty(node, 'path') ?? rangeOf(node);
    return node.path === undefined ? [] : [{ name: node.path, span, target: resolve(node.path) }];
  });
  const declared: Declared[] = [];
  for (const member of syntax.file.members) {
    if (isBlock(member)) declared.push(topBlock(member, context));
    else if (isProperty(member))
      report.add(
        'input/misplaced-block',
        rangeOf(member),
        `${member.key} stands outside of any block; properties belong between the braces of one`,
      );
    else report.add('input/misplaced-instruction', rangeOf(member), `${word(member)} belongs into a stage of a house`);
  }
  return { uri, imports, blocks: declared };
}

interface Context {
  readonly uri: string;
  readonly text: string;
  readonly report: Report;
  readonly beside: Beside;
  /** Kinds of the named blocks of the house at hand, for what `change` sets. */
  readonly kinds: Map<string, string[]>;
}

function topBlock(node: Block, context: Context): Declared {
  const { report } = context;
  context.kinds.clear();
  collectKinds(node.members, context.kinds);
  const type = blocks.get(node.kind);
  if (type && (type.section || type.ofStage || node.kind === 'stage'))
    report.add(
      'input/misplaced-block',
      kindSpan(node),
      `${node.kind} belongs into a ${type.section || type.kind === 'stage' ? 'house' : 'stage'}`,
    );
  return declaredBlock(node, type ?? unknownKind(node, [...blocks.keys()], context), context);
}

/** All kinds that a name stands for, so that `change` finds the one that has what it sets. */
function collectKinds(members: readonly Member[], kinds: Map<string, string[]>): void {
  for (const m of members) {
    if (!isBlock(m) && !isAdd(m)) continue;
    if (m.kind && blocks.has(m.kind)) {
      const name = m.name ?? m.kind;
      kinds.set(name, [...(kinds.get(name) ?? []), m.kind]);
    }
    collectKinds(m.members, kinds);
  }
}

/** The kind that `change` means; where the block's own head is damaged, one that has all that is set. */
function changedKind(node: Change | Block, name: string, context: Context): string | undefined {
  const called = context.kinds.get(name) ?? (blocks.has(name) ? [name] : []);
  return called.length === 1 ? called[0] : fittingKind(node.members, called.length ? called : blocks.keys());
}

const kindSpan = (node: Block | Add): Span => rangeOfProperty(node, 'kind') ?? headerRange(node);

/** Tells of an unknown kind and returns the one that was probably meant, so that its members are still judged. */
function unknownKind(node: Block | Add, allowed: readonly string[], { report }: Context): BlockType | undefined {
  const kind = node.kind ?? '';
  const known = [...blocks.values()].find(b => b.also?.some(a => a.toLowerCase().replace(/ /g, '-') === kind));
  const near = nearest(kind, allowed) ?? known?.kind;
  const meant =
    near ?? fittingKind(node.members, allowed.length ? allowed : blocks.keys()) ?? nearest(kind, blocks.keys());
  report.add(
    'input/unknown-block',
    kindSpan(node),
    meant ? `there is no block "${kind}"; the nearest is ${meant}` : `there is no block "${kind}"`,
    meant ? { replace: [[`Write ${meant}`, meant]] } : {},
  );
  return meant === undefined ? undefined : blocks.get(meant);
}

function declaredBlock(
  node: Block | Add,
  type: BlockType | undefined,
  context: Context,
  stands: 'here' | 'added' = node.$type === 'Add' ? 'added' : 'here',
): Declared {
  const { uri, report } = context;
  judgeHeader(node, type, report, stands);
  const properties = declaredProperties(node.members, type, context);
  const children: Declared[] = [];
  const instructions: Instruction[] = [];
  const lostKinds: string[] = [];
  const misplaced: Declared[] = [];
  for (const member of node.members) {
    if (isProperty(member)) continue;
    if (isBlock(member)) {
      const meant = type?.kind === 'stage' ? misspeltInstruction(member, context) : undefined;
      if (meant) {
        instructions.push(meant);
        continue;
      }
      const child = childBlock(member, type, context);
      if (!child) continue;
      (child.misplaced ? misplaced : children).push(child.declared);
      if (child.misspelt) lostKinds.push(child.declared.kind);
    } else if (isAccept(member)) instructions.push(accept(member, report));
    else if (type?.kind === 'stage') instructions.push(change(member, context));
    else report.add('input/misplaced-instruction', rangeOf(member), `${word(member)} belongs into a stage`);
  }
  const kind = type?.kind ?? node.kind ?? '';
  const name = node.name ?? kind;
  const head = rangeOfProperty(node, 'name') ?? kindSpan(node);
  const span = rangeOf(node);
  const body = bodySpan(node);
  if (kind === 'house') completeSections(children, misplaced, uri, head);
  return {
    uri,
    kind,
    name,
    named: node.name !== undefined,
    title: node.titles[0],
    doc: docComment(node),
    span,
    head,
    kindSpan: kindSpan(node),
    body,
    layout: layoutOf(context.text, span, body),
    like: headerName(node, 'likes'),
    origin: headerName(node, 'origins'),
    inside: headerName(node, 'parents'),
    properties: properties.map,
    children,
    instructions,
    lost: isBodyDamaged(node) || isDamaged(node) ? 'all' : properties.misspelt,
    lostKinds,
  };
}

/**
 * Sections always stand. A block that stands beside its section, as while a brace is typed, is told of and still counts
 * where it belongs: the rest of the house does not change for it.
 */
function completeSections(children: Declared[], misplaced: readonly Declared[], uri: string, head: Span): void {
  for (const kind of sections)
    if (!children.some(c => c.kind === kind)) children.push(implicitSection(kind, uri, head));
  for (const stray of misplaced) {
    const at = children.findIndex(c => blocks.get(c.kind)?.section && blocks.get(c.kind)?.holds?.includes(stray.kind));
    if (at >= 0) children[at] = { ...children[at], children: [...children[at].children, stray] };
  }
}

function implicitSection(kind: string, uri: string, head: Span): Declared {
  return {
    uri,
    kind,
    name: kind,
    named: false,
    title: undefined,
    doc: undefined,
    span: head,
    head,
    kindSpan: head,
    body: undefined,
    layout: undefined,
    implicit: true,
    like: undefined,
    origin: undefined,
    inside: undefined,
    properties: new Map(),
    children: [],
    instructions: [],
    lost: [],
    lostKinds: [],
  };
}

function bodySpan(node: Block | Add | Change): Span | undefined {
  const open = rangeOfProperty(node, 'open');
  return open && { from: open.to, to: Math.max(open.to, rangeOf(node).to - 1) };
}

function headerName(node: Block | Add, part: 'likes' | 'origins' | 'parents'): Name | undefined {
  const name = node[part][0];
  const span = name === undefined ? undefined : rangeOfProperty(node, part, 0);
  return name === undefined || !span ? undefined : { name, span };
}

function judgeHeader(node: Block | Add, type: BlockType | undefined, report: Report, stands: 'here' | 'added'): void {
  const one = (part: 'titles' | 'likes' | 'origins' | 'parents' | 'stray', most: number, message: string) => {
    for (let i = most; i < node[part].length; i++)
      report.add('input/header', rangeOfProperty(node, part, i) ?? kindSpan(node), message);
  };
  one('stray', 0, `${node.kind ?? 'a block'} has one name; this word does not belong here`);
  one('titles', 1, 'a block has one title');
  one('likes', 1, 'a block is like one other block');
  one('origins', 1, 'a block is from one source');
  one('parents', 1, 'a block is added in one parent');
  if (stands === 'here') one('parents', 0, '`in` belongs to `add` in a stage; here the block stands in its parent');
  if (!type || node.name === undefined) return;
  const span = rangeOfProperty(node, 'name')!;
  if (type.section) report.add('input/header', span, `${type.kind} is a part of every house and has no name`);
  else if (type.names && !type.names.includes(node.name)) {
    const near = nearest(node.name, type.names);
    report.add(
      'input/unknown-choice',
      span,
      `a ${type.kind} is named ${type.names.join(' or ')}`,
      near ? { replace: [[`Write ${near}`, near]] } : {},
    );
  } else if (!type.names && reserved.has(node.name))
    report.add('input/reserved-name', span, `${node.name} is a word of the language; a block needs another name`);
}

/** Domains of results stand before the dot in their names; kinds stand for unnamed blocks. */
const reserved: ReadonlySet<string> = new Set([
  ...blocks.keys(),
  'cooling',
  'air',
  'water',
  'year',
  'bill',
  'finance',
  'none',
  'yes',
  'no',
]);

/** Whether a name is a word of the language, so that no block may have it. */
export const isReservedName = (name: string): boolean => reserved.has(name);

interface Child {
  readonly declared: Declared;
  /** A block with a body whose kind is misspelt: what it was meant to be is a guess. */
  readonly misspelt?: true;
  /** It stands in a parent that does not hold such blocks. */
  readonly misplaced?: true;
}

function childBlock(node: Block, parent: BlockType | undefined, context: Context): Child | undefined {
  const { report } = context;
  const known = blocks.get(node.kind);
  if (!known) {
    const meant = unknownKind(node, parent?.holds ?? [], context);
    const declared = declaredBlock(node, meant, context);
    // A bare word is still being written; one with a body was a block.
    return meant && node.open ? { declared, misspelt: true } : undefined;
  }
  if (!parent || parent.holds?.includes(node.kind)) return { declared: declaredBlock(node, known, context) };
  const where = parentsOf.get(node.kind);
  report.add(
    'input/misplaced-block',
    kindSpan(node),
    where
      ? `${node.kind} belongs into ${where.join(' or ')}, not into ${parent.kind}`
      : `${node.kind} stands at the top of a file`,
  );
  return { declared: declaredBlock(node, known, context), misplaced: true };
}

function declaredProperties(
  members: readonly Member[],
  type: BlockType | undefined,
  context: Context,
): { map: Map<string, DeclaredProperty>; misspelt: string[] } {
  const map = new Map<string, DeclaredProperty>();
  const misspelt: string[] = [];
  for (const member of members) {
    if (!isProperty(member)) continue;
    const declared = declaredProperty(member, type, context, misspelt);
    if (!declared) continue;
    const first = map.get(declared.key);
    if (first)
      context.report.add('input/duplicate-property', declared.keySpan, `${declared.key} is given twice`, {
        related: [{ uri: context.uri, ...first.keySpan, message: 'the first time' }],
      });
    // Which of two is meant is not known: neither counts.
    map.set(
      declared.key,
      first ? { ...first, value: { is: 'damaged', reason: `${declared.key} is given twice` } } : declared,
    );
  }
  return { map, misspelt };
}

function declaredProperty(
  node: WrittenProperty,
  type: BlockType | undefined,
  context: Context,
  misspelt: string[],
): DeclaredProperty | undefined {
  const { report, uri, beside } = context;
  if (!type) return undefined;
  const keySpan = rangeOfProperty(node, 'key') ?? rangeOf(node);
  const common = {
    key: node.key,
    uri,
    span: rangeOf(node),
    keySpan: { from: keySpan.from, to: Math.min(keySpan.to, keySpan.from + node.key.length) },
    valueSpan: node.value ? rangeOf(node.value) : keySpan,
    origin: originOf(node),
  };
  if (type.bounds) return { ...common, value: boundsOf(node, report) };
  const property = propertyOf(type, node.key);
  if (property) return { ...common, value: evaluate(node, property, report, beside) };
  const near = nearest(node.key, Object.keys(type.properties));
  if (near) misspelt.push(near);
  report.add(
    'input/unknown-property',
    common.keySpan,
    near
      ? `${type.kind} has no property "${node.key}"; the nearest is ${near}`
      : `${type.kind} has no property "${node.key}"`,
    near ? { replace: [[`Write ${near}`, near]] } : {},
  );
  return undefined;
}

function originOf(node: WrittenProperty): Name | undefined {
  const span = node.origin === undefined ? undefined : rangeOfProperty(node, 'origin');
  return span && { name: node.origin!, span };
}

const word = (node: Member): string => node.$type.toLowerCase();

function change(node: Add | Change | Remove | Member, context: Context): Instruction {
  const { report } = context;
  const span = rangeOf(node);
  if (isAdd(node)) {
    const kind = node.kind;
    if (kind === undefined) {
      report.add('input/header', span, 'add needs the kind of block that it brings');
      return { does: 'add', span };
    }
    const type = blocks.get(kind) ?? unknownKind(node, [...parentsOf.keys()], context);
    if (type && (type.section || type.ofStage || type.kind === 'stage' || !parentsOf.has(type.kind))) {
      report.add(
        'input/misplaced-instruction',
        kindSpan(node),
        type.ofStage
          ? `${kind} belongs to the stage itself: write it without add`
          : `${kind} cannot be added by a stage`,
      );
      return { does: 'add', span };
    }
    return { does: 'add', span, block: declaredBlock(node, type, context) };
  }
  if (isChange(node) || isRemove(node))
    for (const [i] of node.stray.entries())
      report.add('input/header', rangeOfProperty(node, 'stray', i) ?? span, `${word(node)} is followed by one name`);
  if (isChange(node)) {
    const target = targetOf(node);
    if (!target) report.add('input/header', span, 'change needs the name of the block that it changes');
    const kind = target && changedKind(node, target.name, context);
    for (const m of node.members)
      if (!isProperty(m))
        report.add(
          'input/misplaced-block',
          rangeOf(m),
          'change holds properties alone; add and remove bring and take blocks',
        );
    const properties = declaredProperties(node.members, kind === undefined ? undefined : blocks.get(kind), context);
    return {
      does: 'change',
      span,
      ...(target ? { target } : {}),
      properties: properties.map,
      body: bodySpan(node),
      lost: isBodyDamaged(node) || isDamaged(node) ? 'all' : properties.misspelt,
    };
  }
  const target = isRemove(node) ? targetOf(node) : undefined;
  if (!target) report.add('input/header', span, 'remove needs the name of the block that it takes away');
  return { does: 'remove', span, ...(target ? { target } : {}) };
}

/** `dd circuit c-one { ... }` is an `add` with a slip, and `chnge attic { ... }` a `change`: what they hold is still read. */
function misspeltInstruction(node: Block, context: Context): Instruction | undefined {
  const plain = blocks.get(node.kind);
  if (plain && !plain.ofStage && !plain.section && plain.kind !== 'stage' && parentsOf.has(node.kind)) {
    const { from } = kindSpan(node);
    context.report.add(
      'input/misplaced-block',
      kindSpan(node),
      `a stage adds its blocks: add ${node.kind} ${node.name ?? ''}`.trimEnd(),
      {
        mend: () => [{ title: 'Write add', changes: [{ uri: context.uri, from, to: from, text: 'add ' }] }],
      },
    );
    return { does: 'add', span: rangeOf(node), block: declaredBlock(node, plain, context, 'added') };
  }
  if (plain || node.name === undefined) return undefined;
  const type = blocks.get(node.name);
  const kind = type || !context.kinds.has(node.name) ? undefined : changedKind(node, node.name, context);
  const meant = type ? 'add' : kind !== undefined && nearest(node.kind, ['change']);
  if (!meant) return undefined;
  context.report.add('input/unknown-block', kindSpan(node), `there is no block "${node.kind}"; is it ${meant}?`, {
    replace: [[`Write ${meant}`, meant]],
  });
  const span = rangeOf(node);
  if (type) {
    const [name] = node.stray;
    const named = { ...node, kind: node.name, name, stray: node.stray.slice(1) };
    const declared = declaredBlock(named, type, context);
    const head = name === undefined ? undefined : rangeOfProperty(node, 'stray', 0);
    return { does: 'add', span, block: { ...declared, ...(head ? { head } : {}), lost: 'all' } };
  }
  const properties = declaredProperties(node.members, blocks.get(kind!), context);
  const target = { name: node.name, span: rangeOfProperty(node, 'name')! };
  return { does: 'change', span, target, properties: properties.map, body: bodySpan(node), lost: 'all' };
}

function targetOf(node: Change | Remove): Name | undefined {
  const span = node.target === undefined ? undefined : rangeOfProperty(node, 'target');
  return span && { name: node.target!, span };
}

function accept(node: Accept, report: Report): Instruction {
  const span = rangeOf(node);
  const codeSpan = node.code === undefined ? undefined : rangeOfProperty(node, 'code');
  if (!codeSpan) report.add('input/header', span, 'accept needs the code of the finding, such as circuit/voltage-drop');
  if (!node.reason?.trim()) report.add('accept/no-reason', span, 'accept needs its reason: accept CODE because "..."');
  return {
    does: 'accept',
    span,
    ...(codeSpan ? { code: { name: node.code!, span: codeSpan } } : {}),
    ...(node.reason === undefined ? {} : { reason: node.reason }),
    ...(node.until === undefined ? {} : { until: node.until, untilSpan: rangeOfProperty(node, 'until') }),
  };
}
