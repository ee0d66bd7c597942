import { DiagnosticSeverity, languages, StatusBarAlignment, ThemeColor, window } from 'vscode';
import type { Diagnostic, Disposable, StatusBarItem, Uri } from 'vscode';
import type { Standing } from './server.js';

const SIGNS = {
  [DiagnosticSeverity.Error]: '$(error)',
  [DiagnosticSeverity.Warning]: '$(warning)',
  [DiagnosticSeverity.Information]: '$(info)',
  [DiagnosticSeverity.Hint]: '$(lightbulb)',
};

const NONE: Record<Standing, readonly [sign: string, text: string]> = {
  starting: ['$(loading~spin)', 'House: starting'],
  running: ['$(check)', 'House: no findings'],
  stopped: ['$(circle-slash)', 'House: not checked, the server is stopped'],
};

/** Longest message in the status bar, in characters; the whole one is on hover and in the Problems view. */
const LONGEST = 60;

/** Status item of the house in view: its worst finding in a few words, and the way to all of them. */
export class WorstFinding implements Disposable {
  readonly #item: StatusBarItem;

  constructor(
    private readonly houseInView: () => Uri | undefined,
    private readonly standing: () => Standing,
  ) {
    this.#item = window.createStatusBarItem('wattwright.worst-finding', StatusBarAlignment.Left, 0);
    this.#item.name = 'Wattwright: worst finding';
    this.#item.command = 'workbench.actions.view.problems';
  }

  show(): void {
    const house = this.houseInView();
    if (!house) return this.#item.hide();
    const findings = languages.getDiagnostics(house);
    const worst = worstOf(findings);
    if (worst) this.#showFinding(worst, findings.length);
    else this.#showNone();
    this.#item.show();
  }

  #showFinding(worst: Diagnostic, count: number): void {
    this.#item.text = `${SIGNS[worst.severity]} ${shortened(worst.message)}`;
    this.#item.tooltip = `${worst.message}\n\n${count} in all; select to list them.`;
    this.#item.accessibilityInformation = { label: `Worst finding: ${worst.message}` };
    this.#item.backgroundColor = colourOf(worst.severity);
  }

  /** Nothing found is good news only from a server that looked. */
  #showNone(): void {
    const [sign, text] = NONE[this.standing()];
    this.#item.text = `${sign} ${text}`;
    this.#item.tooltip = undefined;
    this.#item.accessibilityInformation = { label: text };
    this.#item.backgroundColor = undefined;
  }

  dispose(): void {
    this.#item.dispose();
  }
}

/** The severest; among equals the one that stands first in the text. */
function worstOf(findings: readonly Diagnostic[]): Diagnostic | undefined {
  return [...findings].sort((a, b) => a.severity - b.severity || a.range.start.compareTo(b.range.start))[0];
}

function shortened(message: string): string {
  const line = message.split('\n', 1)[0] ?? '';
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1).trimEnd()}…` : line;
}

function colourOf(severity: DiagnosticSeverity): ThemeColor | undefined {
  if (severity === DiagnosticSeverity.Error) return new ThemeColor('statusBarItem.errorBackground');
  if (severity === DiagnosticSeverity.Warning) return new ThemeColor('statusBarItem.warningBackground');
  return undefined;
}
