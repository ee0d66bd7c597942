import type { Mending } from '../build/index.js';
import { addressOf } from '../build/index.js';
import { Withheld, type Block } from '../model/index.js';
import type { Tier } from '../results/index.js';
import { rules, type Rule, type Say } from '../rules/index.js';
import type { Finding } from './finding.js';
import { mendingOf, placeOf } from './place.js';
import { subjectsOf, type StageView } from './views.js';
import type { Fault } from './host.js';

const TIERS: readonly Tier[] = ['meaning', 'design', 'year'];
export const reaches = (upto: Tier, tier: Tier): boolean => TIERS.indexOf(tier) <= TIERS.indexOf(upto);

/** A finding in one stage, before those of all stages are put together. */
export interface Found extends Finding {
  readonly view: StageView;
}

/** Runs every rule on every subject of every stage. A fault of one rule on one subject hides nothing else. */
export function judge(
  views: readonly StageView[],
  upto: Tier,
  say: Say,
  severityOf: (rule: Rule) => Rule['severity'] | 'off',
  fault: Fault,
): Found[] {
  const found: Found[] = [];
  for (const view of views)
    for (const rule of rules) {
      if (!reaches(upto, rule.tier)) continue;
      const severity = severityOf(rule);
      if (severity === 'off') continue;
      for (const subject of subjectsFor(rule, view)) found.push(...judged(rule, severity, subject, view, say, fault));
    }
  return found;
}

function subjectsFor(rule: Rule, view: StageView): readonly Block[] {
  const inHouse = subjectsOf(view.house).byKind.get(rule.of) ?? [];
  const inStage = view.stage ? (subjectsOf(view.stage).byKind.get(rule.of) ?? []) : [];
  return inStage.length ? [...inHouse, ...inStage] : inHouse;
}

function judged(
  rule: Rule,
  severity: Rule['severity'],
  subject: Block,
  view: StageView,
  say: Say,
  fault: Fault,
): Found[] {
  const found: Found[] = [];
  try {
    for (const fact of rule.find(subject, view)) {
      const telling = rule.tell(fact, say, view);
      const place = placeOf(telling.at, view);
      if (!place) continue;
      const related = (telling.related ?? []).flatMap(r => {
        const at = placeOf(r.at, view);
        return at ? [{ ...at, message: r.message }] : [];
      });
      found.push({
        code: rule.code,
        severity,
        message: telling.message,
        ...place,
        related,
        stages: [view.name],
        address: addressOf(telling.at.block),
        unnecessary: telling.unnecessary ?? false,
        fixes: () => mendings(rule, fact, view, fault),
        view,
      });
    }
  } catch (error) {
    // Damaged or missing text stands behind it, and has a finding of its own.
    if (!(error instanceof Withheld)) fault(error, rule.code);
  }
  return found;
}

function mendings(rule: Rule, fact: unknown, view: StageView, fault: Fault): readonly Mending[] {
  try {
    return (rule.mend?.(fact, view) ?? []).flatMap(fix => mendingOf(fix, view) ?? []);
  } catch (error) {
    if (!(error instanceof Withheld)) fault(error, `${rule.code}, mending`);
    return [];
  }
}

/**
 * The same finding at the same place in several stages is one, told as in the stage where it arises. A later stage in which
 * the figures are others is named with what it says there.
 */
export function merged(found: readonly Found[]): Finding[] {
  const byPlace = new Map<string, Finding>();
  for (const { view, ...f } of found) {
    const key = `${f.code}|${f.uri}|${f.from}|${f.to}`;
    const first = byPlace.get(key);
    byPlace.set(key, first ? joined(first, f, view) : f);
  }
  return [...byPlace.values()];
}

function joined(first: Finding, later: Finding, view: StageView): Finding {
  if (first.stages.includes(view.name)) return first;
  const stages = [...first.stages, view.name];
  const { declared } = view.built;
  if (!declared || later.message === first.message) return { ...first, stages };
  const told = { uri: declared.uri, ...declared.head, message: `in stage ${view.name}: ${later.message}` };
  return { ...first, stages, related: [...first.related, told] };
}
