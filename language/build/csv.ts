import { parse } from 'csv-parse/browser/esm/sync';

export interface Csv {
  readonly header: readonly string[];
  /** Line numbers count from 1, the header included. */
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
}

/** A csv with one header line; comment lines begin with `#`. Text without quotes is split, anything else parsed in full. */
export function readCsv(text: string): Csv | { readonly problem: string } {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const all = clean.includes('"') ? parsed(clean) : split(clean);
  if ('problem' in all) return all;
  const [header, ...rows] = all.rows;
  if (!header) return { problem: 'the file is empty' };
  const names = header.cells.map(c => c.trim());
  const ragged = rows.find(r => r.cells.length !== names.length);
  if (ragged)
    return { problem: `line ${ragged.line} has ${ragged.cells.length} cells, and the header ${names.length}` };
  return { header: names, rows };
}

function split(text: string): { rows: { line: number; cells: string[] }[] } {
  const rows: { line: number; cells: string[] }[] = [];
  for (const [i, line] of text.split(/\r\n|\n|\r/).entries())
    if (line.trim() && !line.startsWith('#')) rows.push({ line: i + 1, cells: line.split(',') });
  return { rows };
}

function parsed(text: string): { rows: { line: number; cells: string[] }[] } | { problem: string } {
  try {
    const records = parse(text, {
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      comment: '#',
    }) as unknown as {
      record: string[];
      info: { lines: number };
    }[];
    return { rows: records.map(({ record, info }) => ({ line: info.lines, cells: record })) };
  } catch (fault) {
    return { problem: fault instanceof Error ? fault.message : String(fault) };
  }
}
