import { spawn, spawnSync } from 'node:child_process';
import { closeSync, copyFileSync, existsSync, openSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CLEAN, FAULTY, folderOf, ROOT } from './harness.js';

const CLI = path.join(ROOT, 'dist/server/cli.js');
const { NO_COLOR: _, FORCE_COLOR: __, ...ENV } = process.env;

const start = (args: readonly string[], env: NodeJS.ProcessEnv = {}, cli = CLI) =>
  spawnSync(process.execPath, [cli, ...args], { encoding: 'utf8', cwd: ROOT, env: { ...ENV, ...env } });

describe('the program as it is shipped', () => {
  it('says its version and its help', () => {
    const { version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { version: string };
    expect(start(['--version'])).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: '' });
    const help = start(['--help']);
    expect(help).toMatchObject({ status: 0, stderr: '' });
    for (const command of ['check', 'calc', 'format', 'explain', 'lsp']) {
      expect(help.stdout).toContain(`  ${command} `);
      const own = start([command, '--help']);
      expect(own.stdout).toContain(`Usage: wattwright ${command}`);
      if (command !== 'lsp') expect(own.stdout).toContain(`\nExamples:\n  wattwright ${command} `);
    }
  });

  it('gives its exit codes to the shell', () => {
    const folder = folderOf({ 'clean.house': CLEAN, 'faulty.house': FAULTY });
    const exit = (file: string) => start(['check', path.join(folder, file)]).status;
    expect([exit('clean.house'), exit('faulty.house'), exit('none.house')]).toEqual([0, 1, 2]);
  });

  it('shows colours only where they are seen or asked for', () => {
    const colours = (env: NodeJS.ProcessEnv) => start(['check', 'samples/faults'], env).stdout.includes('\u001b[');
    expect(colours({})).toBe(false);
    expect(colours({ FORCE_COLOR: '1' })).toBe(true);
    expect(colours({ FORCE_COLOR: '1', NO_COLOR: '1' })).toBe(false);
  });

  it('keeps json clean and complete through a pipe', () => {
    const { status, stdout, stderr } = start(['check', 'samples', '--format', 'json']);
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    expect(JSON.parse(stdout)).toMatchObject({ version: 1, faults: [] });
  });

  it.runIf(process.platform !== 'win32')('ends quietly when the reader of its output goes away', async () => {
    const child = spawn(process.execPath, [CLI, 'calc', 'samples', '--all', '--worksheet'], { cwd: ROOT });
    let err = '';
    child.stderr.on('data', (data: Buffer) => (err += data.toString()));
    child.stdout.once('data', () => child.stdout.destroy());
    const status = await new Promise(resolve => child.on('close', resolve));
    expect(err.replace(/^.*wattwright check .* tells them\n/gm, '')).toBe('');
    expect(status).toBe(0);
  });

  it.runIf(process.platform === 'linux')('does not call it clean when its output is lost', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(process.execPath, [CLI, 'check', 'samples/start'], {
      encoding: 'utf8',
      cwd: ROOT,
      stdio: ['ignore', full, 'pipe'],
    });
    closeSync(full);
    expect(status).toBe(2);
    expect(stderr).toContain('wattwright: the output cannot be written: ');
  });

  it('runs the same without what was compiled before', () => {
    const folder = folderOf({ 'server/package.json': '{ "type": "commonjs" }', 'a.house': FAULTY });
    for (const name of ['cli.js', 'wattwright.js'])
      copyFileSync(path.join(ROOT, 'dist/server', name), path.join(folder, 'server', name));
    expect(readdirSync(path.join(ROOT, 'dist/server')).filter(f => f.endsWith('.cache'))).toHaveLength(1);
    const bare = start(['check', path.join(folder, 'a.house')], {}, path.join(folder, 'server/cli.js'));
    expect(bare.stdout).toBe(start(['check', path.join(folder, 'a.house')]).stdout);
    expect(bare.status).toBe(1);
  });

  it('says what is missing of a damaged installation', () => {
    const folder = folderOf({ 'server/package.json': '{ "type": "commonjs" }' });
    for (const name of ['cli.js', 'wattwright.js'])
      copyFileSync(path.join(ROOT, 'dist/server', name), path.join(folder, 'server', name));
    const cli = path.join(folder, 'server/cli.js');
    const lsp = start(['lsp'], {}, cli);
    expect(lsp.status).toBe(2);
    expect(lsp.stderr).toContain('the language server is missing');
    const explain = start(['explain', 'wall'], {}, cli);
    expect(explain.status).toBe(3);
    expect(explain.stderr).toMatch(/^internal fault in wattwright explain: the pages .* are missing/);
    expect(explain.stderr).not.toContain('    at ');
    expect(start(['explain', 'wall'], { WATTWRIGHT_DEBUG: '1' }, cli).stderr).toContain('    at ');
  });

  it('finds the pages of findings beside itself', () => {
    expect(existsSync(path.join(ROOT, 'dist/rules/input/unit-slip.md'))).toBe(true);
    expect(start(['explain', 'input/unit-slip'])).toMatchObject({ status: 0, stderr: '' });
  });

  it('is a language server when it is asked to be one', async () => {
    const child = spawn(process.execPath, [CLI, 'lsp'], { cwd: ROOT });
    const message = (body: object) => {
      const text = JSON.stringify({ jsonrpc: '2.0', ...body });
      child.stdin.write(`Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`);
    };
    let out = '';
    const answered = new Promise<void>(resolve =>
      child.stdout.on('data', (data: Buffer) => {
        out += data.toString();
        if (out.includes('"capabilities"')) resolve();
      }),
    );
    message({ id: 1, method: 'initialize', params: { processId: null, rootUri: null, capabilities: {} } });
    await answered;
    message({ id: 2, method: 'shutdown' });
    message({ method: 'exit' });
    expect(await new Promise(resolve => child.on('close', resolve))).toBe(0);
  });
});
