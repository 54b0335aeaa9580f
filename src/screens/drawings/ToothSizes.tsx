/** Sizes of the front teeth: every rule a mark on its own millimetre scale, the spread as a band; no rule wins. */
import { useId } from 'react';
import type { ToothRow } from '../../domain/summary/decided.types.ts';
import { tenths } from '../format.ts';
import { Figure, Hatch, Label } from './Figure.tsx';
import { scale, stackLevels, ticks, type Scale } from './scale.ts';

const WIDTH = 680;
const EDGE = 30;
const LEVEL = 26;
/** Letters for the rules, so that the marks can stand close together. */
const LETTERS = 'ABCDEFGH';

const judged = (tooth: ToothRow) => (tooth.judge ? ': the clinician judges' : '');

/** "38.0 to 44.5 mm, 6.5 mm apart: the clinician judges" */
export function spreadWords(tooth: ToothRow): string {
  if (tooth.estimates.length === 1) return `${tenths(tooth.lowMm)} mm, one rule only`;
  return `${tenths(tooth.lowMm)} to ${tenths(tooth.highMm)} mm, ${tenths(tooth.spreadMm)} mm apart${judged(tooth)}`;
}

function sentence(teeth: readonly ToothRow[]): string {
  if (teeth.length === 0) return 'Nothing to work out tooth sizes from has been measured yet.';
  const each = teeth.map((tooth) => {
    const rules = tooth.estimates.map(({ rule, mm }, i) => `${LETTERS[i] ?? ''} ${rule} ${tenths(mm)}`);
    return `${tooth.label} ${spreadWords(tooth)} (${rules.join(', ')})`;
  });
  return `Tooth sizes by every rule at hand; rules disagree, none is averaged. ${each.join('. ')}.`;
}

/** "Length of an upper central: A face length / 16, B face length / 20"; rows of one rule carry no letter. */
export function legendWords(teeth: readonly ToothRow[]): string {
  const rows = teeth.filter((tooth) => tooth.estimates.length > 1);
  const each = rows.map(({ label, estimates }) => {
    const rules = estimates.map(({ rule }, i) => `${LETTERS[i] ?? ''} ${rule}`);
    return `${label}: ${rules.join(', ')}`;
  });
  return each.join('. ');
}

interface RowProps {
  readonly tooth: ToothRow;
  readonly top: number;
  readonly x: Scale;
  readonly hatch: string;
}

const levelsOf = (tooth: ToothRow, x: Scale) =>
  stackLevels(
    tooth.estimates.map(({ mm }) => x.at(mm)),
    74,
  );
const heightOf = (tooth: ToothRow, x: Scale) =>
  tooth.estimates.length === 1 ? 40 : 74 + LEVEL * (1 + Math.max(...levelsOf(tooth, x)));

function scaleOf({ lowMm, highMm }: ToothRow): Scale {
  const room = Math.max(1, (highMm - lowMm) * 0.15);
  return scale([Math.floor(lowMm - room), Math.ceil(highMm + room)], [EDGE, WIDTH - EDGE]);
}

function Row({ tooth, top, x, hatch }: RowProps) {
  const levels = levelsOf(tooth, x);
  const deepest = Math.max(...levels);
  const base = top + 40 + LEVEL * (deepest + 1);
  const many = tooth.estimates.length > 1;
  return (
    <g>
      <Label x={0} y={top + 22} anchor="start" strong>
        {tooth.label}
      </Label>
      {many ? null : (
        <Label x={WIDTH} y={top + 22} anchor="end" strong>
          {`${tenths(tooth.lowMm)} mm`}
        </Label>
      )}
      {many ? (
        <>
          <rect
            className="d-band"
            fill={`url(#${hatch})`}
            x={x.at(tooth.lowMm)}
            y={base - 8}
            width={Math.max(2, x.at(tooth.highMm) - x.at(tooth.lowMm))}
            height={16}
          />
          <path className="d-axis" d={`M${EDGE} ${base}H${WIDTH - EDGE}`} />
          <path
            className="d-axis"
            d={ticks(x.from, x.to, 1)
              .map((mm) => `M${x.at(mm)} ${base}v6`)
              .join('')}
          />
          {tooth.estimates.map(({ rule, mm }, i) => (
            <g key={rule}>
              <path className="d-height" d={`M${x.at(mm)} ${base - 12}v24`} />
              <Label x={x.at(mm)} y={base - 16 - LEVEL * (levels[i] ?? 0)}>{`${LETTERS[i] ?? ''} ${tenths(mm)}`}</Label>
            </g>
          ))}
          <Label x={x.at(x.from)} y={base + 28}>
            {x.from}
          </Label>
          <Label x={x.at(x.to)} y={base + 28}>
            {x.to}
          </Label>
        </>
      ) : null}
    </g>
  );
}

export function ToothSizes({ teeth }: { readonly teeth: readonly ToothRow[] }) {
  const hatch = useId();
  const scales = teeth.map(scaleOf);
  const heights = teeth.map((tooth, i) => heightOf(tooth, scales[i] ?? scaleOf(tooth)));
  const tops = heights.map((_, i) => heights.slice(0, i).reduce((sum, one) => sum + one, 0));
  const height = Math.max(
    40,
    heights.reduce((sum, one) => sum + one, 0),
  );
  return (
    <Figure
      kind="teeth"
      title="Sizes of the front teeth"
      text={sentence(teeth)}
      legend={legendWords(teeth)}
      width={WIDTH}
      height={height}
    >
      <defs>
        <Hatch id={hatch} />
      </defs>
      {teeth.map((tooth, i) => (
        <Row key={tooth.id} tooth={tooth} top={tops[i] ?? 0} x={scales[i] ?? scaleOf(tooth)} hatch={hatch} />
      ))}
    </Figure>
  );
}
