import type { BuiltHouse, Declared, Instruction, Report } from '../build/index.js';
import { rules } from '../rules/index.js';
import type { Tier } from '../results/index.js';
import { nearest } from '../units/index.js';
import { acceptableCodes } from './codes.js';
import type { Finding } from './finding.js';
import { reaches, type Found } from './judge.js';
import type { StageView } from './views.js';

interface Acceptance {
  readonly instruction: Instruction;
  readonly block: Declared;
  /** Stages in which it holds. */
  readonly from: readonly StageView[];
  used: boolean;
}

/** What a house accepts, with its reason. Findings that it silences are taken out; what it does not silence is told. */
export class Acceptances {
  private readonly list: Acceptance[] = [];

  constructor(
    private readonly house: BuiltHouse,
    views: readonly StageView[],
    private readonly today: string,
    private readonly report: Report,
  ) {
    this.collect(house.declared, views);
    for (const view of views) {
      const { declared } = view.built;
      if (declared) this.collect(declared, [view, ...(view.later as StageView[])]);
    }
  }

  private collect(block: Declared, from: readonly StageView[]): void {
    for (const instruction of block.instructions) {
      if (instruction.does === 'accept') this.judgeOne(instruction, block, from);
      if (instruction.block) this.collect(instruction.block, from);
    }
    for (const child of block.children) if (child.kind !== 'stage') this.collect(child, from);
  }

  private judgeOne(instruction: Instruction, block: Declared, from: readonly StageView[]): void {
    const { code, reason, until, untilSpan } = instruction;
    if (!code || !reason?.trim()) return;
    if (!acceptableCodes.has(code.name)) {
      const near = nearest(code.name, acceptableCodes);
      this.report.add(
        'accept/unknown-code',
        code.span,
        near
          ? `there is no finding ${code.name}; the nearest is ${near}`
          : `there is no finding ${code.name} that can be accepted`,
        near ? { replace: [[`Write ${near}`, near]] } : {},
      );
      return;
    }
    if (until !== undefined && until < this.today) {
      this.report.add(
        'accept/expired',
        untilSpan ?? instruction.span,
        `this was accepted until ${until}, and today is ${this.today}`,
      );
      return;
    }
    this.list.push({ instruction, block, from, used: false });
  }

  /** Whether a finding of a rule in one stage is accepted. */
  silences(found: Found): boolean {
    return this.mark(found, a => a.from.includes(found.view) && this.holds(a.block, found, found.view));
  }

  /** Whether a finding about the text alone is accepted: it must stand within the block. */
  silencesText(finding: Finding): boolean {
    return this.mark(finding, a => within(finding, a.block));
  }

  private mark(finding: Finding, matches: (a: Acceptance) => boolean): boolean {
    let silenced = false;
    for (const a of this.list) {
      if (a.instruction.code!.name !== finding.code || !matches(a)) continue;
      a.used = true;
      silenced = true;
    }
    return silenced;
  }

  private holds(block: Declared, found: Found, view: StageView): boolean {
    if (block === this.house.declared || block.kind === 'stage') return true;
    if (within(found, block)) return true;
    for (const [address, e] of view.built.places)
      if (e.declared === block) return found.address === address || Boolean(found.address?.startsWith(`${address}/`));
    return false;
  }

  /** Those that silenced nothing; only for codes that were looked for. */
  tellUnused(upto: Tier): void {
    for (const { instruction, used } of this.list) {
      if (used) continue;
      const { code, span } = instruction;
      const rule = rules.find(r => r.code === code!.name);
      if (rule && !reaches(upto, rule.tier)) continue;
      this.report.add('accept/unused', span, `nothing is found of ${code!.name} here; the acceptance can go`, {
        mend: () => [
          {
            title: 'Remove the acceptance',
            changes: [{ uri: this.report.uri, from: span.from, to: span.to, text: '' }],
          },
        ],
      });
    }
  }
}

const within = (f: { uri: string; from: number; to: number }, b: Declared): boolean =>
  f.uri === b.uri && f.from >= b.span.from && f.to <= b.span.to;
