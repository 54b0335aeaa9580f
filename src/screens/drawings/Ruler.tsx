/** One set of readings on a millimetre ruler: every reading a mark, the median, the band they should lie in. */
import { useId } from 'react';
import { mm } from '../format.ts';
import { Figure, Hatch, Label } from './Figure.tsx';
import { scale, stackLevels, tickStep, ticks, windowOf, type Scale } from './scale.ts';

export interface RulerReading {
  readonly valueMm: number;
  readonly suspect: boolean;
  /** What it may have been, e.g. a slip of one digit. */
  readonly perhapsMm?: number;
}

export interface RulerProps {
  readonly title: string;
  readonly readings: readonly RulerReading[];
  readonly medianMm?: number;
  readonly rangeMm?: number;
  /** Readings of one set should lie this close together. */
  readonly bandMm: number;
  readonly plausibleMm?: readonly [number, number];
}

const WIDTH = 520;
/** Half the length of the heading: it never runs over the edge. */
const HEAD_ROOM = 150;
const EDGE = 24;
const PILL = { w: 66, h: 32 };

function sentence({ title, readings, medianMm, rangeMm, bandMm, plausibleMm }: RulerProps): string {
  if (readings.length === 0) return `${title}: no reading yet.`;
  const parts = [`${readings.map((r) => mm(r.valueMm)).join(', ')} mm`];
  if (medianMm !== undefined) parts.push(`median ${mm(medianMm)}`);
  if (rangeMm !== undefined) parts.push(`spread ${mm(rangeMm)} (${mm(bandMm)} or less wanted)`);
  const apart = readings.filter((r) => r.suspect);
  if (apart.length > 0) {
    const named = apart.map(
      (r) => `${mm(r.valueMm)}${r.perhapsMm === undefined ? '' : ` (perhaps ${mm(r.perhapsMm)})`}`,
    );
    parts.push(`stands apart: ${named.join(', ')}`);
  }
  if (plausibleMm !== undefined) parts.push(`plausible ${mm(plausibleMm[0])} to ${mm(plausibleMm[1])}`);
  return `${title}: ${parts.join('; ')}.`;
}

function Ticks({ x, y }: { readonly x: Scale; readonly y: number }) {
  const span = x.to - x.from;
  const fine = tickStep(span, 60);
  const named = tickStep(span, 9);
  return (
    <g className="d-ruler">
      <path className="d-ruler-body" d={`M${EDGE - 12} ${y}H${WIDTH - EDGE + 12}v56H${EDGE - 12}z`} />
      {ticks(x.from, x.to, fine).map((value) => (
        <line key={value} x1={x.at(value)} x2={x.at(value)} y1={y} y2={y + (value % named === 0 ? 22 : 11)} />
      ))}
      {ticks(x.from, x.to, named).map((value) => (
        <Label key={value} x={x.at(value)} y={y + 46}>
          {value}
        </Label>
      ))}
    </g>
  );
}

interface MarkProps {
  readonly reading: RulerReading;
  readonly x: number;
  readonly top: number;
  readonly base: number;
}

function Mark({ reading, x, top, base }: MarkProps) {
  const left = Math.min(Math.max(x - PILL.w / 2, 2), WIDTH - PILL.w - 2);
  return (
    <g className={reading.suspect ? 'd-mark d-mark-suspect' : 'd-mark'}>
      <line x1={x} x2={x} y1={top + PILL.h} y2={base} />
      {reading.suspect ? (
        <path
          d={`M${left} ${top + PILL.h / 2}l14 ${-PILL.h / 2}h${PILL.w - 28}l14 ${PILL.h / 2}l-14 ${PILL.h / 2}h${28 - PILL.w}z`}
        />
      ) : (
        <rect x={left} y={top} width={PILL.w} height={PILL.h} rx="6" />
      )}
      <text x={left + PILL.w / 2} y={top + 23} textAnchor="middle">
        {mm(reading.valueMm)}
      </text>
    </g>
  );
}

/** Drawn only where one of its ends lies on the piece of ruler shown; the caption names it always. */
const edgeInside = (range: readonly [number, number], x: { readonly from: number; readonly to: number }): boolean =>
  range.some((edge) => edge >= x.from && edge <= x.to);

function Plausible({
  x,
  range,
  y,
}: {
  readonly x: Scale;
  readonly range: readonly [number, number];
  readonly y: number;
}) {
  const from = Math.max(range[0], x.from);
  const to = Math.min(range[1], x.to);
  if (to <= from || !edgeInside(range, x)) return null;
  const [a, b] = [x.at(from), x.at(to)];
  const endA = range[0] < x.from ? `M${a + 10} ${y - 6}L${a} ${y}l10 6` : `M${a} ${y - 8}v16`;
  const endB = range[1] > x.to ? `M${b - 10} ${y - 6}L${b} ${y}l-10 6` : `M${b} ${y - 8}v16`;
  return (
    <g>
      <path className="d-span" d={`M${a} ${y}H${b}${endA}${endB}`} />
      <Label x={(a + b) / 2} y={y + 24}>
        plausible {mm(range[0])}–{mm(range[1])}
      </Label>
    </g>
  );
}

function Band({
  x,
  medianMm,
  bandMm,
  base,
}: {
  readonly x: Scale;
  readonly medianMm: number;
  readonly bandMm: number;
  readonly base: number;
}) {
  const id = useId();
  const [a, b] = [x.at(medianMm - bandMm / 2), x.at(medianMm + bandMm / 2)];
  const middle = x.at(medianMm);
  return (
    <g>
      <defs>
        <Hatch id={id} />
      </defs>
      <rect x={a} y={34} width={b - a} height={base - 34} fill={`url(#${id})`} className="d-band" />
      <path className="d-median" d={`M${middle} 34V${base}`} />
      <Label x={Math.min(Math.max(middle, HEAD_ROOM), WIDTH - HEAD_ROOM)} y={22} strong>
        median {mm(medianMm)}, band {mm(bandMm)} mm
      </Label>
    </g>
  );
}

export function Ruler(props: RulerProps) {
  const { readings, medianMm, bandMm, plausibleMm } = props;
  const values = readings.map((reading) => reading.valueMm);
  const x = scale(windowOf(values, 3, 10), [EDGE, WIDTH - EDGE]);
  const levels = stackLevels(values.map(x.at), PILL.w + 6);
  const rows = Math.max(1, ...levels.map((level) => level + 1));
  const base = 60 + rows * (PILL.h + 8);
  const height = base + (plausibleMm !== undefined && edgeInside(plausibleMm, x) ? 108 : 64);
  return (
    <Figure kind="ruler" title={props.title} text={sentence(props)} width={WIDTH} height={height}>
      {medianMm === undefined ? null : <Band x={x} medianMm={medianMm} bandMm={bandMm} base={base} />}
      <Ticks x={x} y={base} />
      {readings.map((reading, i) => (
        <Mark
          key={`${i}:${reading.valueMm}`}
          reading={reading}
          x={x.at(reading.valueMm)}
          top={base - 14 - (PILL.h + 8) * ((levels[i] ?? 0) + 1) + 8}
          base={base}
        />
      ))}
      {plausibleMm === undefined ? null : <Plausible x={x} range={plausibleMm} y={base + 76} />}
    </Figure>
  );
}
