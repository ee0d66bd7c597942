import { at, rule } from '../define.js';

export default rule({
  code: 'plan/circuit-after-load',
  severity: 'error',
  title: 'load comes before its circuit',
  of: 'house',
  tier: 'meaning',
  *find(house, view) {
    const { heating, waterHeating, electrical } = house;
    const loads = [
      ...heating.heatPump,
      ...heating.airHandler,
      ...heating.airConditioner,
      ...waterHeating.waterHeater,
      ...electrical.evse,
      ...electrical.load,
      ...electrical.hotTub,
    ];
    for (const load of loads) if (!load.on && view.says(load, 'on')) yield { load, stage: view.stage };
    // A strip names a list of circuits: none of them stands.
    for (const strip of [...heating.auxiliary, ...heating.baseboard])
      if (!strip.on.length && view.says(strip, 'on')) yield { load: strip, stage: view.stage };
  },
  tell: ({ load, stage }) => ({
    at: at(load, 'on'),
    message: `${load.name} stands ${stage ? `in stage ${stage.name}` : 'today'}, and its circuit comes only later: circuits come before what hangs on them`,
  }),
});
