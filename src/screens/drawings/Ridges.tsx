/** Upper and lower ridge from above, to scale in width, with the caliper tips where they belong. */
import { mm } from '../format.ts';
import { Figure, Label, Span } from './Figure.tsx';

const WIDTH = 520;
const HEIGHT = 400;
const MIDDLE = WIDTH / 2;
const FRONT = 60;
/** Drawing units a millimetre. */
const UNIT = 5;
/** Only for drawing a ridge that is not measured yet; said in the caption. */
const UNMEASURED = { upper: 58, lower: 56, length: 46 };
const PAD = { x: 15, y: 26 };

/** A horseshoe open at the back. `half` is the half width at the back, `front` and `back` are heights on the page. */
export function archPath(half: number, front: number, back: number): string {
  const depth = back - front;
  const left = `M${MIDDLE - half} ${back}C${MIDDLE - half} ${back - depth * 0.62} ${MIDDLE - half * 0.72} ${front} ${MIDDLE} ${front}`;
  return `${left}S${MIDDLE + half} ${back - depth * 0.62} ${MIDDLE + half} ${back}`;
}

interface RidgeProps {
  readonly widthMm?: number;
}

export function UpperRidge({ widthMm }: RidgeProps) {
  const half = ((widthMm ?? UNMEASURED.upper) * UNIT) / 2;
  const back = FRONT + 250;
  const value = widthMm === undefined ? 'not measured yet, shape only' : `${mm(widthMm)} mm`;
  const text = `Upper ridge from below. Caliper tips on the outer sides at the widest place, cheek to cheek: ${value}.`;
  return (
    <Figure kind="ridge" title="Upper ridge, where to measure" text={text} width={WIDTH} height={HEIGHT}>
      <path className="d-palate" d={`${archPath(half - 22, FRONT + 22, back)}z`} />
      <path className="d-ridge-edge" d={archPath(half - 24, FRONT + 24, back)} />
      <path className="d-ridge-band" d={archPath(half - 24, FRONT + 24, back)} />
      <path className="d-line" d={`M${MIDDLE} ${FRONT + 96}V${back - 6}`} />
      <path
        className="d-line"
        d={`M${MIDDLE - 8} ${FRONT + 104}q-30 4 -46 26M${MIDDLE + 8} ${FRONT + 104}q30 4 46 26`}
      />
      <path
        className="d-line"
        d={`M${MIDDLE - 8} ${FRONT + 132}q-26 4 -40 24M${MIDDLE + 8} ${FRONT + 132}q26 4 40 24`}
      />
      <ellipse className="d-pad" cx={MIDDLE} cy={FRONT + 72} rx="8" ry="13" />
      <Caliper half={half} y={back - 14} label={widthMm === undefined ? 'widest place' : `${mm(widthMm)} mm`} />
      <Label x={MIDDLE} y={FRONT - 16}>
        front
      </Label>
    </Figure>
  );
}

/** Two beaks from behind, tips on the measured points. */
function Caliper({ half, y, label }: { readonly half: number; readonly y: number; readonly label: string }) {
  const bar = HEIGHT - 40;
  const [a, b] = [MIDDLE - half, MIDDLE + half];
  return (
    <g>
      <path
        className="d-caliper"
        d={`M${a - 14} ${bar}H${b + 14}M${a} ${bar}L${a - 26} ${bar - 40}L${a} ${y}M${b} ${bar}L${b + 26} ${bar - 40}L${b} ${y}`}
      />
      <circle className="d-tip" cx={a} cy={y} r="9" />
      <circle className="d-tip" cx={b} cy={y} r="9" />
      <rect className="d-plate" x={MIDDLE - 84} y={bar - 20} width="168" height="40" rx="8" />
      <Label x={MIDDLE} y={bar + 8} strong>
        {label}
      </Label>
    </g>
  );
}

export interface LowerRidgeProps extends RidgeProps {
  readonly lengthMm?: number;
  /** Which of the two is measured now. */
  readonly measure: 'width' | 'length';
}

