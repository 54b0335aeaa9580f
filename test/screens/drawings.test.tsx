import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { solveHinge } from '../../src/domain/measure/hinge.ts';
import { restSpace, setAdvice } from '../../src/domain/measure/vertical.ts';
import { Face, Sulcus } from '../../src/screens/drawings/Face.tsx';
import { ACCEPTED_MM, BAND_MM, CaseHeights, SetRuler, columnOf } from '../../src/screens/drawings/fromSummary.tsx';
import { HeightStack } from '../../src/screens/drawings/HeightStack.tsx';
import { Hinge, turnFor } from '../../src/screens/drawings/Hinge.tsx';
import { LowerRidge, TrayPlan, UpperRidge } from '../../src/screens/drawings/Ridges.tsx';
import { Ruler } from '../../src/screens/drawings/Ruler.tsx';
import { piecesOf } from '../../src/screens/drawings/Timeline.tsx';
import { upperMixing, upperPour } from '../../src/screens/preview/clocks.ts';
import { restSet, summary } from '../../src/screens/preview/summary.ts';

const numbersIn = (markup: string, pattern: RegExp): number[] => [...markup.matchAll(pattern)].map((m) => Number(m[1]));

const ruler = (
  <Ruler
    title="Rest height"
    bandMm={1}
    medianMm={71}
    rangeMm={4}
    plausibleMm={[40, 110]}
    readings={[
      { valueMm: 70, suspect: false },
      { valueMm: 72, suspect: false },
      { valueMm: 74, suspect: true, perhapsMm: 70 },
    ]}
  />
);

/** Letters are at most 0.6 of their size wide on average, 21 units high as drawings.css has them. */
const endsAt = (x: number, words: string): number => x + (words.length * 0.6 * 21) / 2;

