/** Short standing texts: cautions, what was done, what was refused. */
import type { ReactNode } from 'react';
import { ToneIcon } from './Icons.tsx';

/** Cautions stay in view for the rest of the case. */
export function CautionLine({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section className="cautions" aria-label="Cautions of this case">
      <ToneIcon tone="warn" />
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

/** What the app last did, and what it could not do. Both are read out by a screen reader as they change. */
export function SaidLine({ said, trouble }: { readonly said: string; readonly trouble: string }) {
  return (
    <div className="said-line">
      <p className="said" role="status">
        {said}
      </p>
      <p className={trouble === '' ? 'trouble trouble-none' : 'trouble'} role="alert">
        {trouble}
      </p>
    </div>
  );
}

interface PageHeadProps {
  readonly title: string;
  readonly children?: ReactNode;
}

export function PageHead({ title, children }: PageHeadProps) {
  return (
    <header className="page-head">
      <h1>{title}</h1>
      <div className="page-targets no-print">{children}</div>
    </header>
  );
}
