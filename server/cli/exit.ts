/** What the program says to whoever started it. */
export const EXIT = { clean: 0, findings: 1, wrongUse: 2, fault: 3 } as const;

/** The program was used in a way that it cannot follow; the message says what would be right. */
export class WrongUse extends Error {}

/** What Node says about a file, in words of our own. */
export function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'there is no such file or folder';
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be read';
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'ENOTDIR') return 'a part of the path is no folder';
  if (code === 'ELOOP') return 'its links lead in a circle';
  if (code === 'ENAMETOOLONG') return 'the name is too long';
  return error instanceof Error ? error.message : String(error);
}
