import { MarkupKind, type Hover, type HoverParams } from 'vscode-languageserver';
import {
  describeBlock,
  describeProperty,
  headlines,
  inBothSystems,
  mentionAt,
  modelOf,
  pointedAt,
  resultOfHouse,
  resultsOfBlock,
  viewOf,
  type AnalyzedHouse,
  type Fault,
  type Finding,
  type Named,
  type Pointed,
  type StageView,
} from '../../language/index.js';
import type { Declared } from '../../language/build/index.js';
import { resultOf } from '../../language/results/index.js';
import { blocks } from '../../language/vocabulary/index.js';
import type { Able, Seen } from './feature.js';
import { behind, valuesByStage, worksheetOf } from './worksheets.js';

/** What is known of the place under the pointer. */
export function hover({ analysis, lines, houses }: Seen, { position }: HoverParams, able: Able): Hover | null {
  const offset = lines.offset(position);
  const pointed = pointedAt(analysis, offset);
  const parts = pointed ? partsOf(pointed, analysis, offset, houses.fault) : [];
  for (const finding of analysis.findings)
    if (finding.uri === analysis.uri && finding.from <= offset && offset <= finding.to)
      parts.push(...behindFinding(finding, pointed?.house ?? analysis.houses[0], houses.fault));
  const text = [...new Set(parts.filter(Boolean))].join('\n\n---\n\n');
  if (!text) return null;
  const span = pointed && pointed.part !== 'body' ? pointed.span : undefined;
  const contents = able.markdown
    ? { kind: MarkupKind.Markdown, value: text }
    : { kind: MarkupKind.PlainText, value: withoutMarkup(text) };
  return { contents, ...(span ? { range: lines.range(span) } : {}) };
}

/** For clients that show text as it is. */
const withoutMarkup = (text: string): string => text.replace(/\*\*|`/g, '').replace(/\\([\\`*_[\]<>|~])/g, '$1');

function partsOf(pointed: Pointed, analysis: Seen['analysis'], offset: number, fault: Fault): string[] {
  const { part, block, property, meaning, type } = pointed;
  const mention = mentionAt(analysis, offset);
  if (property && type?.bounds && part === 'key') return resultParts(property.key, pointed, fault);
  if (part === 'key' && property)
    return meaning ? [describeProperty(property.key, meaning), valueText(pointed)].filter(Boolean) : [];
  if (part === 'value' && property && !mention)
    return [valueText(pointed), meaning ? describeProperty(property.key, meaning) : ''];
  if (mention?.target) return blockParts(mention.target, pointed, fault);
  if ((part === 'kind' || part === 'name') && block) return blockParts(block, pointed, fault);
  return [];
}

/** The value as it stands, in both unit systems, with its uncertainty and where it is from. */
function valueText({ property, meaning, house, block, view, instruction }: Pointed): string {
  if (!property || !meaning) return '';
  const { value } = property;
  if (value.is === 'damaged') return `*No value: ${value.reason}.*`;
  if (value.is !== 'value') return '';
  const { dimension } = meaning as { dimension?: Parameters<typeof inBothSystems>[1] };
  const of = (v: unknown) =>
    dimension !== undefined && typeof v === 'number' ? inBothSystems(v, dimension, house?.currency) : undefined;
  const list = Array.isArray(value.value) ? (value.value as unknown[]).map(of) : [of(value.value)];
  if (list.some(v => v === undefined)) return '';
  const around = list.length === 1 && value.halfWidth ? halfWidth(value.halfWidth, value.value as number) : '';
  const source = instruction ? property.origin?.name : sourceOf(property.key, block, view);
  return `${property.key} = **${list.join(', ')}**${around}${source ? `, from ${sourceText(source, house)}` : ''}`;
}

/** The half width is in SI; a share says most about it. */
const halfWidth = (width: number, value: number): string =>
  value ? ` ± ${((100 * width) / Math.abs(value)).toFixed(1)} %` : '';

function sourceOf(key: string, block: Declared | undefined, view: StageView | undefined): string | undefined {
  if (!block || !view) return undefined;
  for (const e of view.built.places.values()) if (e.declared === block) return e.properties.get(key)?.source;
  return undefined;
}

function sourceText(name: string, house: AnalyzedHouse | undefined): string {
  const source = house?.built.names.sources.get(name);
  const kind = source?.properties.get('kind')?.value;
  const what = [source?.title, kind?.is === 'value' ? String(kind.value) : undefined].filter(Boolean).join(', ');
  return what ? `${name} (${what})` : name;
}

