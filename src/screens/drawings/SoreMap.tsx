/** Sore and relieved places on both fitting surfaces: now in full black, earlier ones fainter and dashed. */
import type { Jaw, SoreArea } from '../../domain/summary/decided.types.ts';
import { Figure, Label } from './Figure.tsx';
import { OUTLINES, placeOf, SURFACE } from './surfaces.ts';

const JAWS: readonly Jaw[] = ['upper', 'lower'];
const HEAD = 50;
const GAP = 40;
const WIDTH = SURFACE.width * 2 + GAP;
const HEIGHT = SURFACE.height + HEAD;

/** Outline of one fitting surface with its sides named; right is the patient's, on the left of whoever looks. */
export function Surface({ jaw }: { readonly jaw: Jaw }) {
  const { edge, crest } = OUTLINES[jaw];
  const y = jaw === 'upper' ? 30 : SURFACE.height - 12;
  return (
    <g>
      <path className="d-surface" d={edge} />
      <path className="d-crest" d={crest} />
      <Label x={6} y={y} anchor="start">
        right
      </Label>
      <Label x={SURFACE.width - 6} y={y} anchor="end">
        left
      </Label>
    </g>
  );
}

export interface Numbered {
  readonly number: number;
  readonly area: SoreArea;
}

/** Numbers run over all areas of the case, oldest first, so that map and list agree. */
export function numbered(areas: readonly SoreArea[]): readonly Numbered[] {
  return areas.map((area, i) => ({ number: i + 1, area }));
}

interface SpotProps {
  readonly spot: Numbered;
  /** How many spots lie in the same region before this one. */
  readonly before: number;
}

function Spot({ spot: { number, area }, before }: SpotProps) {
  const at = placeOf(area.jaw, area.region);
  if (at === undefined) return null;
  const when = area.current ? 'd-spot d-spot-now' : 'd-spot d-spot-earlier';
  const x = at.x + before * 52;
  return (
    <g className={when}>
      {area.what === 'sore' ? (
        <circle cx={x} cy={at.y} r="26" />
      ) : (
        <rect x={x - 24} y={at.y - 24} width="48" height="48" rx="5" />
      )}
      <text x={x} y={at.y + 11} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

const sameRegion = (a: SoreArea, b: SoreArea) => a.jaw === b.jaw && a.region === b.region;

function areaWords({ number, area }: Numbered): string {
  const { visit, jaw, label, what, kind, sizeMm, current } = area;
  const looks = [
    ...(kind === undefined ? [] : [kind.toLowerCase()]),
    ...(sizeMm === undefined ? [] : [`${sizeMm} mm`]),
  ];
  const how = what === 'relieved' ? 'relieved' : ['sore', ...looks].join(', ');
  return `${number}, ${visit}${current ? '' : ' (earlier)'}: ${jaw}, ${label.toLowerCase()}, ${how}`;
}

function sentence(areas: readonly SoreArea[]): string {
  const where = 'Fitting surfaces, right and left the patient’s';
  if (areas.length === 0) return `${where}: no sore place has been named yet (0).`;
  return `${where}. ${numbered(areas).map(areaWords).join('. ')}.`;
}

export function SoreMap({ areas }: { readonly areas: readonly SoreArea[] }) {
  const spots = numbered(areas);
  return (
    <Figure
      kind="sore"
      title="Sore places on the fitting surfaces"
      text={sentence(areas)}
      width={WIDTH}
      height={HEIGHT}
    >
      {JAWS.map((jaw, i) => (
        <g key={jaw} transform={`translate(${i * (SURFACE.width + GAP)} ${HEAD})`}>
          <Label x={SURFACE.width / 2} y={-10} strong>
            {jaw}
          </Label>
          <Surface jaw={jaw} />
          {spots
            .filter(({ area }) => area.jaw === jaw)
            .map((spot, k, all) => (
              <Spot
                key={spot.number}
                spot={spot}
                before={all.slice(0, k).filter(({ area }) => sameRegion(area, spot.area)).length}
              />
            ))}
        </g>
      ))}
    </Figure>
  );
}
