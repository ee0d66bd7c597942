import { block, choice, count, date, flag, quantity, reference, table, text } from './define.js';

/** Solar arrays, inverters and their connection. */
export const solarBlocks = [
  block('solar', {
    section: true,
    doc: 'Solar generation and its connection. The utility and the authority having jurisdiction decide on both.',
    also: ['photovoltaics', 'PV'],
    holds: ['array', 'inverter', 'module', 'interconnection'],
    properties: {
      'offset-target': quantity('ratio', {
        doc: 'Part of the yearly use that the array shall make.',
        within: ['0 %', '200 %'],
      }),
    },
  }),
  block('module', {
    doc: 'A solar module by its data at standard test conditions.',
    properties: {
      rating: quantity('power', {
        doc: 'Power at standard test conditions.',
        within: ['50 W', '800 W'],
        required: true,
      }),
      coefficient: quantity('temperature-coefficient', {
        doc: 'Change of power per kelvin.',
        within: ['-1 %/K', '0 %/K'],
        default: '-0.35 %/K',
        source: 'common practice: crystalline silicon',
      }),
      'open-circuit': quantity('voltage', { doc: 'Open-circuit voltage.', within: ['10 V', '120 V'] }),
      'open-circuit-coefficient': quantity('temperature-coefficient', {
        doc: 'Change of open-circuit voltage per kelvin.',
        within: ['-1 %/K', '0 %/K'],
        default: '-0.27 %/K',
        source: 'common practice: crystalline silicon, from memory',
      }),
      'short-circuit': quantity('current', { doc: 'Short-circuit current.', within: ['1 A', '25 A'] }),
      width: quantity('length', { doc: 'Width.', within: ['0.3 m', '2 m'] }),
      height: quantity('length', { doc: 'Height.', within: ['0.5 m', '3 m'] }),
    },
  }),
  block('array', {
    doc: 'Modules of one slope and direction.',
    also: ['solar array', 'panels', 'PV array'],
    properties: {
      modules: count({ doc: 'Number of modules.', within: [1, 300], required: true }),
      module: reference(['module'], { doc: 'Type of module.', required: true }),
      tilt: quantity('angle', { doc: 'Slope from the horizontal.', within: ['0 deg', '90 deg'], required: true }),
      azimuth: quantity('angle', {
        doc: 'Direction, clockwise from north; south is 180 deg.',
        within: ['0 deg', '360 deg'],
        required: true,
      }),
      inverter: reference(['inverter'], { doc: 'Inverter that it feeds; the only one when left out.' }),
      strings: count({ doc: 'Strings in parallel.', within: [1, 30] }),
      losses: quantity('ratio', {
        doc: 'All losses beside temperature, angle and inverter.',
        within: ['0 %', '60 %'],
        default: '14 %',
        source: 'common practice: combined soiling, mismatch, wiring, availability',
      }),
      horizon: table({ azimuth: 'angle', height: 'angle' }, { doc: 'Height of the horizon by direction.', minimum: 2 }),
      'roof-area': quantity('area', { doc: 'Area of roof that may be covered.', within: ['1 m2', '500 m2'] }),
      snow: quantity('ratio', { doc: 'Part of the winter yield lost to snow.', within: ['0 %', '100 %'] }),
    },
  }),
  block('inverter', {
    doc: 'Inverter and where it connects.',
    properties: {
      rating: quantity('power', {
        doc: 'Highest alternating-current output.',
        within: ['200 W', '60 kW'],
        required: true,
      }),
      at: reference(['panel'], {
        doc: 'Where it connects: a panel, the supply side of the main, or the meter.',
        or: ['supply-tap', 'meter'],
        required: true,
      }),
      on: reference(['circuit'], { doc: 'Circuit by which it feeds a panel.' }),
      'largest-voltage': quantity('voltage', {
        doc: 'Highest direct-current voltage that it takes.',
        within: ['50 V', '1500 V'],
      }),
      efficiency: quantity('ratio', {
        doc: 'Weighted efficiency.',
        within: ['80 %', '99.5 %'],
        default: '96 %',
        source: 'common practice',
      }),
      'export-limit': quantity('power', { doc: 'Power to which export is held.', within: ['0 kW', '60 kW'] }),
    },
  }),
  block('interconnection', {
    doc: 'What the utility allows and has approved.',
    once: true,
    also: ['net metering', 'utility approval'],
    properties: {
      'annual-cap': quantity('ratio', {
        doc: 'Largest yearly generation against yearly use that the utility allows.',
        within: ['0 %', '300 %'],
      }),
      'export-limit': quantity('power', { doc: 'Largest export that the utility allows.', within: ['0 kW', '100 kW'] }),
      'size-limit': quantity('power', { doc: 'Largest inverter that the utility allows.', within: ['0 kW', '100 kW'] }),
      evidence: text({ doc: 'What shows future use, where the cap relies on loads not yet installed.' }),
      approved: flag({ doc: 'Whether the approval is in hand.', default: false, source: 'assumed' }),
      date: date({ doc: 'Day of the approval.' }),
      metering: choice(['net', 'net-billing', 'feed-in'], { doc: 'How generation is settled.' }),
    },
  }),
] as const;
