/** A practice edits a visit: the draft stays usable or says why not, what it costs is said, and the change can be read. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { protocolDifference } from '../../../src/domain/protocol/difference.ts';
import { addStep, dropStep, moveStep, newVersion, ownId, rewordStep } from '../../../src/domain/protocol/edit.ts';
import { protocols } from '../../../src/domain/protocol/index.ts';
import { lostBy } from '../../../src/domain/protocol/needs.ts';
import { stepOf } from '../../../src/domain/protocol/path.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { readingDefs } from '../../../src/domain/protocol/readings.ts';
import type { VisitProtocol } from '../../../src/domain/protocol/types.ts';
import { visit1 } from '../../../src/domain/protocol/visit1.ts';

const ids = (protocol: VisitProtocol) => protocol.steps.map((step) => step.id);
const version = (draft: VisitProtocol, kept: readonly VisitProtocol[] = [], before = visit1) =>
  newVersion({ before, draft, kept, readings: readingDefs, practice: defaultPractice });
const wording = { title: 'Warm the tray', lines: ['Hold it under warm water'], caution: '' };

describe('editing a visit', () => {
  it('without a change is the same visit in a new version of the practice’s own', () => {
    const edited = version(visit1);
    expect(edited).toMatchObject({ problems: [], warnings: [], difference: [] });
    expect(edited.protocol).toEqual({ ...visit1, id: 'visit-1-own', version: 2 });
    expect(version(visit1, [edited.protocol], edited.protocol).protocol).toMatchObject({
      id: 'visit-1-own',
      version: 3,
    });
    expect(ownId(edited.protocol)).toBe('visit-1-own');
  });

  it('moves a step one place, and back again', () => {
    const down = moveStep(visit1, 'sign-in-gag', 1);
    expect(ids(down).indexOf('sign-in-gag')).toBe(ids(visit1).indexOf('sign-in-gag') + 1);
    expect(moveStep(down, 'sign-in-gag', -1)).toEqual(visit1);
    expect(version(down)).toMatchObject({ problems: [] });
    expect(version(down).difference).toHaveLength(1);
    expect(version(down).difference[0]).toMatch(/^Moved: /);
  });

  it('a step moved beyond the end of its chapter joins the next one', () => {
    const down = moveStep(visit1, 'sign-in-bone', 1);
    expect(stepOf(down, 'sign-in-bone')?.chapter).toBe(2);
    expect(version(down).problems).toEqual([]);
  });

  it('nothing moves beyond either end', () => {
    expect(moveStep(visit1, visit1.steps[0]!.id, -1)).toBe(visit1);
    expect(moveStep(visit1, visit1.steps.at(-1)!.id, 1)).toBe(visit1);
    expect(moveStep(visit1, 'nowhere', 1)).toBe(visit1);
  });

  it('refuses a question that stands after what depends on it, naming the step', () => {
    let draft = visit1;
    for (let i = 0; i < 30; i += 1) draft = moveStep(draft, 'old-dentures', 1);
    const { problems } = version(draft);
    expect(problems.some(({ text }) => text === '"old-dentures" is not an earlier step.')).toBe(true);
  });

  it('refuses to do without the sign-off that closes the visit', () => {
    const { problems } = version(dropStep(visit1, 'signoff-clinician'));
    expect(problems.map(({ text }) => text)).toContain('The last step must be the sign-off that closes the visit.');
  });

  it('drops a step, leads its branches on, and renumbers a chapter that is empty now', () => {
    const without = dropStep(visit1, 'upper-width');
    expect(ids(without)).not.toContain('upper-width');
    expect(without.chapters).toHaveLength(visit1.chapters.length - 1);
    expect(version(without).problems).toEqual([]);
    const untried = dropStep(visit1, 'upper-tray-try');
    const next = stepOf(untried, 'upper-tray');
    expect(next?.kind === 'decision' && next.answers.find((a) => a.id === 'next-tray')?.goto).toBe('upper-tray');
    expect(version(untried).problems.map(({ text }) => text)).toContain('An answer cannot lead to its own step.');
  });

  it('adds a step of its own and rewords one; empty lines go', () => {
    const added = addStep(visit1, 'upper-ready', wording);
    expect(ids(added)[ids(visit1).indexOf('upper-ready') + 1]).toBe('own-1');
    const again = addStep(added, 'own-1', { ...wording, title: 'Dry the tray' });
    expect(ids(again)).toContain('own-2');
    const said = rewordStep(again, 'own-2', {
      title: ' Dry it ',
      lines: ['Air only', ' '],
      caution: 'Not in the mouth.',
    });
    expect(stepOf(said, 'own-2')).toMatchObject({ title: 'Dry it', lines: ['Air only'], caution: 'Not in the mouth.' });
    expect(version(said).problems).toEqual([]);
    expect(version(said).difference).toEqual([
      `Added after “${stepOf(visit1, 'upper-ready')!.title}”: “Warm the tray”.`,
      'Added after “Warm the tray”: “Dry it”.',
    ]);
    expect(version(rewordStep(visit1, 'marks', { title: '', lines: [], caution: '' })).problems[0]?.text).toBe(
      'This text is empty.',
    );
  });

  it('any edits of any visit end in a draft that is usable or says why not, and the difference is empty only without one', () => {
    const edit = fc.record({
      what: fc.constantFrom('up', 'down', 'drop', 'add', 'reword'),
      at: fc.nat(200),
    });
    fc.assert(
      fc.property(fc.constantFrom(...protocols), fc.array(edit, { maxLength: 12 }), (before, edits) => {
        const draft = edits.reduce((protocol, { what, at }) => {
          const id = protocol.steps[at % protocol.steps.length]!.id;
          if (what === 'drop' && protocol.steps.length > 2) return dropStep(protocol, id);
          if (what === 'add') return addStep(protocol, id, wording);
          if (what === 'reword') return rewordStep(protocol, id, { ...wording, title: `Do ${at}` });
          return moveStep(protocol, id, what === 'up' ? -1 : 1);
        }, before);
        const { protocol, problems, difference } = version(draft, [], before);
        expect(protocol.version).toBe(before.version + 1);
        expect(new Set(ids(draft)).size).toBe(draft.steps.length);
        for (const { text } of problems) expect(text).toMatch(/[.]$/);
        expect(difference.length === 0).toBe(JSON.stringify(draft.steps) === JSON.stringify(before.steps));
      }),
    );
  });
});

describe('the difference of two versions', () => {
  it('names what was dropped, added, moved and reworded, once each', () => {
    const first = visit1.steps[0]!;
    let draft = dropStep(visit1, 'photos');
    draft = addStep(draft, first.id, wording);
    draft = rewordStep(draft, 'marks', { title: 'Dot nose and chin', lines: [], caution: '' });
    const lines = protocolDifference(visit1, draft);
    expect(lines.filter((line) => line.startsWith('Dropped'))).toHaveLength(1);
    expect(lines).toContain(`Added after “${first.title}”: “Warm the tray”.`);
    expect(lines.some((line) => line.startsWith('Reworded') && line.includes('Dot nose and chin'))).toBe(true);
    expect(lines.some((line) => line.startsWith('Moved'))).toBe(false);
    expect(protocolDifference(draft, draft)).toEqual([]);
  });

  it('one step carried far is one move, not a move of all it passed', () => {
    let draft = visit1;
    for (let i = 0; i < 3; i += 1) draft = moveStep(draft, 'mouth-mucosa', 1);
    const moves = protocolDifference(visit1, draft).filter((line) => line.startsWith('Moved'));
    expect(moves).toEqual([expect.stringContaining(stepOf(visit1, 'mouth-mucosa')!.title)]);
  });
});

describe('what a dropped step costs', () => {
  it('is said for a height, a width, an impression and a bath, and not for a photograph', () => {
    const lost = (id: string) => lostBy(visit1, dropStep(visit1, id));
    expect(lost('closed-height').join()).toContain('rest space');
    expect(lost('upper-width').join()).toContain('upper tray to try first');
    expect(lost('upper-impression').join()).toContain('no pouring time');
    expect(lost('disinfect-upper').join()).toContain('disinfection stays unrecorded');
    expect(lost('sign-in-allergy').join()).toContain('allergies');
    expect(lost('photos')).toEqual([]);
  });
});
