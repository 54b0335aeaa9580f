/** Scores, review days and sore places: from visit to visit, each figure worked by hand. */
import { describe, expect, it } from 'vitest';
import { reviewDates } from '../../../src/domain/summary/reviews.ts';
import { answered } from '../../helpers/facts.ts';
import { at, caseOf, closed, DAY, FIRST, flag, row, summaryOf, type Sitting } from '../../helpers/sittings.ts';

const scores = (upperR: number, upperS: number, lowerR: number, lowerS: number) => [
  ...at('retention-upper', upperR),
  ...at('stability-upper', upperS),
  ...at('retention-lower', lowerR),
  ...at('stability-lower', lowerS),
];

describe('retention and stability', () => {
  it('summed, with its band, from visit to visit', () => {
    // 3 + 2 + 2 + 2 = 9, good; 2 + 2 + 1 + 1 = 6, fair: three fewer.
    const summary = summaryOf(
      { visit: 4, bodies: [scores(3, 2, 2, 2)] },
      { visit: 5, day: 2, bodies: [scores(2, 2, 1, 1)] },
    );
    expect(summary.hold?.map(({ visit, sum, band }) => [visit, sum, band])).toEqual([
      ['visit 4', 9, 'good'],
      ['visit 5', 6, 'fair'],
    ]);
    expect(row(summary, 'hold')).toMatchObject({
      text: '6 of 10, fair; −3 since visit 4 (9 of 10)',
      sourceStatus: 'from memory',
    });
  });

  it('one denture alone has five points and no band; half a score is named', () => {
    const summary = summaryOf({ visit: 4, bodies: [at('retention-upper', 3), at('stability-upper', 2)] });
    expect(summary.hold).toMatchObject([{ sum: 5, most: 5 }]);
    expect(summary.hold?.[0]?.band).toBeUndefined();
    expect(flag(summaryOf({ visit: 4, bodies: [at('retention-upper', 2.5)] }), 'score')?.what).toContain('2.5');
  });
});

describe('review days', () => {
  const delivered: Sitting = { visit: 4, bodies: [answered('work-returned', 'yes')] };

  it('after the dentures were handed over on Monday 2 March 2026', () => {
    const view = caseOf([{ ...delivered, bodies: [...delivered.bodies, closed(4)] }]);
    expect(reviewDates(view, FIRST)).toMatchObject({
      delivered: '2026-03-02',
      rows: [
        { id: 'first', from: '2026-03-03', to: '2026-03-04', state: 'later' },
        { id: 'week', from: '2026-03-09', to: '2026-03-09', state: 'later' },
        { id: 'fourWeeks', from: '2026-03-30', to: '2026-03-30', state: 'later' },
        { id: 'year', from: '2027-03-02', to: '2027-03-02', state: 'later' },
      ],
    });
  });

  it('due, past and seen go by the day and by the reviews there were', () => {
    const view = caseOf([delivered, { visit: 5, day: 8, bodies: [closed(5)] }]);
    const states = (day: number) => reviewDates(view, FIRST + day * DAY)?.rows.map((one) => one.state);
    expect(states(8)).toEqual(['past', 'seen', 'later', 'later']);
    expect(states(28)).toEqual(['past', 'seen', 'due', 'later']);
    expect(states(40)).toEqual(['past', 'seen', 'past', 'later']);
  });

  it.each([
    ['before they were handed over', [{ visit: 3, bodies: [closed(3)] }]],
    ['while the visit is open', [{ visit: 4, bodies: [answered('work-returned', 'yes')] }]],
    ['when the work was not here', [{ visit: 4, bodies: [answered('work-returned', 'no'), closed(4)] }]],
    ['when it was not the right patient', [{ visit: 4, bodies: [answered('sign-in-patient', 'no'), closed(4)] }]],
  ])('none %s', (_name, sittings) => {
    expect(reviewDates(caseOf(sittings), FIRST)).toBeUndefined();
  });

  it('an ulcer is looked at again within 14 days, on the summary with the others', () => {
    const summary = summaryOf(delivered, {
      visit: 5,
      day: 1,
      bodies: [answered('sore-1', 'upper'), answered('sore-1-upper', 'upper-ridge'), answered('sore-1-kind', 'ulcer')],
    });
    // 3 March + 14 days = 17 March.
    expect(summary.reviews?.rows.find((one) => one.id === 'ulcer')).toMatchObject({ to: '2026-03-17', state: 'due' });
    expect(row(summary, 'reviews')?.text).toContain('2026-03-09');
  });
});

describe('sore areas', () => {
  const found: Sitting = {
    visit: 5,
    day: 2,
    bodies: [
      answered('sore-1', 'lower'),
      answered('sore-1-lower', 'lower-mylohyoid-right'),
      answered('sore-1-kind', 'red'),
      at('sore-1-size', 4),
      at('sore-1-weeks', 1),
      answered('sore-1-cause', 'border'),
      answered('sore-1-relieved', 'yes'),
      answered('sore-2', 'none'),
    ],
  };

  it('with region, looks, size, age, cause and what was done', () => {
    expect(summaryOf(found).sore).toEqual([
      {
        id: 'sore-1',
        visit: 'visit 5',
        current: true,
        jaw: 'lower',
        region: 'lower-mylohyoid-right',
        label: 'Behind the mylohyoid, right',
        what: 'sore',
        kind: 'Red and sore',
        sizeMm: 4,
        weeks: 1,
        cause: 'Border too long',
        done: 'Relieved',
      },
    ]);
  });

  it('says what to look at first, and whose habit that is; never what it is', () => {
    const text = row(summaryOf(found), 'sore-1');
    expect(text?.text).toMatch(
      /Lower jaw, behind the mylohyoid, right: red and sore, 4 mm, 1 week.*Look at .*undercut.* first/,
    );
    expect(text?.sourceStatus).toBe('from memory');
  });

  it('those of the visits before stay on the map, marked as earlier; relieved places of visit 4 too', () => {
    const summary = summaryOf(
      { visit: 4, bodies: [answered('paste-upper', 'relieved'), answered('relieved-upper-1', 'upper-rear')] },
      found,
      { visit: 5, day: 9, bodies: [answered('sore-1', 'none')] },
    );
    expect(summary.sore?.map(({ visit, what, region, current }) => [visit, what, region, current])).toEqual([
      ['visit 4', 'relieved', 'upper-rear', false],
      ['visit 5', 'sore', 'lower-mylohyoid-right', false],
    ]);
    expect(row(summary, 'sore-1')).toBeUndefined();
  });

  it('what was answered before it turned out that there is none is not drawn', () => {
    const bodies = [...found.bodies.flat(), answered('sore-1', 'none')];
    expect(summaryOf({ ...found, bodies }).sore).toBeUndefined();
  });
});
