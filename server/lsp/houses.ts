import { setImmediate } from 'node:timers/promises';
import { Session, type Analysis } from '../../language/index.js';
import type { DeclaredFile } from '../../language/build/index.js';
import { library } from '../../language/library/index.js';
import { canonical, existsWithin, housesIn, readWithin } from './disk.js';
import { Lines } from './lines.js';
import { libraryFile } from './shipped.js';

/** So many files are looked at for names that could be imported. */
const MOST_LIBRARIES = 200;

/** The list of files is good for so long, in ms: completion asks for it at every word. */
const LISTED_FOR = 3000;
const NOTHING_LISTED: { readonly at: number; readonly files: Promise<readonly string[]> } = {
  at: -Infinity,
  files: Promise.resolve([]),
};

/** The connection hands on one message in each turn of the loop; between two edits an editor sends no more than about so many. */
const TURNS = 16;

interface Open {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
}

/** What a feature works on: the analysis of the document as it is now, and its places. */
export interface Seen {
  readonly analysis: Analysis;
  readonly lines: Lines;
  readonly houses: Houses;
}

/** The documents that the editor holds, the files beside them, and what is known of each. */
export class Houses {
  readonly session: Session;
  private readonly open = new Map<string, Open>();
  private folders: readonly string[] = [];
  private listed = NOTHING_LISTED;
  private edits = 0;
  private readonly lines = new WeakMap<object, Lines>();
  /** Files that were read from disk. */
  private readonly known = new Set<string>();

  constructor(
    readonly fault: (error: unknown, what: string) => void,
    readonly today: () => string,
  ) {
    const roots = () => this.roots();
    this.session = new Session({
      read: uri => readWithin(uri, roots()),
      exists: uri => existsWithin(uri, roots()),
      roots,
      library,
      fault,
    });
  }

  /** Folders that may be read: those of the workspace, else those of the open documents. */
  roots(): readonly string[] {
    if (this.folders.length) return this.folders;
    return [...new Set([...this.open.keys()].map(uri => uri.slice(0, uri.lastIndexOf('/'))))];
  }

  setFolders(uris: readonly string[]): void {
    this.folders = uris.map(folderOf);
    this.forget();
  }

  changeFolders(added: readonly string[], removed: ReadonlySet<string>): void {
    const gone = new Set([...removed].map(folderOf));
    this.folders = [...this.folders.filter(f => !gone.has(f)), ...added.map(folderOf)];
    this.forget();
  }

  update(uri: string, version: number, text: string): void {
    const at = canonical(uri);
    const isNew = !this.open.has(at);
    this.edits++;
    this.open.set(at, { uri, version, text });
    this.session.update(at, text);
    if (isNew) this.forget();
  }

  close(uri: string): void {
    const at = canonical(uri);
    this.open.delete(at);
    this.session.close(at);
  }

  /** A file was made, changed or removed on disk. */
  changed(uri: string): void {
    const at = canonical(uri);
    this.known.delete(at);
    this.listed = NOTHING_LISTED;
    this.session.changed(at);
  }

  /** Files read from disk are read again when they are needed next. */
  forget(): void {
    this.listed = NOTHING_LISTED;
    for (const uri of this.known) this.session.changed(uri);
    this.known.clear();
  }

  /** Resolves when no more edits wait to be read, so that a burst of them is analyzed once, in its last state. */
  async caughtUp(): Promise<void> {
    for (let known = this.edits, turn = 0; turn < TURNS; turn++) {
      await setImmediate();
      if (this.edits === known) continue;
      known = this.edits;
      turn = 0;
    }
  }

  openOnes(): readonly Open[] {
    return [...this.open.values()];
  }

  versionOf(uri: string): number | undefined {
    return this.open.get(canonical(uri))?.version;
  }

  /** An address as the editor writes it; a built-in one is that of its file. */
  shown(uri: string): string {
    return this.open.get(uri)?.uri ?? libraryFile(uri);
  }

  async analyze(uri: string, signal?: { readonly aborted: boolean }): Promise<Analysis | undefined> {
    const at = canonical(uri);
    const asked = { upto: 'design', today: this.today(), ...(signal ? { signal } : {}) } as const;
    const analysis = await this.session.analyze(at, asked);
    for (const other of analysis?.files.keys() ?? []) if (!this.open.has(other)) this.known.add(other);
    return analysis;
  }

  async seen(uri: string, signal?: { readonly aborted: boolean }): Promise<Seen | undefined> {
    const analysis = await this.analyze(uri, signal);
    return analysis && { analysis, lines: this.linesOf(analysis), houses: this };
  }

  private linesOf({ file }: Analysis): Lines {
    let lines = this.lines.get(file.syntax);
    if (!lines) this.lines.set(file.syntax, (lines = new Lines(file.syntax.text)));
    return lines;
  }

  /** Places of any file at hand, the built-in ones among them. */
  async linesAt(uri: string): Promise<Lines> {
    const at = libraryFile(uri);
    const text = at === uri ? await this.session.text(uri) : await readWithin(at, [at.slice(0, at.lastIndexOf('/'))]);
    return new Lines(text ?? '');
  }

  /** Files of the workspace that hold blocks outside of any house, and so can be imported. */
  async libraries(): Promise<DeclaredFile[]> {
    const found: DeclaredFile[] = [];
    for (const uri of (await this.all()).slice(0, MOST_LIBRARIES)) {
      const file = (await this.session.load(uri))?.declared;
      if (file?.blocks.some(b => b.kind !== 'house')) found.push(file);
    }
    return found;
  }

  /** Every house file of the workspace, and every open one. */
  async all(): Promise<string[]> {
    const now = performance.now();
    if (now - this.listed.at > LISTED_FOR) this.listed = { at: now, files: housesIn(this.folders) };
    return [...new Set([...this.open.keys(), ...(await this.listed.files)])];
  }
}

const folderOf = (uri: string): string => canonical(uri).replace(/\/$/, '');
