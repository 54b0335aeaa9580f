/** Shapes of our own. Each state has its own outline, so that nothing depends on colour. All are decoration beside words. */
import type { ReactNode } from 'react';
import type { EarState } from '../../app/model.ts';
import type { PhaseId } from '../../domain/case/facts.ts';
import type { Tone } from '../../domain/protocol/types.ts';

function Icon({ children, kind }: { readonly children: ReactNode; readonly kind: string }) {
  return (
    <svg className={`icon icon-${kind}`} viewBox="0 0 48 48" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

/** The ear is an arc like a rim; what is beside the arc says what it does. */
const RIM = <path d="M32 42c-9 2-11-5-13-9-2-4-7-7-7-15C12 9 19 5 26 5c7 0 12 5 12 12" />;

/** `consent`: speech would leave the device, and somebody must decide. */
export type EarShape = EarState['state'] | 'consent';

const EAR: Readonly<Record<EarShape, ReactNode>> = {
  off: <path d="M6 6l36 36" className="icon-heavy" />,
  asking: <path d="M22 20a5 5 0 1 1 7 5c-2 1-2 3-2 4M27 35v1" />,
  starting: <path d="M20 22h1M27 22h1M34 22h1" className="icon-heavy" />,
  listening: <path d="M20 18c0-4 3-6 6-6s6 2 6 6M26 19v9M38 26c3 2 3 8 0 11M43 22c5 4 5 14 0 19" />,
  heard: <path d="M19 22l6 6 13-13" className="icon-heavy" />,
  notUnderstood: <path d="M21 18a5 5 0 1 1 7 5c-2 1-2 3-2 4M26 33v1M38 30v9M38 43v1" />,
  shut: <path d="M18 25h18M20 31l2-3M27 33v-4M34 31l-2-3" />,
  speaking: <path d="M18 24h18M22 18v12M28 15v18M34 20v8" />,
  consent: <path d="M20 24h22M34 15l9 9-9 9M20 18v12" />,
  blocked: <path d="M20 14l16 18M36 14L20 32" className="icon-heavy" />,
};

export function EarIcon({ state }: { readonly state: EarShape }) {
  return (
    <Icon kind="ear">
      {RIM}
      {EAR[state]}
    </Icon>
  );
}

const PHASE: Readonly<Record<PhaseId, ReactNode>> = {
  /** A stirring swirl in a bowl. */
  mix: <path d="M5 22c2 14 10 20 19 20s17-6 19-20H5zM24 6c7 0 9 7 4 9-4 2-8-1-6-4M28 14v8" />,
  /** A loaded tray with its handle. */
  working: <path d="M8 38V24C8 12 15 8 24 8s16 4 16 16v14h-9V26c0-5-2-8-7-8s-7 3-7 8v12H8zM24 8V2M20 2h8" />,
  /** A mouth closed over a tray. */
  inMouth: <path d="M3 24c7-11 14-13 21-9 7-4 14-2 21 9-7 11-14 14-21 14S10 35 3 24zM10 24h28" />,
  /** A drop that waits. */
  pourFrom: <path d="M24 5c8 12 12 18 12 25a12 12 0 0 1-24 0c0-7 4-13 12-25zM20 26v8M28 26v8" />,
  /** A drop that falls on a cast. */
  pourWithin: <path d="M24 3c6 9 9 13 9 18a9 9 0 0 1-18 0c0-5 3-9 9-18zM6 45V36h36v9H6z" />,
  /** A bath with bubbles. */
  disinfect: <path d="M5 18h38l-4 25H9L5 18zM14 27h1M24 34h1M33 27h1M19 11a3 3 0 1 1 0-1M31 7a4 4 0 1 1 0-1" />,
};

export function PhaseIcon({ phase }: { readonly phase: PhaseId }) {
  return <Icon kind="phase">{PHASE[phase]}</Icon>;
}

const TONE: Readonly<Record<Tone, ReactNode>> = {
  good: <path d="M24 5a19 19 0 1 1 0 38 19 19 0 0 1 0-38zM15 25l7 7 12-15" />,
  neutral: <path d="M8 8h32v32H8zM16 24h16" />,
  warn: <path d="M24 5l20 37H4zM24 18v11M24 35v1" />,
};

export function ToneIcon({ tone }: { readonly tone: Tone }) {
  return <Icon kind={`tone-${tone}`}>{TONE[tone]}</Icon>;
}

const SIGNS = {
  bell: (
    <path d="M8 36c5-4 5-9 5-16a11 11 0 0 1 22 0c0 7 0 12 5 16H8zM20 42h8M24 9V4M4 14c0-4 2-7 5-9M44 14c0-4-2-7-5-9" />
  ),
  kept: <path d="M8 26l10 10 22-24" className="icon-heavy" />,
  keeping: <path d="M12 24h1M24 24h1M36 24h1" className="icon-heavy" />,
  unsafe: <path d="M24 4l20 20-20 20L4 24zM24 14v12M24 33v1" />,
  soundOn: <path d="M6 18h8l12-10v32L14 30H6zM33 17c4 4 4 10 0 14M38 12c7 7 7 17 0 24" />,
  soundOff: <path d="M6 18h8l12-10v32L14 30H6zM33 18l11 12M44 18L33 30" />,
  flag: <path d="M10 44V5M10 7h28l-8 9 8 9H10" />,
  pause: <path d="M15 8v32M33 8v32" className="icon-heavy" />,
  pencil: <path d="M8 40l3-11L33 7l8 8-22 22-11 3zM27 13l8 8" />,
  note: <path d="M9 5h30v27L28 43H9zM28 43V32h11M16 15h16M16 24h10" />,
} as const;

export function SignIcon({ sign }: { readonly sign: keyof typeof SIGNS }) {
  return <Icon kind={sign}>{SIGNS[sign]}</Icon>;
}

/** The mark of the app: a rim from above. */
export function RimMark() {
  return (
    <Icon kind="rim">
      <path d="M8 42V24C8 12 15 6 24 6s16 6 16 18v18" className="icon-heavy" />
      <path d="M17 42V27c0-6 3-9 7-9s7 3 7 9v15" />
    </Icon>
  );
}
