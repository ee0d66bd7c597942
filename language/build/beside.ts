import {
  isFileValue,
  isList,
  isProperty,
  rangeOf,
  rangeOfProperty,
  type File,
  type FileValue,
  type Member,
  type Value,
} from '../grammar/index.js';
import type { Report } from './problem.js';
import type { Beside } from './table.js';

/** The files that a house file names in its values. */
export function filesNamed(file: File): FileValue[] {
  const found: FileValue[] = [];
  const inValue = (value: Value | undefined): void => {
    if (!value) return;
    if (isFileValue(value)) found.push(value);
    else if (isList(value)) value.items.forEach(inValue);
  };
  const inMembers = (members: readonly Member[]): void => {
    for (const m of members) {
      if (isProperty(m)) inValue(m.value);
      else if ('members' in m) inMembers(m.members);
    }
  };
  inMembers(file.members);
  return found;
}

/**
 * The address of a file named in another one; undefined when it lies outside the workspace, whatever way is tried: an
 * absolute path, a scheme of its own, or steps upwards.
 */
export function resolvePath(path: string, uri: string, roots: readonly string[]): string | undefined {
  if (/^[a-z][a-z0-9+.-]*:/i.test(path) || /^[/\\]/.test(path) || path.includes('\\') || path.includes('\0'))
    return undefined;
  let target: string;
  try {
    target = new URL(path.replace(/[%?#]/g, encodeURIComponent), uri).href;
  } catch {
    return undefined;
  }
  return roots.some(root => target.startsWith(root.endsWith('/') ? root : `${root}/`)) ? target : undefined;
}

/** Files read beforehand: the text of each, `true` for one that only stands, `false` for one that does not. */
export type Loaded = ReadonlyMap<string, string | boolean>;

export function besideOf(uri: string, roots: readonly string[], loaded: Loaded): Beside {
  const targetOf = (node: FileValue) => resolvePath(node.path, uri, roots);
  return {
    stands(node: FileValue, report: Report): boolean {
      const span = rangeOfProperty(node, 'path') ?? rangeOf(node);
      const target = targetOf(node);
      if (target === undefined) {
        report.add('input/file-outside', span, `"${node.path}" lies outside the workspace and is not read`);
        return false;
      }
      // An empty file stands as well.
      if ((loaded.get(target) ?? false) !== false) return true;
      report.add('input/file-missing', span, `there is no file "${node.path}" beside this one`);
      return false;
    },
    text(node: FileValue) {
      const text = loaded.get(targetOf(node) ?? '');
      return typeof text === 'string' ? text : undefined;
    },
  };
}
