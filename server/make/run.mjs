// Runs one of the project's TypeScript files: Node 20 does not, so it is bundled first, with packages left where they are.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './prepare.mjs';

/** Bundles `file` into dist/make and runs it with `args` in the project's folder; resolves to its exit code. */
export async function run(file, args) {
  const { build } = await import('esbuild');
  const bundle = path.join(root, 'dist/make', `${path.relative(root, path.resolve(file)).replace(/[\\/]/g, '-')}.mjs`);
  await build({
    entryPoints: [path.resolve(file)],
    outfile: bundle,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    sourcemap: 'inline',
    logLevel: 'warning',
  });
  const child = spawn(process.execPath, ['--enable-source-maps', bundle, ...args], { cwd: root, stdio: 'inherit' });
  return new Promise((resolve, reject) => child.on('error', reject).on('exit', code => resolve(code ?? 1)));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [file, ...args] = process.argv.slice(2);
  process.exitCode = await run(file, args);
}
