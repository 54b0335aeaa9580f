/** What the listening machine is told and what it remembers. Order and permission of the ear; it opens nothing itself. */

/** `always` open while wanted; `readings`: only while a number is asked for; `push`: only while held. */
export type EarMode = 'always' | 'readings' | 'push';

/** Why the ear cannot listen. `consent`: speech would leave the device and somebody has said no to that. */
export type EarCause = 'absent' | 'denied' | 'consent' | 'language' | 'unreachable' | 'silent';

export interface ListeningInput {
  readonly mode: EarMode;
}

export interface ListeningContext {
  readonly mode: EarMode;
  /** A person has switched the ear on. */
  readonly wanted: boolean;
  /** The key or the target of push-to-talk is held. */
  readonly pushed: boolean;
  /** The visit asks for a number, or a number waits for its yes. */
  readonly reading: boolean;
  /** A number is shown and waits to be kept, or one of several is to be chosen. */
  readonly waits: boolean;
  /** Another screen than the visit's is open, where the state of the ear could not be seen. */
  readonly away: boolean;
  /** The recogniser is in a session. */
  readonly live: boolean;
  readonly cause: EarCause | undefined;
  /** Blocked for now; it goes on trying by itself. */
  readonly trying: boolean;
  /** Somebody was asked whether speech may leave the device, and said no. */
  readonly refused: boolean;
}

export type ListeningEvent =
  /** A person switches the ear on, or asks it to try again. */
  | { readonly type: 'WANT' | 'DROP' | 'RETRY' }
  | { readonly type: 'CONSENT_GIVEN' | 'CONSENT_REFUSED' }
  | { readonly type: 'MODE'; readonly mode: EarMode }
  | { readonly type: 'PUSH_DOWN' | 'PUSH_UP' }
  /** The visit's screen is there, or is left. */
  | { readonly type: 'CAME' | 'LEFT' }
  | { readonly type: 'READING' | 'NO_READING' }
  /** A number waits for its yes, or no longer does. */
  | { readonly type: 'PROPOSED' | 'SETTLED' }
  /** The browser asks the person about the microphone. */
  | { readonly type: 'PROMPTED' }
  /** A session of the recogniser has begun, or is over. */
  | { readonly type: 'STARTED' | 'ENDED' }
  | { readonly type: 'FAILED'; readonly cause: EarCause; readonly trying: boolean }
  /** Something was said, and what came of it is on record. */
  | { readonly type: 'HEARD' | 'UNDERSTOOD' }
  /** The app itself speaks or beeps. */
  | { readonly type: 'SPEAK' | 'SPOKEN' };
