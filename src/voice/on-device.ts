import type { OnDevice } from './types.ts';
import type { WebRecognitionMaker } from './web-types.ts';

/** Where speech would be turned into words. */
export type Place = 'onDevice' | 'elsewhere' | 'unknown';

/**
 * `onDevice` only if the browser promises it for this language; everything else may send speech away. (The browser's
 * answer about remote recognition means nothing: it says "available" with the network off.)
 */
export async function placeOf(maker: WebRecognitionMaker, tag: string): Promise<Place> {
  if (!maker.available) return 'unknown';
  try {
    const answer = await maker.available({ langs: [tag], processLocally: true });
    return answer === 'available' ? 'onDevice' : 'elsewhere';
  } catch {
    return 'unknown';
  }
}

const STATES: Readonly<Record<string, OnDevice>> = {
  available: 'ready',
  downloadable: 'fetchable',
  downloading: 'fetching',
};

/** How the language stands on this device, in the browser's own words; whatever else it says counts as no. */
export async function onDeviceState(maker: WebRecognitionMaker | undefined, tag: string): Promise<OnDevice> {
  if (!maker?.available) return 'unavailable';
  try {
    const state = STATES[await maker.available({ langs: [tag], processLocally: true })] ?? 'unavailable';
    return state === 'fetchable' && !maker.install ? 'unavailable' : state;
  } catch {
    return 'unavailable';
  }
}

/**
 * Fetches the language for use on the device, where the browser can. Call inside a touch. Its own "done" is not believed:
 * the language counts as here only if the browser then promises to use it.
 */
export async function installOnDevice(maker: WebRecognitionMaker | undefined, tag: string): Promise<OnDevice> {
  if (!maker?.install) return 'unavailable';
  try {
    await maker.install({ langs: [tag], processLocally: true });
    const state = await onDeviceState(maker, tag);
    return state === 'ready' || state === 'fetching' ? state : 'failed';
  } catch {
    return 'failed';
  }
}
