/**
 * Conductor sizes from the smallest up: American wire gauge, then thousands of circular mils.
 * `awg-1-0` is the size the trade writes 1/0.
 */
export const conductorSizes = [
  'awg-14',
  'awg-12',
  'awg-10',
  'awg-8',
  'awg-6',
  'awg-4',
  'awg-3',
  'awg-2',
  'awg-1',
  'awg-1-0',
  'awg-2-0',
  'awg-3-0',
  'awg-4-0',
  'kcmil-250',
  'kcmil-300',
  'kcmil-350',
  'kcmil-400',
  'kcmil-500',
  'kcmil-600',
] as const;

export type ConductorSize = (typeof conductorSizes)[number];
export type Metal = 'copper' | 'aluminium';

/** Rated temperatures of insulation and of terminals, °C. */
export type RatedTemperature = 60 | 75 | 90;

/** A size as the trade writes it: `8 AWG`, `1/0 AWG`, `250 kcmil`. */
export function sizeInWords(size: ConductorSize): string {
  const [family, ...number] = size.split('-');
  return `${number.join('/')} ${family === 'awg' ? 'AWG' : 'kcmil'}`;
}
