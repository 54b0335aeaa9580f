/** Rest height, closed height and the space between, one column a visit, with the accepted band beside it. */
import { useId } from 'react';
import { mm, tenths } from '../format.ts';
import { Figure, Hatch, Label } from './Figure.tsx';
import { scale, type Scale } from './scale.ts';

export interface HeightColumn {
  /** "visit 1" */
  readonly label: string;
  readonly restMm?: number;
  readonly closedMm?: number;
  /** Height at which the jaw record was made. */
  readonly recordMm?: number;
  /** Height the lab is to make. */
  readonly targetMm?: number;
  readonly spaceMm?: number;
  readonly uncertaintyMm?: number;
}

export interface HeightStackProps {
  readonly title: string;
  readonly columns: readonly HeightColumn[];
  readonly acceptedMm: readonly [number, number];
}

const WIDTH = 560;
const HEIGHT = 400;
const FLOOR = 350;
const TOP = 40;
const SPLIT = 290;

function columnSentence(column: HeightColumn): string {
  const parts: string[] = [];
  if (column.restMm !== undefined) parts.push(`rest ${tenths(column.restMm)}`);
  if (column.closedMm !== undefined) parts.push(`closed ${tenths(column.closedMm)}`);
  if (column.spaceMm !== undefined) {
    const give = column.uncertaintyMm === undefined ? '' : ` ± ${tenths(column.uncertaintyMm)}`;
    parts.push(`space between ${tenths(column.spaceMm)}${give}`);
  }
  if (column.recordMm !== undefined) parts.push(`record made at ${tenths(column.recordMm)}`);
  if (column.targetMm !== undefined) parts.push(`to be made at ${tenths(column.targetMm)}`);
  return `${column.label}: ${parts.length === 0 ? 'not measured yet' : `${parts.join(', ')} mm`}`;
}

interface LineProps {
  readonly y: number;
  readonly x: number;
  readonly width: number;
  readonly words: string;
  readonly kind: 'rest' | 'closed' | 'record' | 'target';
  readonly labelY: number;
}

function HeightLine({ y, x, width, words, kind, labelY }: LineProps) {
  return (
    <g>
      <line className={`d-height d-height-${kind}`} x1={x - 8} x2={x + width + 8} y1={y} y2={y} />
      <path className="d-lead" d={`M${x + width + 8} ${y}L${x + width + 22} ${labelY - 5}`} />
      <Label x={x + width + 26} y={labelY} anchor="start" strong={kind === 'rest'}>
        {words}
      </Label>
    </g>
  );
}

/** Labels one under another: those that would touch are moved down. */
export function spreadLabels(positions: readonly number[], apart: number): readonly number[] {
  const order = positions.map((_, i) => i).sort((a, b) => (positions[a] ?? 0) - (positions[b] ?? 0));
  const out = [...positions];
  let last = -Infinity;
  for (const i of order) {
    const y = Math.max(positions[i] ?? 0, last + apart);
    out[i] = y;
    last = y;
  }
  return out;
}

function Column({
  column,
  x,
  width,
  y,
  hatch,
}: {
  readonly column: HeightColumn;
  readonly x: number;
  readonly width: number;
  readonly y: Scale;
  readonly hatch: string;
}) {
  const { restMm, closedMm, recordMm, targetMm } = column;
  const lines = [
    { kind: 'rest' as const, value: restMm, name: 'rest' },
    { kind: 'record' as const, value: recordMm, name: 'record' },
    { kind: 'closed' as const, value: closedMm, name: 'closed' },
    { kind: 'target' as const, value: targetMm, name: 'to make' },
  ].filter((line): line is typeof line & { value: number } => line.value !== undefined);
  const labels = spreadLabels(
    lines.map((line) => y.at(line.value) + 6),
    24,
  );
  const body = closedMm ?? targetMm ?? recordMm ?? restMm;
  return (
    <g>
      {body === undefined ? null : (
        <rect className="d-column" x={x} y={y.at(body)} width={width} height={FLOOR - y.at(body)} />
      )}
      {restMm === undefined || closedMm === undefined || restMm <= closedMm ? null : (
        <rect
          className="d-band"
          fill={`url(#${hatch})`}
          x={x}
          y={y.at(restMm)}
          width={width}
          height={y.at(closedMm) - y.at(restMm)}
        />
      )}
      {body === undefined ? null : (
        <path
          className="d-cut"
          d={`M${x - 8} ${FLOOR - 14}l${width / 4 + 4} -10l${width / 4 + 4} 20l${width / 4 + 4} -20l${width / 4 + 4} 10`}
        />
      )}
      {lines.map((line, i) => (
        <HeightLine
          key={line.kind}
          kind={line.kind}
          x={x}
          width={width}
          y={y.at(line.value)}
          labelY={labels[i] ?? 0}
          words={`${line.name} ${tenths(line.value)}`}
        />
      ))}
      <Label x={x + width / 2} y={FLOOR + 26}>
        {column.label}
      </Label>
    </g>
  );
}

