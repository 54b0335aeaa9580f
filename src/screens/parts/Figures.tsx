/** Computed values that matter at this step. How far each source was seen stands beside it; the source itself is on the summary. */
import type { FigureLine } from '../../app/model.ts';

export function Figures({ figures }: { readonly figures: readonly FigureLine[] }) {
  return (
    <dl className="figures" aria-label="Computed">
      {figures.map(({ label, text, status }) => (
        <div key={label} className="figure-line">
          <dt>{label}</dt>
          <dd>
            {text} <span className="figure-status">({status})</span>
          </dd>
        </div>
      ))}
    </dl>
  );
}
