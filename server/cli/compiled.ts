import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { Script } from 'node:vm';

export interface Compiled {
  readonly script: Script;
  /** Where the code that Node makes of it is kept. */
  readonly cache: string;
  readonly run: () => void;
}

/**
 * A bundle in CommonJS, compiled with what the build kept of a run: most of a cold start is spent compiling. What another
 * version of Node kept is refused by it, and the program is compiled as usual. It compares no more than the length of
 * the text, so that what was kept of another text is told apart by name.
 */
export function compiled(program: string): Compiled {
  const text = readFileSync(program, 'utf8');
  const hash = createHash('sha1').update(text).digest('hex').slice(0, 12);
  const cache = `${program.slice(0, -path.extname(program).length)}-${hash}.cache`;
  const source = `(function (exports, require, module, __filename, __dirname) {${text}\n})`;
  const kept = existsSync(cache) ? { cachedData: readFileSync(cache) } : {};
  const script = new Script(source, { filename: program, ...kept });
  return {
    script,
    cache,
    run() {
      const module = { exports: {} };
      const start = script.runInThisContext() as (...args: unknown[]) => void;
      start.call(module.exports, module.exports, createRequire(program), module, program, path.dirname(program));
    },
  };
}