/** The space between, enlarged: band, value, uncertainty. */
function SpaceGauge({
  columns,
  accepted,
  hatch,
}: {
  readonly columns: readonly HeightColumn[];
  readonly accepted: readonly [number, number];
  readonly hatch: string;
}) {
  const shown = columns.filter((column) => column.spaceMm !== undefined);
  const reach = shown.flatMap((c) => [
    (c.spaceMm ?? 0) + (c.uncertaintyMm ?? 0),
    (c.spaceMm ?? 0) - (c.uncertaintyMm ?? 0),
  ]);
  const y = scale([Math.floor(Math.min(0, ...reach)), Math.ceil(Math.max(6, ...reach))], [FLOOR, TOP]);
  const left = SPLIT + 50;
  const right = WIDTH - 10;
  const marks: number[] = [];
  for (let value = y.from; value <= y.to; value += y.to - y.from > 12 ? 2 : 1) marks.push(value);
  return (
    <g>
      <rect
        className="d-band"
        fill={`url(#${hatch})`}
        x={left}
        y={y.at(accepted[1])}
        width={right - left}
        height={y.at(accepted[0]) - y.at(accepted[1])}
      />
      <Label x={right} y={y.at(accepted[0]) + 24} anchor="end">
        accepted {mm(accepted[0])}–{mm(accepted[1])}
      </Label>
      <path className="d-axis" d={`M${left} ${TOP}V${FLOOR}`} />
      {marks.map((value) => (
        <g key={value}>
          <line className="d-axis" x1={left - 8} x2={left} y1={y.at(value)} y2={y.at(value)} />
          <Label x={left - 14} y={y.at(value) + 6} anchor="end">
            {mm(value)}
          </Label>
        </g>
      ))}
      {shown.map((column, i) => (
        <SpacePoint
          key={column.label}
          column={column}
          x={left + ((i + 1) * (right - left)) / (shown.length + 1)}
          y={y}
        />
      ))}
      <Label x={(left + right) / 2} y={FLOOR + 26}>
        {shown.length === 0 ? 'space between: not yet' : 'space between, mm'}
      </Label>
    </g>
  );
}

function SpacePoint({ column, x, y }: { readonly column: HeightColumn; readonly x: number; readonly y: Scale }) {
  const { spaceMm = 0, uncertaintyMm } = column;
  const at = y.at(spaceMm);
  return (
    <g className="d-space">
      {uncertaintyMm === undefined ? null : (
        <path
          d={`M${x} ${y.at(spaceMm + uncertaintyMm)}V${y.at(spaceMm - uncertaintyMm)}M${x - 12} ${y.at(spaceMm + uncertaintyMm)}h24M${x - 12} ${y.at(spaceMm - uncertaintyMm)}h24`}
        />
      )}
      <circle cx={x} cy={at} r="9" />
      <Label x={x + 18} y={at + 6} anchor="start" strong>
        {tenths(spaceMm)}
      </Label>
    </g>
  );
}

/** The upper end of the heights only: what lies below is cut away, and the cut is drawn. */
function heightWindow(heights: readonly number[]): readonly [number, number] {
  if (heights.length === 0) return [0, 10];
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  return [Math.max(0, low - Math.max(4, high - low)), high + 1];
}

export function HeightStack({ title, columns, acceptedMm }: HeightStackProps) {
  const hatch = useId();
  const heights = columns.flatMap((c) => [c.restMm, c.closedMm, c.recordMm, c.targetMm]).filter((h) => h !== undefined);
  const y = scale(heightWindow(heights), [FLOOR, TOP]);
  const room = SPLIT / Math.max(1, columns.length);
  const width = Math.min(110, room * 0.38);
  const text = `${columns.map(columnSentence).join('. ')}. Accepted space ${mm(acceptedMm[0])} to ${mm(acceptedMm[1])} mm.`;
  return (
    <Figure kind="stack" title={title} text={text} width={WIDTH} height={HEIGHT}>
      <defs>
        <Hatch id={hatch} />
      </defs>
      <path className="d-axis" d={`M10 ${FLOOR}H${SPLIT - 10}`} />
      {columns.map((column, i) => (
        <Column key={column.label} column={column} x={20 + i * room} width={width} y={y} hatch={hatch} />
      ))}
      <SpaceGauge columns={columns} accepted={acceptedMm} hatch={hatch} />
    </Figure>
  );
}
