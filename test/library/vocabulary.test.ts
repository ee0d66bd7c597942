import { expect, test } from 'vitest';
import { docComment, isBlock, parse } from '../../language/grammar/index.js';
import { declared, libraryFiles } from './files.js';
import { strangers } from './vocabulary-check.js';

test.each(libraryFiles)('$name is read without a problem', ({ syntax }) => {
  expect(syntax.problems).toEqual([]);
  expect(syntax.file.members.length).toBeGreaterThan(0);
});

test.each(libraryFiles)('$name keeps to the vocabulary, its dimensions and its limits', ({ syntax }) => {
  expect(syntax.file.members.map(member => (isBlock(member) ? strangers(member) : ['not a block'])).flat()).toEqual([]);
});

test.each(libraryFiles)('every block of $name says where its figures come from', ({ syntax, text }) => {
  const silent = syntax.file.members.filter(member => isBlock(member) && !docComment(member));
  expect(silent.map(member => text.slice(member.$cstNode?.offset, member.$cstNode?.end))).toEqual([]);
});

test('no name is declared twice', () => {
  const names = declared.map(block => block.name);
  expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
});

test('the check notices what is not in the vocabulary', () => {
  const block = parse(
    'material odd { conductivity: 3 R, density: 1 t/m3, colour: red }\nglazing g { panes: 2 W, framing { material: softwood } }',
  ).file.members.filter(isBlock);
  expect(block.flatMap(b => strangers(b))).toEqual([
    'material odd: conductivity: not conductivity',
    'material odd: colour: no such property',
    'glazing g: panes: not a plain number',
    'glazing g / framing: not in a glazing',
  ]);
  expect(strangers(parse('material odd { density: 9.1 t/m3 }').file.members.filter(isBlock)[0])).toEqual([
    'material odd: density: outside 1 kg/m3 to 9000 kg/m3',
  ]);
});

test('what a layer or framing is made of is in the library', () => {
  const materials = new Set(declared.filter(b => b.kind === 'material').map(b => b.name));
  const used = declared
    .filter(b => b.kind === 'assembly')
    .flatMap(b => b.members.filter(isBlock))
    .flatMap(layer => layer.members)
    .flatMap(p =>
      p.$type === 'Property' && p.key === 'material' && p.value?.$type === 'NameValue' ? [p.value.name] : [],
    );
  expect(used.length).toBeGreaterThan(20);
  expect(used.filter(name => !materials.has(name))).toEqual([]);
});
