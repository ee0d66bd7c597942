/**
 * Demand of household cooking appliances by their number.
 * Source: NEC Table 220.55 (2005 to 2023). Column C for one range (8 kW), 24 (39 kW) and 30 (45 kW) and columns A and B
 * for one to three were seen; the rest is from memory, and numbers above 40 are left out.
 */
export interface RangeDemand {
  /** Under 3.5 kW each: share of the sum of the ratings. */
  readonly columnA: readonly number[];
  /** 3.5 kW to 8.75 kW each: share of the sum of the ratings. */
  readonly columnB: readonly number[];
  /** Up to 12 kW each: watts for all together. */
  readonly columnC: readonly number[];
  readonly smallUnder: number;
  readonly mediumUpTo: number;
  readonly largeUpTo: number;
  /** Column C grows by this share for every kilowatt, or major fraction of one, above `largeUpTo`. */
  readonly perKilowatt: number;
  readonly atMost: number;
}

export const rangeDemand: RangeDemand = {
  columnA: [0.8, 0.75, 0.7, 0.66, 0.62, 0.59, 0.56, 0.53, 0.51, 0.49],
  columnB: [0.8, 0.65, 0.55, 0.5, 0.45, 0.43, 0.4, 0.36, 0.35, 0.34],
  columnC: [
    8, 11, 14, 17, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36, 37, 38, 39, 40, 41, 42, 43, 44,
    45, 46, 47, 48, 49, 50, 51, 52, 53, 54, 55,
  ].map(kilowatts => kilowatts * 1000),
  smallUnder: 3500,
  mediumUpTo: 8750,
  largeUpTo: 12000,
  perKilowatt: 0.05,
  atMost: 27000,
};
