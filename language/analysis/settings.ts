import type { Severity } from '../rules/index.js';
import { nearest, type UnitSystem } from '../units/index.js';
import { settableCodes } from './codes.js';

/** What a project decides for everybody who reads it: in `wattwright.json`, found upwards from the house file. */
export interface Settings {
  /** Units of messages and results; texts may be written in any. */
  readonly units: UnitSystem;
  readonly severity: Readonly<Record<string, Severity | 'off'>>;
}

export const SETTINGS_FILE = 'wattwright.json';
export const defaults: Settings = { units: 'si', severity: {} };

/** Reads the project file; whatever is wrong with it is said, and nothing of it is used. */
export function readSettings(text: string): { settings: Settings } | { problem: string } {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return { problem: 'it must be an object in braces' };
  const { units = 'si', severity = {}, $schema, ...rest } = json as Record<string, unknown>;
  void $schema;
  const unknown = Object.keys(rest)[0];
  if (unknown !== undefined)
    return { problem: `there is no setting "${unknown}"; the settings are units and severity` };
  if (units !== 'si' && units !== 'ip') return { problem: 'units is "si" or "ip"' };
  if (typeof severity !== 'object' || severity === null || Array.isArray(severity))
    return { problem: 'severity names codes with error, warning, info or off' };
  for (const [code, level] of Object.entries(severity)) {
    if (!settableCodes.has(code)) {
      const near = nearest(code, settableCodes);
      return {
        problem: `there is no finding ${code} whose severity can be set${near ? `; the nearest is ${near}` : ''}`,
      };
    }
    if (!['error', 'warning', 'info', 'off'].includes(level as string))
      return { problem: `severity of ${code} is error, warning, info or off` };
  }
  return { settings: { units, severity: severity as Settings['severity'] } };
}
