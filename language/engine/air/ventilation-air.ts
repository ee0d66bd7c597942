import type { Si } from '../../units/index.js';
import { sensibleHeatOfAir, STANDARD_PRESSURE } from '../climate/atmosphere.js';
import type { Sheet } from '../worksheet.js';

/** Mechanical flows at once, in m³/s. Recovery acts on the balanced part of the streams that pass the exchanger. */
export interface MechanicalFlows {
  readonly supply: Si<'air-flow'>;
  readonly exhaust: Si<'air-flow'>;
}

export interface CombinedAir {
  readonly balanced: Si<'air-flow'>;
  readonly unbalanced: Si<'air-flow'>;
  /** Infiltration and unbalanced ventilation together: outdoor air that no exchanger sees. */
  readonly direct: Si<'air-flow'>;
}

/** How natural infiltration and fans add: half of an unbalanced flow displaces infiltration. ASHRAE Fundamentals 2021 ch. 17 eqs. (12) to (14). */
export function combineAir(infiltration: Si<'air-flow'>, flows: MechanicalFlows, sheet?: Sheet): CombinedAir {
  const balanced = Math.min(flows.supply, flows.exhaust);
  const unbalanced = Math.max(flows.supply, flows.exhaust) - balanced;
  const direct = Math.max(unbalanced, infiltration + 0.5 * unbalanced);
  sheet?.(() => ({
    label: 'Infiltration and unbalanced ventilation together',
    formula: 'max(Q_u, Q_i + 0.5 * Q_u)',
    inputs: { Q_u: [unbalanced, 'air-flow'], Q_i: [infiltration, 'air-flow'] },
    value: direct,
    dimension: 'air-flow',
    source: 'ASHRAE Fundamentals 2021 ch. 17 eq. (14)',
  }));
  return { balanced, unbalanced, direct };
}

/** How they add in quadrature, for energy over a season: ASHRAE Fundamentals 2021 ch. 16 eq. (51). */
export function combineInQuadrature(infiltration: Si<'air-flow'>, flows: MechanicalFlows): Si<'air-flow'> {
  const balanced = Math.min(flows.supply, flows.exhaust);
  const unbalanced = Math.max(flows.supply, flows.exhaust) - balanced;
  return balanced + Math.sqrt(unbalanced ** 2 + infiltration ** 2);
}

/** Conductance of an outdoor air stream, in W/K: what is left after sensible recovery, at the pressure of the site. ASHRAE Fundamentals 2021 ch. 17 eq. (15). */
export function airConductance(
  {
    label,
    flow,
    recovery = 0,
    pressure = STANDARD_PRESSURE,
  }: {
    readonly label: string;
    readonly flow: Si<'air-flow'>;
    readonly recovery?: Si<'ratio'>;
    readonly pressure?: Si<'pressure'>;
  },
  sheet?: Sheet,
): Si<'conductance'> {
  const heat = sensibleHeatOfAir(pressure);
  const conductance = heat * flow * (1 - recovery);
  sheet?.(() => ({
    label,
    formula: '1230 * p / 101325 * Q * (1 - e_s)',
    inputs: { p: [pressure, 'pressure'], Q: [flow, 'air-flow'], e_s: [recovery, 'ratio'] },
    value: conductance,
    dimension: 'conductance',
    source: 'ASHRAE Fundamentals 2021 ch. 17 eqs. (1), (15)',
  }));
  return conductance;
}
