import {
  buildHouse,
  inputCodes,
  type BuiltHouse,
  type Declared,
  type Kept,
  type Report,
  type Scope,
} from '../build/index.js';
import type { Rule, Say } from '../rules/index.js';
import { print } from '../units/index.js';
import { Acceptances } from './acceptances.js';
import { judgeExpectations } from './expectations.js';
import { inputFinding, type Finding } from './finding.js';
import type { Fault } from './host.js';
import { judge, merged } from './judge.js';
import type { LoadedFile } from './loader.js';
import type { Asked } from './asked.js';
import type { Settings } from './settings.js';
import { tellUnanswered } from './unanswered.js';
import { viewsOf, type StageView } from './views.js';

/** A house of the file with its stages, today first. */
export interface AnalyzedHouse {
  readonly built: BuiltHouse;
  readonly views: readonly StageView[];
  readonly say: Say;
  readonly currency: string | undefined;
}

export interface Around {
  readonly file: LoadedFile;
  readonly scopeFor: (uri: string) => Scope;
  /** Tells apart the libraries that a model was made with. */
  readonly scopeId: string;
  readonly settings: Settings;
  readonly asked: Asked;
  readonly kept: Kept;
  readonly report: Report;
  readonly fault: Fault;
}

/** Builds one house, judges every stage of it, and takes out what it accepts. */
export function analyzeHouse(block: Declared, around: Around): { house: AnalyzedHouse; findings: Finding[] } {
  const { asked, settings, report, fault } = around;
  const built = buildHouse(block, around.scopeFor, around.scopeId, report, around.kept);
  const views = viewsOf(built, asked.today, fault);
  const currency = currencyOf(views);
  const say: Say = (si, dimension) =>
    print(si, dimension, { system: settings.units, ...(currency ? { currency } : {}) });
  const severityOf = (rule: Rule) => settings.severity[rule.code] ?? rule.severity;
  const acceptances = new Acceptances(built, views, asked.today, report);
  const found = judge(views, asked.upto, say, severityOf, fault);
  const ofRules = merged(found.filter(f => !acceptances.silences(f)));
  const errors = [...around.file.problems, ...report.problems].some(p => inputCodes[p.code] === 'error');
  const text = errors || around.file.syntax.problems.length ? 'damaged' : 'sound';
  judgeExpectations(built, views, asked.upto, say, report, fault, text);
  if (text === 'sound') tellUnanswered(views, block.head, report, fault);
  const ofText = (): Finding[] =>
    [...around.file.problems, ...report.problems].filter(p => within(p, block)).map(p => inputFinding(p, settings));
  const silenced = new Set(
    ofText()
      .filter(f => acceptances.silencesText(f))
      .map(key),
  );
  acceptances.tellUnused(asked.upto);
  const findings = [...ofRules, ...ofText().filter(f => !silenced.has(key(f)))];
  return { house: { built, views, say, currency }, findings };
}

export const within = (p: { from: number; to: number }, block: Declared): boolean =>
  p.from >= block.span.from && p.to <= block.span.to;

const key = (f: Finding): string => `${f.code}|${f.from}|${f.to}|${f.message}`;

/** The currency may be damaged: then money is printed without it. */
function currencyOf(views: readonly StageView[]): string | undefined {
  try {
    return views[0]?.house.currency;
  } catch {
    return undefined;
  }
}
