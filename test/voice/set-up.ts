import { FakeHost } from '../../src/time/fake-host.ts';
import { createFakeWindow, type FakeSpeechOptions } from '../../src/voice/fake.ts';
import { createReadBack } from '../../src/voice/read-back.ts';
import type { RecogniserEvent, Spoken } from '../../src/voice/types.ts';
import { createVoice } from '../../src/voice/voice.ts';
import { createWebSpeech } from '../../src/voice/web-speech.ts';

export const START = 1_800_000_000_000;

export interface Wanted extends FakeSpeechOptions {
  readonly userAgent?: string;
  readonly languages?: readonly string[];
  readonly mayLeaveDevice?: boolean;
}

/** The real recogniser on a made-up window, in made-up time. */
export function ear({ mayLeaveDevice = true, ...wanted }: Wanted = {}) {
  const host = new FakeHost(START);
  const { window, speech } = createFakeWindow({ host, ...wanted });
  const consent = { given: mayLeaveDevice };
  const recogniser = createWebSpeech(window, { host, mayLeaveDevice: () => consent.given });
  const heard: Spoken[] = [];
  const interim: string[] = [];
  const states: string[] = [];
  recogniser.onEvent((event: RecogniserEvent) => {
    if (event.kind === 'heard') heard.push(event.spoken);
    else if (event.kind === 'interim') interim.push(event.text);
    else states.push(event.state.state === 'blocked' ? `blocked ${event.state.cause}` : event.state.state);
  });
  const texts = (): string[] => heard.map(({ text }) => text);
  const listen = async (): Promise<void> => {
    recogniser.start('en');
    await host.run(50);
  };
  return { host, window, speech, consent, recogniser, heard, texts, interim, states, listen };
}

/** Ear and voice together, on a made-up window, in made-up time. */
export function earAndVoice({ mayLeaveDevice = true, ...wanted }: Wanted = {}) {
  const host = new FakeHost(START);
  const { window, speech } = createFakeWindow({ host, ...wanted });
  const may = { mayLeaveDevice: () => mayLeaveDevice };
  const recogniser = createWebSpeech(window, { host, ...may });
  const speaker = createReadBack(window, { host, ...may });
  const voice = createVoice({ recogniser, speaker, host });
  const texts: string[] = [];
  const troubles: string[] = [];
  voice.onSpoken(({ text }) => texts.push(text));
  voice.onTrouble((why) => troubles.push(why));
  return { host, speech, recogniser, speaker, voice, texts, troubles };
}
