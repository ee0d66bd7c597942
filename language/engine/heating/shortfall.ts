import { Withheld, type House } from '../../model/index.js';
import type { Si } from '../../units/index.js';
import { once } from '../once.js';
import type { Sheet } from '../worksheet.js';
import { at, larger, line, lowest, minus, plus, type Curve } from './curve.js';
import { auxiliaryOutput, heatPumpOutput, stripOutput, tableOutput } from './equipment.js';
import { explainHeatPumps, explainLoad } from './explain.js';
import { houseBalance } from './house-balance.js';
import { worstMargin, type WorstMargin } from './margin.js';

/**
 * The worst margin with every auxiliary allowed at every temperature: what is short here no setting of a lockout can mend. The
 * compressor's own lockout and cut-out still count.
 */
export const marginWithAllAuxiliary = once((house: House, sheet?: Sheet): WorstMargin => {
  const { design, range, load, heatPump } = houseBalance(house);
  const worst = worstMargin({ load, heatPump, auxiliary: auxiliaryOutput(house, heatPump, range, 'ignored') });
  if (sheet) {
    explainLoad(design, worst.outdoor, sheet);
    explainHeatPumps(house, range, worst.outdoor, worst.side, sheet);
    auxiliaryOutput(house, heatPump, range, 'ignored', sheet);
    sheet(() => ({
      label: 'Margin with all auxiliary heat',
      formula: 'Q_hp + Q_aux - q',
      inputs: {
        Q_hp: [worst.heatPump, 'heat-flow'],
        Q_aux: [worst.auxiliary, 'heat-flow'],
        q: [worst.load, 'heat-flow'],
      },
      value: worst.margin,
      dimension: 'heat-flow',
      role: 'total',
    }));
  }
  return worst;
});

export interface LockoutGap {
  /** Heat that is missing only because a lockout keeps something off, at worst. */
  readonly gap: Si<'heat-flow'>;
  readonly outdoor: Si<'temperature'>;
  readonly load: Si<'heat-flow'>;
  /** What may run at that temperature. */
  readonly allowed: Si<'heat-flow'>;
}

/** What the lockouts of the thermostat leave uncovered that the equipment could cover; exact, on both sides of each jump. */
export const lockoutGap = once((house: House, sheet?: Sheet): LockoutGap => {
  const { range, load, heatPump, auxiliary } = houseBalance(house);
  const free = heatPumpOutput(house, range, 'ignored');
  const could = plus(free, auxiliaryOutput(house, free, range, 'ignored'));
  const may = plus(heatPump, auxiliary);
  const nothing = line(range, () => 0);
  const missing = (output: Curve) => larger(minus(load, output), nothing);
  const { outdoor, side, value } = lowest(minus(missing(could), missing(may)));
  const result = {
    gap: Math.max(0, -value),
    outdoor,
    load: at(load, outdoor, side),
    allowed: at(may, outdoor, side),
  };
  sheet?.(() => ({
    label: 'Missing because of a lockout',
    formula: 'max(0, q - Q_may) - max(0, q - Q_could)',
    inputs: {
      q: [result.load, 'heat-flow'],
      Q_may: [result.allowed, 'heat-flow'],
      Q_could: [at(could, outdoor, side), 'heat-flow'],
    },
    value: result.gap,
    dimension: 'heat-flow',
    role: 'total',
    note: 'At the outdoor temperature where the difference is largest.',
  }));
  return result;
});

/** What the tables still credit just below the compressor lockout of the thermostat. */
export function lockedOutOutput(house: House, sheet?: Sheet): Si<'heat-flow'> {
  const lockout = house.heating.thermostat?.compressorLockoutBelow;
  if (lockout === undefined) throw new Withheld('there is no compressor lockout');
  const { range } = houseBalance(house);
  if (lockout <= range.from) throw new Withheld('the compressor lockout lies below the design temperature');
  const free = heatPumpOutput(house, range, 'ignored');
  const output = at(free, Math.min(lockout, range.to), 'colder');
  sheet?.(() => ({
    label: 'Output by the tables just below the lockout',
    value: output,
    dimension: 'heat-flow',
    role: 'total',
    note: house.heating.heatPump
      .map(hp => `${hp.name}: ${Math.round(at(tableOutput(hp, range), lockout, 'colder'))} W`)
      .join(', '),
  }));
  return output;
}

/** Heat that strips meant to carry the house alone have over at the design temperature; negative when they are short. */
export function backupMargin(house: House, sheet?: Sheet): Si<'heat-flow'> {
  const strips = house.heating.auxiliary.filter(a => a.role === 'full-backup');
  if (strips.length === 0) throw new Withheld('no auxiliary is meant to carry the whole load');
  const output = strips.reduce((sum, s) => sum + stripOutput(s, sheet), 0);
  const load = houseBalance(house).design.total;
  sheet?.(() => ({
    label: 'Full backup against the load',
    formula: 'Q_aux - q',
    inputs: { Q_aux: [output, 'heat-flow'], q: [load, 'heat-flow'] },
    value: output - load,
    dimension: 'heat-flow',
    role: 'total',
  }));
  return output - load;
}
