import { coloured, plain, type Paint } from '../report/paint.js';
import { EXIT } from './exit.js';

/** All that a command sees of the world around it besides files: tests hand in their own. */
export interface Terminal {
  readonly folder: string;
  /** Today, as YYYY-MM-DD. */
  readonly today: string;
  readonly columns: number;
  readonly paint: Paint;
  /** Whether people watch standard error, so that progress may be shown there. */
  readonly watched: boolean;
  /** Stacks of our own faults are wanted. */
  readonly debug: boolean;
  readonly input: () => Promise<Buffer>;
  readonly print: (text: string) => void;
  readonly complain: (text: string) => void;
}

const NARROWEST = 60;
const WIDEST = 120;
/** Where standard output is no terminal, what it holds is read in mails and logs. */
const PAPER = 80;

/** The terminal of this process. */
export function terminal(): Terminal {
  const { stdout, stderr, stdin, env } = process;
  for (const stream of [stdout, stderr]) stream.on('error', dropWhenClosed);
  return {
    folder: process.cwd(),
    today: dateOf(new Date()),
    columns: stdout.isTTY ? Math.min(WIDEST, Math.max(NARROWEST, stdout.columns || PAPER)) : PAPER,
    paint: wantsColour(stdout.isTTY, env) ? coloured : plain,
    watched: Boolean(stderr.isTTY),
    debug: Boolean(env.WATTWRIGHT_DEBUG),
    input: async () => {
      const parts: Buffer[] = [];
      for await (const part of stdin) parts.push(part as Buffer);
      return Buffer.concat(parts);
    },
    print: text => void stdout.write(text),
    complain: text => void stderr.write(text),
  };
}

/** Colours go to a terminal alone; NO_COLOR and FORCE_COLOR decide when they are set. */
function wantsColour(isTerminal: boolean | undefined, env: NodeJS.ProcessEnv): boolean {
  if (env.NO_COLOR) return false;
  if (env.FORCE_COLOR) return env.FORCE_COLOR !== '0';
  return Boolean(isTerminal) && env.TERM !== 'dumb';
}

/** The reader of a pipe may have seen enough; that is no fault, and what is still written goes nowhere. */
function dropWhenClosed(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') return;
  process.stderr.write(`wattwright: the output cannot be written: ${error.message}\n`);
  process.exit(EXIT.wrongUse);
}

/** The day where the person is, not that of Greenwich. */
const dateOf = (d: Date): string =>
  [d.getFullYear(), d.getMonth() + 1, d.getDate()].map(n => String(n).padStart(2, '0')).join('-');
