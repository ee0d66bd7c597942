import { inputCodes } from '../../language/build/index.js';
import { rules, type Severity } from '../../language/rules/index.js';
import { dimensions, type DimensionEntry } from '../../language/units/index.js';
import { blocks } from '../../language/vocabulary/index.js';
import { blockPage, blocksPage, firstSentence, resultsPage } from './reference.js';

/** One page of the manual; the links between pages are relative. */
export interface ManualPage {
  readonly file: string;
  readonly text: string;
}

/** The page of a finding as it stands beside its rule. */
export interface FindingPage {
  readonly code: string;
  readonly text: string;
  /** What it says, in its first paragraph. */
  readonly summary: string;
}

/** A command as its own help tells it. */
export interface CommandHelp {
  readonly name: string;
  readonly help: string;
}

/** The reference manual: blocks, results, findings and units, all from the tables that the programs themselves use. */
export function manual(findings: readonly FindingPage[], commands: readonly CommandHelp[]): ManualPage[] {
  return [
    { file: 'README.md', text: contents(findings.length) },
    { file: 'blocks.md', text: blocksPage(kind => `[\`${kind}\`](blocks/${kind}.md)`) },
    ...[...blocks.values()].map(block => ({
      file: `blocks/${block.kind}.md`,
      text: blockPage(block, kind => `[\`${kind}\`](${kind}.md)`),
    })),
    { file: 'results.md', text: resultsPage() },
    { file: 'units.md', text: unitsPage() },
    { file: 'commands.md', text: commandsPage(commands) },
    { file: 'findings.md', text: findingsPage(findings) },
    ...findings.map(({ code, text }) => ({ file: `findings/${code}.md`, text })),
  ];
}

const contents = (findings: number): string => `# Reference of the house language

- [Blocks](blocks.md): the ${blocks.size} kinds of blocks with their properties, limits and defaults
- [Results](results.md): the numbers that a house is computed to
- [Findings](findings.md): the ${findings} things that can be told of a house, each with its reason and examples
- [Units](units.md): what quantities are measured in
- [Commands](commands.md): the command line, its exit codes and its forms of output

Work on services, panels, gas, refrigerant and combustion is for licensed trades. Local codes and the authority having
jurisdiction decide.
`;

function findingsPage(findings: readonly FindingPage[]): string {
  const parts = ['# Findings'];
  for (const severity of ['error', 'warning', 'info'] as const) {
    const some = findings.filter(f => severityOf(f.code) === severity);
    const items = some.map(f => `- [\`${f.code}\`](findings/${f.code}.md): ${firstSentence(f.summary)}`);
    if (items.length) parts.push(`## ${HEADINGS[severity]}`, items.join('\n'));
  }
  return `${parts.join('\n\n')}\n`;
}

const HEADINGS: Record<Severity, string> = {
  error: 'Errors: unsafe, against the named code, not readable, or the house does not work',
  warning: 'Warnings: likely trouble',
  info: 'Notes: worth knowing',
};

/** As it is unless a project decides otherwise. What the reader tells of the writing is always an error. */
function severityOf(code: string): Severity {
  const known: Readonly<Record<string, Severity>> = inputCodes;
  return rules.find(r => r.code === code)?.severity ?? known[code] ?? 'error';
}

function commandsPage(commands: readonly CommandHelp[]): string {
  const own = commands.map(({ name, help }) => `## ${name}\n\n\`\`\`text\n${help.trimEnd()}\n\`\`\``);
  return `# Commands

Paths are files, folders with every \`.house\` file below them, patterns, or \`-\` for standard input. Packages
(\`node_modules\`) and hidden folders are left out and links are not followed. A house reads files of its project alone:
the repository around it, else the outermost folder with a \`wattwright.json\`, else the folder that was named.

Exit codes: 0 clean, 1 findings at or above \`--fail-on\`, 2 wrong use or something that cannot be read, 3 an internal
fault, whose stack \`WATTWRIGHT_DEBUG=1\` shows.

${own.join('\n\n')}

## Forms of output

\`check --format json\` is complete whatever the exit code: \`version\`, \`date\`, \`summary\` (counts), \`findings\`, \`unread\` (paths that could
not be read) and \`faults\` (of the program). A finding has its \`code\`, \`severity\`, \`message\`, \`path\` from the current folder, \`from\` and \`to\`
(\`line\` and \`column\` from 1, \`offset\` from 0, both in UTF-16 units), \`house\`, \`address\` (its place in the model, which stays when
lines move), \`stages\` in which it holds, \`related\` places, titles of \`fixes\`, and \`unnecessary\` for text that does nothing.

\`calc --format json\` has for each house and stage the \`results\`: \`name\`, \`dimension\`, the number \`si\` in coherent SI units (temperatures
in °C, ratios as fractions) with its \`text\`, or the reason why it is \`withheld\`; with \`--worksheet\` the lines of its calculation.
\`calc --format csv\` has the columns file, house, stage, result, value, unit, si, withheld.
`;
}

function unitsPage(): string {
  const rows = Object.entries<DimensionEntry>(dimensions).map(([name, d]) => {
    const units = (of: DimensionEntry['si']) => of.map(([unit]) => (unit ? `\`${unit}\`` : '–')).join(', ');
    return `| ${name} | ${d.doc} | ${units(d.si)} | ${units(d.ip)} |`;
  });
  return `# Units

Any unit of the right dimension may be written; those of the table are the ones that values are printed in.

| dimension | what it is | SI | inch-pound |
|---|---|---|---|
${rows.join('\n')}
`;
}
