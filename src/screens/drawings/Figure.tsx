/** A drawing with its text equivalent: title and description for readers, a caption for everyone. */
import { useId, type ReactNode } from 'react';

export interface FigureProps {
  readonly title: string;
  /** The same facts in a sentence or two. */
  readonly text: string;
  /** What letters in the drawing stand for, where the caption is too long to be shown at a step. */
  readonly legend?: string;
  readonly width: number;
  readonly height: number;
  readonly children: ReactNode;
  readonly kind: string;
}

export function Figure({ title, text, legend, width, height, children, kind }: FigureProps) {
  const id = useId();
  return (
    <figure className={`drawing drawing-${kind}`}>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-labelledby={`${id}t ${id}d`}>
        <title id={`${id}t`}>{title}</title>
        <desc id={`${id}d`}>{text}</desc>
        {children}
      </svg>
      {legend === undefined ? null : (
        <p className="drawing-legend" aria-hidden="true">
          {legend}
        </p>
      )}
      <figcaption>{text}</figcaption>
    </figure>
  );
}

interface LabelProps {
  readonly x: number;
  readonly y: number;
  readonly children: ReactNode;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly strong?: boolean;
}

export function Label({ x, y, children, anchor = 'middle', strong = false }: LabelProps) {
  return (
    <text x={x} y={y} textAnchor={anchor} className={strong ? 'd-label d-strong' : 'd-label'}>
      {children}
    </text>
  );
}

/** A distance between two points on a horizontal, with tips at both ends. */
export function Span({
  x1,
  x2,
  y,
  tip = 8,
}: {
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
  readonly tip?: number;
}) {
  return <path className="d-span" d={`M${x1} ${y - tip}v${2 * tip}M${x2} ${y - tip}v${2 * tip}M${x1} ${y}H${x2}`} />;
}

/** Slanting lines instead of a tint: they survive a black-and-white printer. */
export function Hatch({ id, gap = 8 }: { readonly id: string; readonly gap?: number }) {
  return (
    <pattern id={id} width={gap} height={gap} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line x1="0" y1="0" x2="0" y2={gap} className="d-hatch" />
    </pattern>
  );
}
