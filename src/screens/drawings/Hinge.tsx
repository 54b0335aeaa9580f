/** The lower jaw turned about its axis, from the side: what a change at the chin means at the pin and at the molars. */
import { defaultHinge, hingePoints, rotate, solveHinge } from '../../domain/measure/hinge.ts';
import { change, changeRange } from '../format.ts';
import { Figure, Label } from './Figure.tsx';

export interface HingeProps {
  /** Change of the distance between the skin marks; negative closes. */
  readonly chinMm: number;
  readonly incisalMm: readonly [number, number];
  readonly pinMm: readonly [number, number];
  readonly molarMm: readonly [number, number];
  /** What the change is for: "From the closed height to a space of 3.0 mm". */
  readonly about?: string;
}

type Point = { readonly x: number; readonly y: number };

const { incisal: INCISAL, molar: MOLAR, chin: CHIN, nose: NOSE } = hingePoints(defaultHinge);

/** Side view in millimetres, axis at the origin, y down: a jaw drawn round the four points that count. */
const JAW: readonly Point[] = [
  { x: -3, y: -5 },
  { x: 5, y: 0 },
  { x: 10, y: 12 },
  { x: 22, y: 20 },
  { x: 30, y: 31 },
  MOLAR,
  { x: 70, y: 34 },
  INCISAL,
  { x: 79, y: 50 },
  CHIN,
  { x: 70, y: 77 },
  { x: 45, y: 72 },
  { x: 14, y: 61 },
  { x: -6, y: 48 },
  { x: -8, y: 24 },
  { x: -7, y: 4 },
];
/** Drawn this many times larger than it is, or nothing would be seen. */
const LARGER = 3;
const UNIT = 4.2;
const ORIGIN: Point = { x: 56, y: 34 };

const onPage = ({ x, y }: Point): Point => ({ x: ORIGIN.x + x * UNIT, y: ORIGIN.y + y * UNIT });

function place(point: Point): string {
  const { x, y } = onPage(point);
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

/** Turn, in degrees, that changes the chin distance so; no turn where the domain refuses one. */
export function turnFor(chinMm: number): number {
  const solved = solveHinge('chin', chinMm);
  return solved.ok ? solved.value.turnDeg : 0;
}

/** A closed line through all points, rounded (Catmull–Rom as cubic curves). */
export function rounded(points: readonly Point[]): string {
  const at = (i: number): Point => points[(i + points.length) % points.length] ?? { x: 0, y: 0 };
  const curves = points.map((_, i) => {
    const [a, b, c, d] = [at(i - 1), at(i), at(i + 1), at(i + 2)];
    const first = { x: b.x + (c.x - a.x) / 6, y: b.y + (c.y - a.y) / 6 };
    const second = { x: c.x - (d.x - b.x) / 6, y: c.y - (d.y - b.y) / 6 };
    return `C${place(first)} ${place(second)} ${place(c)}`;
  });
  return `M${place(at(0))}${curves.join('')}z`;
}

const outline = (angle: number): string => rounded(JAW.map((point) => rotate(point, angle)));

interface CallProps {
  readonly from: Point;
  readonly to: Point;
  readonly words: string;
}

/** A name beside the drawing with a line to its place. */
function Call({ from, to, words }: CallProps) {
  return (
    <g>
      <path className="d-lead" d={`M${from.x} ${from.y}L${to.x - 6} ${to.y - 7}`} />
      <circle className="d-tip" cx={from.x} cy={from.y} r="6" />
      <Label x={to.x} y={to.y} anchor="start" strong>
        {words}
      </Label>
    </g>
  );
}

function sentence({ chinMm, incisalMm, pinMm, molarMm, about }: HingeProps): string {
  const lead = about === undefined ? '' : `${about}. `;
  if (chinMm === 0) return `${lead}No change between the skin marks: the pin stays as it is.`;
  const verb = chinMm < 0 ? 'closes' : 'opens';
  return `${lead}The jaw ${verb} about its hinge axis: ${change(chinMm)} between the skin marks, ${changeRange(incisalMm)} at the incisors, ${changeRange(pinMm)} at a pin half as far again from the axis, ${changeRange(molarMm)} at the first molar. Movement drawn ${LARGER} times larger.`;
}

export function Hinge(props: HingeProps) {
  const { chinMm, incisalMm, pinMm, molarMm } = props;
  const angle = turnFor(chinMm) * LARGER;
  const [nose, chin, incisal, molar] = [onPage(NOSE), onPage(CHIN), onPage(INCISAL), onPage(MOLAR)];
  const side = 440;
  return (
    <Figure kind="hinge" title="Side view of the hinge" text={sentence(props)} width={830} height={380}>
      <path className="d-jaw" d={outline(0)} />
      <path className="d-jaw-turned" d={outline(angle)} />
      <circle className="d-tip" cx={ORIGIN.x} cy={ORIGIN.y} r="8" />
      <Label x={ORIGIN.x + 18} y={ORIGIN.y + 2} anchor="start">
        hinge axis
      </Label>
      <path className="d-lead" d={`M${nose.x} ${nose.y}L${chin.x} ${chin.y}`} />
      <circle className="d-tip" cx={nose.x} cy={nose.y} r="6" />
      <Label x={nose.x + 14} y={nose.y + 6} anchor="start">
        nose mark
      </Label>
      <Call from={molar} to={{ x: 210, y: 110 }} words={`molar ${changeRange(molarMm)}`} />
      <Call from={incisal} to={{ x: side, y: 200 }} words={`incisors ${changeRange(incisalMm)}`} />
      <Label x={side} y={240} anchor="start">
        {`pin ${changeRange(pinMm)}`}
      </Label>
      <Call from={chin} to={{ x: side, y: 350 }} words={`chin ${change(chinMm)}`} />
    </Figure>
  );
}
