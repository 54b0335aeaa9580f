import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { AppModel } from '../../src/app/model.ts';
import { measurementLines } from '../../src/screens/labsheet/sections.tsx';
import { LabSheet, openLines } from '../../src/screens/labsheet/LabSheet.tsx';
import { loggingActions } from '../../src/screens/preview/actions.ts';
import { states } from '../../src/screens/preview/states.ts';
import { summary } from '../../src/screens/preview/summary.ts';
import { RecordScreen } from '../../src/screens/record/RecordScreen.tsx';
import { disinfectedHow, pourBy } from '../../src/screens/summary/parts.tsx';

const text = (markup: string): string =>
  markup
    .replace(/<[^>]+>/g, ' ')
    .replaceAll('&#x27;', "'")
    .replace(/\s+/g, ' ');

describe('the record', () => {
  const markup = renderToStaticMarkup(<RecordScreen model={states['record'] as AppModel} actions={loggingActions} />);
  it('keeps a corrected reading, struck through, with why and when', () => {
    expect(markup).toContain('<s>16.5 mm</s>');
    expect(text(markup)).toMatch(/corrected at \d\d:\d\d/);
  });
  it('offers a correction for every reading that stands, and for no other', () => {
    const live = summary.readings.filter((row) => row.struck === undefined).length;
    expect(markup.match(/aria-label="Correct /g)).toHaveLength(live);
  });
  it('tells what was heard, word for word', () => {
    for (const row of summary.readings) expect(text(markup)).toContain(`“${row.text}”`);
  });
  it('keeps answers of an attempt that was given up', () => {
    expect(markup).toContain('<s>Take again (Voids or drags)</s>');
  });
});

describe('the lab sheet', () => {
  const markup = renderToStaticMarkup(<LabSheet summary={summary} />);
  const words = text(markup);
  it('carries the whole order, in order', () => {
    const places = summary.labWork.map((line) => words.indexOf(line.text));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });
  it('carries cautions, open items, flags with their answers, wishes, notes and signatures', () => {
    for (const caution of summary.cautions) expect(words).toContain(caution);
    for (const item of openLines(summary)) expect(words).toContain(item);
    for (const flag of summary.flags) expect(words).toContain(flag.what);
    expect(words).toContain('Kept as it is: Measured again, the same');
    expect(words).toContain('Not answered yet.');
    for (const note of summary.notes) expect(words).toContain(note.text);
    expect(words).toContain('Warmer than before');
    expect(words).toContain('Signed for the assistant: AS');
  });
  it('loses no open item: each is listed, or is a flag that is', () => {
    const flagged = new Set(summary.flags.map((flag) => flag.what));
    expect(summary.open.every((item) => flagged.has(item) || openLines(summary).includes(item))).toBe(true);
    expect(openLines(summary)).toContain('2 flags are not answered, see below.');
    expect(openLines({ open: ['x'], flags: [] })).toEqual(['x']);
  });
  it('gives the pin as a range, and the height with the marks it belongs to', () => {
    expect(words).toContain('Close the pin by 1.6 to 2.0 mm.');
    expect(words).toContain('−1.6 to −2.0 mm');
    expect(words).toContain('visit 1, marks 1');
  });
  it('names material, removal, disinfection and pour time of every impression', () => {
    for (const clock of summary.clocks.filter((one) => one.flow === 'impression')) expect(words).toContain(clock.name);
    expect(words).toContain('Hypochlorite 0.5 %');
    expect(words).toContain('not recorded');
  });
  it('leaves struck readings out of the numbers, and says how many there are', () => {
    const lines = measurementLines(summary);
    expect(lines.some((line) => line.value.includes('16.5') || line.more.includes('16.5'))).toBe(false);
    expect(words).toContain('1 reading is struck through on the record and not used here.');
  });
  it('says what was noted beside its question, once, and counts no more checks without a remark', () => {
    const row = { ...summary.answers[0]!, seq: 9000, step: 'noted-one', question: 'Choose the shade', answer: 'Noted' };
    const answers = [...summary.answers, { ...row, tone: 'neutral' as const }];
    const notes = [{ at: row.at, step: 'noted-one', text: 'light, a little grey', source: 'touch', struck: false }];
    const sheet = text(renderToStaticMarkup(<LabSheet summary={{ ...summary, answers, notes }} />));
    expect(sheet).toContain('Choose the shade: “light, a little grey”');
    expect(sheet.split('light, a little grey')).toHaveLength(2);
    const others = /\d+ other checks? w/.exec(words)?.[0] ?? 'none';
    expect(sheet).toContain(others);
  });
  it('says that the data are invented when they are', () => {
    expect(words).toContain('demo, invented data');
    expect(text(renderToStaticMarkup(<LabSheet summary={{ ...summary, demo: false }} />))).not.toContain('invented');
  });

  it('says which time a visit came again', () => {
    const again = { ...summary, visit: 3, visitName: 'visit 3, time 2', visitTitle: 'Try-in' };
    expect(text(renderToStaticMarkup(<LabSheet summary={again} />))).toContain('3, time 2, Try-in');
  });
});

describe('an impression on its way', () => {
  const [givenUp, upper] = summary.clocks;
  it('is poured by the time of its material, counted from removal', () => {
    expect(pourBy(upper!)).toBe(upper!.outAt! + 30 * 60_000);
    const { outAt: _outAt, ...stillIn } = upper!;
    expect(pourBy(stillIn)).toBeUndefined();
  });
  it('without a bath on record says so', () => {
    expect(disinfectedHow(upper!, [])).toBe('not recorded');
    expect(disinfectedHow(upper!, summary.clocks)).toMatch(/^Hypochlorite 0.5 %, \d\d:\d\d to \d\d:\d\d$/);
    expect(givenUp?.struck).toBe(true);
  });
});
