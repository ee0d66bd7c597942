import { readFileSync } from 'node:fs';

/** Whatever the file holds: each test knows the shape of its own check. */
type Json = ReturnType<typeof JSON.parse>;

interface Check {
  readonly id: string;
  readonly source: string;
  readonly status: string;
  readonly inputs: Json;
  readonly expected: Json;
}

const checks: readonly Check[] = JSON.parse(
  readFileSync(new URL('../data/building.json', import.meta.url), 'utf8'),
) as Check[];

/** A published check with its source; the title of its test says both. */
export function check(id: string): Check & { readonly title: string } {
  const found = checks.find(c => c.id === id);
  if (!found) throw new Error(`There is no check ${id}.`);
  return { ...found, title: `${id} (${found.status}): ${found.source}` };
}

/** The relative difference of two numbers. */
export function off(value: number, expected: number): number {
  return Math.abs(value - expected) / Math.abs(expected);
}
