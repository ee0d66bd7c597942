import type { Input, Step } from '../../language/engine/worksheet.js';
import { print, type Dimension, type UnitSystem } from '../../language/units/index.js';

/*
 * The one renderer of worksheets, for hover, report and terminal. A formula is shown in symbols and with its numbers in SI,
 * the units in which it holds; the value of a line also stands in the reader's units.
 */

export interface WorksheetLook {
  readonly system?: UnitSystem | undefined;
  /** ISO 4217 code put in the place of `$`. */
  readonly currency?: string | undefined;
}

/** A worksheet as Markdown: one list item for each line, headings and totals in bold. */
export function worksheetMarkdown(steps: readonly Step[], look: WorksheetLook = {}): string {
  const lines: string[] = [];
  for (const step of steps) {
    const value = valueOf(step, look);
    const note = remarks(step);
    if (step.role === 'heading') {
      lines.push('', `**${inMarkdown(step.label)}**: ${value}${note && ` · *${inMarkdown(note)}*`}`, '');
      continue;
    }
    const name = step.role === 'total' ? `**${inMarkdown(step.label)}**` : inMarkdown(step.label);
    const amount = step.role === 'total' ? `**${value}**` : value;
    const working = step.formula
      ? `${code(step.formula)} = ${inMarkdown(withNumbers(step.formula, step.inputs, look))} = `
      : '';
    lines.push(`- ${name}: ${working}${amount}${note && `  \n  *${inMarkdown(note)}*`}`);
  }
  return lines.join('\n').trim();
}

/** A worksheet as plain text within a width: the value at the right, the formula and its source below the label. */
export function worksheetText(steps: readonly Step[], look: WorksheetLook & { readonly width?: number } = {}): string {
  const width = Math.max(40, look.width ?? 80);
  const lines: string[] = [];
  for (const step of steps) {
    if (step.role === 'heading' && lines.length) lines.push('');
    const margin = step.role === 'heading' || step.role === 'total' ? '' : '  ';
    lines.push(...beside(margin + step.label, valueOf(step, look), width));
    if (step.formula) {
      lines.push(...wrapped(step.formula, `${margin}    `, width));
      lines.push(...wrapped(`= ${withNumbers(step.formula, step.inputs, look)}`, `${margin}    `, width));
    }
    const note = remarks(step);
    if (note) lines.push(...wrapped(note, `${margin}    `, width));
    if (step.role === 'total') lines.push('');
  }
  return lines.join('\n').trimEnd();
}

/** `u * A` with its inputs put in: `0.35 W/m2K × 12 m2`. A negative number stands in brackets. */
export function withNumbers(formula: string, inputs: Step['inputs'] = {}, { currency }: WorksheetLook = {}): string {
  const put = (input: Input) => {
    const text = amount(input[0], input[1], { system: 'si', currency }, 4);
    return /^[−-]/.test(text) ? `(${text})` : text;
  };
  return formula
    .replace(/[A-Za-z_][A-Za-z0-9_]*/g, word => (Object.hasOwn(inputs, word) ? put(inputs[word]) : word))
    .replace(/ \* /g, ' × ');
}

/** In the reader's units; in SI as well when they are others, since the formula holds in SI. */
function valueOf({ value, dimension }: Step, look: WorksheetLook): string {
  const own = amount(value, dimension, look);
  if (look.system !== 'ip') return own;
  const si = amount(value, dimension, { ...look, system: 'si' });
  return si === own ? own : `${own} (${si})`;
}

function amount(value: number, dimension: Dimension, { system, currency }: WorksheetLook, figures = 3): string {
  return print(value, dimension, { system: system ?? 'si', figures, ...(currency ? { currency } : {}) });
}

const remarks = ({ note, source }: Step): string => [note, source].filter(Boolean).join('; ');
const code = (text: string): string => `\`${text.replaceAll('`', "'")}\``;

/** Letters that would be markup in Markdown are written as themselves. */
const inMarkdown = (text: string): string => text.replace(/[\\`*_[\]<>|~]/g, c => `\\${c}`);

/** Two texts on one line with dots between, or the second on a line of its own where they do not fit. */
function beside(left: string, right: string, width: number): string[] {
  const gap = width - left.length - right.length - 2;
  if (gap >= 2) return [`${left} ${'.'.repeat(gap)} ${right}`];
  return [...wrapped(left.trim(), /^ */.exec(left)![0], width), right.padStart(width)];
}

function wrapped(text: string, margin: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line && margin.length + line.length + 1 + word.length > width) {
      lines.push(margin + line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, margin + line];
}
