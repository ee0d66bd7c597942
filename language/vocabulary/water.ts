import { block, choice, count, flag, quantity, reference } from './define.js';

/** Hot water. */
export const waterBlocks = [
  block('water-heating', {
    section: true,
    doc: 'Water heaters, and how much hot water is drawn.',
    also: ['domestic hot water', 'DHW'],
    holds: ['water-heater', 'drain-water-recovery'],
    properties: {
      'daily-draw': quantity('daily-volume', {
        doc: 'Hot water drawn in a day; from the occupants when left out.',
        within: ['10 L/d', '1500 L/d'],
      }),
      'first-hour-draw': quantity('volume', { doc: 'Most hot water drawn in one hour.', within: ['10 L', '800 L'] }),
    },
  }),
  block('water-heater', {
    doc: 'A water heater: storage or tankless, by fuel, element or heat pump. Hot water scalds: local rules on set temperature and mixing valves apply.',
    also: ['hot water tank', 'HPWH', 'heat-pump water heater', 'geyser'],
    properties: {
      kind: choice(['storage', 'tankless', 'heat-pump'], { doc: 'How it makes hot water.', required: true }),
      fuel: choice(['natural-gas', 'propane', 'oil', 'electricity'], {
        doc: 'What it uses.',
        default: 'electricity',
        source: 'assumed',
      }),
      volume: quantity('volume', { doc: 'Volume of the tank.', within: ['20 L', '700 L'] }),
      mode: choice(['hybrid', 'heat-pump-only', 'element'], {
        doc: 'How a heat-pump water heater is set.',
        default: 'hybrid',
        source: 'common practice: as delivered',
      }),
      element: quantity('power', { doc: 'Power of the largest element that can run.', within: ['300 W', '36 kW'] }),
      'compressor-input': quantity('power', { doc: 'Electric input of the compressor.', within: ['100 W', '3 kW'] }),
      simultaneous: flag({ doc: 'Whether compressor and element can run at once.', default: false, source: 'assumed' }),
      voltage: quantity('voltage', {
        doc: 'Rated voltage.',
        within: ['100 V', '250 V'],
        default: '240 V',
        source: 'common practice: 240 V',
      }),
      uef: quantity('number', { doc: 'Uniform energy factor.', within: ['0.3', '5'] }),
      'set-point': quantity('temperature', {
        doc: 'Set temperature.',
        within: ['35 °C', '85 °C'],
        default: '60 °C',
        source: 'common practice: against legionella, with a mixing valve against scalding',
      }),
      'mixing-valve': flag({
        doc: 'Whether a mixing valve limits the temperature at the taps.',
        default: false,
        source: 'assumed',
      }),
      'minimum-room': quantity('volume', { doc: 'Smallest room that the maker allows.', within: ['0 m3', '100 m3'] }),
      'lowest-air': quantity('temperature', {
        doc: 'Lowest air temperature at which the compressor runs.',
        within: ['-15 °C', '20 °C'],
      }),
      room: reference(['room'], { doc: 'Room in which it stands.' }),
      'vents-by': reference(['opening'], { doc: 'Flue that it uses.' }),
      draft: choice(['natural', 'fan-assisted', 'sealed'], {
        doc: 'How the flue gas is moved.',
        default: 'natural',
        source: 'assumed: the unfavourable case',
      }),
      'first-hour': quantity('volume', { doc: 'First-hour rating.', within: ['20 L', '1000 L'] }),
      'standby-loss': quantity('conductance', {
        doc: 'Heat loss coefficient of the tank.',
        within: ['0.2 W/K', '10 W/K'],
      }),
      output: quantity('heat-flow', {
        doc: 'Heat given to the water by burner or compressor.',
        within: ['300 W', '60 kW'],
      }),
      mca: quantity('current', { doc: 'Minimum circuit ampacity on the nameplate.', within: ['3 A', '150 A'] }),
      on: reference(['circuit'], { doc: 'Circuit that feeds it.' }),
    },
  }),
  block('drain-water-recovery', {
    doc: 'Heat exchanger on the shower drain.',
    properties: {
      efficiency: quantity('ratio', { doc: 'Effectiveness at equal flow.', within: ['5 %', '80 %'], required: true }),
      showers: count({ doc: 'Showers that drain through it.', within: [1, 10], default: 1, source: 'assumed' }),
    },
  }),
] as const;
