import { tell, type Effective, type Surroundings } from './effective.js';

/** All money of a house is in its one currency: there is no rate of exchange. */
export function judgeMoney(roots: readonly Effective[], around: Surroundings): void {
  const given = roots[0].properties.get('currency')?.property.value;
  let currency = given?.is === 'value' ? (given.value as string) : undefined;
  const walk = (e: Effective): void => {
    for (const { property } of e.properties.values()) {
      const { value, valueSpan, uri } = property;
      if (value.is !== 'value' || !value.currency) continue;
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
