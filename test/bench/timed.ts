import { Bench } from 'tinybench';

/** The latencies of `runs` calls in ms, as the task itself takes them; a few calls before warm it up. */
export async function timed(name: string, runs: number, task: () => Promise<number>): Promise<readonly number[]> {
  const bench = new Bench({
    iterations: runs,
    time: 0,
    warmupIterations: 10,
    warmupTime: 0,
    retainSamples: true,
    throws: true,
  });
  bench.add(name, async () => ({ overriddenDuration: await task() }));
  const [{ result }] = await bench.run();
  if (!('latency' in result) || !result.latency.samples) throw new Error(`${name} gave no samples`);
  return result.latency.samples;
}
