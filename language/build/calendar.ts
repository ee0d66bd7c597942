import type { Evaluated } from './declared.js';
import type { Report, Span } from './problem.js';

export const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const value = (v: unknown): Evaluated => ({ is: 'value', value: v });

export const DAYS = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export function dayValue(day: string, span: Span, report: Report): Evaluated | undefined {
  const [year, month, date] = day.split('-').map(Number);
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const most = month === 2 && !leap ? 28 : DAYS[month - 1];
  if (most && date >= 1 && date <= most) return value(day);
  report.add('input/impossible', span, `${day} is not a day of the calendar`);
  return undefined;
}

/** Seconds from midnight. */
export function clockValue(time: string, span: Span, report: Report): Evaluated | undefined {
  const [h, m] = time.split(':').map(Number);
  if (h < 24 && m < 60) return value(h * 3600 + m * 60);
  if (h === 24 && m === 0) return value(86400);
  report.add('input/impossible', span, `${time} is not a time of day`);
  return undefined;
}