export function LowerRidge({ widthMm, lengthMm, measure }: LowerRidgeProps) {
  const half = ((widthMm ?? UNMEASURED.lower) * UNIT) / 2;
  const back = FRONT + Math.min(lengthMm ?? UNMEASURED.length, 56) * UNIT;
  const width = widthMm === undefined ? 'not measured yet, shape only' : `${mm(widthMm)} mm`;
  const length = lengthMm === undefined ? 'not measured' : `${mm(lengthMm)} mm`;
  const text =
    measure === 'width'
      ? `Lower ridge from above. Caliper tips on the centres of the two retromolar pads: ${width}.`
      : `Lower ridge from above. From the front of the ridge to the line through both pads: ${length}. Width ${width}.`;
  return (
    <Figure kind="ridge" title="Lower ridge, where to measure" text={text} width={WIDTH} height={HEIGHT}>
      <path className="d-ridge-edge" d={archPath(half, FRONT, back)} />
      <path className="d-ridge-band" d={archPath(half, FRONT, back)} />
      <path className="d-lead" d={archPath(half, FRONT, back)} />
      {[-1, 1].map((side) => (
        <ellipse key={side} className="d-pad" cx={MIDDLE + side * half} cy={back} rx={PAD.x + 8} ry={PAD.y} />
      ))}
      {measure === 'width' ? (
        <Caliper half={half} y={back} label={widthMm === undefined ? 'pad to pad' : `${mm(widthMm)} mm`} />
      ) : (
        <g>
          <path className="d-lead" d={`M${MIDDLE - half} ${back}H${MIDDLE + half}`} />
          <path className="d-caliper" d={`M${MIDDLE} ${FRONT}V${back}`} />
          <circle className="d-tip" cx={MIDDLE} cy={FRONT} r="9" />
          <circle className="d-tip" cx={MIDDLE} cy={back} r="9" />
          <rect className="d-plate" x={MIDDLE - 84} y={(FRONT + back) / 2 - 20} width="168" height="40" rx="8" />
          <Label x={MIDDLE} y={(FRONT + back) / 2 + 8} strong>
            {lengthMm === undefined ? 'front to pads' : `${mm(lengthMm)} mm`}
          </Label>
        </g>
      )}
      <Label x={MIDDLE} y={FRONT - 30}>
        front
      </Label>
    </Figure>
  );
}

export interface TrayPlanProps {
  readonly arch: 'upper' | 'lower';
  readonly ridgeMm: number;
  readonly wantedMm: number;
  readonly trays: readonly { readonly label: string; readonly innerMm: number; readonly sideMm: number }[];
}

const PLAN = { width: 720, height: 300, unit: 2.35, front: 70, back: 210 };

function traySentence(tray: TrayPlanProps['trays'][number], index: number): string {
  const sides =
    tray.sideMm < 0 ? `${mm(-tray.sideMm)} mm too narrow on each side` : `${mm(tray.sideMm)} mm left and right`;
  return `${index + 1}: ${tray.label}, inner width ${mm(tray.innerMm)}, ${sides}`;
}

function TrayOver({
  tray,
  ridgeMm,
  index,
  x,
}: {
  readonly tray: TrayPlanProps['trays'][number];
  readonly ridgeMm: number;
  readonly index: number;
  readonly x: number;
}) {
  const { unit, front, back } = PLAN;
  const ridge = (ridgeMm * unit) / 2;
  const inner = (tray.innerMm * unit) / 2;
  const gap = inner - ridge;
  return (
    <g transform={`translate(${x - MIDDLE} 0)`}>
      <path className="d-ridge-edge d-thin" d={archPath(ridge - 11, front + 11, back)} />
      <path className="d-ridge-band d-thin" d={archPath(ridge - 11, front + 11, back)} />
      <path
        className="d-tray"
        d={`${archPath(inner, front - gap, back + 8)}M${MIDDLE} ${front - gap}v-26M${MIDDLE - 14} ${front - gap - 26}h28`}
      />
      <Span x1={MIDDLE - inner} x2={MIDDLE - ridge} y={back - 26} tip={6} />
      <Span x1={MIDDLE + ridge} x2={MIDDLE + inner} y={back - 26} tip={6} />
      <Label x={MIDDLE} y={back + 46} strong>
        {index + 1}. {tray.label}
      </Label>
      <Label x={MIDDLE} y={back + 72}>
        {tray.sideMm < 0 ? `${mm(-tray.sideMm)} too narrow` : `${mm(tray.sideMm)} mm a side`}
      </Label>
    </g>
  );
}

/** The best trays over the ridge from above, all to one scale. */
export function TrayPlan({ arch, ridgeMm, wantedMm, trays }: TrayPlanProps) {
  const shown = trays.slice(0, 3);
  const text = `${arch === 'upper' ? 'Upper' : 'Lower'} ridge ${mm(ridgeMm)} mm, clearance wanted ${mm(wantedMm)} mm a side. ${shown.map(traySentence).join('. ')}. To scale.`;
  const step = PLAN.width / Math.max(1, shown.length);
  return (
    <Figure
      kind="tray"
      title={`${arch === 'upper' ? 'Upper' : 'Lower'} trays over the ridge`}
      text={text}
      width={PLAN.width}
      height={PLAN.height}
    >
      {shown.map((tray, index) => (
        <TrayOver key={tray.label} tray={tray} ridgeMm={ridgeMm} index={index} x={step * (index + 0.5)} />
      ))}
    </Figure>
  );
}
