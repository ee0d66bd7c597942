/* eslint-disable @typescript-eslint/no-explicit-any -- every check has inputs and results of its own shape */
import { readFileSync } from 'node:fs';

interface Check {
  readonly id: string;
  readonly source: string;
  readonly status: string;
  readonly edition: string;
  readonly inputs: any;
  readonly expected: any;
}

const checks = JSON.parse(readFileSync(new URL('../data/electrical.json', import.meta.url), 'utf8')) as Check[];

const titled = (check: Check) => ({ ...check, title: `${check.id} (${check.status}): ${check.source}` });

/** A published check with its source; the title of its test says both. */
export function check(id: string) {
  const found = checks.find(c => c.id === id);
  if (!found) throw new Error(`There is no check ${id}.`);
  return titled(found);
}

/** All checks whose id begins so, each behind its title. */
export function checksOf(prefix: string) {
  const found = checks.filter(c => c.id.startsWith(prefix)).map(c => [titled(c).title, c] as const);
  if (found.length === 0) throw new Error(`There is no check ${prefix}.`);
  return found;
}

export const SQUARE_FOOT = 0.3048 ** 2;
