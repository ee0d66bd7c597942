import type { Paint } from './paint.js';
import { cells, visible, wrap } from './width.js';

/*
 * Markdown of our own pages as text in a terminal: headings, paragraphs, lists and fences. Anything
 * else is shown as it is written.
 */

interface Look {
  readonly paint: Paint;
  readonly columns: number;
}

const LIST = /^(\s*)(?:[-*]|\d+\.)\s+/;

export function markdownText(markdown: string, look: Look): string {
  const out: string[] = [];
  const lines = markdown.replaceAll('\r\n', '\n').split('\n');
  for (let i = 0; i < lines.length;) {
    const line = lines[i];
    if (line.startsWith('```')) {
      const end = lines.findIndex((l, j) => j > i && l.startsWith('```'));
      const stop = end < 0 ? lines.length : end;
      out.push(...fence(line.slice(3).trim(), lines.slice(i + 1, stop), look));
      i = stop + 1;
      continue;
    }
    const heading = /^(#+)\s+(.*)$/.exec(line);
    if (heading) {
      out.push(look.paint('bold', visible(plainOf(heading[2]))));
      i++;
      continue;
    }
    if (!line.trim()) {
      out.push('');
      i++;
      continue;
    }
    let text = line;
    for (i++; i < lines.length && lines[i].trim() && !/^(#|```)/.test(lines[i]) && !LIST.test(lines[i]); i++)
      text += ` ${lines[i].trim()}`;
    out.push(...paragraph(text, look));
  }
  return `${out.join('\n').trim()}\n`;
}

/** A fence that names its file says so above it. */
function fence(info: string, lines: readonly string[], { paint }: Look): string[] {
  const file = /file=(\S+)/.exec(info)?.[1];
  const body = lines.map(l => `    ${/^\/\/\s*\^/.test(l) ? paint('red', visible(l)) : visible(l)}`);
  return file ? [paint('dim', `    ${file}`), ...body] : body;
}

function paragraph(text: string, look: Look): string[] {
  const bullet = LIST.exec(text);
  const indent = bullet ? bullet[1] : '';
  const mark = bullet ? `${indent}- ` : '';
  const body = text.slice(bullet ? bullet[0].length : 0);
  const lines = wrap(visible(plainOf(body)), look.columns - cells(mark));
  return lines.map((line, i) => (i ? ' '.repeat(cells(mark)) : mark) + line);
}

/** Inline marks taken away: a terminal has one weight of text that can be read everywhere. */
function plainOf(text: string): string {
  return text
    .replace(/\[([^\]]*)\]\(([^)]*)\)/g, '$1 ($2)')
    .replace(/\*\*([^*]+)\*\*/g, '$1')
    .replace(/(^|[\s(])\*([^*\s][^*]*)\*/g, '$1$2')
    .replace(/`([^`]*)`/g, '$1')
    .replace(/\\([\\`*_[\]<>|~])/g, '$1');
}
