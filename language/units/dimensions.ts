import type { Vector } from './vector.js';

/**
 * The named dimensions of properties and results. Several share a vector (heat and electric power) because people
 * read them in different units. `si` and `ip` list the units a value is printed in, each with the size in SI below
 * which it is chosen; the last has none.
 */
export interface DimensionEntry {
  readonly vector: Vector;
  readonly si: readonly (readonly [unit: string, below?: number])[];
  readonly ip: readonly (readonly [unit: string, below?: number])[];
  /** A point on a scale (a temperature), not an amount: it cannot be scaled or added to another point. */
  readonly point?: true;
  readonly doc: string;
}

const entry = (
  doc: string,
  vector: Vector,
  si: DimensionEntry['si'],
  ip: DimensionEntry['ip'] = si,
  more: { point?: true } = {},
): DimensionEntry => ({ doc, vector, si, ip, ...more });

//                m  kg s  K  A  $  rad
const V = {
  none: [0, 0, 0, 0, 0, 0, 0],
  length: [1, 0, 0, 0, 0, 0, 0],
  area: [2, 0, 0, 0, 0, 0, 0],
  volume: [3, 0, 0, 0, 0, 0, 0],
  mass: [0, 1, 0, 0, 0, 0, 0],
  time: [0, 0, 1, 0, 0, 0, 0],
  kelvin: [0, 0, 0, 1, 0, 0, 0],
  power: [2, 1, -3, 0, 0, 0, 0],
  energy: [2, 1, -2, 0, 0, 0, 0],
  angle: [0, 0, 0, 0, 0, 0, 1],
  money: [0, 0, 0, 0, 0, 1, 0],
} satisfies Record<string, Vector>;

