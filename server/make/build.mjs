// npm run build: what is generated, then the bundles. With --watch it goes on building as sources change.
import { bundle, report, watch } from './bundle.mjs';
import { generate } from './generate.mjs';

try {
  await generate();
  if (process.argv.includes('--watch')) await watch();
  else report(await bundle());
} catch (fault) {
  console.error(`\nNot built. ${fault.message}`);
  process.exit(1);
}
