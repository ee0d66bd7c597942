import type { Analysis, AnalyzedHouse, Finding } from '../../language/index.js';
import type { Severity } from '../../language/rules/index.js';
import { Lines, type Position } from './position.js';

/** The findings of one run as every writer gets them. */
export interface Findings {
  readonly date: string;
  readonly files: number;
  readonly houses: number;
  readonly findings: readonly Told[];
  /** The name of a file as people see it. */
  readonly shown: (uri: string) => string;
  readonly text: (uri: string) => string;
  readonly lines: (uri: string) => Lines;
  readonly faults: readonly { readonly what: string; readonly message: string }[];
  /** What was named and could not be read. */
  readonly unread: readonly { readonly shown: string; readonly reason: string }[];
}

/** A finding with the house that it is about. */
export interface Told {
  readonly finding: Finding;
  readonly house: string | undefined;
  /** The finding holds in some stages only, and these are they. */
  readonly someStages: readonly string[];
}

/** Gathers the findings of several analyses; what two houses find in the library that they share is told once. */
export function gather(
  analyses: readonly Analysis[],
  run: Pick<Findings, 'date' | 'shown' | 'faults' | 'unread'> & { readonly text: (uri: string) => string | undefined },
): Findings {
  const findings = new Map<string, Told>();
  for (const { findings: found, houses, uri } of analyses)
    for (const finding of found) {
      const key = `${finding.uri}|${finding.from}|${finding.to}|${finding.code}|${finding.message}`;
      if (findings.has(key)) continue;
      const house = finding.uri === uri ? houses.find(h => within(finding, h)) : undefined;
      const all = house?.views.length ?? 0;
      const someStages = finding.stages.length && finding.stages.length < all ? finding.stages : [];
      findings.set(key, { finding, house: house?.built.declared.name, someStages });
    }
  const text = (uri: string) => run.text(uri) ?? '';
  const lines = new Map<string, Lines>();
  return {
    date: run.date,
    faults: run.faults,
    unread: run.unread,
    files: analyses.length,
    houses: analyses.reduce((n, a) => n + a.houses.length, 0),
    findings: [...findings.values()],
    shown: run.shown,
    text,
    lines: uri => {
      let known = lines.get(uri);
      if (!known) lines.set(uri, (known = new Lines(text(uri))));
      return known;
    },
  };
}

const within = (f: Finding, { built: { declared } }: AnalyzedHouse): boolean =>
  f.from >= declared.span.from && f.to <= declared.span.to;

export const count = ({ findings }: Findings, severity: Severity): number =>
  findings.filter(t => t.finding.severity === severity).length;

export interface Range {
  readonly from: Position & { readonly offset: number };
  readonly to: Position & { readonly offset: number };
}

/** Where something lies, as people count and as programs do. */
export function rangeIn(run: Findings, { uri, from, to }: { uri: string; from: number; to: number }): Range {
  const lines = run.lines(uri);
  return { from: { ...lines.at(from), offset: from }, to: { ...lines.at(to), offset: to } };
}
