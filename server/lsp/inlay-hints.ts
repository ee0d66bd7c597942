import { InlayHintKind, type InlayHint, type InlayHintParams } from 'vscode-languageserver';
import { modelOf, resultsOfBlock, viewOf, type AnalyzedHouse, type Fault } from '../../language/index.js';
import type { Declared, DeclaredProperty } from '../../language/build/index.js';
import { print } from '../../language/units/index.js';
import { blocks } from '../../language/vocabulary/index.js';
import type { Seen } from './feature.js';

/** Computed values beside the text: the U-value behind an assembly, the amperes behind a rating, °F behind °C. */
export function inlayHints({ analysis, lines, houses }: Seen, { range }: InlayHintParams): InlayHint[] {
  const { from, to } = lines.span(range);
  const hints: InlayHint[] = [];
  const walk = (b: Declared, house: AnalyzedHouse | undefined): void => {
    if (b.span.to < from || b.span.from > to || b.implicit) return;
    for (const p of b.properties.values()) {
      if (p.span.to < from || p.span.from > to) continue;
      const label = hintOf(b, p, house, analysis.settings.units, houses.fault);
      if (label)
        hints.push({ position: lines.position(p.valueSpan.to), label, kind: InlayHintKind.Type, paddingLeft: true });
    }
    for (const child of b.children) walk(child, house);
    for (const i of b.instructions) if (i.block) walk(i.block, house);
  };
  for (const b of analysis.file.declared.blocks)
    walk(
      b,
      analysis.houses.find(h => h.built.declared === b),
    );
  return hints;
}

function hintOf(
  b: Declared,
  { key, value }: DeclaredProperty,
  house: AnalyzedHouse | undefined,
  system: 'si' | 'ip',
  fault: Fault,
): string | undefined {
  const type = blocks.get(b.kind)?.properties[key];
  if (value.is === 'value' && type?.is === 'quantity' && type.dimension === 'temperature')
    return print(value.value as number, 'temperature', { system: system === 'si' ? 'ip' : 'si' });
  if (!house) return undefined;
  if (key === 'assembly') return resultHint(b, 'u-value', house, fault);
  if (key === 'rating' && value.is === 'value') return amperes(b, value.value as number, house);
  return undefined;
}

function resultHint(b: Declared, name: string, house: AnalyzedHouse, fault: Fault): string | undefined {
  const view = viewOf(b, house, undefined);
  const model = view && modelOf(b, view);
  const named = model && resultsOfBlock(model, view, fault).find(n => n.result.name === name);
  if (!named || !('value' in named.outcome)) return undefined;
  return `U ${house.say(named.outcome.value, named.result.dimension)}`;
}

/** A rating in watts over the voltage of the load. */
function amperes(b: Declared, watts: number, house: AnalyzedHouse): string | undefined {
  const rating = blocks.get(b.kind)?.properties['rating'];
  if (rating?.is !== 'quantity' || rating.dimension !== 'power' || !blocks.get(b.kind)?.properties['voltage'])
    return undefined;
  const view = viewOf(b, house, undefined);
  const model = view && modelOf(b, view);
  try {
    const { voltage } = (model ?? {}) as { voltage?: number };
    return voltage ? house.say(watts / voltage, 'current') : undefined;
  } catch {
    return undefined; // Its voltage is damaged and has a finding.
  }
}
