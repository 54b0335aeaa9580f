/** How the order was handed over: signed or not, what was still open, and who overruled it why. */
import type { Summary } from '../../domain/summary/types.ts';
import { ToneIcon } from '../parts/Icons.tsx';

export function HandedOver({ summary }: { readonly summary: Summary }) {
  const { open, closedAt, signed } = summary;
  const overruled = signed.filter((one) => one.overruled !== undefined);
  if (closedAt !== undefined && open.length === 0 && overruled.length === 0) return null;
  return (
    <section className="cautions" aria-label="How it was handed over">
      <ToneIcon tone="warn" />
      <ul>
        {closedAt === undefined ? <li>The visit is not closed: the order may still change.</li> : null}
        {open.map((item) => (
          <li key={item}>Still open: {item}</li>
        ))}
        {overruled.map(({ role, initials, overruled: reason }) => (
          <li key={role}>
            Overruled by {initials}: {reason}
          </li>
        ))}
      </ul>
    </section>
  );
}
