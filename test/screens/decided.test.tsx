/** The drawings of what is computed where visits decide: to scale, in words, and nothing by colour alone. */
import { renderToStaticMarkup } from 'react-dom/server';
import { beforeAll, describe, expect, it } from 'vitest';
import { CaseHinge } from '../../src/screens/drawings/fromSummary.tsx';
import { SoreMap } from '../../src/screens/drawings/SoreMap.tsx';
import { ToothSizes } from '../../src/screens/drawings/ToothSizes.tsx';
import { Tracing } from '../../src/screens/drawings/Tracing.tsx';
import { LabSheet } from '../../src/screens/labsheet/LabSheet.tsx';
import { fetchDecided } from '../../src/screens/decided/Lazy.tsx';
import { states } from '../../src/screens/preview/states.ts';
import { Hold, ReviewDays, SoreAreas, TracingsAndTeeth } from '../../src/screens/summary/decided.tsx';

beforeAll(fetchDecided);

const summary = states['summary-decided']!.summary!;
const numbersIn = (markup: string, pattern: RegExp): number[] => [...markup.matchAll(pattern)].map((m) => Number(m[1]));
const caption = (markup: string) => /<figcaption>([^<]+)</.exec(markup)?.[1] ?? '';

describe('every drawing says in words what it shows', () => {
  it.each([
    ['tracings', <Tracing key="t" tracing={summary.tracing!} />],
    ['teeth', <ToothSizes key="s" teeth={summary.teeth!} />],
    ['no teeth yet', <ToothSizes key="n" teeth={[]} />],
    ['sore', <SoreMap key="m" areas={summary.sore!} />],
    ['nothing sore', <SoreMap key="o" areas={[]} />],
  ])('%s', (_name, drawing) => {
    const markup = renderToStaticMarkup(drawing);
    const desc = /<desc[^>]*>([^<]+)</.exec(markup)?.[1] ?? '';
    expect(caption(markup).length).toBeGreaterThan(20);
    expect(desc).toBe(caption(markup));
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('tracings', () => {
  const markup = renderToStaticMarkup(<Tracing tracing={summary.tracing!} />);

  it('stand at distances in proportion to their millimetres', () => {
    // Points at 30.0, 30.4 and 30.1 across: the second is four times as far from the first as the third.
    const [a = 0, b = 0, c = 0] = numbersIn(markup, /class="d-apex"><path d="M([\d.]+) /g);
    expect(b - a).toBeCloseTo(4 * (c - a), 6);
  });

  it('the circle holds all points about the middle', () => {
    const [, cx, cy, r] = /class="d-scatter" cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/.exec(markup)!.map(Number);
    const points = [...markup.matchAll(/class="d-apex"><path d="M([\d.]+) ([\d.]+)/g)].map((m) => [
      Number(m[1]) + 9,
      Number(m[2]) + 9,
    ]);
    expect(points).toHaveLength(3);
    for (const [x, y] of points) expect(Math.hypot(x! - cx!, y! - cy!)).toBeLessThanOrEqual(r! + 0.5);
  });

  it('a blunt one has a ring and is named; a middle that is not accepted is hollow', () => {
    expect(markup.match(/d-apex-blunt/g)).toHaveLength(1);
    expect(caption(markup)).toContain('point 3 at 30.1 across, 29.8 up, called blunt');
    const scatter = { ...summary.tracing!.scatter!, verdict: 'reject' as const };
    const apart = renderToStaticMarkup(<Tracing tracing={{ ...summary.tracing!, scatter }} />);
    expect(apart).toContain('d-centre-open');
    expect(apart).toContain('to be made again');
    expect(markup).not.toContain('d-centre-open');
  });
});

describe('tooth sizes', () => {
  it('every rule is a mark on one scale, at its millimetres', () => {
    const markup = renderToStaticMarkup(<ToothSizes teeth={summary.teeth!.slice(0, 1)} />);
    // 40, 39.29, 44.54 and 38 mm: (44.54 − 38) / (40 − 38) = 3.27.
    const [a = 0, , c = 0, d = 0] = numbersIn(markup, /class="d-height" d="M([\d.]+) /g);
    expect((c - d) / (a - d)).toBeCloseTo(3.27, 6);
    expect(caption(markup)).toContain('38.0 to 44.5 mm, 6.5 mm apart: the clinician judges');
    expect(caption(markup)).toContain('C nose width × 1.31 44.5');
    // At a step the letters alone are explained, without the figures that stand beside them.
    expect(/drawing-legend"[^>]*>([^<]+)</.exec(markup)?.[1]).toMatch(
      /: A face width .*, C nose width × 1\.31, D [^\d]+$/,
    );
  });
});

describe('sore places', () => {
  const markup = renderToStaticMarkup(<SoreMap areas={summary.sore!} />);
  it('of now are full, earlier ones dashed; relieved ones square', () => {
    expect(markup.match(/d-spot-now"/g)).toHaveLength(2);
    expect(markup.match(/d-spot-earlier"/g)).toHaveLength(2);
    expect(markup.match(/d-spot-earlier"><rect/g)).toHaveLength(1);
  });
  it('carry the numbers of the list beside', () => {
    const list = renderToStaticMarkup(<SoreAreas summary={summary} />);
    expect(list).toContain(
      '<strong>3</strong> visit 5: Lower jaw, behind the mylohyoid, right: red and sore, 4 mm, 1 week',
    );
    expect(list).toMatch(/Look at an undercut first/);
    expect(caption(markup)).toContain('3, visit 5: lower, behind the mylohyoid, right, sore, red and sore, 4 mm');
  });
});

describe('on the summary and on the sheet', () => {
  const text = (node: Parameters<typeof renderToStaticMarkup>[0]) =>
    renderToStaticMarkup(node)
      .replace(/<[^>]+>/g, ' ')
      .replace(/\s+/g, ' ');

  it('scores from visit to visit, and review days with how they stand', () => {
    expect(text(<Hold summary={summary} />)).toMatch(
      /visit 4 3 and 2 2 and 2 9 of 10, good visit 5 3 and 2 1 and 2 8 of 10/,
    );
    const reviews = text(<ReviewDays summary={summary} />);
    expect(reviews).toContain('2026-11-24 to 2026-11-25 (seen)');
    expect(reviews).toContain('2026-11-30 (due now)');
  });

  it('the hinge shows the change this visit asks about, record or none', () => {
    const { lab: _lab, ...vertical } = summary.vertical;
    expect(renderToStaticMarkup(<CaseHinge summary={{ ...summary, vertical }} />)).toContain('chin −0.5 mm');
    const { change: _change, ...without } = summary;
    expect(renderToStaticMarkup(<CaseHinge summary={{ ...without, vertical }} />)).toBe('');
  });

  it('the sheet carries all of it; a case that has none of it shows no empty part', () => {
    const sheet = text(<LabSheet summary={summary} />);
    for (const part of ['Tracings and tooth sizes', 'Retention and stability', 'Sore and relieved places', 'Reviews'])
      expect(sheet).toContain(part);
    const plain = states['lab-sheet']!.summary!;
    for (const part of [TracingsAndTeeth, Hold, SoreAreas, ReviewDays])
      expect(renderToStaticMarkup(part({ summary: plain }))).toBe('');
  });
});
