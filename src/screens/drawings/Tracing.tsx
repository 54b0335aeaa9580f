/** Needle-point tracings on millimetre paper: the points, the circle that holds them, their middle, the legs. */
import type { Apex, PointMm, TracingView } from '../../domain/summary/decided.types.ts';
import { tracingWords } from '../../domain/summary/decided-words.ts';
import { Figure, Label } from './Figure.tsx';
import { around, type SheetWindow } from './sheet.ts';
import { tickStep, ticks } from './scale.ts';

/** The paper within the drawing, in its units. */
export const PAPER = { x: 62, y: 18, side: 460 } as const;
export const SIDE = { width: PAPER.x + PAPER.side + 26, height: PAPER.y + PAPER.side + 40 } as const;

export interface Paper {
  x(mm: number): number;
  y(mm: number): number;
  readonly unit: number;
}

/** Millimetres of the sheet to places on the drawn paper; up is up. */
export function paperOf({ left, bottom, size }: SheetWindow): Paper {
  const unit = PAPER.side / size;
  return {
    x: (mm) => PAPER.x + (mm - left) * unit,
    y: (mm) => PAPER.y + PAPER.side - (mm - bottom) * unit,
    unit,
  };
}

function lines({ left, bottom, size }: SheetWindow, step: number): string {
  const { x, y } = paperOf({ left, bottom, size });
  const upright = ticks(left, left + size, step).map((mm) => `M${x(mm)} ${PAPER.y}v${PAPER.side}`);
  const level = ticks(bottom, bottom + size, step).map((mm) => `M${PAPER.x} ${y(mm)}h${PAPER.side}`);
  return [...upright, ...level].join('');
}

/** Millimetre paper with its numbers along two edges. */
export function MillimetrePaper({ window }: { readonly window: SheetWindow }) {
  const { left, bottom, size } = window;
  const { x, y } = paperOf(window);
  const named = tickStep(size, 8);
  return (
    <g>
      <rect className="d-paper" x={PAPER.x} y={PAPER.y} width={PAPER.side} height={PAPER.side} />
      {size > 30 ? null : <path className="d-grid" d={lines(window, 1)} />}
      <path className="d-grid d-grid-five" d={lines(window, 5)} />
      <path className="d-grid d-grid-ten" d={lines(window, 10)} />
      {ticks(left, left + size, named).map((mm) => (
        <Label key={`x${mm}`} x={x(mm)} y={PAPER.y + PAPER.side + 28}>
          {mm}
        </Label>
      ))}
      {ticks(bottom, bottom + size, named).map((mm) => (
        <Label key={`y${mm}`} x={PAPER.x - 8} y={y(mm) + 7} anchor="end">
          {mm}
        </Label>
      ))}
    </g>
  );
}

interface ApexProps {
  readonly apex: Apex;
  readonly paper: Paper;
  /** Where its number stands, seen from the point; in units of the drawing. */
  readonly aside?: { readonly x: number; readonly y: number };
}

/** A cross for a sharp point, a dashed ring about one that was called blunt; its number beside it. */
export function ApexMark({ apex, paper, aside = { x: 22, y: -14 } }: ApexProps) {
  const [x, y] = [paper.x(apex.xMm), paper.y(apex.yMm)];
  return (
    <g className="d-apex">
      <path d={`M${x - 9} ${y - 9}l18 18M${x - 9} ${y + 9}l18 -18`} />
      {apex.sharp === false ? <circle className="d-apex-blunt" cx={x} cy={y} r="15" /> : null}
      <Label x={x + aside.x} y={y + aside.y + 8} strong>
        {apex.n}
      </Label>
    </g>
  );
}

function Scatter({ scatter, paper }: { readonly scatter: NonNullable<TracingView['scatter']>; readonly paper: Paper }) {
  const [x, y] = [paper.x(scatter.xMm), paper.y(scatter.yMm)];
  const accepted = scatter.verdict === 'accept';
  return (
    <g>
      <circle className="d-scatter" cx={x} cy={y} r={Math.max(8, scatter.radiusMm * paper.unit)} />
      <circle className={accepted ? 'd-centre' : 'd-centre d-centre-open'} cx={x} cy={y} r="6" />
    </g>
  );
}

interface LegProps {
  readonly from: PointMm;
  readonly to: PointMm;
  readonly name: 'R' | 'L';
  readonly paper: Paper;
}

/** How far along a line from `from` the paper's edge is met, as a share of it; 1 where it ends on the paper. */
function edgeShare([x1, y1]: readonly [number, number], [x2, y2]: readonly [number, number]): number {
  const share = (start: number, end: number, low: number) => {
    if (end < low) return (low - start) / (end - start);
    return end > low + PAPER.side ? (low + PAPER.side - start) / (end - start) : 1;
  };
  return Math.min(share(x1, x2, PAPER.x), share(y1, y2, PAPER.y));
}

/** A leg from the middle of the points as far as the paper goes; its end mostly lies beyond. */
function Leg({ from, to, name, paper }: LegProps) {
  const start = [paper.x(from.xMm), paper.y(from.yMm)] as const;
  const end = [paper.x(to.xMm), paper.y(to.yMm)] as const;
  const share = edgeShare(start, end);
  const [x, y] = [start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share];
  const [nameX, nameY] = [x + (start[0] - x) * 0.1, y + (start[1] - y) * 0.1];
  return (
    <g className="d-leg">
      <path d={`M${start[0]} ${start[1]}L${x} ${y}`} />
      <Label x={nameX} y={nameY - 14} strong>
        {name}
      </Label>
    </g>
  );
}

/** Numbers stand on the far side of their points, seen from the middle; points that all coincide fan out. */
export function asideOf(apex: Apex, middle: PointMm, place: number): { readonly x: number; readonly y: number } {
  const [dx, dy] = [apex.xMm - middle.xMm, middle.yMm - apex.yMm];
  const angle = Math.hypot(dx, dy) < 0.02 ? (place * 2 * Math.PI) / 3 - Math.PI / 2 : Math.atan2(dy, dx);
  return { x: Math.cos(angle) * 32, y: Math.sin(angle) * 32 };
}

/** Points half a millimetre apart are to be told apart. */
const LEAST_MM = 4;

export function Tracing({ tracing }: { readonly tracing: TracingView }) {
  const { apexes, scatter, rightLeg, leftLeg } = tracing;
  const window = around(apexes, LEAST_MM);
  const paper = paperOf(window);
  const from = scatter ?? apexes[0];
  return (
    <Figure kind="tracing" title="Needle-point tracings" text={tracingWords(tracing)} {...SIDE}>
      <MillimetrePaper window={window} />
      {from === undefined || rightLeg === undefined ? null : <Leg from={from} to={rightLeg} name="R" paper={paper} />}
      {from === undefined || leftLeg === undefined ? null : <Leg from={from} to={leftLeg} name="L" paper={paper} />}
      {scatter === undefined ? null : <Scatter scatter={scatter} paper={paper} />}
      {apexes.map((apex, i) => (
        <ApexMark key={apex.n} apex={apex} paper={paper} aside={asideOf(apex, from ?? apex, i)} />
      ))}
    </Figure>
  );
}
