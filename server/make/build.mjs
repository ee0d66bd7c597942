// npm run build: what is generated, then the bundles with their notices. With --watch it goes on building as sources change.
import { bundle, report, watch } from './bundle.mjs';
import { generate } from './generate.mjs';
import { licences, writeNotices } from './licences.mjs';

try {
  await generate();
  if (process.argv.includes('--watch')) {
    await watch();
  } else {
    const built = await bundle();
    report(built);
    writeNotices(licences(built));
  }
} catch (fault) {
  console.error(`\nNot built. ${fault.message}`);
  process.exit(1);
}