export const dimensions = {
  number: entry('a plain number', V.none, [['']]),
  ratio: entry('a ratio', V.none, [['%']]),
  length: entry(
    'a length',
    V.length,
    [
      ['mm', 0.3],
      ['m', undefined],
    ],
    [
      ['in', 0.3],
      ['ft', undefined],
    ],
  ),
  area: entry(
    'an area',
    V.area,
    [
      ['cm2', 0.1],
      ['m2', undefined],
    ],
    [
      ['in2', 0.1],
      ['ft2', undefined],
    ],
  ),
  volume: entry(
    'a volume',
    V.volume,
    [
      ['L', 1],
      ['m3', undefined],
    ],
    [
      ['gal', 1],
      ['ft3', undefined],
    ],
  ),
  mass: entry('a mass', V.mass, [['kg']], [['lb']]),
  duration: entry('a duration', V.time, [
    ['s', 60],
    ['min', 3600],
    ['h', 172800],
    ['d', 31536000],
    ['yr', undefined],
  ]),
  temperature: entry('a temperature', V.kelvin, [['°C']], [['°F']], { point: true }),
  'temperature-difference': entry('a temperature difference', V.kelvin, [['K']], [['Δ°F']]),
  power: entry('a power', V.power, [
    ['W', 1000],
    ['kW', undefined],
  ]),
  'heat-flow': entry(
    'a heat flow',
    V.power,
    [
      ['W', 1000],
      ['kW', undefined],
    ],
    [['BTU/h']],
  ),
  energy: entry('an energy', V.energy, [['kWh']]),
  'energy-rate': entry('an energy per time', V.power, [['kWh/d']]),
  'annual-energy': entry('an energy per year', V.power, [['kWh/yr']]),
  'annual-fuel': entry('a fuel energy per year', V.power, [['GJ/yr']], [['therm/yr']]),
  'u-value': entry('a thermal transmittance', [0, 1, -3, -1, 0, 0, 0], [['W/m2K']], [['BTU/(h·ft2·°F)']]),
  'r-value': entry('a thermal resistance', [0, -1, 3, 1, 0, 0, 0], [['RSI']], [['R']]),
  conductance: entry('a heat loss coefficient', [2, 1, -3, -1, 0, 0, 0], [['W/K']], [['BTU/(h·°F)']]),
  conductivity: entry('a thermal conductivity', [1, 1, -3, -1, 0, 0, 0], [['W/mK']], [['BTU·in/(h·ft2·°F)']]),
  'linear-transmittance': entry(
    'a linear thermal transmittance',
    [1, 1, -3, -1, 0, 0, 0],
    [['W/mK']],
    [['BTU/(h·ft·°F)']],
  ),
  density: entry('a density', [-3, 1, 0, 0, 0, 0, 0], [['kg/m3']], [['lb/ft3']]),
  'specific-heat': entry('a specific heat', [2, 0, -2, -1, 0, 0, 0], [['J/kgK']], [['BTU/(lb·°F)']]),
  'heat-capacity': entry('a heat capacity', [2, 1, -2, -1, 0, 0, 0], [['kJ/K']], [['BTU/°F']]),
  'area-heat-capacity': entry('a heat capacity per area', [0, 1, -2, -1, 0, 0, 0], [['kJ/m2K']], [['BTU/(ft2·°F)']]),
  irradiance: entry('a power per area', [0, 1, -3, 0, 0, 0, 0], [['W/m2']], [['BTU/(h·ft2)']]),
  pressure: entry(
    'a pressure',
    [-1, 1, -2, 0, 0, 0, 0],
    [
      ['Pa', 2000],
      ['kPa', undefined],
    ],
    [
      ['inWC', 2000],
      ['psi', undefined],
    ],
  ),
  'air-flow': entry('an air flow', [3, 0, -1, 0, 0, 0, 0], [['L/s']], [['cfm']]),
  'water-flow': entry('a water flow', [3, 0, -1, 0, 0, 0, 0], [['L/min']], [['gpm']]),
  'daily-volume': entry('a volume per day', [3, 0, -1, 0, 0, 0, 0], [['L/d']], [['gal/d']]),
  'air-change-rate': entry('an air change rate', [0, 0, -1, 0, 0, 0, 0], [['1/h']]),
  velocity: entry('a velocity', [1, 0, -1, 0, 0, 0, 0], [['m/s']], [['fpm']]),
  current: entry('a current', [0, 0, 0, 0, 1, 0, 0], [['A']]),
  voltage: entry('a voltage', [2, 1, -3, 0, -1, 0, 0], [['V']]),
  resistance: entry('an electrical resistance', [2, 1, -3, 0, -2, 0, 0], [['ohm']]),
  angle: entry('an angle', V.angle, [['deg']]),
  'temperature-coefficient': entry('a change per kelvin', [0, 0, 0, -1, 0, 0, 0], [['%/K']]),
  'sound-level': entry('a sound level', V.none, [['dB']]),
  money: entry('an amount of money', V.money, [['$']]),
  'money-rate': entry('money per time', [0, 0, -1, 0, 0, 1, 0], [['$/month']]),
  'energy-price': entry('a price of energy', [-2, -1, 2, 0, 0, 1, 0], [['$/kWh']]),
  'fuel-price': entry('a price of fuel', [-2, -1, 2, 0, 0, 1, 0], [['$/GJ']], [['$/therm']]),
  'power-price': entry('a price of power', [-2, -1, 3, 0, 0, 1, 0], [['$/kW']]),
  'carbon-intensity': entry('emissions per energy', [-2, 0, 2, 0, 0, 0, 0], [['g/kWh']]),
  'carbon-rate': entry('emissions per year', [0, 1, -1, 0, 0, 0, 0], [['kg/yr']]),
  'annual-ratio': entry('a ratio per year', [0, 0, -1, 0, 0, 0, 0], [['%/yr']]),
} as const satisfies Record<string, DimensionEntry>;

export type Dimension = keyof typeof dimensions;

declare const dimension: unique symbol;
/** A number in SI that carries its dimension in its type. Temperatures (points) are in °C, ratios are fractions, angles radians. */
export type Si<D extends Dimension> = number & { readonly [dimension]?: D };
