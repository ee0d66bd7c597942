import type { Mending } from '../build/index.js';
import type { Severity } from '../rules/index.js';

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
