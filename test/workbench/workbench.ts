import { spawn, spawnSync } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { cpSync, createWriteStream, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium as launcher } from 'playwright-core';
import type { Browser } from 'playwright-core';
import { chromium, editorFolder } from './readiness.js';

/** The editor without anything that moves, asks, or looks for a network. */
const SETTINGS = {
  'workbench.startupEditor': 'none',
  'workbench.reduceMotion': 'on',
  'workbench.enableExperiments': false,
  'workbench.tips.enabled': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'window.menuBarVisibility': 'compact',
  'editor.minimap.enabled': false,
  'files.autoSave': 'off',
  'extensions.autoCheckUpdates': false,
  'extensions.autoUpdate': false,
  'extensions.ignoreRecommendations': true,
  'telemetry.telemetryLevel': 'off',
  'chat.disableAIFeatures': true,
  'chat.commandCenter.enabled': false,
  'git.enabled': false,
  // The banner would hide what is looked for; the restricted mode itself stays.
  'security.workspace.trust.banner': 'never',
  'security.workspace.trust.startupPrompt': 'never',
};

export type Trust = 'everything' | 'asks';

export interface WorkbenchOptions {
  /** Extension to install; left out when it is run from its folder. */
  readonly vsix?: string;
  /** `asks`: a folder opens in restricted mode until somebody trusts it. */
  readonly trust: Trust;
}

export interface Place {
  readonly folder: string;
  /** File to open, relative to the folder. */
  readonly file?: string;
  /** Further parts of the start of a window, as the workbench names them. */
  readonly payload?: readonly (readonly [string, string])[];
}

/** A workbench served on this machine, with data, extensions and sockets in a folder of its own. */
export class Workbench {
  private constructor(
    readonly port: number,
    private readonly scratch: string,
    private readonly child: ChildProcess,
  ) {}

  static async start({ vsix, trust }: WorkbenchOptions): Promise<Workbench> {
    // A short path: unix sockets lie in it, and their paths are limited to about 100 characters.
    const scratch = mkdtempSync(path.join(tmpdir(), 'ww-'));
    const user = path.join(scratch, 'data/data/User');
    mkdirSync(user, { recursive: true });
    writeFileSync(path.join(user, 'settings.json'), JSON.stringify(SETTINGS));
    const env: NodeJS.ProcessEnv = {
      ...process.env,
      XDG_RUNTIME_DIR: scratch,
      EXTENSIONS_GALLERY: '{"serviceUrl":""}',
    };
    // Set by a surrounding workbench, this would keep ours from starting by itself.
    delete env['CODE_SERVER_PARENT_PID'];
    const main = path.join(editorFolder, 'out/server-main.js');
    const common = [
      ...['--extensions-dir', path.join(scratch, 'extensions')],
      ...['--server-data-dir', path.join(scratch, 'data')],
      ...['--accept-server-license-terms', '--telemetry-level', 'off'],
    ];
    if (vsix) install(main, [...common, '--install-extension', vsix], env);
    const serve = ['--host', '127.0.0.1', '--port', '0', '--without-connection-token', '--enable-smoke-test-driver'];
    const trusting = trust === 'everything' ? ['--disable-workspace-trust'] : [];
    // Detached, so that the whole group of processes can be ended together.
    const child = spawn(process.execPath, [main, ...serve, ...trusting, ...common], {
      env,
      stdio: ['ignore', 'pipe', 'pipe'],
      detached: true,
    });
    return new Workbench(await portOf(child, path.join(scratch, 'server.log')), scratch, child);
  }

  /** A copy of a folder, so that a test may change it. */
  copyOf(folder: string): string {
    const copy = mkdtempSync(path.join(this.scratch, 'folder-'));
    cpSync(folder, copy, { recursive: true });
    return copy;
  }

  url({ folder, file, payload = [] }: Place): string {
    const open = file ? [['openFile', this.remote(path.join(folder, file))] as const] : [];
    const parts = encodeURIComponent(JSON.stringify([...open, ...payload]));
    return `http://127.0.0.1:${this.port}/?folder=${encodeURIComponent(folder)}&payload=${parts}`;
  }

  remote(file: string): string {
    return `vscode-remote://127.0.0.1:${this.port}${path.resolve(file)}`;
  }

  stop(): void {
    if (this.child.pid !== undefined && this.child.exitCode === null) process.kill(-this.child.pid, 'SIGTERM');
    this.child.stdout?.destroy();
    this.child.stderr?.destroy();
    this.child.unref();
    rmSync(this.scratch, { recursive: true, force: true, maxRetries: 5 });
  }
}

export function launchBrowser(): Promise<Browser> {
  const args = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-sync'];
  return launcher.launch({
    ...(chromium ? { executablePath: chromium } : {}),
    args: [...args, '--disable-background-networking', '--disable-component-update'],
  });
}

function install(main: string, args: readonly string[], env: NodeJS.ProcessEnv): void {
  const done = spawnSync(process.execPath, [main, ...args], { env, encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`The extension could not be installed:\n${done.stdout}${done.stderr}`);
}

function portOf(child: ChildProcess, logFile: string): Promise<number> {
  const log = createWriteStream(logFile);
  let said = '';
  return new Promise((resolve, reject) => {
    const listen = (chunk: Buffer) => {
      log.write(chunk);
      said += chunk.toString();
      const port = /agent listening on (\d+)/.exec(said)?.[1];
      if (port) resolve(Number(port));
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', listen);
    child.on('exit', code => reject(new Error(`The workbench ended with ${code}:\n${said}`)));
  });
}
