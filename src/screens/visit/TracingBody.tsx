/**
 * A point read off the millimetre sheet by tapping it: the first tap brings that piece of the sheet close, the next one
 * and the arrows place the mark, Keep hands both numbers on as if they had been typed.
 */
import { useEffect, useRef, type MouseEvent } from 'react';
import type { AppActions } from '../../app/model.ts';
import { formatHundredths } from '../../domain/measure/length.ts';
import type { PointMm } from '../../domain/summary/decided.types.ts';
import { ApexMark, asideOf, MillimetrePaper, PAPER, paperOf, SIDE } from '../drawings/Tracing.tsx';
import { closeUp, nudged, SHEET_MM, tapped, WHOLE, type SheetWindow } from '../drawings/sheet.ts';
import { tenths } from '../format.ts';
import { SignIcon } from '../parts/Icons.tsx';
import { Target } from '../parts/Target.tsx';
import type { BodyProps } from './body.tsx';

/** A mark that has been put on the sheet and not yet kept. It outlives the step: the second number is kept at the next. */
export interface SheetMark extends PointMm {
  /** "tracing-1", "leg-right" */
  readonly point: string;
  readonly window: SheetWindow;
  /** The number across has been kept; the one upwards follows by itself at its own step. */
  readonly alsoUp: boolean;
}

export interface TracingProps extends BodyProps {
  readonly mark: SheetMark | undefined;
  readonly onMark: (mark: SheetMark | undefined) => void;
}

interface Asked {
  readonly point: string;
  readonly axis: 'x' | 'y';
}

/** Which point and which of its numbers a reading is; undefined for what is read off no sheet. */
export function askedOf(reading: string | undefined): Asked | undefined {
  const match = /^(.+)-([xy])$/.exec(reading ?? '');
  const [, point, axis] = match ?? [];
  return point === undefined || axis === undefined ? undefined : { point, axis: axis === 'x' ? 'x' : 'y' };
}

/** The same two intents as a number typed and agreed to. */
function keep(actions: AppActions, mm: number): void {
  actions.type(formatHundredths(Math.round(mm * 100)));
  actions.press('yes');
}

const ARROWS: Readonly<Record<string, readonly [right: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Arrows move the mark while one is there, and only then; Enter keeps it. */
function useArrows(onArrow: ((right: number, up: number) => void) | undefined, onKeep: () => void): void {
  const latest = useRef({ onArrow, onKeep });
  useEffect(() => {
    latest.current = { onArrow, onKeep };
  });
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      const { onArrow: move, onKeep: take } = latest.current;
      const arrow = ARROWS[event.key];
      const plain = !event.ctrlKey && !event.altKey && !event.metaKey;
      const onButton = event.target instanceof Element && event.target.closest('button') !== null;
      if (move === undefined || !plain) return;
      if (arrow !== undefined) move(arrow[0], arrow[1]);
      else if (event.key === 'Enter' && !event.repeat && !onButton) take();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKeyDown, { capture: true });
    return () => window.removeEventListener('keydown', onKeyDown, { capture: true });
  }, []);
}

interface SheetProps {
  readonly window: SheetWindow;
  readonly mark: PointMm | undefined;
  readonly before: readonly Parameters<typeof ApexMark>[0]['apex'][];
  readonly onTap: (point: PointMm) => void;
}

const words = ({ xMm, yMm }: PointMm) => `${tenths(xMm)} across, ${tenths(yMm)} up`;

/** Between all of them; the numbers of the points stand on its far side. */
function middleOf(points: readonly PointMm[]): PointMm {
  const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / Math.max(1, values.length);
  return { xMm: mean(points.map((p) => p.xMm)), yMm: mean(points.map((p) => p.yMm)) };
}

