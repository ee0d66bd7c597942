import { describe, expect, test } from 'vitest';
import { cite, edition, editionNames, type Clause } from '../../language/codes/index.js';
import { vocabulary } from '../../language/vocabulary/index.js';
import { conductorSizes } from '../../language/codes/index.js';

/** All clauses inside an edition, wherever they stand. */
function clausesIn(part: unknown): readonly Clause[] {
  if (part === null || typeof part !== 'object') return [];
  if ('text' in part && 'standing' in part) return [part as Clause];
  return Object.values(part).flatMap(clausesIn);
}

describe.each(editionNames)('%s', name => {
  const { book, ...rest } = edition(name);

  test('names itself, and every clause is of its own book', () => {
    expect(rest.name).toBe(name);
    const clauses = clausesIn(rest);
    expect(clauses.length).toBeGreaterThan(40);
    for (const clause of clauses) expect(clause.text.startsWith(`${book} `), clause.text).toBe(true);
  });

  test('marks what was not seen', () => {
    const marks = clausesIn(rest).map(cite);
    expect(marks.some(mark => mark.endsWith('(from memory, confirm)'))).toBe(true);
    expect(marks.some(mark => !mark.endsWith(')') || mark.includes('informational'))).toBe(true);
  });

  test('standard ratings rise, and every small conductor ends at one of them', () => {
    const { standardRatings, small } = rest.conductors;
    expect([...standardRatings.ratings].sort((a, b) => a - b)).toEqual(standardRatings.ratings);
    const limits = Object.values(small.limits).flatMap(each => Object.values(each));
    expect(limits.every(limit => standardRatings.ratings.includes(limit))).toBe(true);
  });

  test('has a method for every service', () => {
    expect(Math.min(...rest.methods.map(({ leastRating }) => leastRating))).toBe(0);
  });

  test('load management keeps a continuous load below its share of the breaker', () => {
    expect(rest.management.share).toBeLessThanOrEqual(rest.circuits.continuous.share);
  });
});

test('the house may name exactly these editions and conductors', () => {
  expect(vocabulary.house.properties['electrical-code'].of).toEqual(editionNames);
  expect(vocabulary.circuit.properties.conductor.of).toEqual(conductorSizes);
});

test('an edition differs from the one before it in the points that are reported', () => {
  const optional = (name: 'nec-2023' | 'nec-2026') => edition(name).methods.find(m => m.method === 'optional-dwelling');
  expect(optional('nec-2023')?.units.lighting.perSquareFoot).toBe(3);
  expect(optional('nec-2026')?.units.lighting.perSquareFoot).toBe(2);
  expect(optional('nec-2023')?.pool.full).toBe(10000);
  expect(optional('nec-2026')?.pool.full).toBe(8000);
  const credits = editionNames.map(name => edition(name).management.credits);
  expect(credits).toEqual(['vehicle-charging', 'all-loads', 'vehicle-charging', 'all-loads', 'all-loads']);
});
