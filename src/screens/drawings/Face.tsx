/** A face from the side, with the two skin marks and the caliper between them. */
import { mm } from '../format.ts';
import { Figure, Label } from './Figure.tsx';

export interface FaceProps {
  /** "rest height", "closed height", "height with the record" */
  readonly what: string;
  readonly valueMm?: number;
}

const NOSE = { x: 268, y: 168 };
const CHIN = { x: 240, y: 318 };
const BEAM = 412;

/** Forehead, nose, lips, chin, throat: one line, facing right. */
const PROFILE =
  'M150 14C196 22 216 56 214 92c-1 16-8 20-6 34 8 12 44 22 60 42 2 8-6 14-20 16-10 1-15 4-14 12l14 10c6 6 4 12-8 16 10 4 14 10 6 18-8 6-14 12-10 24 8 18 12 32 4 50-8 18-28 28-56 30-26 2-44 14-50 34l-8 28';

export function Face({ what, valueMm }: FaceProps) {
  const value = valueMm === undefined ? 'not measured yet' : `${mm(valueMm)} mm`;
  const text = `Caliper from the mark on the tip of the nose to the mark on the most prominent point of the chin, tips just touching. ${what}: ${value}. Not to scale.`;
  return (
    <Figure kind="face" title={`Face from the side, ${what}`} text={text} width={580} height={420}>
      <path className="d-face" d={PROFILE} />
      <path className="d-line" d="M172 118c10-6 20-6 28-2M182 126q8-5 14 0" />
      <path
        className="d-caliper"
        d={`M${BEAM} ${NOSE.y - 40}V${CHIN.y + 40}M${BEAM} ${NOSE.y}H${NOSE.x + 10}M${BEAM} ${CHIN.y}H${CHIN.x + 12}`}
      />
      <circle className="d-tip" cx={NOSE.x} cy={NOSE.y} r="9" />
      <circle className="d-tip" cx={CHIN.x} cy={CHIN.y} r="9" />
      <Label x={NOSE.x + 18} y={NOSE.y - 14} anchor="start">
        nose tip
      </Label>
      <Label x={CHIN.x + 18} y={CHIN.y + 30} anchor="start">
        chin
      </Label>
      <Label x={BEAM + 16} y={(NOSE.y + CHIN.y) / 2} anchor="start" strong>
        {valueMm === undefined ? '? mm' : `${mm(valueMm)} mm`}
      </Label>
    </Figure>
  );
}

export interface SulcusProps {
  readonly depthMm?: number;
  /** How far short of the deepest point the border ends, if a figure is on hand. */
  readonly shortMm?: number;
}

/** Cross-section of a sulcus: ridge, cheek, and the tray border between them. */
export function Sulcus({ depthMm, shortMm }: SulcusProps) {
  const floor = 330;
  const crest = 110;
  const unit = depthMm === undefined || depthMm <= 0 ? undefined : (floor - crest) / depthMm;
  const border =
    unit === undefined || shortMm === undefined ? floor - 60 : floor - Math.min(shortMm, depthMm ?? 0) * unit;
  const deep = depthMm === undefined ? 'depth not measured yet' : `depth ${mm(depthMm)} mm from the crest`;
  const short =
    shortMm === undefined
      ? 'The tray border ends short of the deepest point'
      : `The tray border ends ${mm(shortMm)} mm short of the deepest point`;
  return (
    <Figure kind="sulcus" title="Sulcus in cross-section" text={`Sulcus ${deep}. ${short}.`} width={520} height={400}>
      <path
        className="d-tissue"
        d={`M30 390V180C30 120 70 ${crest} 120 ${crest}s90 30 96 110c4 70 14 ${floor - 230} 44 ${floor - 220}s46-40 50-110l10-110h170V390z`}
      />
      <path className="d-tray-wall" d={`M84 78c90-10 150 30 160 130l12 ${border - 208}`} />
      <path className="d-lead" d={`M110 ${crest}H470M258 ${floor}H470`} />
      <path className="d-span" d={`M450 ${crest}V${floor}M442 ${crest}h16M442 ${floor}h16`} />
      <Label x={440} y={(crest + floor) / 2} anchor="end" strong>
        {depthMm === undefined ? 'depth' : mm(depthMm)}
      </Label>
      <path className="d-span" d={`M290 ${border}V${floor}M282 ${border}h16M282 ${floor}h16`} />
      <Label x={300} y={(border + floor) / 2 + 6} anchor="start">
        {shortMm === undefined ? 'short' : mm(shortMm)}
      </Label>
      <Label x={90} y={60} anchor="start">
        tray
      </Label>
      <Label x={110} y={260}>
        ridge
      </Label>
      <Label x={410} y={80}>
        cheek or lip
      </Label>
    </Figure>
  );
}
