import { type AstNode, AstUtils, type CompositeCstNode, type CstNode, GrammarAST, isCompositeCstNode } from 'langium';
import type { Add, Block, Change, File } from './generated/ast.js';
import { syntaxOfFile, type Syntax } from './parse.js';
import type { Span } from './problems.js';
import { endOf } from './tokens.js';

/** Where a node stands in its text, without the comments around it. */
export function rangeOf(node: AstNode): Span {
  return spanOf(node.$cstNode);
}

/** Where the value of one property of a node stands, such as its `name`; the `index`-th where there are several. */
export function rangeOfProperty(node: AstNode, property: string, index = 0): Span | undefined {
  const root = node.$cstNode;
  if (!root || !isCompositeCstNode(root)) return undefined;
  let found: CstNode | undefined;
  let ahead = index;
  // Asked for every key, name and value at every keystroke, so it stops where it has found: the library's own search makes a list of all.
  const search = (within: CompositeCstNode): boolean =>
    within.content.some(part => {
      if (featureOf(part.grammarSource) !== property)
        return isCompositeCstNode(part) && part.astNode === root.astNode && search(part);
      found = part;
      return ahead-- === 0;
    });
  search(root);
  return found && spanOf(found);
}

const features = new WeakMap<AstNode, string | false>();

/** The property that a place in the grammar assigns to. */
function featureOf(source: AstNode | undefined): string | false {
  if (!source) return false;
  let feature = features.get(source);
  if (feature === undefined) {
    feature = AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature ?? false;
    features.set(source, feature);
  }
  return feature;
}

export function textOf(node: AstNode): string {
  return node.$cstNode?.text ?? '';
}

const spanOf = (node: CstNode | undefined): Span => (node ? { from: node.offset, to: node.end } : { from: 0, to: 0 });

/** The header of a block or of a change: from its first word to the brace. */
export function headerRange(node: Block | Add | Change): Span {
  const { from, to } = rangeOf(node);
  return { from, to: rangeOfProperty(node, 'open')?.from ?? to };
}

/**
 * True when a syntax problem lies inside a node: its value is then unknown. For a block only the header counts; its members
 * answer for themselves.
 */
export function isDamaged(node: AstNode): boolean {
  return touches(syntaxOf(node), hasBody(node) ? headerRange(node) : rangeOf(node));
}

/** True when something in the body of a block could not be read and belongs to no member: a property may be lost by it. */
export function isBodyDamaged(node: Block | Add | Change): boolean {
  const { damage } = syntaxOf(node);
  const { to } = rangeOf(node);
  let { to: gap } = headerRange(node);
  for (const member of node.members) {
    const range = rangeOf(member);
    if (liesWithin(damage, gap, range.from)) return true;
    gap = range.to;
  }
  return liesWithin(damage, gap, to);
}

/** The text of the star comment right above a block or property, without its stars. */
export function docComment(node: AstNode): string | undefined {
  const { comments, text } = syntaxOf(node);
  const { from } = rangeOf(node);
  const above = comments[firstFrom(comments.length, i => comments[i].startOffset >= from) - 1];
  if (!above?.image.startsWith('/**') || !/^[^\S\r\n]*(?:\r\n|\n|\r)?[^\S\r\n]*$/.test(text.slice(endOf(above), from)))
    return undefined;
  const lines = above.image.replace(/^\/\*\*|\*\/$/g, '').split(/\r\n|\n|\r/);
  return lines
    .map(line => line.replace(/^\s*\* ?/, '').trimEnd())
    .join('\n')
    .trim();
}

function hasBody(node: AstNode): node is Block | Add | Change {
  return node.$type === 'Block' || node.$type === 'Add' || node.$type === 'Change';
}

function syntaxOf(node: AstNode): Syntax {
  let root = node;
  while (root.$container) root = root.$container;
  return syntaxOfFile(root as File);
}

/** True when a damaged stretch overlaps a range or, where it is empty, lies at one of its ends. */
function touches({ damage }: Syntax, { from, to }: Span): boolean {
  const span =
    damage[firstFrom(damage.length, i => damage[i].to > from || (damage[i].to === from && damage[i].from === from))];
  return span !== undefined && (span.from < to || (span.from === span.to && span.from <= to));
}

/** True when a damaged stretch has a part strictly between two offsets. */
function liesWithin(damage: readonly Span[], from: number, to: number): boolean {
  const span = damage[firstFrom(damage.length, i => damage[i].to > from)];
  return span !== undefined && span.from < to;
}

/** The first index for which `holds`, which is false below it and true from it on. */
function firstFrom(length: number, holds: (index: number) => boolean): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
