/** Settings that tell of a case: under a passphrase they are sealed like entries. */
export const WAITING_KEY = 'waiting';

export const SEALED_SETTINGS: readonly string[] = [WAITING_KEY];
