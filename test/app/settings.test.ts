import { describe, expect, it } from 'vitest';
import { soundSettings } from '../../src/app/settings.ts';
import { defaultSettings, type Settings } from '../../src/stores/stores.ts';

const chosen: Settings = {
  language: 'de',
  earMode: 'push',
  addressWord: 'hey rim',
  speech: false,
  volume: 0.4,
  rate: 1.3,
  keepAfterMs: 4000,
  mayLeaveDevice: true,
  standsAt: 'lab',
  lockAfterMin: 15,
  lockOnHide: true,
  backupEveryDays: 30,
};

describe('stored preferences', () => {
  it('that are sound are taken as they are', () => {
    expect(soundSettings(chosen)).toEqual(chosen);
    expect(soundSettings(JSON.parse(JSON.stringify(chosen)))).toEqual(chosen);
  });

  it.each([undefined, null, 'text', 7, [], {}])('%j is none at all', (stored) => {
    expect(soundSettings(stored)).toEqual(defaultSettings);
  });

  it.each([
    ['language', 'it'],
    ['earMode', 'sometimes'],
    ['addressWord', 'one two three'],
    ['addressWord', 'Rim'],
    ['addressWord', 'r2'],
    ['addressWord', 62],
    ['addressWord', ' '],
    ['speech', 'yes'],
    ['volume', 1.01],
    ['volume', Number.NaN],
    ['rate', 0.4],
    ['rate', 2.1],
    ['keepAfterMs', -1],
    ['keepAfterMs', 60_001],
    ['keepAfterMs', Number.POSITIVE_INFINITY],
    ['mayLeaveDevice', 'true'],
    ['mayLeaveDevice', 1],
    ['standsAt', 'hall'],
  ] as const)('a %s of %j stays at its default, the others are kept', (name, value) => {
    expect(soundSettings({ ...chosen, [name]: value })).toEqual({ ...chosen, [name]: defaultSettings[name] });
  });

  it('what is not a preference is dropped', () => {
    expect(soundSettings({ ...chosen, toString: 1, colour: 'red', __proto__: { language: 'fr' } })).toEqual(chosen);
  });

  it('an unsound change leaves what was there', () => {
    expect(soundSettings({ volume: 7, rate: 1.5 }, chosen)).toEqual({ ...chosen, rate: 1.5 });
  });
});
