import type { LangiumParser } from 'langium';
import type { Problems, Replacement } from './problems.js';
import { endOf, kindOf, opensLine, shown, type Token } from './tokens.js';

type ParserError = ReturnType<LangiumParser['parse']>['parserErrors'][number];

/** Tells in plain words what the parser did not expect: where a value stops too early, or what does not fit behind it. */
export function expectation(problems: Problems, error: ParserError): void {
  const token = error.token;
  const previous = (error as { previousToken?: Token }).previousToken;
  const before = previous && previous.image ? previous : undefined;
  const early = STRUCTURE.has(kindOf(token)) || Number.isNaN(token.startOffset);
  if (early && !before) return;
  const place = early ? before! : token;
  const from = place.startOffset;
  const to = endOf(place);
  const damage = { from: before && !opensLine(token, before) ? before.startOffset : from, to };
  const message = early ? `Something is missing behind ${shown(place)}.` : misfit(token, before);
  const replace = early ? [] : joined(token, before);
  problems.add(
    { code: early ? 'syntax/missing' : 'syntax/unexpected', message, from, to, ...(replace.length ? { replace } : {}) },
    damage,
  );
}

const STRUCTURE: ReadonlySet<string> = new Set(['END', 'EOF', 'KEY', 'HEAD', 'ROW', '}', ',']);

function misfit(token: Token, before: Token | undefined): string {
  if (kindOf(token) === 'NUMBER' && before && kindOf(before) === 'NUMBER') {
    return `Two numbers stand side by side: digits are not grouped, and list items are separated by commas.`;
  }
  if (kindOf(token) === 'STRING') return 'This text does not belong here.';
  return before ? `${shown(token)} does not fit behind ${shown(before)}.` : `${shown(token)} does not belong here.`;
}

/** `1 000` was probably meant as one number. */
function joined(token: Token, before: Token | undefined): Replacement[] {
  if (!before || kindOf(before) !== 'NUMBER' || !/^\d{3}$/.test(token.image) || !/^\d{1,3}$/.test(before.image))
    return [];
  const text = before.image + token.image;
  return [{ title: `Write ${text}`, from: before.startOffset, to: endOf(token), text }];
}
