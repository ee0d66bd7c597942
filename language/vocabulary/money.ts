import {
  block,
  choice,
  choices,
  count,
  hours,
  monthDay,
  months,
  quantity,
  reference,
  references,
  text,
} from './define.js';

const energy = quantity('energy-price', { doc: 'Price of energy imported.', within: ['0 $/kWh', '3 $/kWh'] });
const exported = quantity('energy-price', { doc: 'Price paid for energy exported.', within: ['0 $/kWh', '3 $/kWh'] });

/** Tariffs, gas service, loan and outlook. */
export const moneyBlocks = [
  block('money', {
    section: true,
    doc: 'What energy costs and what the work is paid with.',
    also: ['finance', 'costs', 'rates'],
    holds: ['tariff', 'gas-service', 'outlook', 'loan', 'incentive', 'carbon'],
    properties: {},
  }),
  block('tariff', {
    doc: 'Electricity tariff: fixed charge, delivery on imports, and energy by plan, period or tier.',
    also: ['rate', 'electricity rate', 'time of use'],
    holds: ['plan', 'period', 'tier'],
    properties: {
      fixed: quantity('money-rate', {
        doc: 'Fixed charge.',
        within: ['0 $/month', '200 $/month'],
        default: '0 $/month',
        source: 'assumed',
      }),
      delivery: quantity('energy-price', {
        doc: 'Delivery charge, on imports only.',
        within: ['0 $/kWh', '1 $/kWh'],
        default: '0 $/kWh',
        source: 'assumed',
      }),
      tax: quantity('ratio', { doc: 'Tax on the bill.', within: ['0 %', '30 %'], default: '0 %', source: 'assumed' }),
      energy,
      export: exported,
    },
  }),
  block('plan', {
    doc: 'A plan of the tariff that the customer may choose, for some months.',
    properties: {
      energy,
      export: exported,
      months: months({ doc: 'Months in which the plan is meant.' }),
      notice: quantity('duration', { doc: 'Notice before switching.', within: ['0 d', '120 d'] }),
      'switches-per-year': count({ doc: 'How often one may switch in a year.', within: [0, 12] }),
      'export-credit-pays': choice(['energy', 'all'], {
        doc: 'What the export credit may pay for.',
        default: 'energy',
        source: 'assumed',
      }),
      'cash-out': monthDay({ doc: 'Day on which unused credit is paid out or lost.' }),
    },
  }),
  block('period', {
    doc: 'Hours with a price of their own.',
    also: ['time of use', 'peak'],
    properties: {
      energy,
      export: exported,
      days: choices(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun', 'weekdays', 'weekends'], {
        doc: 'Days on which it holds.',
      }),
      hours: hours({ doc: 'Hours in which it holds.' }),
      months: months({ doc: 'Months in which it holds.' }),
    },
  }),
  block('tier', {
    doc: 'Part of the use that has a price of its own.',
    also: ['block rate'],
    properties: {
      'up-to': quantity('annual-energy', {
        doc: 'Use up to which the tier holds; the last tier has none.',
        within: ['0 kWh/month', '20000 kWh/month'],
      }),
      energy,
    },
  }),
  block('gas-service', {
    doc: 'Gas service; it closes only when nothing is left on it.',
    once: true,
    also: ['natural gas', 'gas meter'],
    properties: {
      fixed: quantity('money-rate', { doc: 'Fixed charge.', within: ['0 $/month', '200 $/month'], required: true }),
      energy: quantity('fuel-price', {
        doc: 'Price of gas with all charges by volume.',
        within: ['0 $/GJ', '80 $/GJ'],
        required: true,
      }),
      'closing-fee': quantity('money', {
        doc: 'Fee for closing the service.',
        within: ['0 $', '5000 $'],
        default: '0 $',
        source: 'assumed',
      }),
      serves: references(['furnace', 'boiler', 'water-heater', 'load'], { doc: 'What it serves.' }),
    },
  }),
  block('outlook', {
    doc: 'Rates by which future money is weighed.',
    once: true,
    also: ['escalation', 'discount rate', 'net present value'],
    properties: {
      discount: quantity('ratio', {
        doc: 'Discount rate a year.',
        within: ['0 %', '20 %'],
        default: '4 %',
        source: 'assumed',
      }),
      'electricity-escalation': quantity('ratio', {
        doc: 'Rise of the electricity price a year.',
        within: ['-5 %', '15 %'],
        default: '2 %',
        source: 'assumed',
      }),
      'gas-escalation': quantity('ratio', {
        doc: 'Rise of the gas price a year.',
        within: ['-5 %', '15 %'],
        default: '2 %',
        source: 'assumed',
      }),
      horizon: quantity('duration', {
        doc: 'Years over which money is counted.',
        within: ['1 yr', '50 yr'],
        default: '20 yr',
        source: 'assumed',
      }),
    },
  }),
  block('loan', {
    doc: 'Loan that pays for stages.',
    also: ['financing', 'mortgage'],
    properties: {
      principal: quantity('money', { doc: 'Amount borrowed.', within: ['0 $', '1000000 $'], required: true }),
      rate: quantity('ratio', { doc: 'Interest a year.', within: ['0 %', '30 %'], required: true }),
      term: quantity('duration', {
        doc: 'Time over which it is paid back.',
        within: ['1 month', '40 yr'],
        required: true,
      }),
      compounding: choice(['monthly', 'half-yearly', 'yearly'], {
        doc: 'How interest is compounded.',
        default: 'monthly',
        source: 'common practice for loans; mortgages in Canada are half-yearly',
      }),
      starts: reference(['stage'], { doc: 'Stage with which it starts.' }),
    },
  }),
  block('incentive', {
    doc: 'Grant or rebate, with what it asks for.',
    also: ['rebate', 'grant'],
    ofStage: true,
    properties: {
      amount: quantity('money', { doc: 'Amount.', within: ['0 $', '200000 $'], required: true }),
      requires: choices(['pre-audit', 'post-audit', 'permit', 'licensed-installer', 'prior-approval'], {
        doc: 'What it asks for.',
      }),
      deadline: { doc: 'Last day to apply.', is: 'date', presence: 'optional' } as const,
      note: text({ doc: 'What else it asks for.' }),
    },
  }),
  block('carbon', {
    doc: 'Emission factors.',
    once: true,
    also: ['emissions', 'greenhouse gas'],
    properties: {
      electricity: quantity('carbon-intensity', {
        doc: 'Emissions of grid electricity.',
        within: ['0 g/kWh', '1500 g/kWh'],
        required: true,
      }),
      gas: quantity('carbon-intensity', {
        doc: 'Emissions of natural gas.',
        within: ['100 g/kWh', '400 g/kWh'],
        default: '181 g/kWh',
        source: 'national inventory factor, about 50 kg/GJ (from memory)',
      }),
      source: text({ doc: 'Inventory and year.' }),
    },
  }),
] as const;
