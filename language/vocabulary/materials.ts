import { block, choice, count, flag, quantity, reference } from './define.js';

/** What houses are built of: materials, layers, framing, whole assemblies, glazings. */
export const materialBlocks = [
  block('material', {
    doc: 'A building material by its conductivity, or by its resistance where that does not follow from thickness.',
    properties: {
      conductivity: quantity('conductivity', { doc: 'Thermal conductivity.', within: ['0.01 W/mK', '400 W/mK'] }),
      'r-value': quantity('r-value', {
        doc: 'Resistance of the layer as it comes, whatever its thickness.',
        within: ['0.01 RSI', '15 RSI'],
      }),
      density: quantity('density', { doc: 'Density.', within: ['1 kg/m3', '9000 kg/m3'] }),
      'specific-heat': quantity('specific-heat', { doc: 'Specific heat.', within: ['300 J/kgK', '4500 J/kgK'] }),
    },
  }),
  block('assembly', {
    doc: 'What a wall, ceiling or floor is made of: layers from outside to inside, with framing; or one stated resistance.',
    also: ['construction', 'wall assembly', 'build-up'],
    holds: ['framing', 'layer'],
    properties: {
      'r-value': quantity('r-value', {
        doc: 'Resistance of the whole assembly with its framing and air films, stated instead of layers.',
        within: ['0.1 RSI', '20 RSI'],
        typical: ['20 R', '40 R', '60 R'],
      }),
      'u-value': quantity('u-value', {
        doc: 'Transmittance of the whole assembly, stated instead of layers.',
        within: ['0.05 W/m2K', '6 W/m2K'],
      }),
    },
  }),
  block('framing', {
    doc: 'Studs, joists or rafters that cross the layers marked `framed`.',
    once: true,
    properties: {
      material: reference(['material'], { doc: 'What the framing is made of.', required: true }),
      fraction: quantity('ratio', {
        doc: 'Part of the area that is framing: studs, plates and headers together.',
        within: ['0 %', '60 %'],
        default: '25 %',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 27: studs at 400 mm, 21 % studs and plates and 4 % headers',
      }),
      spacing: quantity('length', { doc: 'Distance from centre to centre.', within: ['200 mm', '1300 mm'] }),
      depth: quantity('length', { doc: 'Depth of the framing, across the wall.', within: ['20 mm', '600 mm'] }),
      method: choice(['parallel-path', 'combined'], {
        doc: 'How framed layers are averaged: parallel path (wood), or the upper and lower limit of ISO 6946.',
        default: 'parallel-path',
        source: 'ASHRAE Fundamentals (SI) 2021, ch. 27: parallel path for wood framing',
      }),
    },
  }),
  block('layer', {
    doc: 'One layer of an assembly, written from outside to inside.',
    properties: {
      material: reference(['material'], { doc: 'What the layer is made of.' }),
      thickness: quantity('length', { doc: 'Thickness.', within: ['0.1 mm', '1.5 m'] }),
      'r-value': quantity('r-value', {
        doc: 'Resistance of the layer, instead of material and thickness.',
        within: ['0.005 RSI', '15 RSI'],
      }),
      framed: flag({ doc: 'Whether framing crosses the layer.', default: false, source: 'assumed: continuous' }),
    },
  }),
  block('glazing', {
    doc: 'A window as a whole product, frame included.',
    also: ['window type'],
    properties: {
      'u-value': quantity('u-value', {
        doc: 'Transmittance of the whole window.',
        within: ['0.5 W/m2K', '7.5 W/m2K'],
        required: true,
      }),
      shgc: quantity('ratio', {
        doc: 'Solar heat gain coefficient of the whole window at normal incidence.',
        within: ['5 %', '90 %'],
      }),
      panes: count({ doc: 'Number of panes.', within: [1, 4] }),
    },
  }),
] as const;
