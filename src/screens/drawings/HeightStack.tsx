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

const HEIGHT = 400;
const FLOOR = 350;
const TOP = 40;
/** Width of the scale for the space beside the columns: a point and its number for each. */
const gaugeWidth = (points: number): number => Math.max(270, 60 + 72 * (points + 1));
/** Room for one column with its labels, and its bar; a single one may be broader. */
const ROOM = { single: { all: 290, bar: 104 }, each: { all: 240, bar: 48 } };

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

interface ColumnProps {
  readonly column: HeightColumn;
  readonly x: number;
  readonly width: number;
  readonly y: Scale;
  readonly hatch: string;
}

/** The part below the closed height, cut off at the foot, and the space above it. */
function ColumnBody({ column, x, width, y, hatch }: ColumnProps) {
  const { restMm, closedMm, recordMm, targetMm } = column;
  const body = closedMm ?? targetMm ?? recordMm ?? restMm;
  if (body === undefined) return null;
  const quarter = width / 4 + 4;
  const space = restMm === undefined || closedMm === undefined ? 0 : y.at(closedMm) - y.at(restMm);
  return (
    <g>
      <rect className="d-column" x={x} y={y.at(body)} width={width} height={FLOOR - y.at(body)} />
      {space <= 0 || restMm === undefined ? null : (
        <rect className="d-band" fill={`url(#${hatch})`} x={x} y={y.at(restMm)} width={width} height={space} />
      )}
      <path className="d-cut" d={`M${x - 8} ${FLOOR - 14}l${quarter} -10l${quarter} 20l${quarter} -20l${quarter} 10`} />
    </g>
  );
}

function Column(props: ColumnProps) {
  const { column, x, width, y } = props;
  const lines = [
    { kind: 'rest' as const, value: column.restMm, name: 'rest' },
    { kind: 'record' as const, value: column.recordMm, name: 'record' },
    { kind: 'closed' as const, value: column.closedMm, name: 'closed' },
    { kind: 'target' as const, value: column.targetMm, name: 'to make' },
  ].filter((line): line is typeof line & { value: number } => line.value !== undefined);
  const labels = spreadLabels(
    lines.map((line) => y.at(line.value) + 6),
    24,
  );
  return (
    <g>
      <ColumnBody {...props} />
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

interface GaugeProps {
  readonly columns: readonly HeightColumn[];
  readonly accepted: readonly [number, number];
  readonly hatch: string;
  /** Where it begins on the page. */
  readonly from: number;
}

/** The space between, enlarged: band, value, uncertainty. */
function SpaceGauge({ columns, accepted, hatch, from }: GaugeProps) {
  const shown = columns.filter((column) => column.spaceMm !== undefined);
  const reach = shown.flatMap((c) => [
    (c.spaceMm ?? 0) + (c.uncertaintyMm ?? 0),
    (c.spaceMm ?? 0) - (c.uncertaintyMm ?? 0),
  ]);
  const y = scale([Math.floor(Math.min(0, ...reach)), Math.ceil(Math.max(6, ...reach))], [FLOOR, TOP]);
  const left = from + 50;
  const right = from + gaugeWidth(shown.length) - 10;
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
        {shown.length === 0 ? 'space: not yet' : 'space between, mm'}
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

const heightsOf = (c: HeightColumn): readonly number[] =>
  [c.restMm, c.closedMm, c.recordMm, c.targetMm].filter((height) => height !== undefined);

const spread = (values: readonly number[]): number =>
  values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);

/**
 * The upper end of the heights only: what lies below is cut away, and the cut is drawn. All columns share one scale but
 * begin at their own highest line, for heights between the marks of different visits must not be compared.
 */
function columnScale(column: HeightColumn, all: readonly HeightColumn[]): Scale {
  const shown = Math.max(...all.map((one) => spread(heightsOf(one)))) + 4;
  const top = Math.max(10, ...heightsOf(column));
  return scale([top - shown, top + 1], [FLOOR, TOP]);
}

function sentence({ columns, acceptedMm }: HeightStackProps): string {
  const marks = columns.length > 1 ? ' Each visit has marks of its own: compare spaces, never heights.' : '';
  return `${columns.map(columnSentence).join('. ')}. Accepted space ${mm(acceptedMm[0])} to ${mm(acceptedMm[1])} mm.${marks}`;
}

export function HeightStack(props: HeightStackProps) {
  const { title, columns, acceptedMm } = props;
  const hatch = useId();
  const room = columns.length === 1 ? ROOM.single : ROOM.each;
  const zone = room.all * columns.length;
  const gauge = gaugeWidth(columns.filter((column) => column.spaceMm !== undefined).length);
  return (
    <Figure kind="stack" title={title} text={sentence(props)} width={zone + gauge} height={HEIGHT}>
      <defs>
        <Hatch id={hatch} />
      </defs>
      <path className="d-axis" d={`M10 ${FLOOR}H${zone - 10}`} />
      {columns.map((column, i) => (
        <Column
          key={column.label}
          column={column}
          x={20 + i * room.all}
          width={room.bar}
          y={columnScale(column, columns)}
          hatch={hatch}
        />
      ))}
      <SpaceGauge columns={columns} accepted={acceptedMm} hatch={hatch} from={zone} />
    </Figure>
  );
}
