/** What a passphrase is compared as, and what it costs to try one. */

export interface Cost {
  readonly memoryKiB: number;
  readonly passes: number;
  readonly lanes: number;
}

/** RFC 9106, section 4, second recommended option (64 MiB, three passes), with one lane instead of four: the browser has one. */
export const COST: Cost = { memoryKiB: 65_536, passes: 3, lanes: 1 };

const SHORTEST = 8;

/** Passphrases are compared as people type them: composed letters, no blanks at the ends. */
export const typed = (passphrase: string): string => passphrase.normalize('NFC').trim();

export const tooShort = (passphrase: string): boolean => typed(passphrase).length < SHORTEST;

export const TOO_SHORT = `A passphrase has at least ${SHORTEST} letters.`;
