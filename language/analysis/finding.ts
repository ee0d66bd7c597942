import { inputCodes, type Mending, type Problem } from '../build/index.js';
import type { SyntaxProblem } from '../grammar/index.js';
import type { Severity } from '../rules/index.js';
import type { Settings } from './settings.js';

/** Something that a reader should know, at its place. Offsets are UTF-16 units in the text of `uri`. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly uri: string;
  readonly from: number;
  readonly to: number;
  readonly related: readonly {
    readonly uri: string;
    readonly from: number;
    readonly to: number;
    readonly message: string;
  }[];
  /** Names of the stages in which it holds; `today` for the house as it is. Empty for what concerns the text alone. */
  readonly stages: readonly string[];
  /** Where it is in the model: names from the house down. Stable when lines move. */
  readonly address: string | undefined;
  readonly unnecessary: boolean;
  /** Changes that mend it, computed when somebody asks. */
  readonly fixes: () => readonly Mending[];
}

const RANK: Record<Severity, number> = { error: 0, warning: 1, info: 2 };

/** In the order of the text; the worse first at one place. */
export const inOrder = (a: Finding, b: Finding): number =>
  a.uri.localeCompare(b.uri) || a.from - b.from || RANK[a.severity] - RANK[b.severity] || a.code.localeCompare(b.code);

/** A finding about the text of a file. */
export function textFinding(
  code: string,
  severity: Severity,
  uri: string,
  span: { readonly from: number; readonly to: number },
  message: string,
): Finding {
  const { from, to } = span;
  return {
    code,
    severity,
    message,
    uri,
    from,
    to,
    related: [],
    stages: [],
    address: undefined,
    unnecessary: false,
    fixes: () => [],
  };
}

export function syntaxFinding(p: SyntaxProblem, uri: string): Finding {
  const fixes = (p.replace ?? []).map(({ title, from, to, text }) => ({ title, changes: [{ uri, from, to, text }] }));
  return { ...textFinding(p.code, 'error', uri, p, p.message.replace(/\.$/, '')), fixes: () => fixes };
}

export function inputFinding(p: Problem, settings: Settings): Finding {
  const own = settings.severity[p.code];
  return {
    ...textFinding(p.code, own && own !== 'off' ? own : inputCodes[p.code], p.uri, p, p.message),
    related: p.related ?? [],
    unnecessary: p.code === 'accept/unused',
    fixes: () => p.mend?.() ?? [],
  };
}

/** A fault of the program: what it was about to say is missing, so nothing may pass for clean. */
export const INTERNAL_FAULT = 'internal/fault';
