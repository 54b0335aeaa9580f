/**
 * Push-to-talk by one target: held it is let go on release; touched briefly it stays open until the next touch, for hands
 * that cannot hold. Times are those of the events.
 */
export interface Talk {
  readonly open: boolean;
  /** When the present touch began; undefined between touches. */
  readonly since?: number;
  /** The touch that is on began while it was open: it will close. */
  readonly closing?: true;
}

/** Shorter than this is a touch, longer is a hold (our choice: a slow tap with a gloved knuckle takes a third of a second). */
export const TOUCH_MS = 400;

export const pressed = (talk: Talk, at: number): Talk =>
  talk.open ? { open: true, since: at, closing: true } : { open: true, since: at };

export function letGo(talk: Talk, at: number): Talk {
  if (talk.since === undefined) return talk;
  const stays = talk.closing !== true && at - talk.since < TOUCH_MS;
  return { open: stays };
}

/** Keyboard on the target: each press changes over. */
export const toggled = (talk: Talk): Talk => ({ open: !talk.open });
