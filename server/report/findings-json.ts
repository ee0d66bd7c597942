import { count, rangeIn, type Findings, type Told } from './findings.js';

/** Counts up with each change that a reader of this form could stumble over. */
const VERSION = 1;

/** Findings for other programs: complete, whatever the exit code says. */
export function findingsJson(run: Findings): string {
  const out = {
    version: VERSION,
    date: run.date,
    summary: {
      files: run.files,
      houses: run.houses,
      errors: count(run, 'error'),
      warnings: count(run, 'warning'),
      infos: count(run, 'info'),
    },
    findings: run.findings.map(told => findingOf(told, run)),
    unread: run.unread.map(({ shown, reason }) => ({ path: shown, reason })),
    faults: run.faults,
  };
  return `${JSON.stringify(out, undefined, 2)}\n`;
}

function findingOf({ finding, house }: Told, run: Findings) {
  const { code, severity, message, uri, address, stages, related, unnecessary } = finding;
  return {
    code,
    severity,
    message,
    path: run.shown(uri),
    ...rangeIn(run, finding),
    house: house ?? null,
    address: address ?? null,
    stages,
    related: related.map(r => ({ message: r.message, path: run.shown(r.uri), ...rangeIn(run, r) })),
    fixes: finding.fixes().map(f => f.title),
    unnecessary,
  };
}
