import type { Place } from './on-device.ts';
import { placeOf } from './on-device.ts';
import type { BlockCause, VoiceHost } from './types.ts';
import type { VoiceWindow, WebRecognitionMaker } from './web-types.ts';

/** `prompting`: the browser is about to ask the person. `unknown`: it does not tell beforehand. */
export type Gate =
  | { readonly open: true; readonly onDevice: boolean; readonly microphone: 'granted' | 'prompting' | 'unknown' }
  | { readonly open: false; readonly cause: BlockCause };

export interface GateParts {
  readonly window: VoiceWindow;
  readonly maker: WebRecognitionMaker;
  readonly host: VoiceHost;
  /** What is known about a language so far; a broken promise of the browser is written in here. */
  readonly places: Map<string, Place>;
  mayLeaveDevice(): boolean;
}

const ANSWER_MS = 2000;

/** Some of these questions are never answered; then the default counts. */
function within<T>(host: VoiceHost, promise: Promise<T>, otherwise: T): Promise<T> {
  return new Promise((resolve) => {
    const timer = host.setTimeout(() => resolve(otherwise), ANSWER_MS);
    const settle = (value: T): void => {
      host.clearTimeout(timer);
      resolve(value);
    };
    promise.then(settle, () => settle(otherwise));
  });
}

async function microphone({ window, host }: GateParts): Promise<'granted' | 'prompting' | 'denied' | 'unknown'> {
  const { permissions } = window.navigator;
  if (!permissions) return 'unknown';
  const asked = Promise.resolve().then(() => permissions.query({ name: 'microphone' }));
  const { state } = await within(host, asked, { state: 'unknown' });
  if (state === 'granted' || state === 'denied') return state;
  return state === 'prompt' ? 'prompting' : 'unknown';
}

async function place({ maker, host, places }: GateParts, tag: string): Promise<Place> {
  const known = places.get(tag);
  if (known) return known;
  const found = await within<Place>(host, placeOf(maker, tag), 'unknown');
  places.set(tag, found);
  return found;
}

/** Whether listening may begin: on the device if the browser promises that, elsewhere only with consent. */
export async function gate(parts: GateParts, tag: string): Promise<Gate> {
  const onDevice = (await place(parts, tag)) === 'onDevice';
  if (!onDevice && !parts.mayLeaveDevice()) return { open: false, cause: 'consent' };
  const permission = await microphone(parts);
  if (permission === 'denied') return { open: false, cause: 'denied' };
  return { open: true, onDevice, microphone: permission };
}
