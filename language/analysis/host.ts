import type { DeclaredFile } from '../build/index.js';

/** What a session is given by the program around it. It reads nothing by itself. */
export interface Host {
  /** Text of a file; undefined when there is none or it cannot be read. */
  read(uri: string): Promise<string | undefined>;
  exists(uri: string): Promise<boolean>;
  /** Folders that may be read, as addresses. Nothing outside is ever asked for. */
  roots(): readonly string[];
  /** The built-in library in its resolved form. */
  readonly library: readonly DeclaredFile[];
  /** Called with a fault of ours: logged there, and never hidden here. */
  readonly fault: Fault;
}

/** Takes a fault of ours and what was being done. */
export type Fault = (error: unknown, what: string) => void;
