import { readFileSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { CLEAN, FAULTY, folderOf, wattwright } from './harness.js';

describe('what is checked', () => {
  it('is a file, a folder with all below it, a pattern, or the current folder', async () => {
    const folder = folderOf({
      'a.house': CLEAN,
      'plans/b.house': FAULTY,
      'plans/deep/c.house': CLEAN,
      'plans/notes.txt': FAULTY,
      'node_modules/x/d.house': FAULTY,
      '.hidden/e.house': FAULTY,
    });
    const files = async (...paths: string[]) => {
      const { out } = await wattwright(['check', '--format', 'json', ...paths], { folder });
      return (JSON.parse(out) as { summary: { files: number } }).summary.files;
    };
    expect(await files('a.house')).toBe(1);
    expect(await files('plans')).toBe(2);
    expect(await files('plans/*.house')).toBe(1);
    expect(await files('**/*.house')).toBe(3);
    expect(await files()).toBe(3);
    expect(await files('plans', 'plans/b.house', './plans/../plans/b.house')).toBe(2);
  });

  it('comes by standard input, under the name that it is given', async () => {
    const folder = folderOf({ 'lib/x.house': 'assembly mine { r-value: 12 R }\n' });
    const text = `import "x.house"\nhouse h { envelope { ceiling c { area: 9 m2, assembly: mine } } }\n`;
    const named = await wattwright(['check', '-', '--stdin-filename', 'lib/new.house'], { folder, piped: text });
    expect(named).toMatchObject({ exit: 0, err: '' });
    const unnamed = await wattwright(['check', '-'], { folder, piped: FAULTY });
    expect(unnamed.out).toContain('<stdin>:2:24  error input/unknown-choice');
    expect(unnamed.exit).toBe(1);
    const forgotten = await wattwright(['check', '--stdin-filename', 'new.house'], { folder, piped: text });
    expect(forgotten).toMatchObject({ exit: 2, out: '' });
  });

  it('is told when it cannot be read, and the rest is checked', async () => {
    const folder = folderOf({ 'a.house': FAULTY, 'empty/notes.txt': '' });
    const { exit, out, err } = await wattwright(['check', 'a.house', 'b.house', 'empty', '*.home'], { folder });
    expect(exit).toBe(2);
    expect(out).toContain('a.house:2:24');
    expect(err).toBe(
      'wattwright: b.house is not read: there is no such file or folder\n' +
        'wattwright: empty is not read: there is no .house file in it\n' +
        'wattwright: *.home is not read: no file matches this pattern\n',
    );
  });

  it.runIf(process.platform !== 'win32')('is told when it is there and cannot be opened', async () => {
    const folder = folderOf({});
    symlinkSync('circle.house', path.join(folder, 'circle.house'));
    const { exit, err } = await wattwright(['check', 'circle.house'], { folder });
    expect(exit).toBe(2);
    expect(err).toBe('wattwright: circle.house is not read: its links lead in a circle\n');
  });

  it('is no folder that is called like a house, and no device', async () => {
    const folder = folderOf({ 'x.house/inner.house': CLEAN });
    expect((await wattwright(['check', 'x.house'], { folder })).exit).toBe(0);
    if (process.platform === 'win32') return;
    const { exit, err } = await wattwright(['check', '/dev/zero'], { folder });
    expect(exit).toBe(2);
    expect(err).toContain('it is no ordinary file');
  });
});

describe('files of the project', () => {
  const importing = (name: string) => `import "${name}"\n${CLEAN}`;

  it('are read up to the repository, and no further', async () => {
    const folder = folderOf({
      'outside.house': 'assembly out { r-value: 12 R }\n',
      'repo/.git/HEAD': '',
      'repo/lib/mine.house': 'assembly mine { r-value: 12 R }\n',
      'repo/plans/ok.house': importing('../lib/mine.house'),
      'repo/plans/bad.house': importing('../../outside.house'),
    });
    const ok = await wattwright(['check', 'repo/plans/ok.house'], { folder });
    expect(ok.exit).toBe(0);
    const bad = await wattwright(['check', 'repo/plans/bad.house'], { folder });
    expect(bad.out).toContain('error input/file-outside');
  });

  it('may lie in the folder that was named, or around a settings file', async () => {
    const files = {
      'lib/mine.house': 'assembly mine { r-value: 12 R }\n',
      'plans/a.house': importing('../lib/mine.house'),
    };
    const bare = folderOf(files);
    expect((await wattwright(['check', '.'], { folder: bare })).exit).toBe(0);
    expect((await wattwright(['check', 'plans/a.house'], { folder: bare })).out).toContain('input/file-outside');
    const withSettings = folderOf({ ...files, 'wattwright.json': '{}' });
    expect((await wattwright(['check', 'plans/a.house'], { folder: withSettings })).exit).toBe(0);
  });

  it.runIf(process.platform !== 'win32')('are not read through links that lead outside', async () => {
    const secret = folderOf({ 'secret.house': 'assembly secret { r-value: 12 R }\n' });
    const folder = folderOf({ 'a.house': importing('link.house'), 'b.house': importing('linked/secret.house') });
    symlinkSync(path.join(secret, 'secret.house'), path.join(folder, 'link.house'));
    symlinkSync(secret, path.join(folder, 'linked'));
    const { out } = await wattwright(['check', '.', '--format', 'json'], { folder });
    const found = JSON.parse(out) as { findings: { code: string }[]; summary: { files: number } };
    expect(found.findings.map(f => f.code)).toEqual(['input/file-missing', 'input/file-missing']);
    expect(found.summary.files).toBe(2);
  });
});

describe('the exit code', () => {
  it('is 1 from the severity on that was asked for', async () => {
    const folder = folderOf({ 'clean.house': CLEAN, 'warned.house': FAULTY.replace('grad,', 'grade,') });
    const exit = async (...args: string[]) => (await wattwright(['check', ...args], { folder })).exit;
    expect(await exit('clean.house', '--fail-on', 'info')).toBe(0);
    expect(await exit('warned.house')).toBe(0);
    expect(await exit('warned.house', '--fail-on', 'warning')).toBe(1);
    expect(await exit('warned.house', '--fail-on', 'info')).toBe(1);
  });

  it('is 2 for a wrong use, with what is nearest', async () => {
    const tell = async (...args: string[]) => {
      const { exit, out, err } = await wattwright(args);
      expect({ exit, out }).toEqual({ exit: 2, out: '' });
      return err;
    };
    expect(await tell('chek')).toContain('Did you mean check?');
    expect(await tell('check', '--formt', 'json')).toContain('Did you mean --format?');
    expect(await tell('check', '--format', 'xml')).toContain('Allowed choices are text, json');
    expect(await tell('check', '--date', '2026-02-30')).toContain('YYYY-MM-DD');
    expect(await tell('check', '--fail-on', 'never')).toContain('Allowed choices are error, warning, info');
    expect(await tell('check', 'samples/start', '--output', 'no/such/folder/x.txt')).toContain('cannot be written');
    expect(await tell('plans/a.house')).toContain('To check it: wattwright check plans/a.house');
    expect(await tell()).toContain('Usage: wattwright');
  });
});

describe('json', () => {
  it('is complete when there are findings, with places for people and for programs', async () => {
    const folder = folderOf({ 'plans/a.house': FAULTY });
    const { exit, out } = await wattwright(['check', 'plans', '--format', 'json'], { folder });
    expect(exit).toBe(1);
    const run = JSON.parse(out) as Record<string, unknown> & { findings: Record<string, unknown>[] };
    expect(run).toMatchObject({
      version: 1,
      date: '2026-06-01',
      summary: { files: 1, houses: 1, errors: 1, warnings: 1, infos: 0 },
      faults: [],
      unread: [],
    });
    expect(run.findings[0]).toMatchObject({
      code: 'input/unknown-choice',
      severity: 'error',
      path: 'plans/a.house',
      from: { line: 2, column: 24, offset: 38 },
      to: { line: 2, column: 34, offset: 48 },
      house: 'faulty',
      stages: [],
      related: [],
      fixes: ['Write above-grade'],
    });
    expect(FAULTY.slice(38, 48)).toBe('above-grad');
  });

  it('tells what several files find in one that they share only once', async () => {
    const folder = folderOf({
      'lib.house': 'assembly mine { r-value: 12 kg }\n',
      'a.house': `import "lib.house"\n${CLEAN}`,
      'b.house': `import "lib.house"\n${CLEAN}`,
    });
    const { out } = await wattwright(['check', '.', '--format', 'json'], { folder });
    expect((JSON.parse(out) as { findings: unknown[] }).findings).toHaveLength(1);
  });

  it('goes to a file, and the count alone to the terminal', async () => {
    const folder = folderOf({ 'a.house': FAULTY });
    const { out } = await wattwright(['check', 'a.house', '--format', 'json', '--output', 'out.json'], { folder });
    expect(out).toBe('1 error, 1 warning (1 house in 1 file)\n');
    expect(JSON.parse(readFileSync(path.join(folder, 'out.json'), 'utf8'))).toMatchObject({ version: 1 });
  });
});

it('checks by the day that it is given', async () => {
  const folder = folderOf({
    'a.house': `house a {
  envelope { wall w { area: 12000 m2, r-value: 2.1 RSI, accept input/implausible because "a hall" until 2026-07-01 } }
}
`.replace(', accept', '\n accept'),
  });
  expect((await wattwright(['check', 'a.house', '--date', '2026-07-01'], { folder })).exit).toBe(0);
  expect((await wattwright(['check', 'a.house', '--date', '2026-07-02'], { folder })).out).toContain('accept/expired');
});
