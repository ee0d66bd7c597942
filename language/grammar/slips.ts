import { numberOf } from './number.js';
import type { Problems, Replacement, SyntaxCode } from './problems.js';
import { endOf, kindOf, shown, type Token } from './tokens.js';

/** Tells what a single token has wrong with it. Each function looks at a token that was just cut and is silent on a good one. */
function tell(problems: Problems, code: SyntaxCode, token: Token, message: string, ...replace: Replacement[]): void {
  problems.add({ code, message, from: token.startOffset, to: endOf(token), ...(replace.length ? { replace } : {}) });
}

const instead = (token: Token, text: string): Replacement => ({
  title: `Write ${text}`,
  from: token.startOffset,
  to: endOf(token),
  text,
});

export function number(problems: Problems, token: Token): void {
  if (kindOf(token) !== 'NUMBER') return;
  const reading = numberOf(token.image);
  if ('value' in reading) return;
  const { problem, suggestions } = reading;
  tell(problems, 'syntax/number', token, problem, ...suggestions.map(text => instead(token, text)));
}

/** Behind a quantity only the inches of its feet may follow: `8 ft 4 in`. */
export function compound(problems: Problems, [feet, unit, inches, inch]: readonly (Token | undefined)[]): void {
  if (!feet || !unit || !inches) return;
  const isLength = unit.image === 'ft' && inch !== undefined && kindOf(inch) === 'UNIT' && inch.image === 'in';
  if (isLength && /^\d+$/.test(feet.image) && Number(inches.image) < 12) return;
  const message = isLength
    ? 'Before inches stand whole feet, and the inches are fewer than twelve.'
    : 'Two quantities stand side by side: only feet and inches are one length, as in 8 ft 4 in; separate others by a comma.';
  problems.add(
    { code: 'syntax/number', message, from: inches.startOffset, to: endOf(inches) },
    { from: feet.startOffset, to: endOf(inches) },
  );
}

const GOOD_NAME = /^[A-Za-z][A-Za-z0-9-]*(?:\.[A-Za-z0-9-]+)*$/;

export function name(problems: Problems, token: Token): void {
  if (GOOD_NAME.test(token.image)) return;
  const kebab = shown(token)
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^A-Za-z0-9.]+/g, '-')
    .replace(/^[^A-Za-z]+|-+$/g, '');
  const replace = GOOD_NAME.test(kebab) ? [instead(token, kebab)] : [];
  const message = `"${shown(token)}" is not a name: names are written with the letters a to z, digits and hyphens.`;
  tell(problems, 'syntax/name', token, message, ...replace);
}

export function dash(problems: Problems, token: Token): void {
  if (token.image === '-' || token.image === '\u2212') return;
  tell(problems, 'syntax/character', token, 'This dash is not a minus sign.', {
    ...instead(token, '-'),
    title: 'Write a minus sign',
  });
}

export function openString(problems: Problems, token: Token): void {
  const closing = { title: 'Close the text', from: endOf(token), to: endOf(token), text: '"' };
  tell(
    problems,
    'syntax/string',
    token,
    'This text has no closing quotation mark; a text ends with its line.',
    closing,
  );
}

export function openComment(problems: Problems, token: Token): void {
  const message =
    'This comment is not closed with */ before the next one opens or the file ends; it is read as ending with its line.';
  const closing = { title: 'Close the comment', from: endOf(token), to: endOf(token), text: ' */' };
  problems.add(
    { code: 'syntax/comment', message, from: token.startOffset, to: token.startOffset + 2, replace: [closing] },
    'none',
  );
}

export function tooLong(problems: Problems, from: number, to: number): void {
  const message =
    'The file is too long: what follows from here is not read. Divide it into several files and import them.';
  problems.add({ code: 'syntax/too-long', message, from, to: Math.min(to, from + 1) }, { from, to });
}

/** Characters of other trades and keyboards, and what is written here instead. */
const INSTEAD: Readonly<Record<string, string>> = {
  '×': '*',
  '⋅': '*',
  '·': '*',
  '÷': '/',
  '∕': '/',
  ';': ',',
  '“': '"',
  '”': '"',
  '„': '"',
  '«': '"',
  '»': '"',
  '≤': 'at most ',
  '≥': 'at least ',
  '<': 'at most ',
  '>': 'at least ',
  '…': ' .. ',
  '...': ' .. ',
};

export function junk(problems: Problems, token: Token, damage: { from: number; to: number }): void {
  const text = INSTEAD[token.image];
  const printable = /^[!-~\u00a1-\ud7ff]+$/.test(token.image) && token.image.length <= 12;
  const opening = token.image === '{' ? 'This { opens nothing: a block begins with its kind and name.' : undefined;
  const message = opening ?? (printable ? `${token.image} means nothing here.` : 'These characters mean nothing here.');
  const replace = text ? [{ ...instead(token, text), title: `Write ${text.trim()}` }] : undefined;
  problems.add(
    { code: 'syntax/character', message, from: token.startOffset, to: endOf(token), ...(replace ? { replace } : {}) },
    damage,
  );
}
