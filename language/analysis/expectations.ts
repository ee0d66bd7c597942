import {
  article,
  type BuiltHouse,
  type Declared,
  type DeclaredProperty,
  type Limit,
  type Report,
} from '../build/index.js';
import type { Block } from '../model/index.js';
import { resultOf, results, resultsOf, type Result, type Tier } from '../results/index.js';
import type { Say } from '../rules/index.js';
import { sections } from '../vocabulary/index.js';
import { dimensions, nearest, sameVector, spell, type Vector } from '../units/index.js';
import { reaches } from './judge.js';
import { outcomeOf, subjectsOf, type StageView } from './views.js';
import type { Fault } from './host.js';

/** Holds every expectation against its result: in a house for every stage, in a stage from there on. */
export function judgeExpectations(
  house: BuiltHouse,
  views: readonly StageView[],
  upto: Tier,
  say: Say,
  report: Report,
  fault: Fault,
  text: 'sound' | 'damaged',
): void {
  for (const { block, from } of expectBlocks(house, views))
    for (const property of block.properties.values()) {
      if (property.value.is !== 'bounds') continue;
      const meant = resolve(property, house, report);
      if (!meant || !fits(property, meant.result, report)) continue;
      if (!reaches(upto, meant.result.tier)) continue;
      const { low, high } = property.value;
      const broken: string[] = [];
      let message = '';
      for (const view of from) {
        const subject =
          meant.block === undefined ? (view.house as Block) : subjectNamed(meant.block, meant.result.of, view);
        if (!subject) continue;
        const outcome = outcomeOf(meant.result, subject, view.house, fault);
        // While the text has errors, those are told; what is withheld because of them is no second fault.
        if ('withheld' in outcome && text === 'damaged') continue;
        const told =
          'withheld' in outcome
            ? `${property.key} is not known in ${inStage(view)}: ${outcome.withheld}`
            : verdict(outcome.value, low, high, meant.result, property.key, view, say);
        if (!told) continue;
        broken.push(view.name);
        message ||= told;
      }
      if (!broken.length) continue;
      const more = broken.length > 1 ? `, and ${broken.length - 1} more ${broken.length > 2 ? 'stages' : 'stage'}` : '';
      report.add('expect/broken', property.valueSpan, message + more);
    }
}

const inStage = (view: StageView): string => (view.stage ? `stage ${view.name}` : 'the house today');

function expectBlocks(
  house: BuiltHouse,
  views: readonly StageView[],
): { block: Declared; from: readonly StageView[] }[] {
  const of = (d: Declared) => d.children.filter(c => c.kind === 'expect');
  return [
    ...of(house.declared).map(block => ({ block, from: views })),
    ...views.flatMap(v =>
      v.built.declared ? of(v.built.declared).map(block => ({ block, from: [v, ...(v.later as StageView[])] })) : [],
    ),
  ];
}

function verdict(
  value: number,
  low: Limit | undefined,
  high: Limit | undefined,
  result: Result,
  key: string,
  view: StageView,
  say: Say,
): string | undefined {
  const slack = 1e-9 * Math.max(1, Math.abs(value));
  const print = (v: number) => say(v, result.dimension);
  const is = `${key} is ${print(value)} in ${inStage(view)}`;
  if (low && high && low !== high && (value < low.value - slack || value > high.value + slack))
    return `${is}, and ${print(low.value)} .. ${print(high.value)} is expected`;
  if (low && value < low.value - slack)
    return `${is}, ${print(low.value - value)} below the expected ${print(low.value)}`;
  if (high && value > high.value + slack)
    return `${is}, ${print(value - high.value)} above the expected ${print(high.value)}`;
  return undefined;
}

/** `heating.worst-margin` of the house, or `main.spaces-left` of a block. */
function resolve(
  property: DeclaredProperty,
  house: BuiltHouse,
  report: Report,
): { result: Result; block?: string } | undefined {
  const { key, keySpan } = property;
  const ofHouse = resultOf(key, 'house');
  if (ofHouse) return { result: ofHouse };
  const dot = key.lastIndexOf('.');
  const [name, short] = [key.slice(0, dot), key.slice(dot + 1)];
  const called = dot < 0 || sections.includes(name) ? [] : house.names.named(name);
  for (const { kind } of called) {
    const result = resultOf(short, kind);
    if (result) return { result, block: name };
  }
  // A kind may be called as a domain of results is: service.demand is the house's, whatever the service is called.
  const known = [
    ...called.flatMap(b => resultsOf(b.kind).map(r => `${name}.${r.name}`)),
    ...results.filter(r => r.of === 'house').map(r => r.name),
  ];
  const near = nearest(key, known);
  const what = called.length ? `${article(called[0].kind)} has no result ${short}` : `there is no result ${key}`;
  report.add(
    'input/unknown-result',
    keySpan,
    near ? `${what}; the nearest is ${near}` : what,
    near ? { replace: [[`Write ${near}`, near]] } : {},
  );
  return undefined;
}

function fits(property: DeclaredProperty, result: Result, report: Report): boolean {
  if (property.value.is !== 'bounds') return false;
  const d: { vector: Vector; point?: true; doc: string } = dimensions[result.dimension];
  for (const limit of [property.value.low, property.value.high]) {
    if (!limit) continue;
    if (sameVector(limit.vector as Vector, d.vector) && Boolean(limit.point) === Boolean(d.point)) continue;
    const is = spell({
      value: limit.value,
      vector: limit.vector as Vector,
      ...(limit.point ? { point: true as const } : {}),
    });
    report.add('input/wrong-dimension', limit.span, `${property.key} is ${d.doc}, not ${is}`);
    return false;
  }
  return true;
}

const subjectNamed = (name: string, kind: string, view: StageView): Block | undefined =>
  subjectsOf(view.house)
    .byKind.get(kind)
    ?.find(b => b.name === name);
