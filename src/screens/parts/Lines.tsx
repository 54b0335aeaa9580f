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

/** The first words of each caution: enough to stop a hand. The whole sentence stands on summary and lab sheet. */
export function cautionHead(caution: string): string {
  const [head = caution] = caution.split(':');
  return head.length < 4 ? caution : head;
}

/** One line at every step of the visit. */
export function CautionHeads({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <section className="cautions caution-heads" aria-label="Cautions of this case">
      <ToneIcon tone="warn" />
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{cautionHead(caution)}</li>
        ))}
      </ul>
    </section>
  );
}

/** What the app last did. Read out by a screen reader as it changes. */
export function Said({ text }: { readonly text: string }) {
  return (
    <p className={text.startsWith('Not kept') ? 'said said-not' : 'said'} role="status">
      {text}
    </p>
  );
}

/** What it could not do, and what can be done instead. */
export function Trouble({ text }: { readonly text: string }) {
  return (
    <p className={text === '' ? 'trouble trouble-none' : 'trouble'} role="alert">
      {text}
    </p>
  );
}

export function SaidLine({ said, trouble }: { readonly said: string; readonly trouble: string }) {
  return (
    <div className="said-line">
      <Said text={said} />
      <Trouble text={trouble} />
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
