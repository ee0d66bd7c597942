import type { DeclaredProperty } from './declared.js';
import { tell, type Effective, type Surroundings } from './effective.js';

/** All money of a house is in its one currency: there is no rate of exchange. */
export function judgeMoney(roots: readonly Effective[], around: Surroundings): void {
  const given = roots[0].properties.get('currency')?.property.value;
  let currency = given?.is === 'value' ? (given.value as string) : undefined;
  const walk = (e: Effective): void => {
    for (const { value, valueSpan, uri } of moneyIn(e.properties)) {
      currency ??= value.currency;
      if (value.currency !== currency)
        tell(around, valueSpan, () =>
          around
            .reportFor(uri)
            .add(
              'input/currency',
              valueSpan,
              `the currency of the house is ${currency}, and this is in ${value.currency}; there is no rate of exchange here`,
            ),
        );
    }
    e.children.forEach(walk);
  };
  roots.forEach(walk);
}

/** What a block says in money; few say any, and a block that no stage changes is looked through once for all of them. */
const money = new WeakMap<Effective['properties'], readonly Amount[]>();
type Amount = DeclaredProperty & { readonly value: { readonly is: 'value'; readonly currency?: string } };

function moneyIn(properties: Effective['properties']): readonly Amount[] {
  const known = money.get(properties);
  if (known) return known;
  const found = [...properties.values()].map(given => given.property).filter(isAmount);
  money.set(properties, found);
  return found;
}

const isAmount = (p: DeclaredProperty): p is Amount => p.value.is === 'value' && p.value.currency !== undefined;
