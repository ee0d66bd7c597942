import {
  cite,
  conductorSizes,
  isFromMemory,
  sizeInWords,
  tableAmpacity,
  type Cable,
  type ConductorSize,
  type Edition,
  type Metal,
  type RatedTemperature,
} from '../../codes/index.js';
import type { Sheet } from '../worksheet.js';
import { standardRatingFrom } from './breaker.js';

/** Conductors of a circuit and their surroundings. */
export interface Conductor {
  readonly size: ConductorSize;
  readonly metal: Metal;
  /** °C that the insulation is rated for. */
  readonly insulation: number;
  /** °C marked on the terminations; where there is no mark the edition's rule by circuit rating holds. */
  readonly terminals: number | undefined;
  readonly cable: Cable;
  /** Warmest surroundings, °C. */
  readonly ambient: number;
  /** Conductors that carry current together in the cable or raceway. */
  readonly together: number;
}

/** The hottest column of the table that is not above a temperature in °C; the coolest for anything lower. */
const columnOf = (temperature: number): RatedTemperature => (temperature >= 90 ? 90 : temperature >= 75 ? 75 : 60);

/**
 * Ampacity of a conductor on a circuit of a given breaker, A: the insulation's column corrected for warmth and company,
 * but never more than the column of the terminations or of the cable's kind. Undefined where the table has no such
 * conductor. Zero where the surroundings are too warm for the insulation.
 */
export function conductorAmpacity(
  conductor: Conductor,
  breaker: number,
  edition: Edition,
  sheet?: Sheet,
): number | undefined {
  const { size, metal, ambient, together, cable } = conductor;
  const { conductors: rule } = edition;
  const insulation = columnOf(conductor.insulation);
  const marked = conductor.terminals ?? (breaker <= rule.terminals.upTo ? rule.terminals.lower : rule.terminals.upper);
  const kind = rule.cables[cable]?.column ?? 90;
  const end = columnOf(Math.min(marked, kind, conductor.insulation));
  const table = tableAmpacity(size, metal, insulation);
  const limit = tableAmpacity(size, metal, end);
  if (table === undefined || limit === undefined) return undefined;
  const warmth = rule.ambient.bands.find(band => ambient <= band.upTo)?.factors[insulation] ?? 0;
  const company = rule.count.bands.find(band => together <= band.upTo)?.factor ?? 0;
  const value = Math.min(table * warmth * company, limit);
  sheet?.(() => ({
    label: `Ampacity of ${sizeInWords(size)} ${metal}`,
    formula: 'min(column * warmth * company, termination)',
    inputs: {
      column: [table, 'current'],
      warmth: [warmth, 'ratio'],
      company: [company, 'ratio'],
      termination: [limit, 'current'],
    },
    value,
    dimension: 'current',
    source: [
      cite(rule.ampacity),
      ...(isFromMemory(size) ? ['figure from memory, confirm'] : []),
      ...(warmth === 1 ? [] : [cite(rule.ambient.clause)]),
      ...(company === 1 ? [] : [cite(rule.count.clause)]),
      cite(marked <= kind ? rule.terminals.clause : (rule.cables[cable]?.clause ?? rule.terminals.clause)),
    ].join('; '),
    note: `${insulation} °C insulation, ended at the ${end} °C column`,
  }));
  return value;
}

/** What a circuit feeds, as far as the breaker over its conductor is concerned. */
export type Protection =
  | { readonly for: 'usual' }
  /** Fixed resistance heat and nothing else; how many heaters the circuit has. */
  | { readonly for: 'heat-alone'; readonly heaters: number }
  /** The nameplate's largest breaker, A. */
  | { readonly for: 'motor-compressor'; readonly mocp: number };

/** Largest standard breaker over a conductor of this ampacity, A; undefined where none is small enough. */
export function largestBreaker(
  { size, metal }: Pick<Conductor, 'size' | 'metal'>,
  ampacity: number,
  protection: Protection,
  edition: Edition,
  sheet?: Sheet,
): number | undefined {
  const { conductors: rule, circuits } = edition;
  const heat = circuits.heat.breakerOverConductor;
  if (protection.for === 'motor-compressor') {
    sheet?.(() => ({
      label: 'Largest breaker on the nameplate',
      value: protection.mocp,
      dimension: 'current',
      source: cite(circuits.motorCompressor.nameplate),
    }));
    return protection.mocp;
  }
  if (protection.for === 'heat-alone' && heat) {
    const next = standardRatingFrom(heat.factor * ampacity, edition);
    const value = protection.heaters > 1 && next !== undefined ? Math.min(next, heat.several) : next;
    if (value !== undefined)
      sheet?.(() => ({
        label: 'Largest breaker over conductors that feed fixed heat alone',
        value,
        dimension: 'current',
        source: cite(heat.clause),
        note: `the next standard rating from ${heat.factor} times ${ampacity} A`,
      }));
    return value;
  }
  const small = rule.small.limits[size]?.[metal];
  const next =
    ampacity > rule.nextSizeUp.upTo
      ? rule.standardRatings.ratings.findLast(rating => rating <= ampacity)
      : standardRatingFrom(ampacity, edition);
  const value = small !== undefined && next !== undefined ? Math.min(small, next) : next;
  if (value !== undefined)
    sheet?.(() => ({
      label: `Largest breaker over ${sizeInWords(size)} ${metal}`,
      value,
      dimension: 'current',
      source: small === value ? cite(rule.small.clause) : cite(rule.nextSizeUp.clause),
      note: small === value ? 'small conductor' : `the next standard rating from ${Math.round(ampacity)} A`,
    }));
  return value;
}

/** Thinnest conductor of the same metal and surroundings that carries `current` and stands behind `breaker`, both A. */
export const smallestConductor = (
  conductor: Omit<Conductor, 'size'>,
  {
    current,
    breaker,
    protection,
  }: { readonly current: number; readonly breaker: number; readonly protection: Protection },
  edition: Edition,
): ConductorSize | undefined =>
  conductorSizes.find(size => {
    const ampacity = conductorAmpacity({ ...conductor, size }, breaker, edition);
    if (ampacity === undefined || ampacity < current) return false;
    const largest = largestBreaker({ size, metal: conductor.metal }, ampacity, protection, edition);
    return largest !== undefined && largest >= breaker;
  });

/**
 * Thinnest conductor for a service or feeder that carries the whole load of a dwelling, by the edition's table where it
 * has one, else by the 75 °C column.
 */
export function serviceConductor(
  rating: number,
  metal: Metal,
  { conductors: rule }: Edition,
): ConductorSize | undefined {
  const row = rule.dwelling?.sizes.find(([tabled]) => tabled >= rating);
  if (row) return row[1][metal];
  return conductorSizes.find(size => (tableAmpacity(size, metal, 75) ?? 0) >= rating);
}
