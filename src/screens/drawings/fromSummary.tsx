/** The drawings of a case, fed from its summary: the only place that picks numbers for them. */
import type { SetRow, Summary, VerticalDimension } from '../../domain/summary/types.ts';
import type { HeightChange } from '../../domain/summary/decided.types.ts';
import { tenths } from '../format.ts';
import { HeightStack, type HeightColumn } from './HeightStack.tsx';
import { Hinge } from './Hinge.tsx';
import { Ruler } from './Ruler.tsx';

/** Readings of one set should lie within this; the domain's advice on a set changes at the same figure. */
export const BAND_MM = 1;
/** Textbook range of the space between rest and closed; the domain's verdict changes at the same figures. */
export const ACCEPTED_MM: readonly [number, number] = [2, 4];

/** Height of a set as it enters the subtraction: its mean; the median alone where there is no other set. */
const heightOf = (set: SetRow | undefined): number | undefined => set?.meanMm ?? set?.medianMm;

function optional<K extends string>(key: K, value: number | undefined): Partial<Record<K, number>> {
  return value === undefined ? {} : ({ [key]: value } as Partial<Record<K, number>>);
}

export function columnOf(vertical: VerticalDimension, label: string): HeightColumn {
  return {
    label,
    ...optional('restMm', heightOf(vertical.rest)),
    ...optional('closedMm', heightOf(vertical.closed)),
    ...optional('recordMm', vertical.record?.medianMm),
    ...optional('targetMm', vertical.targetHeightMm),
    ...optional('spaceMm', vertical.restSpaceMm),
    ...optional('uncertaintyMm', vertical.uncertaintyMm),
  };
}

/** Without the target where no record was made. */
function asOrdered(vertical: VerticalDimension): VerticalDimension {
  if (vertical.lab !== undefined) return vertical;
  const { targetHeightMm: _, ...rest } = vertical;
  return rest;
}

interface HeightsProps {
  readonly summary: Summary;
  /** On the sheet a height to be made is shown only where a record asks for it; elsewhere it would read like an order. */
  readonly ordered?: boolean;
  /** At a step: this visit and the one before, for more would not be legible there; the summary has all. */
  readonly brief?: boolean;
}

export function CaseHeights({ summary, ordered = false, brief = false }: HeightsProps) {
  const earlier = brief ? summary.earlier.slice(-1) : summary.earlier;
  const columns = [...earlier, { visit: summary.visitName, vertical: summary.vertical }].map((one) =>
    columnOf(ordered ? asOrdered(one.vertical) : one.vertical, one.visit),
  );
  return <HeightStack title="Heights and the space between" columns={columns} acceptedMm={ACCEPTED_MM} />;
}

/** A record says by itself what it is for; the other changes are named. */
function aboutChange({ from }: HeightChange, spaceMm: number): { readonly about?: string } {
  if (from === 'closed') return { about: `From the closed height to a space of ${tenths(spaceMm)} mm` };
  return from === 'ground' ? { about: 'By grinding, as read at the pin' } : {};
}

export function CaseHinge({ summary }: { readonly summary: Summary }) {
  const { change, vertical } = summary;
  const { chinMm, incisalMm, pinMm, molarMm } = change ?? vertical.lab ?? {};
  if (chinMm === undefined || incisalMm === undefined || pinMm === undefined || molarMm === undefined) return null;
  const about = change === undefined ? {} : aboutChange(change, vertical.targetSpaceMm);
  return <Hinge chinMm={chinMm} incisalMm={incisalMm} pinMm={pinMm} molarMm={molarMm} {...about} />;
}

interface SetRulerProps {
  readonly set: SetRow;
  readonly plausibleMm?: readonly [number, number];
}

export function SetRuler({ set, plausibleMm }: SetRulerProps) {
  const readings = set.values.map((value, i) => {
    const suspect = set.suspects.find((s) => s.seq === set.seqs[i]);
    const perhaps = suspect?.perhaps === undefined ? {} : { perhapsMm: suspect.perhaps / 100 };
    return { valueMm: value / 100, suspect: suspect !== undefined, ...perhaps };
  });
  return (
    <Ruler
      title={`${set.label}, ${set.markSet}`}
      readings={readings}
      bandMm={BAND_MM}
      {...optional('medianMm', set.medianMm)}
      {...optional('rangeMm', set.rangeMm)}
      {...(plausibleMm === undefined ? {} : { plausibleMm })}
    />
  );
}
