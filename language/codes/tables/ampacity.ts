import type { ConductorSize, Metal, RatedTemperature } from './conductor-sizes.js';

/** Amperes at 60, 75 and 90 °C; undefined where the table has no entry. */
type Row = readonly [at60: number, at75: number, at90: number] | undefined;

/**
 * Ampacity of insulated conductors in raceway, cable or earth: 30 °C around, at most three carrying current.
 * Source: NEC Table 310.16 (2020 and 2023) up to 4/0, two published copies agree; CEC Tables 2 and 4 were harmonised
 * with it in 2012 and their 60 °C columns (2024) were seen equal. 250 to 600 kcmil are from memory.
 */
const AMPACITY: Record<ConductorSize, Record<Metal, Row>> = {
  'awg-14': { copper: [15, 20, 25], aluminium: undefined },
  'awg-12': { copper: [20, 25, 30], aluminium: [15, 20, 25] },
  'awg-10': { copper: [30, 35, 40], aluminium: [25, 30, 35] },
  'awg-8': { copper: [40, 50, 55], aluminium: [35, 40, 45] },
  'awg-6': { copper: [55, 65, 75], aluminium: [40, 50, 55] },
  'awg-4': { copper: [70, 85, 95], aluminium: [55, 65, 75] },
  'awg-3': { copper: [85, 100, 115], aluminium: [65, 75, 85] },
  'awg-2': { copper: [95, 115, 130], aluminium: [75, 90, 100] },
  'awg-1': { copper: [110, 130, 145], aluminium: [85, 100, 115] },
  'awg-1-0': { copper: [125, 150, 170], aluminium: [100, 120, 135] },
  'awg-2-0': { copper: [145, 175, 195], aluminium: [115, 135, 150] },
  'awg-3-0': { copper: [165, 200, 225], aluminium: [130, 155, 175] },
  'awg-4-0': { copper: [195, 230, 260], aluminium: [150, 180, 205] },
  'kcmil-250': { copper: [215, 255, 290], aluminium: [170, 205, 230] },
  'kcmil-300': { copper: [240, 285, 320], aluminium: [195, 230, 260] },
  'kcmil-350': { copper: [260, 310, 350], aluminium: [210, 250, 280] },
  'kcmil-400': { copper: [280, 335, 380], aluminium: [225, 270, 305] },
  'kcmil-500': { copper: [320, 380, 430], aluminium: [260, 310, 350] },
  'kcmil-600': { copper: [350, 420, 475], aluminium: [285, 340, 385] },
};

const COLUMNS: Record<RatedTemperature, 0 | 1 | 2> = { 60: 0, 75: 1, 90: 2 };

/** Table ampacity in A before any correction; undefined where the table has no such conductor. */
export const tableAmpacity = (size: ConductorSize, metal: Metal, temperature: RatedTemperature): number | undefined =>
  AMPACITY[size][metal]?.[COLUMNS[temperature]];

/** Sizes whose ampacity was not seen in a copy of the table. */
export const isFromMemory = (size: ConductorSize): boolean => size.startsWith('kcmil');
