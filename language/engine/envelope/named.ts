/** What a block is called on a worksheet: its title, else its kind and name. */
export function named(block: {
  readonly is: string;
  readonly name: string;
  readonly title?: string | undefined;
}): string {
  const kind = block.is.replaceAll('-', ' ');
  return block.title ?? (block.name === block.is ? kind : `${kind} ${block.name}`);
}
