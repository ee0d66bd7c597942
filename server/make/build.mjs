// npm run build: what is generated, the texts that are shipped, then the bundles with their notices. With --watch it goes on building as sources change.
import { bundle, report, watch } from './bundle.mjs';
import { generate } from './generate.mjs';
import { licences, writeNotices } from './licences.mjs';
import { run } from './run.mjs';
import { copyTexts } from './texts.mjs';

try {
  await generate();
  copyTexts();
  if (process.argv.includes('--watch')) {
    await watch();
  } else {
    const built = await bundle();
    report(built);
    writeNotices(licences(built));
    if ((await run('server/make/manual.ts', ['dist/manual'])) !== 0)
      throw new Error('The manual could not be written.');
    if ((await run('server/make/warm.ts', [])) !== 0) throw new Error('The command line does not run.');
  }
} catch (fault) {
  console.error(`\nNot built. ${fault.message}`);
  process.exit(1);
}
