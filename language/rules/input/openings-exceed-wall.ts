import { at, rule } from '../define.js';

export default rule({
  code: 'input/openings-exceed-wall',
  severity: 'error',
  title: 'openings larger than their wall',
  of: 'wall',
  tier: 'meaning',
  *find(wall) {
    const openings = [...wall.window, ...wall.door];
    const area = openings.reduce((sum, o) => sum + o.area, 0);
    if (area > wall.area) yield { wall, openings, area };
  },
  tell: ({ wall, openings, area }, say) => ({
    at: at(wall, 'area'),
    message: `the openings of ${wall.name} have ${say(area, 'area')}, and the wall with them ${say(wall.area, 'area')}: an area or its unit is wrong`,
    related: openings.map(o => ({ at: at(o, 'area'), message: `${say(o.area, 'area')} of ${o.name}` })),
  }),
});
