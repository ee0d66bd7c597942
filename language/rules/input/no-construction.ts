import { at, rule, type Rule } from '../define.js';

/** Parts of the envelope that are made of something; a rule for each kind, so that one damaged part hides no other. */
const PARTS = ['ceiling', 'wall', 'rim-joist', 'floor', 'basement-wall', 'basement-floor'] as const;

export const noConstruction: readonly Rule[] = [
  ...PARTS.map(of =>
    rule({
      code: 'input/no-construction',
      severity: 'error',
      title: 'part of the envelope made of nothing',
      of,
      tier: 'meaning',
      *find(part) {
        if (part.assembly === undefined && part.uValue === undefined && part.rValue === undefined) yield part;
      },
      tell: part => ({
        at: at(part),
        message: `${part.is} ${part.name} says neither assembly, nor u-value, nor r-value: its heat loss is not known`,
      }),
    }),
  ),
  rule({
    code: 'input/no-construction',
    severity: 'error',
    title: 'window of no kind',
    of: 'window',
    tier: 'meaning',
    *find(window) {
      if (window.glazing === undefined && window.uValue === undefined) yield window;
    },
    tell: window => ({
      at: at(window),
      message: `window ${window.name} says neither glazing nor u-value: its heat loss is not known`,
    }),
  }),
];