/** A block: what it is, what its author says of it, what it contributes, and the worksheet. */
function blockParts(block: Declared, { house, view }: Pointed, fault: Fault): string[] {
  const type = blocks.get(block.kind);
  if (!type) return [];
  const title = block.title ? ` "${block.title}"` : '';
  const head = block.named ? `**${block.kind} ${block.name}**${title}\n\n${type.doc}` : describeBlock(type);
  const parts = [head];
  if (block.doc) parts.push(block.doc);
  if (block.kind === 'house' || block.kind === 'stage') {
    const at = house?.views.find(v => v.built.declared === (block.kind === 'stage' ? block : undefined));
    return at ? [...parts, headlineText(at, house!, fault)] : parts;
  }
  const known = house ? mostKnown(block, house, view, fault) : undefined;
  if (!known) return [...parts, propertiesText(block)];
  const { at, named } = known;
  if (named.length) parts.push(resultList(named, at, house!), worksheetOf(named, at, house!, fault));
  else parts.push(propertiesText(block));
  return parts;
}

/**
 * The results of a block in the stage at hand, or in a later one that knows more of them: a circuit is often added before
 * the load that it is for.
 */
function mostKnown(
  block: Declared,
  house: AnalyzedHouse,
  view: StageView | undefined,
  fault: Fault,
): { at: StageView; named: Named[] } | undefined {
  const first = viewOf(block, house, view);
  if (!first) return undefined;
  let best: { at: StageView; named: Named[]; count: number } | undefined;
  for (const at of [first, ...(first.later as StageView[])]) {
    const model = modelOf(block, at);
    if (!model) continue;
    const named = resultsOfBlock(model, at, fault);
    const count = named.filter(n => 'value' in n.outcome).length;
    if (!best || count > best.count) best = { at, named, count };
    if (count === named.length) break;
  }
  return best;
}

function headlineText(view: StageView, house: AnalyzedHouse, fault: Fault): string {
  return resultList(headlines(view, fault), view, house);
}

function resultList(named: readonly Named[], view: StageView, house: AnalyzedHouse): string {
  const lines = named.flatMap(({ name, result, outcome }) =>
    'value' in outcome ? [`- ${name}: **${inBothSystems(outcome.value, result.dimension, house.currency)}**`] : [],
  );
  return [view.stage ? `After stage ${view.name}:` : 'The house today:', '', ...lines, ...withheldList(named)].join(
    '\n',
  );
}

/** Why results are missing, each reason once. */
function withheldList(named: readonly Named[]): string[] {
  const byReason = new Map<string, string[]>();
  for (const { name, outcome } of named)
    if ('withheld' in outcome) byReason.set(outcome.withheld, [...(byReason.get(outcome.withheld) ?? []), name]);
  return [...byReason].map(([reason, names]) => `- withheld, ${reason}: ${names.join(', ')}`);
}

/** A library block has no results of its own: what it says is shown. */
function propertiesText(block: Declared): string {
  const type = blocks.get(block.kind);
  const lines: string[] = [];
  for (const [key, property] of Object.entries(type?.properties ?? {})) {
    const given = block.properties.get(key)?.value;
    if (given?.is === 'reference') lines.push(`- ${key}: ${given.reference.ref.map(n => n.name).join(', ')}`);
    if (given?.is !== 'value') continue;
    const v = given.value;
    if (property.is === 'quantity' && typeof v === 'number')
      lines.push(`- ${key}: ${inBothSystems(v, property.dimension, given.currency)}`);
    else if (typeof v === 'string' || typeof v === 'number') lines.push(`- ${key}: ${v}`);
    else if (typeof v === 'boolean') lines.push(`- ${key}: ${v ? 'yes' : 'no'}`);
    else if (property.is === 'table') lines.push(`- ${key}: ${(v as unknown[]).length} rows`);
  }
  if (block.kind === 'assembly')
    for (const layer of block.children) lines.push(`- ${layer.kind} ${layer.named ? layer.name : ''}`.trimEnd());
  return lines.join('\n');
}

/** A result named in an expectation: what it is, its value in each stage, its worksheet. */
function resultParts(key: string, { house, view }: Pointed, fault: Fault): string[] {
  if (!house) return [];
  const ofHouse = resultOf(key, 'house');
  const dot = key.lastIndexOf('.');
  const block = ofHouse
    ? undefined
    : house.built.names.named(key.slice(0, dot)).find(b => resultOf(key.slice(dot + 1), b.kind));
  const result = ofHouse ?? (block && resultOf(key.slice(dot + 1), block.kind));
  if (!result) return [];
  const at = (v: StageView): Named | undefined => {
    if (!block) return resultOfHouse(key, v, fault);
    const model = modelOf(block, v);
    return model && resultsOfBlock(model, v, fault).find(n => n.result === result);
  };
  const here = view ?? house.views[0];
  const named = here && at(here);
  return [
    `**${key}**\n\n${result.doc}`,
    valuesByStage(house, at),
    named ? worksheetOf([named], here, house, fault) : '',
  ];
}

function behindFinding(finding: Finding, house: AnalyzedHouse | undefined, fault: Fault): string[] {
  const view = house?.views.find(v => v.name === finding.stages[0]);
  if (!house || !view) return [];
  const named = behind(finding, view, fault);
  if (!named.length) return [];
  const text = worksheetOf(named, view, house, fault);
  return text
    ? [`Behind \`${finding.code}\`, ${view.stage ? `stage ${view.name}` : 'the house today'}\n\n${text}`]
    : [];
}
