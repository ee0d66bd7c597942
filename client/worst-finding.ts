import { DiagnosticSeverity, languages, StatusBarAlignment, ThemeColor, window } from 'vscode';
import type { Diagnostic, Disposable, StatusBarItem, Uri } from 'vscode';

const SIGNS = {
  [DiagnosticSeverity.Error]: '$(error)',
  [DiagnosticSeverity.Warning]: '$(warning)',
  [DiagnosticSeverity.Information]: '$(info)',
  [DiagnosticSeverity.Hint]: '$(lightbulb)',
};

/** Longest message in the status bar, in characters; the whole one is on hover and in the Problems view. */
const LONGEST = 60;

/** Status item of the house in view: its worst finding in a few words, and the way to all of them. */
export class WorstFinding implements Disposable {
  readonly #item: StatusBarItem;

  constructor(private readonly houseInView: () => Uri | undefined) {
    this.#item = window.createStatusBarItem('wattwright.worst-finding', StatusBarAlignment.Left, 0);
    this.#item.name = 'Wattwright: worst finding';
    this.#item.command = 'workbench.actions.view.problems';
  }

  show(): void {
    const house = this.houseInView();
    if (!house) return this.#item.hide();
    const findings = languages.getDiagnostics(house);
    const worst = worstOf(findings);
    this.#item.text = worst ? `${SIGNS[worst.severity]} ${shortened(worst.message)}` : '$(check) House: no findings';
    this.#item.tooltip = worst ? `${worst.message}\n\n${findings.length} in all; select to list them.` : undefined;
    this.#item.backgroundColor = colourOf(worst);
    this.#item.accessibilityInformation = { label: worst ? `Worst finding: ${worst.message}` : 'House: no findings' };
    this.#item.show();
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

function colourOf(worst: Diagnostic | undefined): ThemeColor | undefined {
  if (worst?.severity === DiagnosticSeverity.Error) return new ThemeColor('statusBarItem.errorBackground');
  if (worst?.severity === DiagnosticSeverity.Warning) return new ThemeColor('statusBarItem.warningBackground');
  return undefined;
}
