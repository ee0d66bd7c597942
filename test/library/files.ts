import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { isBlock, isProperty, numberOf, parse, type Block } from '../../language/grammar/index.js';

const folder = fileURLToPath(new URL('../../language/library/', import.meta.url));

export interface LibraryFile {
  readonly name: string;
  readonly text: string;
  readonly syntax: ReturnType<typeof parse>;
}

/** The files of the built-in library as they stand in the tree. */
export const libraryFiles: readonly LibraryFile[] = readdirSync(folder)
  .filter(name => name.endsWith('.house'))
  .map(name => {
    const text = readFileSync(folder + name, 'utf8');
    return { name, text, syntax: parse(text) };
  });

/** Blocks that a file declares at its top, which a house may name. */
export const declared: readonly Block[] = libraryFiles.flatMap(file => file.syntax.file.members.filter(isBlock));

export function named(kind: string, name: string): Block {
  const block = declared.find(b => b.kind === kind && b.name === name);
  if (!block) throw new Error(`the library has no ${kind} ${name}`);
  return block;
}

/** Number and unit of a property of one quantity, as they are written. */
export function written(block: Block, key: string): readonly [number: number, unit: string | undefined] | undefined {
  const value = block.members.filter(isProperty).find(p => p.key === key)?.value;
  if (value?.$type !== 'Quantity') return undefined;
  const reading = numberOf(value.raw);
  if (!('value' in reading)) throw new Error(`${block.name}.${key}: ${reading.problem}`);
  return [value.negative ? -reading.value : reading.value, value.unit];
}
