import type { Severity } from '../../language/rules/index.js';
import { findingsJson } from '../report/findings-json.js';
import { findingsText, summaryLine } from '../report/findings-text.js';
import { count, gather, type Findings } from '../report/findings.js';
import { plain } from '../report/paint.js';
import { analyzed, shownPaths, textsOf } from './analyses.js';
import { EXIT } from './exit.js';
import { Faults } from './faults.js';
import { readInputs } from './inputs.js';
import { FAIL_ON, type CHECK_FORMATS } from './options.js';
import { complainOfUnread, deliver, type Delivery } from './output.js';
import type { Terminal } from './terminal.js';

export interface CheckOptions extends Delivery {
  readonly format: (typeof CHECK_FORMATS)[number];
  readonly failOn: Severity;
  readonly date?: string;
  readonly stdinFilename?: string;
}

/** Findings of the houses named; 1 when one is as bad as `--fail-on`. */
export async function check(paths: readonly string[], options: CheckOptions, terminal: Terminal): Promise<number> {
  const faults = new Faults(terminal);
  const today = options.date ?? terminal.today;
  const { inputs, unread } = await readInputs(paths, terminal, options);
  const all = await analyzed(inputs, terminal, { upto: 'design', today, fault: faults.add });
  const run = gather(
    all.map(a => a.analysis),
    { date: today, shown: shownPaths(all, terminal), text: textsOf(all), faults: faults.told, unread },
  );
  await deliver(written(run, options, terminal), summaryLine(run, terminal.paint), options, terminal);
  complainOfUnread(unread, terminal);
  if (run.findings.some(t => t.finding.code === 'syntax/internal'))
    faults.add(new Error('a text was not read'), 'the reader');
  const worst = FAIL_ON.slice(0, FAIL_ON.indexOf(options.failOn) + 1);
  const found = worst.some(severity => count(run, severity)) ? EXIT.findings : EXIT.clean;
  return faults.close(unread.length ? EXIT.wrongUse : found);
}

function written(run: Findings, { format, output }: CheckOptions, { paint, columns }: Terminal): string {
  if (format === 'json') return findingsJson(run);
  return findingsText(run, { paint: output === undefined ? paint : plain, columns });
}
