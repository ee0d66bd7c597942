import { isStandardRating, standardRatingFrom, standardRatingUpTo } from '../../engine/electrical/breaker.js';
import { editionFor } from '../../engine/electrical/house-service.js';
import { print } from '../../units/index.js';
import { at, rule } from '../define.js';

export default rule({
  code: 'circuit/breaker-not-standard',
  severity: 'error',
  title: 'breaker is not a standard size',
  of: 'circuit',
  tier: 'design',
  *find(circuit, { house }) {
    const edition = editionFor(house);
    if (isStandardRating(circuit.breaker, edition)) return;
    yield {
      circuit,
      below: standardRatingUpTo(circuit.breaker, edition),
      above: standardRatingFrom(circuit.breaker, edition),
    };
  },
  tell({ circuit, below, above }, say) {
    const near = [below, above].filter(rating => rating !== undefined).map(rating => say(rating, 'current'));
    return {
      at: at(circuit, 'breaker'),
      message: `no breaker has ${say(circuit.breaker, 'current')}; the nearest standard ${near.length > 1 ? 'ratings are' : 'rating is'} ${near.join(' and ')}`,
    };
  },
  mend({ circuit, below, above }, view) {
    const needed = view.result('breaker-needed', circuit) ?? 0;
    const largest = view.result('largest-breaker', circuit) ?? 0;
    const fits = [above, below].filter(
      (rating): rating is number => rating !== undefined && rating >= needed && rating <= largest,
    );
    return fits.map((rating, i) => ({
      title: `Set the breaker to ${print(rating, 'current')}`,
      changes: [{ set: at(circuit, 'breaker'), to: print(rating, 'current') }],
      ...(i === 0 ? { preferred: true as const } : {}),
    }));
  },
});
