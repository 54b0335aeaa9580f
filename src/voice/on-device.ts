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

/** Fetches the language for use on the device, where the browser can. Call inside a touch. */
export async function installOnDevice(maker: WebRecognitionMaker | undefined, tag: string): Promise<boolean> {
  if (!maker?.install) return false;
  try {
    return await maker.install({ langs: [tag], processLocally: true });
  } catch {
    return false;
  }
}
