/** Reporter for vitest: ends a run with one plain line that any log reader can count. */
export default class Tally {
  onTestRunEnd(modules, errors) {
    const count = { passed: 0, failed: errors.length, skipped: 0 };
    for (const module of modules) {
      const tests = [...module.children.allTests()];
      for (const test of tests) count[test.result().state] = (count[test.result().state] ?? 0) + 1;
      if (module.state() === 'failed' && !tests.some(test => test.result().state === 'failed')) count.failed += 1;
    }
    process.stdout.write(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped\n`);
  }
}
