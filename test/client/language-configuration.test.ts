import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const configuration = JSON.parse(readFileSync('client/language-configuration.json', 'utf8'));
const pattern = (text: string) => new RegExp(text);
const { increaseIndentPattern, decreaseIndentPattern } = configuration.indentationRules;

describe('the line behind is indented', () => {
  test.each([
    'house birch {',
    '  readings: table (pressure Pa, flow L/s) [',
    '  site { // as found',
    '  wall south "a } in a title" {',
    '  hours: [07:00 .. 11:00,',
  ])('after %s', line => expect(line).toMatch(pattern(increaseIndentPattern)));

  test.each(['site { elevation: 310 m }', '// wall {', 'days: [sat, sun]', 'title: "{"', '}', 'area: 3 m2'])(
    'but not after %s',
    line => expect(line).not.toMatch(pattern(increaseIndentPattern)),
  );
});

test.each(['  }', ']', '  )'])('%s stands one step out', line => {
  expect(line).toMatch(pattern(decreaseIndentPattern));
});

test('a word is a name with its hyphens, or a number with its point', () => {
  const words = 'wall-2x6: 8.3 m at 07:30'.match(new RegExp(configuration.wordPattern, 'g'));
  expect(words).toEqual(['wall-2x6', '8.3', 'm', 'at', '07:30']);
});

describe('Enter in a documentation comment', () => {
  const rules: { beforeText: string; previousLineText?: string; action: { appendText?: string } }[] =
    configuration.onEnterRules;
  const appended = (before: string, previous = '') =>
    rules.find(
      rule =>
        pattern(rule.beforeText).test(before) &&
        (!rule.previousLineText || pattern(rule.previousLineText).test(previous)),
    )?.action.appendText;

  test('goes on with a star', () => {
    expect(appended('  /** The north wall')).toBe(' * ');
    expect(appended('   * has no window.', '  /** The north wall')).toBe('* ');
  });

  test('ends with it', () => {
    expect(appended('  /** The north wall. */')).toBeUndefined();
    expect(appended('  area: 3 m2')).toBeUndefined();
  });
});
