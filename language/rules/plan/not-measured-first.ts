import { at, rule, type View } from '../define.js';

export default rule({
  code: 'plan/not-measured-first',
  severity: 'warning',
  title: 'shell changed before it was measured',
  of: 'stage',
  tier: 'meaning',
  *find(stage, view) {
    const { before } = view;
    if (!before || measured(before) || measured(view) || !shellChanges(before, view)) return;
    // Told where the shell changes first.
    for (let v = before; v.before; v = v.before) if (shellChanges(v.before, v)) return;
    yield { stage };
  },
  tell: ({ stage }) => ({
    at: at(stage),
    message:
      'the shell changes here, and no blower-door-test has measured it before: what the work brings cannot be shown',
  }),
});

const measured = ({ house }: View): boolean => house.envelope.blowerDoorTest.length > 0;

/** Whether a stage gives a part of the envelope another construction. */
function shellChanges(before: View, after: View): boolean {
  const { ceiling, wall, floor, basementWall, basementFloor, rimJoist } = after.house.envelope;
  return [...ceiling, ...wall, ...floor, ...basementWall, ...basementFloor, ...rimJoist].some(part => {
    const earlier = after.same(part, before);
    return (
      earlier !== undefined &&
      (earlier.assembly?.name !== part.assembly?.name ||
        earlier.rValue !== part.rValue ||
        earlier.uValue !== part.uValue)
    );
  });
}
