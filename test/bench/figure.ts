import { quantile } from 'simple-statistics';

/** One thing that is measured. */
export interface Figure {
  readonly name: string;
  readonly unit: string;
  /** What is promised, for whoever reads the table. */
  readonly goal: string;
  /** One number for each run; it throws when a run did not do what it was to do. */
  readonly measure: () => Promise<readonly number[]>;
}

export interface Summary {
  readonly name: string;
  readonly unit: string;
  readonly median: number;
  readonly p95: number;
  readonly runs: number;
  readonly goal: string;
}

export function summarized({ name, unit, goal }: Figure, runs: readonly number[]): Summary {
  if (!runs.length) throw new Error(`${name} was not measured`);
  const at = (p: number): number => quantile([...runs], p);
  return { name, unit, median: at(0.5), p95: at(0.95), runs: runs.length, goal };
}
