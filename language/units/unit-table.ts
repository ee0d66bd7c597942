import type { Vector } from './vector.js';

/** One unit: SI value = number × factor (+ offset for a temperature point). */
export interface Unit {
  readonly symbol: string;
  readonly vector: Vector;
  readonly factor: number;
  /** Present on a scale of points alone: °C value = (number + before) × factor. */
  readonly before?: number;
  readonly point?: true;
  /** Units such as percentage points or a wire gauge are told apart by this mark. */
  readonly special?: 'awg' | 'pp';
  /** ISO 4217 code when the unit holds money of one currency; `¢` and `$` leave it to the house. */
  readonly currency?: string;
}

const LENGTH: Vector = [1, 0, 0, 0, 0, 0, 0];
const AREA: Vector = [2, 0, 0, 0, 0, 0, 0];
const VOLUME: Vector = [3, 0, 0, 0, 0, 0, 0];
const MASS: Vector = [0, 1, 0, 0, 0, 0, 0];
const TIME: Vector = [0, 0, 1, 0, 0, 0, 0];
const KELVIN: Vector = [0, 0, 0, 1, 0, 0, 0];
const POWER: Vector = [2, 1, -3, 0, 0, 0, 0];
const ENERGY: Vector = [2, 1, -2, 0, 0, 0, 0];
const PRESSURE: Vector = [-1, 1, -2, 0, 0, 0, 0];
const FLOW: Vector = [3, 0, -1, 0, 0, 0, 0];
const SPEED: Vector = [1, 0, -1, 0, 0, 0, 0];
const NONE: Vector = [0, 0, 0, 0, 0, 0, 0];
const AMPERE: Vector = [0, 0, 0, 0, 1, 0, 0];
const VOLT: Vector = [2, 1, -3, 0, -1, 0, 0];
const OHM: Vector = [2, 1, -3, 0, -2, 0, 0];
const ANGLE: Vector = [0, 0, 0, 0, 0, 0, 1];
const R: Vector = [0, -1, 3, 1, 0, 0, 0];

// NIST SP 811 (2008), appendix B: exact or conventional factors.
const FOOT = 0.3048;
const POUND = 0.45359237;
const GALLON = 3.785411784e-3; // US liquid gallon
const BTU = 1055.05585262; // International Table
const INCH_OF_WATER = 249.08891; // conventional inch of water
const INCH_OF_MERCURY = 3386.389; // conventional inch of mercury
const DAY = 86400;
const YEAR = 365 * DAY; // the 8,760 hours of a typical year, not 365.25 days

