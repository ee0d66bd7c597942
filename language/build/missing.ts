import { dimensions, figures, inUnit, parseUnit, read, unitFor } from '../units/index.js';
import type { Property } from '../vocabulary/index.js';
import type { Declared } from './declared.js';
import { insertProperty } from './edit.js';
import type { Report } from './problem.js';

/** Tells of a required property that is not given, and offers to write it with a typical value. */
export function missingProperty(b: Declared, key: string, type: Property, report: Report): void {
  const example = exampleOf(type);
  report.add(
    'input/missing-property',
    b.head,
    `${b.kind} ${b.named ? `${b.name} ` : ''}needs its ${key}: ${firstSentence(type.doc)}`,
    {
      ...(example === undefined
        ? {}
        : {
            mend: () => [
              {
                title: `Insert ${key} with a typical value to be checked`,
                changes: [insertProperty(b, `${key}: ${example}`)],
              },
            ],
          }),
    },
  );
}

const firstSentence = (doc: string): string => {
  const first = doc.split(/[.;:] /)[0].replace(/\.$/, '');
  return first.charAt(0).toLowerCase() + first.slice(1);
};

/** A plausible value as it would be written; undefined where none can be made up. */
export function exampleOf(type: Property): string | undefined {
  if (type.typical?.length) return type.typical[0];
  switch (type.is) {
    case 'quantity':
    case 'quantities': {
      if (!type.within) return undefined;
      const [low, high] = type.within.map(t => read(t).value);
      const middle = low > 0 && high / low > 20 ? Math.sqrt(low * high) : (low + high) / 2;
      const symbol = unitFor(middle, type.dimension, 'si').replace('$', 'CAD');
      if (dimensions[type.dimension].si[0][0] === '') return figures(middle, 1);
      return `${figures(inUnit(middle, parseUnit(symbol)!), 1).replace('−', '-')} ${symbol}`;
    }
    case 'count':
      return String(type.within ? Math.max(1, type.within[0]) : 1);
    case 'choice':
    case 'choices':
    case 'statement':
      return type.of[0];
    case 'flag':
      return 'yes';
    case 'date':
      return '2026-01-01';
    case 'time':
      return '18:00';
    default:
      return undefined;
  }
}