function Sheet({ window: piece, mark, before, onTap }: SheetProps) {
  const paper = paperOf(piece);
  const onClick = (event: MouseEvent<SVGRectElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    if (box.width === 0 || box.height === 0) return;
    onTap(tapped(piece, (event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height));
  };
  const inside = (mm: number, from: number) => mm >= from && mm <= from + piece.size;
  const seen = before.filter((apex) => inside(apex.xMm, piece.left) && inside(apex.yMm, piece.bottom));
  const text = mark === undefined ? 'No mark yet.' : `Mark at ${words(mark)}.`;
  return (
    <svg
      className="sheet-paper"
      viewBox={`0 0 ${SIDE.width} ${SIDE.height}`}
      role="img"
      aria-label={`Millimetre sheet. ${text}`}
    >
      <MillimetrePaper window={piece} />
      {seen.map((apex, i) => (
        <ApexMark key={apex.n} apex={apex} paper={paper} aside={asideOf(apex, middleOf(seen), i)} />
      ))}
      {mark === undefined ? null : (
        <g className="d-mark-here">
          <path d={`M${paper.x(mark.xMm)} ${PAPER.y}v${PAPER.side}M${PAPER.x} ${paper.y(mark.yMm)}h${PAPER.side}`} />
          <circle cx={paper.x(mark.xMm)} cy={paper.y(mark.yMm)} r="13" />
        </g>
      )}
      <rect className="sheet-tap" x={PAPER.x} y={PAPER.y} width={PAPER.side} height={PAPER.side} onClick={onClick} />
    </svg>
  );
}

interface PadProps {
  readonly onArrow: (right: number, up: number) => void;
}

function ArrowPad({ onArrow }: PadProps) {
  const arrow = (name: string, sign: string, [right, up]: readonly [number, number]) => (
    <Target name={`${name} by 0.1 mm`} onPress={() => onArrow(right, up)}>
      {sign}
    </Target>
  );
  return (
    <div className="sheet-arrows" role="group" aria-label="Move the mark">
      {arrow('Left', '←', [-1, 0])}
      {arrow('Up', '↑', [0, 1])}
      {arrow('Down', '↓', [0, -1])}
      {arrow('Right', '→', [1, 0])}
    </div>
  );
}

/** Once the number across is kept and the step for the other one stands, that one is handed on too. */
function useSecondNumber({ step, actions, mark, onMark }: TracingProps): void {
  const { point, axis } = askedOf(step.reading?.id) ?? {};
  useEffect(() => {
    if (mark?.alsoUp !== true || axis !== 'y' || mark.point !== point) return;
    onMark({ ...mark, alsoUp: false });
    keep(actions, mark.yMm);
  });
}

const NO_MARK = { first: 'Tap the point on the sheet', second: 'It comes close; tap again, then the arrows' } as const;

/** Before the first tap: what to do, and that the number can be said or typed as well. */
function HowTo({ axis, kept }: { readonly axis: Asked['axis'] | undefined; readonly kept: string | undefined }) {
  return (
    <ul className="step-lines">
      {kept === undefined ? null : (
        <li className="step-line">
          Kept here: <strong>{kept} mm</strong>
        </li>
      )}
      <li className="step-line">{NO_MARK.first}</li>
      <li className="step-line">{NO_MARK.second}</li>
      <li className="step-line">Or say or type: {axis === 'y' ? 'distance up' : 'distance across'}, mm</li>
    </ul>
  );
}

interface PlacedProps {
  readonly mark: SheetMark;
  readonly axis: Asked['axis'] | undefined;
  readonly onArrow: (right: number, up: number) => void;
  readonly onWindow: (piece: SheetWindow) => void;
  readonly onKeep: () => void;
}

/** The mark in numbers, the one that is asked for here underlined, and what can be done with it. */
function Placed({ mark, axis, onArrow, onWindow, onKeep }: PlacedProps) {
  const whole = mark.window === WHOLE;
  return (
    <>
      <p className="sheet-digits" role="status">
        <span className={axis === 'x' ? 'sheet-asked' : ''}>{tenths(mark.xMm)} across</span>{' '}
        <span className={axis === 'y' ? 'sheet-asked' : ''}>{tenths(mark.yMm)} up</span>
      </p>
      <div className="sheet-targets">
        <ArrowPad onArrow={onArrow} />
        <Target
          size="big"
          onPress={() => onWindow(whole ? closeUp(mark) : WHOLE)}
          name={whole ? 'Close up' : `Whole sheet, ${SHEET_MM} mm`}
        >
          {whole ? 'Close up' : 'Whole sheet'}
        </Target>
        <Target look="main" size="giant" icon={<SignIcon sign="kept" />} onPress={onKeep}>
          {axis === 'y' ? `Keep ${tenths(mark.yMm)} up` : 'Keep both'}
        </Target>
      </div>
    </>
  );
}

/** The piece of the sheet that a moved mark is shown on: the same one while it holds it. */
function pieceFor(next: PointMm, piece: SheetWindow): SheetWindow {
  const { left, bottom, size } = piece;
  const inside = next.xMm >= left && next.yMm >= bottom && next.xMm <= left + size && next.yMm <= bottom + size;
  return inside ? piece : closeUp(next);
}

export function TracingBody(props: TracingProps) {
  const { model, step, actions, onMark } = props;
  const asked = askedOf(step.reading?.id);
  const mark = props.mark !== undefined && props.mark.point === asked?.point ? props.mark : undefined;
  useSecondNumber(props);
  const put = (point: PointMm, piece: SheetWindow) =>
    onMark({ ...point, point: asked?.point ?? '', window: piece, alsoUp: false });
  const move = (right: number, up: number) => {
    if (mark === undefined) return;
    const next = nudged(mark, right, up);
    put(next, pieceFor(next, mark.window));
  };
  const take = () => {
    if (mark === undefined || asked === undefined) return;
    const across = asked.axis === 'x';
    onMark({ ...mark, alsoUp: across });
    keep(actions, across ? mark.xMm : mark.yMm);
  };
  useArrows(mark === undefined ? undefined : move, take);
  const tap = (point: PointMm) =>
    put(point, mark === undefined || mark.window === WHOLE ? closeUp(point) : mark.window);
  const apexes = model.summary?.tracing?.apexes ?? [];
  const others = apexes.filter((apex) => mark === undefined || `tracing-${apex.n}` !== asked?.point);
  return (
    <div className="body sheet-body">
      <Sheet window={mark?.window ?? WHOLE} mark={mark} before={others} onTap={tap} />
      <div className="sheet-side">
        {mark === undefined ? (
          <HowTo axis={asked?.axis} kept={step.reading?.kept.at(-1)?.digits} />
        ) : (
          <Placed mark={mark} axis={asked?.axis} onArrow={move} onWindow={(piece) => put(mark, piece)} onKeep={take} />
        )}
      </div>
    </div>
  );
}
