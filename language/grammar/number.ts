/** Digits of other scripts and raised digits: they are caught as part of a number so that they cannot pass unseen. */
const FOREIGN = '０-９٠-٩۰-۹०-९¹²³⁰⁴-⁹';
const DIGIT = `[0-9${FOREIGN}]`;
const GAP = '\\u00a0\\u2009\\u202f';

/**
 * The whole number-like run. A number is judged as a whole, never cut at the first odd character: what is left over would be
 * read as something else.
 */
export const NUMBER_RUN = new RegExp(
  [
    '[$€£¥]?',
    '(?:0[xX][0-9a-fA-F]+|',
    `(?:\\.(?=${DIGIT}))?${DIGIT}+`,
    `(?:[,_'’-](?=${DIGIT})${DIGIT}+|\\.(?!\\.)${DIGIT}*|[${GAP}]${DIGIT}{3}(?!${DIGIT}))*`,
    '(?:[eE][+\\-\\u2212]?[0-9]+)?',
    `(?:['’′](?:\\s?[0-9]+(?:\\.[0-9]+)?["”″])?|["”″](?=[\\s,\\])}]|$))?)`,
  ].join(''),
  'my',
);

/** What a number-like run says: a number, or why it is none and what was probably meant. */
export type NumberReading =
  { readonly value: number } | { readonly problem: string; readonly suggestions: readonly string[] };

/** A run with more characters is no slip of the hand: it is not taken apart. */
const LONGEST = 60;

/** ISO 4217 code that a currency sign most often stands for. */
const CURRENCY: Readonly<Record<string, string>> = { $: 'USD', '€': 'EUR', '£': 'GBP', '¥': 'JPY' };

/**
 * Reads a number-like run as it stands in the text, without sign. Decimal point, leading point and exponent are read; every
 * other writing is a problem. It never gives a value other than the one written.
 */
export function numberOf(raw: string): NumberReading {
  if (/^(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?$/.test(raw)) return finite(raw);
  if (raw.length > LONGEST) return { problem: 'This is longer than any number.', suggestions: [] };
  for (const [pattern, tell] of WRITINGS) {
    const match = pattern.exec(raw);
    if (match) return tell(match);
  }
  return { problem: 'This is not a number.', suggestions: [] };
}

function finite(raw: string): NumberReading {
  const value = Number(raw);
  if (Number.isFinite(value)) return { value };
  return { problem: 'This is larger than any number that can be calculated with.', suggestions: [] };
}

type Tell = (match: RegExpExecArray) => NumberReading;

const tell = (problem: string, ...suggestions: string[]): NumberReading => ({ problem, suggestions });

/** Writings that are common elsewhere, with what was probably meant. The first that matches counts. */
const WRITINGS: readonly (readonly [RegExp, Tell])[] = [
  [
    /^([$€£¥])(.*)$/,
    ([, sign, rest]) =>
      tell(
        `A currency is written as its code behind the number, such as CAD, USD or EUR.`,
        `${rest} ${CURRENCY[sign]}`,
      ),
  ],
  [/^0[xX]/, ({ input }) => tell('Write a number with decimal digits.', String(Number(input)))],
  [
    new RegExp(`[${FOREIGN}]`),
    ({ input }) => tell('Write a number with the digits 0 to 9.', ...(RAISED.test(input) ? [] : [plainDigits(input)])),
  ],
  [
    /^(\d+(?:\.\d+)?)['’′]\s?(\d+(?:\.\d+)?)["”″]$/,
    ([, ft, inch]) => tell('Feet and inches are written with their units.', `${ft} ft ${inch} in`),
  ],
  [/^(\d+(?:\.\d+)?)['’′]$/, ([, ft]) => tell('Feet are written with their unit.', `${ft} ft`)],
  [/^(\d+(?:\.\d+)?)["”″]$/, ([, inch]) => tell('Inches are written with their unit.', `${inch} in`)],
  [
    /^(\d{4})-(\d{1,2})-(\d{1,2})$/,
    match => tell('A date is written year-month-day with two digits each.', ...dates(match)),
  ],
  [
    /^(\d+(?:\.\d+)?)-(\d+(?:\.\d+)?)$/,
    ([, a, b]) => tell('Is this a range or a difference? Both are written with spaces.', `${a} .. ${b}`, `${a} - ${b}`),
  ],
  [
    /^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/,
    ([raw]) =>
      tell('A comma does not group digits; it separates values.', raw.replaceAll(',', ''), raw.replaceAll(',', ', ')),
  ],
  [
    /^(\d+),(\d+)$/,
    ([, a, b]) =>
      tell(
        'The decimal sign is a point; a comma separates values and has a space behind it.',
        `${a}.${b}`,
        `${a}, ${b}`,
      ),
  ],
  [
    /^[\d.]+(?:,[\d.]+)+$/,
    ([raw]) => tell('A comma separates values and has a space behind it.', raw.replaceAll(',', ', ')),
  ],
  [
    /^\d+(?:[_'’\u00a0\u2009\u202f]\d{3})+(?:\.\d+)?$/,
    ([raw]) => tell('Digits are not grouped.', raw.replace(/[^\d.]/g, '')),
  ],
  [/^(\d+)\.$/, ([, digits]) => tell('A decimal point has digits behind it.', digits)],
  [/^\d*\.\d*\./, () => tell('A number has one decimal point.')],
  [/^([\d.]+[eE])\u2212(\d+)$/, ([, a, b]) => tell('The exponent is written with a plain minus.', `${a}-${b}`)],
];

const RAISED = /[¹²³⁰⁴-⁹]/;

/** Digits of any script that a number run takes, as the digits 0 to 9. */
function plainDigits(raw: string): string {
  return raw
    .normalize('NFKC')
    .replace(/[٠-٩۰-۹]/g, digit => String(digit.charCodeAt(0) & 15))
    .replace(/[०-९]/g, digit => String(digit.charCodeAt(0) - 0x966));
}

function dates([, year, month, day]: RegExpExecArray): string[] {
  if (Number(month) > 12 || Number(day) > 31) return [];
  return [`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`];
}
