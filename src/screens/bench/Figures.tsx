/** Numbers that are worked from: large, each with what it is and where it was read. */
import type { BenchFigure } from '../../domain/summary/bench.types.ts';

export function BenchFigures({ figures }: { readonly figures: readonly BenchFigure[] }) {
  if (figures.length === 0) return null;
  return (
    <dl className="bench-figures">
      {figures.map(({ label, digits, unit, more }) => (
        <div key={`${label}:${more ?? ''}:${digits}`} className={digits.length > 8 ? 'bench-figure-wide' : ''}>
          <dt>{label}</dt>
          <dd>
            <span className="bench-digits">{digits}</span>
            {unit === '' ? '' : unit === '°' ? '°' : ` ${unit}`}
            {more === undefined ? null : <span className="cell-more">{more}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** A sentence with its millimetres large: "borders **2** mm short". */
export function LargeNumbers({ text }: { readonly text: string }) {
  const parts = text.split(/([+−-]?\d+(?:\.\d+)?(?= mm))/u);
  return parts.map((part, place) =>
    place % 2 === 1 ? (
      <span key={`${String(place)}:${part}`} className="bench-digits">
        {part}
      </span>
    ) : (
      part
    ),
  );
}
