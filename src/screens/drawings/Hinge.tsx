/** The lower jaw turned about its axis, from the side: what a change at the chin means at the pin and at the molars. */
import { change, changeRange } from '../format.ts';
import { Figure, Label } from './Figure.tsx';

export interface HingeProps {
  /** Change of the distance between the skin marks; negative closes. */
  readonly chinMm: number;
  readonly pinMm: readonly [number, number];
  readonly molarMm: readonly [number, number];
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Side view in millimetres, axis at the origin, y down; the same shape as in the hinge model of the domain. */
const INCISAL: Point = { x: 81.3, y: 33.7 };
const MOLAR: Point = { x: 51.3, y: 33.7 };
const CHIN: Point = { x: 78.3, y: 71.7 };
const NOSE: Point = { x: 101.3, y: 5.7 };
const JAW: readonly Point[] = [
  { x: -4, y: -4 },
  { x: 6, y: 2 },
  { x: 16, y: 30 },
  MOLAR,
  INCISAL,
  { x: 80, y: 48 },
  CHIN,
  { x: 62, y: 76 },
  { x: 8, y: 58 },
  { x: -8, y: 30 },
];
/** Drawn this many times larger than it is, or nothing would be seen. */
const LARGER = 3;
const UNIT = 4.2;
const ORIGIN: Point = { x: 60, y: 50 };

const place = ({ x, y }: Point): string => `${(ORIGIN.x + x * UNIT).toFixed(1)} ${(ORIGIN.y + y * UNIT).toFixed(1)}`;

export function turn({ x, y }: Point, angle: number): Point {
  return { x: x * Math.cos(angle) - y * Math.sin(angle), y: x * Math.sin(angle) + y * Math.cos(angle) };
}

/** Angle, in radians, whose first-order change between nose and chin mark is `mm`. */
export function angleFor(mm: number): number {
  const length = Math.hypot(CHIN.x - NOSE.x, CHIN.y - NOSE.y);
  const perRadian = ((CHIN.x - NOSE.x) * -CHIN.y + (CHIN.y - NOSE.y) * CHIN.x) / length;
  return mm / perRadian;
}

const outline = (angle: number): string => `M${JAW.map((p) => place(turn(p, angle))).join('L')}z`;

export function Hinge({ chinMm, pinMm, molarMm }: HingeProps) {
  const angle = angleFor(chinMm) * LARGER;
  const verb = chinMm < 0 ? 'closes' : 'opens';
  const text =
    chinMm === 0
      ? 'No change between the skin marks: the pin stays as it is.'
      : `The jaw ${verb} about its hinge axis: ${change(chinMm)} between the skin marks, ${changeRange(pinMm)} at the pin, ${changeRange(molarMm)} at the first molar. Movement drawn ${LARGER} times larger.`;
  const at = (point: Point) => ({ x: ORIGIN.x + point.x * UNIT, y: ORIGIN.y + point.y * UNIT });
  const [nose, chin, incisal, molar] = [at(NOSE), at(CHIN), at(INCISAL), at(MOLAR)];
  return (
    <Figure kind="hinge" title="Side view of the hinge" text={text} width={640} height={410}>
      <path className="d-jaw" d={outline(0)} />
      <path className="d-jaw-turned" d={outline(angle)} />
      <circle className="d-tip" cx={ORIGIN.x} cy={ORIGIN.y} r="8" />
      <Label x={ORIGIN.x + 16} y={ORIGIN.y - 14} anchor="start">
        hinge axis
      </Label>
      <circle className="d-tip" cx={nose.x} cy={nose.y} r="6" />
      <path className="d-lead" d={`M${nose.x} ${nose.y}L${chin.x} ${chin.y}`} />
      <circle className="d-tip" cx={chin.x} cy={chin.y} r="6" />
      <Label x={nose.x + 12} y={nose.y - 10} anchor="start">
        nose mark
      </Label>
      <Label x={chin.x + 26} y={chin.y + 6} anchor="start" strong>
        chin {change(chinMm)}
      </Label>
      <Label x={incisal.x + 26} y={incisal.y + 6} anchor="start" strong>
        pin {changeRange(pinMm)}
      </Label>
      <Label x={molar.x - 30} y={molar.y - 24} strong>
        molar {changeRange(molarMm)}
      </Label>
    </Figure>
  );
}
