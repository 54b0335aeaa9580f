import { createReadBack } from './read-back.ts';
import type { Voice, VoiceHost } from './types.ts';
import { createVoice } from './voice.ts';
import { voiceWindow } from './web-types.ts';
import { createWebSpeech } from './web-speech.ts';

export function browserVoiceHost(): VoiceHost {
  return {
    now: () => Date.now(),
    setTimeout: (run, ms) => globalThis.setTimeout(run, ms),
    clearTimeout: (id) => globalThis.clearTimeout(id),
  };
}

/** Ear and voice on the browser's own speech, whatever of it there is. */
export function createBrowserVoice(
  window: object,
  options: { readonly mayLeaveDevice: () => boolean; readonly host?: VoiceHost },
): Voice {
  const { mayLeaveDevice, host = browserVoiceHost() } = options;
  const page = voiceWindow(window);
  return createVoice({
    recogniser: createWebSpeech(page, { host, mayLeaveDevice }),
    speaker: createReadBack(page, { host, mayLeaveDevice }),
    host,
  });
}
