/** What has to be done next with each material, and when; several at once, the soonest first. */
import { describe, expect, it } from 'vitest';
import { clockRows } from '../../../src/domain/summary/clocks.ts';
import { actsOf, dueNext, dueOf, ifStartedNow, nextAct } from '../../../src/domain/summary/planned.ts';
import { defaultPractice } from '../../../src/domain/protocol/practice.ts';
import { bench, firstVisit, type Bench } from '../../helpers/visit.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const material = (id: string) => defaultPractice.materials.find((one) => one.id === id)!;

function mixing(step: string, id: string): Bench {
  const b = bench(firstVisit);
  b.press(`goto:${step}`);
  b.press(`material:${id}`);
  b.press('start');
  return b;
}
const rows = (b: Bench) => clockRows(b.session.view(), firstVisit.protocol, b.at);
const next = (b: Bench) => {
  const act = nextAct(rows(b).at(-1)!, b.at);
  return act === undefined ? undefined : [act.act, (act.at - rows(b).at(-1)!.startedAt) / SECOND];
};

describe('what comes next with a material', () => {
  it('is load, seat, out, pour: each by its time from the start of mixing', () => {
    const b = mixing('upper-impression', 'alginate-regular');
    expect(next(b)).toEqual(['load', 90]);
    b.wait(90 * SECOND);
    expect(next(b)).toEqual(['seat', 105]);
    b.wait(30 * SECOND);
    // Past its time the act stays due: nobody has said that it was done.
    expect(next(b)).toEqual(['seat', 105]);
    b.press('seated');
    expect(next(b)).toEqual(['out', 270]);
    b.wait(200 * SECOND);
    expect(next(b)).toEqual(['out', 270]);
    b.press('out');
    expect(next(b)).toEqual(['pour', 320 + 30 * 60]);
    b.press('taken:upper-primary');
    expect(next(b)).toBeUndefined();
  });

  it('waits before pouring where the leaflet asks for it', () => {
    const b = mixing('upper-impression', 'silicone-medium-light');
    b.wait(100 * SECOND);
    b.press('seated');
    b.wait(300 * SECOND);
    b.press('out');
    expect(next(b)).toEqual(['pourFrom', 400 + 3600]);
    b.wait(61 * MINUTE);
    expect(next(b)).toEqual(['pour', 400 + 7 * 24 * 3600]);
  });

  it('of a bath is to come out, not before its time', () => {
    const b = mixing('disinfect-upper', 'iodophor');
    expect(next(b)).toEqual(['bathOut', 600]);
    b.press('out');
    expect(next(b)).toBeUndefined();
  });

  it('lists all that is still to be done, in order', () => {
    const b = mixing('upper-impression', 'alginate-regular');
    expect(actsOf(rows(b)[0]!).map(({ act }) => act)).toEqual(['load', 'seat', 'out']);
    b.wait(100 * SECOND);
    b.press('seated');
    expect(actsOf(rows(b)[0]!).map(({ act }) => act)).toEqual(['out']);
  });

  it('goes by the leaflet’s phases alone where its figures contradict each other', () => {
    const b = bench(firstVisit);
    const odd = { ...material('alginate-regular'), mixS: 200 };
    b.press('goto:upper-impression');
    b.session.send({ type: 'START', material: odd });
    expect(actsOf(rows(b)[0]!).map(({ act, at }) => [act, (at - b.at) / SECOND])).toEqual([
      ['seat', 120],
      ['out', 270],
    ]);
  });

  it('is nothing for a clock that was given up', () => {
    const b = mixing('upper-impression', 'alginate-regular');
    b.press('undo');
    expect(dueNext(rows(b), b.at)).toEqual([]);
  });
});

describe('how a clock stands', () => {
  const stands = (b: Bench) => {
    const row = rows(b)[0]!;
    const due = dueOf(row, b.at);
    return due === undefined ? undefined : [due.state, due.act, due.phase, (due.at - row.startedAt) / SECOND];
  };

  it('is coming, then now while the leaflet leaves a little, then over', () => {
    const b = mixing('upper-impression', 'alginate-regular');
    expect(stands(b)).toEqual(['coming', 'load', 'mix', 90]);
    b.wait(95 * SECOND);
    expect(stands(b)).toEqual(['coming', 'seat', 'working', 105]);
    b.wait(15 * SECOND);
    expect(stands(b)).toEqual(['now', 'seat', 'working', 120]);
    b.wait(15 * SECOND);
    expect(stands(b)).toEqual(['over', 'seat', 'working', 120]);
    b.press('seated');
    b.wait(160 * SECOND);
    expect(stands(b)).toEqual(['over', 'out', 'inMouth', 270]);
  });

  it('names what is over before what comes next', () => {
    const b = mixing('upper-impression', 'alginate-regular');
    b.press('goto:lower-impression');
    b.wait(125 * SECOND);
    b.press('material:alginate-fast');
    b.press('start');
    expect(dueNext(rows(b), b.at).map(({ row, state }) => [row.clock, state])).toEqual([
      ['upper-primary', 'over'],
      ['lower-primary', 'coming'],
    ]);
  });
});

describe('several materials at once', () => {
  it('stay correct, and the soonest is named first', () => {
    const b = mixing('upper-impression', 'silicone-medium-light');
    b.wait(100 * SECOND);
    b.press('seated');
    b.press('goto:lower-impression');
    b.press('material:alginate-fast');
    b.press('start');
    const named = () =>
      dueNext(rows(b), b.at).map(({ row, act, at }) => [row.clock, act, Math.round((at - b.at) / SECOND)]);
    // Fast: mixed to 0:45, worked to 1:15; a quarter of 30 s is 7.5 s: seated by 1:07, loaded by 1:00.
    expect(named()).toEqual([
      ['lower-primary', 'load', 60],
      ['upper-primary', 'out', 260],
    ]);
    b.wait(65 * SECOND);
    b.press('seated');
    expect(named()).toEqual([
      ['lower-primary', 'out', 115],
      ['upper-primary', 'out', 195],
    ]);
    b.wait(115 * SECOND);
    b.press('out');
    expect(named()).toEqual([
      ['upper-primary', 'out', 80],
      ['lower-primary', 'pour', 1800],
    ]);
  });
});

describe('before the mix is started', () => {
  it('says when each act would be due', () => {
    const now = 1_000_000;
    const plan = ifStartedNow(material('alginate-regular'), now);
    expect(plan.map(({ act, at }) => [act, (at - now) / SECOND])).toEqual([
      ['load', 90],
      ['seat', 105],
      ['out', 270],
    ]);
    expect(ifStartedNow(defaultPractice.disinfectants[0]!, now)).toEqual([
      expect.objectContaining({ act: 'bathOut', at: now + 10 * MINUTE }),
    ]);
  });
});