it.each([undefined, 3])('the words below the space between end inside the drawing (space: %s)', (spaceMm) => {
  const columns = [{ label: 'visit 1', restMm: 70.5, ...(spaceMm === undefined ? {} : { spaceMm }) }];
  const markup = renderToStaticMarkup(<HeightStack title="Heights" columns={columns} acceptedMm={[2, 4]} />);
  const width = Number(/viewBox="0 0 (\d+)/.exec(markup)?.[1]);
  const [, x, words = ''] = /<text[^>]* x="([\d.]+)"[^>]*>(space[^<]*)</.exec(markup) ?? [];
  expect(words).toContain('space');
  expect(endsAt(Number(x), words)).toBeLessThan(width);
});

describe('every drawing', () => {
  const all = {
    ruler,
    stack: <CaseHeights summary={summary} />,
    hinge: <Hinge chinMm={-2} incisalMm={[-2, -1.6]} pinMm={[-3, -2.4]} molarMm={[-1.2, -0.8]} />,
    upper: <UpperRidge widthMm={58.5} />,
    lower: <LowerRidge measure="width" widthMm={56.5} />,
    length: <LowerRidge measure="length" lengthMm={45} />,
    trays: <TrayPlan arch="upper" ridgeMm={58} wantedMm={5} trays={[{ label: 'Upper 72', innerMm: 72, sideMm: 7 }]} />,
    face: <Face what="Rest height" valueMm={70.5} />,
    sulcus: <Sulcus depthMm={12} shortMm={3} />,
  };
  it.each(Object.entries(all))('%s says in words what it shows', (_name, drawing) => {
    const markup = renderToStaticMarkup(drawing);
    const title = /<title[^>]*>([^<]+)</.exec(markup)?.[1] ?? '';
    const desc = /<desc[^>]*>([^<]+)</.exec(markup)?.[1] ?? '';
    const caption = /<figcaption>([^<]+)</.exec(markup)?.[1] ?? '';
    expect(title.length).toBeGreaterThan(5);
    expect(desc).toBe(caption);
    expect(caption).toMatch(/\d/);
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
  });
  it.each([
    <UpperRidge key="u" />,
    <LowerRidge key="l" measure="length" />,
    <Face key="f" what="Rest height" />,
    <Sulcus key="s" />,
    <Ruler key="r" title="Rest height" readings={[]} bandMm={1} />,
    <HeightStack key="h" title="Heights" columns={[{ label: 'visit 1' }]} acceptedMm={[2, 4]} />,
  ])('says so when there is nothing to show yet', (drawing) => {
    const markup = renderToStaticMarkup(drawing);
    expect(markup).toMatch(/not measured|no reading|not yet/);
    expect(markup).not.toMatch(/NaN|undefined|Infinity/);
  });
});

describe('readings on a ruler', () => {
  const markup = renderToStaticMarkup(ruler);
  it('stand at distances in proportion to their millimetres', () => {
    const [a = 0, b = 0, c = 0] = numbersIn(markup, /class="d-mark[^"]*"><line x1="([\d.]+)"/g);
    expect(b - a).toBeGreaterThan(0);
    expect(c - b).toBeCloseTo(b - a, 6);
  });
  it('the band is as wide as its millimetre', () => {
    const [a = 0, b = 0] = numbersIn(markup, /class="d-mark[^"]*"><line x1="([\d.]+)"/g);
    const width = Number(/<rect[^>]*width="([\d.]+)"[^>]*class="d-band"/.exec(markup)?.[1]);
    expect(width).toBeCloseTo((b - a) / 2, 6);
  });
  it('name the one that stands apart, in words and in shape', () => {
    expect(markup).toContain('stands apart: 74 (perhaps 70)');
    expect(markup.match(/d-mark-suspect/g)).toHaveLength(1);
  });
  it('a set of the summary is drawn whole', () => {
    const set = renderToStaticMarkup(<SetRuler set={restSet} />);
    expect(set.match(/class="d-mark/g)).toHaveLength(restSet.n);
    expect(set).toContain('Rest height, visit 1, marks 1: 70.5, 71, 74.5 mm; median 71; spread 4');
  });
});

describe('the figures drawn are those the domain judges by', () => {
  it('the band of one set', () => {
    expect(setAdvice(BAND_MM, 3)).toBe('accept');
    expect(setAdvice(BAND_MM + 0.01, 3)).not.toBe('accept');
  });
  it.each([
    [ACCEPTED_MM[0], 'usual'],
    [ACCEPTED_MM[0] - 0.01, 'small'],
    [ACCEPTED_MM[1], 'usual'],
    [ACCEPTED_MM[1] + 0.01, 'large'],
  ])('a space of %d mm is %s', (space, verdict) => {
    const found = restSpace([7000], [7000 - Math.round(space * 100)]);
    expect(found.ok && found.value.verdict).toBe(verdict);
  });
  it('the turn of the jaw', () => {
    const solved = solveHinge('chin', -3);
    expect(turnFor(-3)).toBe(solved.ok ? solved.value.turnDeg : Number.NaN);
    expect(turnFor(0)).toBeCloseTo(0, 9);
    expect(turnFor(1000)).toBe(0);
  });
});

describe('the height stack', () => {
  it('draws heights whose difference is the space beside them', () => {
    const column = columnOf(summary.vertical, summary.visitName);
    expect((column.restMm ?? 0) - (column.closedMm ?? 0)).toBeCloseTo(column.spaceMm ?? Number.NaN, 9);
  });
  it('one column a visit, compared with none other', () => {
    const two = { ...summary, earlier: [{ visit: 'visit 1', vertical: summary.vertical }], visitName: 'visit 2' };
    const markup = renderToStaticMarkup(<CaseHeights summary={two} />);
    expect(markup.match(/d-column/g)).toHaveLength(2);
    expect(markup).toContain('visit 2');
    expect(markup).toContain('compare spaces, never heights');
  });
  it('at a step shows this visit and the one before, and all of them elsewhere', () => {
    const earlier = ['visit 1', 'visit 2', 'visit 3'].map((visit) => ({ visit, vertical: summary.vertical }));
    const four = { ...summary, earlier, visitName: 'visit 4' };
    const brief = renderToStaticMarkup(<CaseHeights summary={four} brief />);
    expect(brief.match(/visit \d(?=<\/text>)/g)).toEqual(['visit 3', 'visit 4']);
    expect(renderToStaticMarkup(<CaseHeights summary={four} />).match(/d-column/g)).toHaveLength(4);
  });
  it('begins every column at its own rest height, so that marks of two visits are not compared', () => {
    const columns = [
      { label: 'visit 1', restMm: 70, closedMm: 67 },
      { label: 'visit 2', restMm: 75, closedMm: 72 },
    ];
    const markup = renderToStaticMarkup(<HeightStack title="Heights" columns={columns} acceptedMm={[2, 4]} />);
    const tops = numbersIn(markup, /d-height-rest"[^>]*y1="([\d.]+)"/g);
    expect(tops).toHaveLength(2);
    expect(tops[0]).toBeCloseTo(tops[1] ?? Number.NaN, 9);
  });
});

describe.each([2, 5])('the height stack of %i visits', (count) => {
  it('has no label that runs under the next column or into the scale beside them', () => {
    const heights = { restMm: 70.5, closedMm: 67.5, recordMm: 67.5, targetMm: 67.5, spaceMm: 3 };
    const columns = Array.from({ length: count }, (_, i) => ({ label: `visit ${i + 1}`, ...heights }));
    const markup = renderToStaticMarkup(<HeightStack title="Heights" columns={columns} acceptedMm={[2, 4]} />);
    const starts = numbersIn(markup, /<line class="d-height d-height-rest" x1="([\d.]+)"/g);
    expect(starts).toHaveLength(count);
    const axis = Number(/<path class="d-axis" d="M([\d.]+) 40V350"/.exec(markup)?.[1]);
    const labels = [...markup.matchAll(/<text x="([\d.]+)"[^>]*>((?:rest|record|closed|to make) [\d.]+)</g)];
    expect(labels).toHaveLength(4 * count);
    for (const [i, [, x, words = '']] of labels.entries()) {
      // Letters are at most 0.6 of their size wide on average.
      const end = Number(x) + words.length * 0.6 * 21;
      // Left of the scale stand its numbers, one letter of them.
      expect(end).toBeLessThan(starts[Math.floor(i / 4) + 1] ?? axis - 14 - 21);
    }
  });
});

it('on the scale of the space every number ends before the next point, and inside the drawing', () => {
  const columns = [3, 2.5, 3, 2.5, 2.9].map((spaceMm, i) => ({ label: `visit ${i + 1}`, restMm: 70, spaceMm }));
  const markup = renderToStaticMarkup(<HeightStack title="Heights" columns={columns} acceptedMm={[2, 4]} />);
  const points = numbersIn(markup, /<circle cx="([\d.]+)"/g);
  expect(points).toHaveLength(5);
  const width = Number(/viewBox="0 0 (\d+)/.exec(markup)?.[1]);
  const ends = numbersIn(markup, /<text x="([\d.]+)"[^>]*>\d\.\d</g).map((x) => x + 3 * 0.6 * 21);
  expect(ends).toHaveLength(5);
  // A point is 9 units about its middle.
  for (const [i, end] of ends.entries())
    expect(end).toBeLessThan(points[i + 1] === undefined ? width : points[i + 1]! - 9);
});

describe('the line of a clock', () => {
  it('follows the leaflet from the start of mixing', () => {
    const pieces = piecesOf(upperMixing);
    expect(pieces.map((piece) => (piece.to - upperMixing.startedAt) / 1000)).toEqual([60, 120, 270]);
    expect(pieces[0]?.from).toBe(upperMixing.startedAt);
    expect(pieces[1]?.from).toBe(pieces[0]?.to);
  });
  it('shows the pouring once the tray is out', () => {
    expect(piecesOf(upperPour).map((piece) => piece.id)).toEqual(['pourWithin']);
    expect(piecesOf(upperPour)[0]?.from).toBe(upperPour.outAt);
  });
});
