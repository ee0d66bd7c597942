import { EXIT } from './exit.js';
import type { Fault } from './project.js';
import type { Terminal } from './terminal.js';

/** Faults of ours in one run: each told once on standard error, with its stack when that is asked for. */
export class Faults {
  readonly told: { readonly what: string; readonly message: string }[] = [];

  constructor(private readonly terminal: Terminal) {}

  readonly add: Fault = (error, what) => {
    const message = error instanceof Error ? error.message : String(error);
    if (this.told.some(f => f.what === what && f.message === message)) return;
    const { terminal } = this;
    this.told.push({ what, message });
    terminal.complain(`internal fault in ${what}: ${message}\n`);
    if (terminal.debug && error instanceof Error && error.stack) terminal.complain(`${error.stack}\n`);
  };

  /** Says once what to do about them; the exit code of the run. */
  close(exit: number): number {
    if (!this.told.length) return exit;
    this.terminal.complain(
      'This is a fault of Wattwright and not of your file. Please report it with the file, or with as much of it as shows\n' +
        `the fault${this.terminal.debug ? '.' : ', and with what WATTWRIGHT_DEBUG=1 prints.'}\n`,
    );
    return EXIT.fault;
  }
}
