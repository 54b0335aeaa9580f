/** What the visits decided by computation stands on the sheet as text, earlier visits included; what is not there is left out. */
import { describe, expect, it } from 'vitest';
import { sheetModel } from '../../src/handoff/sheet-model.ts';
import { modelText } from '../../src/handoff/sheet-text.ts';
import { sheetTimes } from '../../src/handoff/sheet-times.ts';
import { hasGlyph } from '../../src/handoff/glyphs.ts';
import type { Summary } from '../../src/domain/summary/types.ts';
import { answered } from '../helpers/facts.ts';
import { at, closed, summaryOf } from '../helpers/sittings.ts';
import { oneOfEverything } from './fixture.ts';

const times = sheetTimes('UTC');
const textOf = (summary: Summary) => modelText(sheetModel(summary, times)).replace(/\n\s+/g, ' ');

const visit2 = summaryOf({
  visit: 2,
  bodies: [
    answered('tracing-1-sharp', 'sharp'),
    ...[10, 10.5, 10].flatMap((x, i) => [...at(`tracing-${i + 1}-x`, x), ...at(`tracing-${i + 1}-y`, 20)]),
    ...at('face-width', 136),
    ...at('interalar-width', 35.2),
  ],
});

const visit5 = summaryOf(
  {
    visit: 4,
    bodies: [
      answered('paste-upper', 'relieved'),
      answered('relieved-upper-1', 'upper-rear'),
      ...at('retention-upper', 3),
      ...at('stability-upper', 2),
    ],
  },
  {
    visit: 5,
    day: 2,
    bodies: [
      answered('sore-1', 'lower'),
      answered('sore-1-lower', 'lower-ridge'),
      answered('sore-1-kind', 'red'),
      ...at('retention-upper', 2),
      ...at('stability-upper', 2),
    ],
  },
);

describe('on the sheet as text', () => {
  it('tracings with their points, middle and scatter', () => {
    // Points (10, 20) (10.5, 20) (10, 20): mean 10.17, circle 0.33, furthest 0.5.
    expect(textOf(visit2)).toContain(
      'point 1 at 10.0 across, 20.0 up; point 2 at 10.5 across, 20.0 up; point 3 at 10.0 across, 20.0 up. Middle 10.2 across, 20.0 up.',
    );
  });

  it('tooth sizes with the spread and every rule', () => {
    expect(textOf(visit2)).toMatch(
      /Six upper front teeth, along the curve.*40\.5 to 46\.1 mm by 3 rules, 5\.6 mm apart/,
    );
    expect(textOf(visit2)).toContain('nose width × 1.31: 46.1 mm');
  });

  it('each of them once: what has a section of its own does not stand among the computed values again', () => {
    const computed = (summary: Summary) =>
      sheetModel(summary, times)
        .sections.filter((section) => section.id === 'computed')
        .flatMap((section) => section.blocks);
    expect(visit2.computed.map((row) => row.id)).toEqual(expect.arrayContaining(['tracing-centre', 'teeth-six']));
    expect(JSON.stringify(computed(visit2))).not.toMatch(/Tracings|Six upper front teeth/);
    const apart = visit2.computed.filter((row) => /^(tracing|teeth)-/.test(row.id));
    expect(computed({ ...visit2, computed: apart })).toEqual([
      { kind: 'lines', lines: ['Nothing but what stands above.'] },
    ]);
  });

  it('sore and relieved places, those of the visit before named as earlier', () => {
    const text = textOf(visit5);
    expect(text).toContain('Earlier, visit 4: Upper jaw, rear seal: relieved at insertion.');
    expect(text).toContain(
      'visit 5: Lower jaw, ridge crest: red and sore. Look at the bite and a sharp edge of bone first (from memory).',
    );
  });

  it('scores of every visit, and the review days', () => {
    const text = textOf(visit5);
    expect(text).toContain('visit 4: upper retention 3, stability 2; 5 of 5');
    expect(text).toContain('visit 5: upper retention 2, stability 2; 4 of 5');
    expect(text).toContain('Review after a week: 2026-03-09');
  });

  it('a part with nothing to say is left out', () => {
    const ids = (summary: Summary) => sheetModel(summary, times).sections.map((section) => section.id);
    for (const id of ['tracings', 'teeth', 'sore', 'hold', 'reviews']) expect(ids(oneOfEverything)).not.toContain(id);
    expect(ids(visit2)).toEqual(expect.arrayContaining(['tracings', 'teeth']));
    expect(ids(visit5)).toEqual(expect.arrayContaining(['sore', 'hold', 'reviews']));
    expect(ids(summaryOf({ visit: 4, bodies: [closed(4)] }))).toContain('reviews');
  });

  it('in letters the font on the sheet has', () => {
    const letters = [...new Set(textOf(visit2) + textOf(visit5))];
    const missing = letters.filter((one) => one !== '\n' && !hasGlyph(one.codePointAt(0) ?? 0));
    expect(missing).toEqual([]);
  });
});

describe('heights on the sheet of a later visit', () => {
  const between = [
    answered('marks', 'made'),
    answered('bases-rest', 'both'),
    ...at('rest-height', 71, 71.5, 72),
    answered('bases-closed', 'both'),
    ...at('closed-height', 68.5, 69, 69.5),
  ];

  it('are those measured; no wanted height that could be taken for an order, unless a record asks for one', () => {
    const second = textOf(summaryOf({ visit: 2, bodies: between }));
    expect(second).toContain('Space between rest and closed: 2.5');
    expect(second).not.toMatch(/Height wanted|Record to be made|to make/);
    const refused = textOf(summaryOf({ visit: 3, bodies: [...between, ...at('record-height', 69)] }));
    expect(refused).toContain('Height wanted between the marks: 68.5 mm');
    expect(refused).toContain('to make 68.5 mm');
  });
});
