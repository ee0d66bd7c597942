import type { Declared, DeclaredFile, DeclaredProperty } from './declared.js';

/*
 * The built-in library travels in its resolved form, so that no program parses it at its start. Maps become lists of
 * entries; everything else is plain data already.
 */

type Packed = Record<string, unknown>;

export function pack(file: DeclaredFile): Packed {
  return { uri: file.uri, blocks: file.blocks.map(packBlock) };
}

/** Places of values and layouts are left out: nobody edits the library, and its text is at hand where one goes to read it. */
function packBlock(b: Declared): Packed {
  const { uri, properties, children, instructions, layout, body, ...rest } = b;
  void uri;
  void instructions;
  void layout;
  void body;
  return {
    ...rest,
    properties: [...properties.values()].map(({ uri: _, ...p }) => p),
    children: children.map(packBlock),
  };
}

export function unpack(packed: Packed): DeclaredFile {
  const uri = packed.uri as string;
  return { uri, imports: [], blocks: (packed.blocks as Packed[]).map(b => unpackBlock(b, uri)) };
}

function unpackBlock(b: Packed, uri: string): Declared {
  const properties = b.properties as Omit<DeclaredProperty, 'uri'>[];
  return {
    ...(b as unknown as Declared),
    uri,
    body: undefined,
    layout: undefined,
    instructions: [],
    properties: new Map(properties.map(p => [p.key, { ...p, uri }])),
    children: (b.children as Packed[]).map(c => unpackBlock(c, uri)),
  };
}
