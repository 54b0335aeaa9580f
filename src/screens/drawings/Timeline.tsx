/** One clock as a line from its start: what is done, where now is, what comes. */
import { useId } from 'react';
import type { ClockPhase, ClockRow } from '../../domain/summary/types.ts';
import { stretch, timeOfDay } from '../format.ts';
import { Hatch, Label } from './Figure.tsx';
import { scale, type Scale } from './scale.ts';

const WIDTH = 900;
const HEIGHT = 104;
const BAR = { y: 34, h: 36 };

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
      <Label x={Math.min(b, WIDTH - 20)} y={HEIGHT - 8} anchor={b > WIDTH - 120 ? 'end' : 'middle'}>
        {stretch(piece.to - start)}
      </Label>
      <Label x={(a + b) / 2} y={BAR.y + 24} strong>
        {b - a > 130 ? piece.label : ''}
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
      <path className="d-needle" d={`M${needle} ${BAR.y - 4}v${BAR.h + 8}M${needle - 10} ${BAR.y - 20}h20l-10 16z`} />
    </svg>
  );
}
