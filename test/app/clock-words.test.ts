import { describe, expect, it } from 'vitest';
import { alarmText, howLongText, spokenDuration } from '../../src/app/clock-words.ts';
import type { PhaseId } from '../../src/domain/case/facts.ts';
import type { Language } from '../../src/domain/protocol/types.ts';
import { phaseLabel } from '../../src/domain/summary/clocks.ts';
import type { ClockRow } from '../../src/domain/summary/types.ts';
import { bench, firstVisit, type Bench } from '../helpers/visit.ts';

const OTHERS: readonly Language[] = ['de', 'es', 'fr'];

function running(phase: PhaseId, dueAt: number): ClockRow {
  return {
    id: 'upper-primary/1',
    clock: 'upper-primary',
    label: 'upper impression',
    attempt: 1,
    flow: 'impression',
    name: 'alginate, regular',
    startedAt: 0,
    struck: false,
    stopped: false,
    phases: [{ id: phase, label: phaseLabel[phase], from: 0, dueAt, state: 'running' }],
    now: phase,
    findings: [],
  };
}
const asked = (language: Language, now: number) =>
  howLongText([running('working', 150_000)], { language, now: () => now });

function mixing(step: string, material: string): Bench {
  const b = bench(firstVisit);
  for (const intent of [`goto:${step}`, `material:${material}`, 'start']) b.press(intent);
  return b;
}

/** Regular alginate, so many seconds after the start of mixing. */
function askedAfter(language: Language, seconds: number): string {
  const b = mixing('upper-impression', 'alginate-regular');
  b.wait(seconds * 1000);
  return howLongText(b.summary().clocks, { language, now: () => b.at });
}

describe('how long', () => {
  it.each([
    ['en', 'upper impression: working time, 2 minutes 30 seconds left'],
    ['de', 'Oberkiefer: Verarbeitungszeit, noch 2 Minuten 30 Sekunden'],
    ['es', 'Superior: tiempo de trabajo, faltan 2 minutos 30 segundos'],
    ['fr', 'Supérieur: temps de travail, encore 2 minutes 30 secondes'],
  ] as const)('is answered in the language of the visit: %s', (language, text) => {
    expect(asked(language, 0)).toBe(text);
  });
  it('says by how much a clock is over', () => {
    expect(asked('en', 151_000)).toContain('1 second over');
    expect(asked('de', 210_000)).toContain('1 Minute überschritten');
  });
  it.each([
    ['en', 'upper impression: mixing, 1 minute left, load the tray in 1 minute 30 seconds'],
    ['de', 'Oberkiefer: Anmischen, noch 1 Minute, Löffel füllen in 1 Minute 30 Sekunden'],
    ['es', 'Superior: mezcla, faltan 1 minuto, cargar la cubeta en 1 minuto 30 segundos'],
    ['fr', 'Supérieur: malaxage, encore 1 minute, garnir le porte-empreinte dans 1 minute 30 secondes'],
  ] as const)('says when to load and when to seat, planned back from the working time: %s', (language, text) => {
    expect(askedAfter(language, 0)).toBe(text);
  });
  it('says what comes next as time goes on, and by when no longer once it is over', () => {
    expect(askedAfter('en', 95)).toBe('upper impression: working time, 25 seconds left, seat in 10 seconds');
    expect(askedAfter('en', 110)).toBe('upper impression: working time, 10 seconds left, seat now');
    expect(askedAfter('de', 110)).toContain('jetzt einsetzen');
    expect(askedAfter('en', 130)).toBe('upper impression: working time, 10 seconds over');
  });
  it('names the soonest first, and every clock that runs', () => {
    const b = mixing('upper-impression', 'silicone-medium-light');
    b.wait(20_000);
    b.press('goto:lower-impression');
    b.press('material:alginate-fast');
    b.press('start');
    expect(b.say('how long').speak).toBe(
      'lower impression: mixing, 45 seconds left, load the tray in 1 minute. ' +
        'upper impression: mixing, 25 seconds left, load the tray in 1 minute 6 seconds',
    );
  });
  it('says that none runs', () => {
    for (const language of OTHERS) {
      const none = howLongText([], { language, now: () => 0 });
      expect(none).not.toBe('');
      expect(none).not.toBe(howLongText([], { language: 'en', now: () => 0 }));
    }
  });
});

describe('an alarm', () => {
  const said = (language: Language, phase: PhaseId, lateMs = 0) =>
    alarmText(
      { clock: 'lower-primary/2', phase, label: `lower impression: ${phaseLabel[phase]} over`, lateMs },
      language,
    );
  it('is told as the screen tells it in English', () => {
    expect(said('en', 'working')).toBe('lower impression: working time over');
    expect(said('en', 'working', 12_400)).toBe('lower impression: working time over, rang 12 seconds late');
  });
  it.each(OTHERS)('names jaw and phase in %s, and nothing in English', (language) => {
    const phases = Object.keys(phaseLabel) as PhaseId[];
    for (const phase of phases) expect(said(language, phase)).not.toContain(phaseLabel[phase]);
    expect(new Set(phases.map((phase) => said(language, phase))).size).toBe(phases.length);
    expect(said(language, 'mix')).not.toContain('lower');
    expect(said(language, 'mix', 12_400)).toContain('12');
  });
});

describe('a time', () => {
  it('has a singular', () => {
    expect(spokenDuration(61_000, 'fr')).toBe('1 minute 1 seconde');
    expect(spokenDuration(0, 'es')).toBe('0 segundos');
    expect(spokenDuration(120_000, 'de')).toBe('2 Minuten');
  });
});
