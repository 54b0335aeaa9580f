/** One clock as a line from its start: what is done, where now is, what comes. */
import { useId } from 'react';
import type { ClockPhase, ClockRow } from '../../domain/summary/types.ts';
import { stretch, timeOfDay } from '../format.ts';
import { Hatch, Label } from './Figure.tsx';
import { scale, type Scale } from './scale.ts';

const WIDTH = 600;
const HEIGHT = 108;
const BAR = { y: 26, h: 46 };
/** Drawn at two thirds of its size on the narrow screen: then still 18 px. */
const LETTER_PX = 27;
const LETTER_WIDTH = 0.6 * LETTER_PX;

const SHORT: Readonly<Record<string, string>> = {
  mix: 'mix',
  working: 'work',
  inMouth: 'set in the mouth',
  pourFrom: 'wait',
  pourWithin: 'pour within',
  disinfect: 'disinfecting',
};

/** The words that a piece of bar has room for; the phases are named in full beside the drawing. */
function wordsFor({ id, label }: Piece, room: number): string {
  return (
    [label, SHORT[id] ?? '', (SHORT[id] ?? '').split(' ')[0] ?? ''].find(
      (words) => words.length * LETTER_WIDTH < room,
    ) ?? ''
  );
}

interface Piece {
  readonly id: string;
  readonly label: string;
  readonly from: number;
  readonly to: number;
}

/** Phases one after another: each begins where the one before ends. */
export function piecesOf(clock: ClockRow): readonly Piece[] {
  const out = clock.outAt !== undefined;
  const shown = clock.phases.filter((phase: ClockPhase) =>
    clock.flow === 'timed' ? true : out ? phase.id.startsWith('pour') : !phase.id.startsWith('pour'),
  );
  let from = out && clock.flow === 'impression' ? (clock.outAt ?? clock.startedAt) : clock.startedAt;
  return shown.map((phase) => {
    const piece = { id: phase.id, label: phase.label, from, to: Math.max(from, phase.dueAt) };
    from = piece.to;
    return piece;
  });
}

interface BarProps {
  readonly piece: Piece;
  readonly x: Scale;
  readonly hatch: string;
  readonly now: number;
  /** The leaflet counts from here. */
  readonly start: number;
}

function Bar({ piece, x, hatch, now, start }: BarProps) {
  const [a, b] = [x.at(piece.from), x.at(piece.to)];
  const done = Math.min(Math.max(now, piece.from), piece.to);
  return (
    <g>
      <rect className="d-piece" x={a} y={BAR.y} width={Math.max(0, b - a)} height={BAR.h} />
      <rect
        className="d-piece-done"
        fill={`url(#${hatch})`}
        x={a}
        y={BAR.y}
        width={Math.max(0, x.at(done) - a)}
        height={BAR.h}
      />
      <Label x={Math.min(b, WIDTH - 4)} y={HEIGHT - 8} anchor={b > WIDTH - 60 ? 'end' : 'middle'}>
        {b - a > 2.5 * LETTER_PX ? stretch(piece.to - start) : ''}
      </Label>
      <Label x={(a + b) / 2} y={BAR.y + 32} strong>
        {wordsFor(piece, b - a)}
      </Label>
    </g>
  );
}

export function Timeline({ clock, now }: { readonly clock: ClockRow; readonly now: number }) {
  const hatch = useId();
  const pieces = piecesOf(clock);
  const first = pieces[0];
  const last = pieces.at(-1);
  if (first === undefined || last === undefined) return null;
  const x = scale([first.from, Math.max(last.to, now)], [10, WIDTH - 10]);
  const words = pieces.map((piece) => `${piece.label} until ${timeOfDay(piece.to)}`).join(', ');
  const needle = x.at(Math.max(now, first.from));
  return (
    <svg className="timeline" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`${clock.label}: ${words}`}>
      <defs>
        <Hatch id={hatch} gap={6} />
      </defs>
      {pieces.map((piece) => (
        <Bar key={piece.id} piece={piece} x={x} hatch={hatch} now={now} start={first.from} />
      ))}
      <path className="d-needle" d={`M${needle} ${BAR.y - 4}v${BAR.h + 8}M${needle - 12} 0h24l-12 20z`} />
    </svg>
  );
}
