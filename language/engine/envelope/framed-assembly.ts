import type { Si } from '../../units/index.js';
import type { Sheet } from '../worksheet.js';
import type { Films } from './surface-films.js';
import { terms } from './terms.js';

/** One layer of an assembly: its resistance in m²K/W, and that of the framing where framing runs through it. */
export interface Layer {
  readonly label: string;
  readonly resistance: Si<'r-value'>;
  /** Resistance of the studs, joists or rafters in the depth of this layer. */
  readonly framing?: Si<'r-value'>;
}

export interface Assembly {
  readonly films: Films;
  readonly layers: readonly Layer[];
  /** Part of the area that is framing, from 0 to 1; all framed layers belong to the same members. */
  readonly framingFraction: Si<'ratio'>;
}

/**
 * Parallel path: sections side by side that exchange no heat, U = Σ f/R. Right for wood framing.
 * ASHRAE Fundamentals 2021 ch. 27 Example 3. Not for steel studs, whose losses it understates.
 */
export function parallelPath({ films, layers, framingFraction }: Assembly, sheet?: Sheet): Si<'u-value'> {
  const between = throughSection(films, layers, 'between', sheet);
  if (framingFraction === 0) {
    sheet?.(() => ({
      label: 'U-value',
      formula: '1 / R',
      inputs: { R: [between, 'r-value'] },
      value: 1 / between,
      dimension: 'u-value',
      source: 'ASHRAE Fundamentals 2021 ch. 27',
    }));
    return 1 / between;
  }
  const along = throughSection(films, layers, 'framing', sheet);
  const u = (1 - framingFraction) / between + framingFraction / along;
  sheet?.(() => ({
    label: 'U-value, framing and cavity side by side',
    formula: '(1 - f) / R_c + f / R_f',
    inputs: { f: [framingFraction, 'ratio'], R_c: [between, 'r-value'], R_f: [along, 'r-value'] },
    value: u,
    dimension: 'u-value',
    source: 'ASHRAE Fundamentals 2021 ch. 27 Example 3, parallel path',
  }));
  return u;
}

/**
 * Isothermal planes: only the framed layers are averaged, the others are crossed by all of the heat.
 * ASHRAE Fundamentals 2021 ch. 27 Examples 3 and 4. Right for masonry and an upper bound of U for wood framing.
 */
export function isothermalPlanes(assembly: Assembly, sheet?: Sheet): Si<'u-value'> {
  const total = lowerLimit(assembly);
  sheet?.(() => ({
    label: 'U-value, framed layers averaged',
    formula: '1 / R',
    inputs: { R: [total, 'r-value'] },
    value: 1 / total,
    dimension: 'u-value',
    source: 'ASHRAE Fundamentals 2021 ch. 27 Example 3, isothermal planes',
  }));
  return 1 / total;
}

export interface CombinedResult {
  readonly u: Si<'u-value'>;
  readonly upper: Si<'r-value'>;
  readonly lower: Si<'r-value'>;
  /** The method holds while the upper limit is at most 1.5 times the lower; beyond it a numerical calculation is needed. */
  readonly valid: boolean;
}

/** Combined method: the mean of the upper and lower limits of resistance. ISO 6946:2017 § 6.7.2. */
export function combinedMethod(assembly: Assembly, sheet?: Sheet): CombinedResult {
  const { films, layers, framingFraction: f } = assembly;
  const upper = 1 / ((1 - f) / throughSection(films, layers, 'between') + f / throughSection(films, layers, 'framing'));
  const lower = lowerLimit(assembly);
  const u = 2 / (upper + lower);
  const valid = upper / lower <= 1.5;
  sheet?.(() => ({
    label: 'U-value, mean of both limits of resistance',
    formula: '2 / (R_upper + R_lower)',
    inputs: { R_upper: [upper, 'r-value'], R_lower: [lower, 'r-value'] },
    value: u,
    dimension: 'u-value',
    source: 'ISO 6946:2017 § 6.7.2',
    ...(valid
      ? {}
      : { note: 'The upper limit exceeds 1.5 times the lower: the method does not hold for this assembly' }),
  }));
  return { u, upper, lower, valid };
}

/** Total resistance from air to air through the cavity or through the framing. */
function throughSection(
  films: Films,
  layers: readonly Layer[],
  section: 'between' | 'framing',
  sheet?: Sheet,
): Si<'r-value'> {
  const each = [
    films.inside,
    ...layers.map(l => (section === 'framing' ? (l.framing ?? l.resistance) : l.resistance)),
    films.outside,
  ];
  const total = each.reduce((a, b) => a + b);
  sheet?.(() => ({
    label: section === 'framing' ? 'Resistance through the framing' : 'Resistance through the layers',
    ...terms('R', each, 'r-value'),
    value: total,
    dimension: 'r-value',
    source: films.source,
    note: `Inside film, ${layers.map(l => l.label).join(', ')}, outside film`,
  }));
  return total;
}

function lowerLimit({ films, layers, framingFraction: f }: Assembly): Si<'r-value'> {
  return layers.reduce(
    (sum, l) => sum + (l.framing === undefined ? l.resistance : 1 / ((1 - f) / l.resistance + f / l.framing)),
    films.inside + films.outside,
  );
}
