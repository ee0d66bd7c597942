import { at, rule } from '../define.js';

export default rule({
  code: 'panel/spaces',
  severity: 'error',
  title: 'panel has too few spaces',
  of: 'panel',
  tier: 'meaning',
  *find(panel, view) {
    const left = view.result('spaces-left', panel);
    const used = view.result('spaces-used', panel);
    if (left !== undefined && used !== undefined && left < 0) yield { panel, used, missing: -left };
  },
  tell: ({ panel, used, missing }) => ({
    at: at(panel, 'spaces'),
    message: `the breakers take ${used} spaces, ${missing} more than the ${panel.spaces} of this panel`,
  }),
});
