import { besideOf, declare, filesNamed, Report, resolvePath, type DeclaredFile, type Problem } from '../build/index.js';
import { parse, type Syntax } from '../grammar/index.js';
import type { Host } from './host.js';

/** One file, read and held against the vocabulary. */
export interface LoadedFile {
  readonly uri: string;
  readonly syntax: Syntax;
  readonly declared: DeclaredFile;
  readonly problems: readonly Problem[];
  /** Changes whenever the file or what lies beside it does. */
  readonly id: number;
}

/** Reads files and keeps what did not change. */
export class Loader {
  private readonly open = new Map<string, string>();
  private readonly disk = new Map<string, Promise<string | undefined>>();
  private readonly standing = new Map<string, Promise<boolean>>();
  private readonly parsed = new Map<string, Syntax>();
  private readonly files = new Map<string, { readonly key: readonly unknown[]; readonly file: LoadedFile }>();
  private count = 0;

  constructor(private readonly host: Host) {}

  update(uri: string, text: string): void {
    this.open.set(uri, text);
  }

  /** The editor let go of a file: what counts from now on is the one on disk. */
  close(uri: string): void {
    this.open.delete(uri);
    this.forget(uri);
  }

  /** A file changed on disk. */
  forget(uri: string): void {
    this.disk.delete(uri);
    this.standing.delete(uri);
  }

  textOf(uri: string): Promise<string | undefined> {
    const open = this.open.get(uri);
    if (open !== undefined) return Promise.resolve(open);
    let text = this.disk.get(uri);
    if (!text) this.disk.set(uri, (text = this.host.read(uri)));
    return text;
  }

  private exists(uri: string): Promise<boolean> {
    if (this.open.has(uri)) return Promise.resolve(true);
    let stands = this.standing.get(uri);
    if (!stands) this.standing.set(uri, (stands = this.host.exists(uri)));
    return stands;
  }

  /** A file and all that it imports, directly or not; the file itself first. Undefined when it cannot be read. */
  async load(uri: string): Promise<ReadonlyMap<string, LoadedFile> | undefined> {
    const loaded = new Map<string, LoadedFile>();
    const queue = [uri];
    for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
      if (loaded.has(next)) continue;
      const file = await this.one(next);
      if (!file) continue;
      loaded.set(next, file);
      for (const { target } of file.declared.imports) if (target !== undefined) queue.push(target);
    }
    return loaded.has(uri) ? loaded : undefined;
  }

  private async one(uri: string): Promise<LoadedFile | undefined> {
    const text = await this.textOf(uri);
    if (text === undefined) return undefined;
    const syntax = this.syntaxOf(uri, text);
    const beside = await this.besides(uri, syntax);
    const key = [syntax, ...beside.values()];
    const known = this.files.get(uri);
    if (known && known.key.length === key.length && known.key.every((k, i) => k === key[i])) return known.file;
    const roots = this.host.roots();
    const report = new Report(uri);
    const declared = declare(syntax, uri, path => resolvePath(path, uri, roots), report, besideOf(uri, roots, beside));
    const file: LoadedFile = { uri, syntax, declared, problems: report.problems, id: ++this.count };
    this.files.set(uri, { key, file });
    return file;
  }

  syntaxOf(uri: string, text: string): Syntax {
    const known = this.parsed.get(uri);
    if (known?.text === text) return known;
    const syntax = parse(text);
    this.parsed.set(uri, syntax);
    return syntax;
  }

  /** What stands beside a file: the text of each csv, and for other files only whether they are there. */
  private async besides(uri: string, syntax: Syntax): Promise<Map<string, string | boolean>> {
    const found = new Map<string, string | boolean>();
    const roots = this.host.roots();
    for (const node of filesNamed(syntax.file)) {
      const target = resolvePath(node.path, uri, roots);
      if (target === undefined || found.has(target)) continue;
      found.set(target, node.format === 'csv' ? ((await this.textOf(target)) ?? false) : await this.exists(target));
    }
    return found;
  }
}