const ROWS: readonly (readonly [symbols: string, vector: Vector, factor: number])[] = [
  ['m', LENGTH, 1],
  ['mm', LENGTH, 1e-3],
  ['cm', LENGTH, 1e-2],
  ['km', LENGTH, 1e3],
  ['in inch', LENGTH, FOOT / 12],
  ['ft', LENGTH, FOOT],
  ['yd', LENGTH, 3 * FOOT],
  ['mi', LENGTH, 5280 * FOOT],
  ['ha', AREA, 1e4],
  ['L l', VOLUME, 1e-3],
  ['mL', VOLUME, 1e-6],
  ['gal', VOLUME, GALLON],
  ['kg', MASS, 1],
  ['g', MASS, 1e-3],
  ['t', MASS, 1e3],
  ['lb', MASS, POUND],
  ['s', TIME, 1],
  ['ms', TIME, 1e-3],
  ['min', TIME, 60],
  ['h hr', TIME, 3600],
  ['d day days', TIME, DAY],
  ['week weeks', TIME, 7 * DAY],
  ['month months mo', TIME, YEAR / 12],
  ['yr year years', TIME, YEAR],
  ['K', KELVIN, 1],
  ['Δ°F', KELVIN, 5 / 9],
  ['W VA', POWER, 1],
  ['kW kVA', POWER, 1e3],
  ['MW', POWER, 1e6],
  ['MBH', POWER, (1000 * BTU) / 3600],
  ['ton', POWER, (12000 * BTU) / 3600], // of cooling
  ['J', ENERGY, 1],
  ['kJ', ENERGY, 1e3],
  ['MJ', ENERGY, 1e6],
  ['GJ', ENERGY, 1e9],
  ['Wh', ENERGY, 3600],
  ['kWh', ENERGY, 3.6e6],
  ['MWh', ENERGY, 3.6e9],
  ['BTU Btu', ENERGY, BTU],
  ['kBTU', ENERGY, 1e3 * BTU],
  ['MMBTU', ENERGY, 1e6 * BTU],
  ['therm therms', ENERGY, 1e5 * BTU],
  ['Pa', PRESSURE, 1],
  ['hPa mbar', PRESSURE, 100],
  ['kPa', PRESSURE, 1e3],
  ['bar', PRESSURE, 1e5],
  ['psi', PRESSURE, (POUND * 9.80665) / (FOOT / 12) ** 2],
  ['inWC', PRESSURE, INCH_OF_WATER],
  ['inHg', PRESSURE, INCH_OF_MERCURY],
  ['cfm', FLOW, FOOT ** 3 / 60],
  ['gpm', FLOW, GALLON / 60],
  ['fpm', SPEED, FOOT / 60],
  ['mph', SPEED, (5280 * FOOT) / 3600],
  ['A', AMPERE, 1],
  ['mA', AMPERE, 1e-3],
  ['kA', AMPERE, 1e3],
  ['V', VOLT, 1],
  ['kV', VOLT, 1e3],
  ['ohm Ω', OHM, 1],
  ['deg °', ANGLE, Math.PI / 180],
  ['rad', ANGLE, 1],
  ['RSI', R, 1],
  ['R', R, (3600 * FOOT ** 2 * (5 / 9)) / BTU], // h·ft2·°F/BTU
  ['%', NONE, 0.01],
  ['dB dBA', NONE, 1],
  ['ACH', [0, 0, -1, 0, 0, 0, 0], 1 / 3600],
  ['¢', [0, 0, 0, 0, 0, 1, 0], 0.01],
  ['$', [0, 0, 0, 0, 0, 1, 0], 1],
];

/** Active codes of ISO 4217 (from memory; funds, metals and test codes left out). */
const CURRENCIES =
  'AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BHD BIF BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CLP CNY COP CRC CUP CVE CZK DJF DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GNF GTQ GYD HKD HNL HTG HUF IDR ILS INR IQD IRR ISK JMD JOD JPY KES KGS KHR KMF KPW KRW KWD KYD KZT LAK LBP LKR LRD LSL LYD MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD OMR PAB PEN PGK PHP PKR PLN PYG QAR RON RSD RUB RWF SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TND TOP TRY TTD TWD TZS UAH UGX USD UYU UZS VED VES VND VUV WST XAF XCD XOF XPF YER ZAR ZMW ZWG'
    .split(' ')
    // Behind a number, AWG is the American wire gauge; the florin of Aruba cannot be written.
    .filter(code => code !== 'AWG');

export const isCurrency = (code: string): boolean => CURRENCIES.includes(code);

export const atoms: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ...ROWS.flatMap(([symbols, vector, factor]) =>
    symbols.split(' ').map(symbol => [symbol, { symbol: symbols.split(' ')[0], vector, factor }] as const),
  ),
  ...['°C', 'degC'].map(s => [s, { symbol: '°C', vector: KELVIN, factor: 1, before: 0, point: true }] as const),
  ...['°F', 'degF'].map(s => [s, { symbol: '°F', vector: KELVIN, factor: 5 / 9, before: -32, point: true }] as const),
  ['pp', { symbol: 'pp', vector: NONE, factor: 0.01, special: 'pp' }],
  ['AWG', { symbol: 'AWG', vector: AREA, factor: 1, special: 'awg' }],
  ...CURRENCIES.map(c => [c, { symbol: c, vector: [0, 0, 0, 0, 0, 1, 0], factor: 1, currency: c }] as const),
]);
