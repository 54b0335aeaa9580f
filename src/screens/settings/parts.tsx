/** What settings are made of: a heading with its choices, one of several, more or less. */
import type { ReactNode } from 'react';
import { Target } from '../parts/Target.tsx';

interface SectionProps {
  readonly id: string;
  readonly title: string;
  readonly children: ReactNode;
}

export function Section({ id, title, children }: SectionProps) {
  return (
    <section className={`setting setting-${id}`} aria-labelledby={`setting-${id}`}>
      <h2 id={`setting-${id}`}>{title}</h2>
      {children}
    </section>
  );
}

export interface Option<Value> {
  readonly value: Value;
  readonly label: ReactNode;
  /** What it means, in a line. */
  readonly more?: string;
}

interface OneOfProps<Value> {
  readonly name: string;
  readonly options: readonly Option<Value>[];
  readonly chosen: Value;
  readonly onChoose: (value: Value) => void;
}

export function OneOf<Value extends string | number>({ name, options, chosen, onChoose }: OneOfProps<Value>) {
  return (
    <div className={`one-of one-of-${options.length}`} role="group" aria-label={name}>
      {options.map(({ value, label, more }) => (
        <Target key={value} size="big" chosen={value === chosen} onPress={() => onChoose(value)}>
          {label}
          {more === undefined ? null : <span className="option-more">{more}</span>}
        </Target>
      ))}
    </div>
  );
}

interface MoreOrLessProps {
  readonly name: string;
  readonly shown: string;
  readonly value: number;
  readonly step: number;
  readonly within: readonly [low: number, high: number];
  readonly onChange: (value: number) => void;
}

/** Steps are kept free of binary dust: 0.7 + 0.1 is 0.8 here. */
export const stepped = (value: number, by: number): number => Math.round((value + by) * 100) / 100;

export function MoreOrLess({ name, shown, value, step, within, onChange }: MoreOrLessProps) {
  const [low, high] = within;
  const to = (next: number) => {
    if (next >= low && next <= high) onChange(next);
  };
  const less = stepped(value, -step);
  const more = stepped(value, step);
  return (
    <div className="more-or-less" role="group" aria-label={name}>
      <span className="more-or-less-name">{name}</span>
      <Target name={`${name}: less`} refused={less < low} onPress={() => to(less)}>
        −
      </Target>
      <output className="more-or-less-value">{shown}</output>
      <Target name={`${name}: more`} refused={more > high} onPress={() => to(more)}>
        +
      </Target>
    </div>
  );
}
