import { at, rule } from '../define.js';

/** What keeps the house warm; everything else can wait. */
const HEAT: readonly string[] = ['auxiliary', 'baseboard', 'heat-pump'];

export default rule({
  code: 'management/sheds-heat-first',
  severity: 'warning',
  title: 'shed order drops heat before charging',
  of: 'load-manager',
  tier: 'meaning',
  *find(manager) {
    const chargers = manager.channel.filter(({ sheds }) => sheds.is === 'evse');
    for (const heat of manager.channel.filter(({ sheds }) => HEAT.includes(sheds.is))) {
      const kept = chargers.find(charger => charger.shedOrder > heat.shedOrder);
      if (kept) yield { heat, kept };
    }
  },
  tell: ({ heat, kept }) => ({
    at: at(heat, 'shed-order'),
    message: `${heat.sheds.name} is shed ${ordinal(heat.shedOrder)}, before ${kept.sheds.name}, which is shed ${ordinal(kept.shedOrder)}: the house cools while the vehicle charges`,
    related: [{ at: at(kept, 'shed-order'), message: 'the vehicle charger is kept longer' }],
  }),
  mend: ({ heat, kept }) => [
    {
      title: `Shed ${kept.sheds.name} before ${heat.sheds.name}`,
      changes: [
        { set: at(heat, 'shed-order'), to: String(kept.shedOrder) },
        { set: at(kept, 'shed-order'), to: String(heat.shedOrder) },
      ],
      preferred: true,
    },
  ],
});

const ordinal = (n: number): string => ['first', 'second', 'third', 'fourth'][n - 1] ?? `as number ${n}`;
