/** The settings that go into a backup, and what those of one would change here. */
import { problemText } from '../domain/case/fileFormat.ts';
import { readPractice } from '../domain/case/practiceFile.ts';
import { readProtocolShape } from '../domain/case/protocolFile.ts';
import type { Practice, VisitProtocol } from '../domain/protocol/types.ts';
import type { BackupSettings } from '../handoff/backup.types.ts';
import { SETTINGS_KEY, type Settings } from '../stores/stores.ts';
import { PRACTICE_KEY } from './people.ts';
import type { Devices } from './ports.ts';
import { PROTOCOLS_KEY } from './practice-store.ts';
import { soundSettings } from './settings.ts';

/** As they are read here, checked; `refused` says what cannot be used, a sentence each. */
export interface SoundBackupSettings {
  readonly preferences: Settings;
  readonly practice?: Practice;
  readonly protocols: readonly VisitProtocol[];
  readonly refused: readonly string[];
}

/** What is stored under each name, as it lies there. */
export async function settingsHere(settings: Devices['settings']): Promise<BackupSettings> {
  const [preferences, practice, protocols] = await Promise.all(
    [SETTINGS_KEY, PRACTICE_KEY, PROTOCOLS_KEY].map(async (name) => {
      const read = await settings.read(name);
      return read.ok ? read.value : undefined;
    }),
  );
  return {
    ...(preferences === undefined ? {} : { preferences }),
    ...(practice === undefined ? {} : { practice }),
    ...(protocols === undefined ? {} : { protocols }),
  };
}

/** Field by field, by the same rules as whatever lies on the disk. */
export function soundBackupSettings(given: BackupSettings, here: Settings): SoundBackupSettings {
  const practice = given.practice === undefined ? undefined : readPractice(given.practice);
  const read = (Array.isArray(given.protocols) ? (given.protocols as unknown[]) : []).map((one) =>
    readProtocolShape(one),
  );
  const refused = [practice, ...read].flatMap((one) => (one === undefined || one.ok ? [] : [problemText(one)]));
  return {
    preferences: soundSettings(given.preferences, here),
    ...(practice?.ok === true ? { practice: practice.value } : {}),
    protocols: read.flatMap((one) => (one.ok ? [one.value] : [])),
    refused,
  };
}

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

export const versionName = ({ id, version }: VisitProtocol): string => `${id}, version ${version}`;

/** Names of the settings as a person would say them. */
const NAMES: Readonly<Record<keyof Settings, string>> = {
  language: 'language',
  earMode: 'when the app listens',
  addressWord: 'address word',
  volume: 'volume',
  rate: 'pace',
  speech: 'reading aloud',
  keepAfterMs: 'pause before keeping',
  mayLeaveDevice: 'consent that speech may leave this device',
  standsAt: 'where this device stands',
  lockAfterMin: 'minutes until it locks',
  lockOnHide: 'locking when hidden',
  backupEveryDays: 'days between backups',
};

export interface SettingsHere {
  readonly preferences: Settings;
  readonly practice: Practice;
  readonly protocols: readonly VisitProtocol[];
}

/** What taking the settings of a backup would change here, a sentence each. Versions of a visit are added, never replaced. */
export function settingsChanges(given: SoundBackupSettings, here: SettingsHere): readonly string[] {
  const keys = (Object.keys(NAMES) as (keyof Settings)[]).filter(
    (key) => !same(given.preferences[key], here.preferences[key]),
  );
  const parts = Object.keys(given.practice ?? {}).filter(
    (key) => !same(given.practice?.[key as keyof Practice], here.practice[key as keyof Practice]),
  );
  const known = new Set(here.protocols.map(versionName));
  const added = given.protocols.filter((one) => !known.has(versionName(one)));
  return [
    ...keys.map((key) => `${NAMES[key]}: now ${String(here.preferences[key])}, then ${String(given.preferences[key])}`),
    ...(parts.length === 0 ? [] : [`the practice’s own settings: ${parts.join(', ')}`]),
    ...added.map((one) => `added: ${versionName(one)}`),
  ];
}
