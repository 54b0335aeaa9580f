/** What is read aloud of clocks, in the language of the visit: alarms, and what "how long" answers. */
import type { PhaseId } from '../domain/case/facts.ts';
import type { Language } from '../domain/protocol/types.ts';
import type { ClockRow } from '../domain/summary/types.ts';

interface ClockWords {
  /** A clock by its name in the protocol and the words for its screen, which are English. */
  name(clock: string, label: string): string;
  readonly phases: Readonly<Partial<Record<PhaseId, string>>>;
  readonly minutes: readonly [one: string, many: string];
  readonly seconds: readonly [one: string, many: string];
  left(time: string): string;
  over(time: string): string;
  readonly isOver: string;
  rangLate(time: string): string;
  readonly none: string;
}

/** Upper, lower or a record: what a person at the chair needs to tell the clocks apart. */
const namesFrom =
  (upper: string, lower: string, record: string) =>
  (clock: string, label: string): string => {
    if (clock.includes('record')) return record;
    return clock.includes('upper') ? upper : clock.includes('lower') ? lower : label;
  };

const words: Readonly<Record<Language, ClockWords>> = {
  en: {
    name: (_, label) => label,
    phases: {},
    minutes: ['minute', 'minutes'],
    seconds: ['second', 'seconds'],
    left: (time) => `${time} left`,
    over: (time) => `${time} over`,
    isOver: ' over',
    rangLate: (time) => `rang ${time} late`,
    none: 'No clock is running.',
  },
  de: {
    name: namesFrom('Oberkiefer', 'Unterkiefer', 'Registrat'),
    phases: {
      mix: 'Anmischen',
      working: 'Verarbeitungszeit',
      inMouth: 'Abbinden im Mund',
      pourFrom: 'Warten vor dem Ausgießen',
      pourWithin: 'Frist zum Ausgießen',
      disinfect: 'Desinfektion',
    },
    minutes: ['Minute', 'Minuten'],
    seconds: ['Sekunde', 'Sekunden'],
    left: (time) => `noch ${time}`,
    over: (time) => `${time} überschritten`,
    isOver: ' vorbei',
    rangLate: (time) => `${time} zu spät geklingelt`,
    none: 'Es läuft keine Uhr.',
  },
  es: {
    name: namesFrom('Superior', 'Inferior', 'Registro'),
    phases: {
      mix: 'mezcla',
      working: 'tiempo de trabajo',
      inMouth: 'fraguado en boca',
      pourFrom: 'espera antes del vaciado',
      pourWithin: 'plazo de vaciado',
      disinfect: 'desinfección',
    },
    minutes: ['minuto', 'minutos'],
    seconds: ['segundo', 'segundos'],
    left: (time) => `faltan ${time}`,
    over: (time) => `${time} de más`,
    isOver: ', fin',
    rangLate: (time) => `sonó con ${time} de retraso`,
    none: 'No hay ningún reloj en marcha.',
  },
  fr: {
    name: namesFrom('Supérieur', 'Inférieur', 'Enregistrement'),
    phases: {
      mix: 'malaxage',
      working: 'temps de travail',
      inMouth: 'prise en bouche',
      pourFrom: 'attente avant la coulée',
      pourWithin: 'délai de coulée',
      disinfect: 'désinfection',
    },
    minutes: ['minute', 'minutes'],
    seconds: ['seconde', 'secondes'],
    left: (time) => `encore ${time}`,
    over: (time) => `${time} de trop`,
    isOver: ', terminé',
    rangLate: (time) => `sonné avec ${time} de retard`,
    none: 'Aucun chronomètre ne tourne.',
  },
};

/** "4 minutes 30 seconds" */
export function spokenDuration(ms: number, language: Language): string {
  const { minutes, seconds } = words[language];
  const all = Math.max(0, Math.round(ms / 1000));
  const [whole, rest] = [Math.floor(all / 60), all % 60];
  const parts: string[] = [];
  if (whole > 0) parts.push(`${whole} ${minutes[whole === 1 ? 0 : 1]}`);
  if (rest > 0 || whole === 0) parts.push(`${rest} ${seconds[rest === 1 ? 0 : 1]}`);
  return parts.join(' ');
}

/** What every running clock has left, or by how much it is over. */
export function howLongText(rows: readonly ClockRow[], around: { readonly language: Language; now(): number }): string {
  const { name, phases, left, over, none } = words[around.language];
  const running = rows.filter((row) => !row.stopped && row.now !== undefined);
  if (running.length === 0) return none;
  return running
    .map((row) => {
      const label = name(row.clock, row.label);
      const phase = row.phases.find((p) => p.id === row.now);
      if (phase === undefined) return label;
      const ms = phase.dueAt - around.now();
      const time = spokenDuration(Math.abs(ms), around.language);
      return `${label}: ${phases[phase.id] ?? phase.label}, ${ms >= 0 ? left(time) : over(time)}`;
    })
    .join('. ');
}

export interface AlarmSaid {
  readonly clock: string;
  readonly phase: PhaseId;
  /** As the screen says it, in English: "upper impression: working time over". */
  readonly label: string;
  /** By how much it rang too late; 0 when it rang in time. */
  readonly lateMs: number;
}

/** An alarm as it is read aloud. */
export function alarmText({ clock, phase, label, lateMs }: AlarmSaid, language: Language): string {
  const { name, phases, isOver, rangLate } = words[language];
  const said = phases[phase];
  const what = said === undefined ? label : `${name(clock, label)}: ${said}${isOver}`;
  return lateMs > 0 ? `${what}, ${rangLate(`${Math.round(lateMs / 1000)} ${words[language].seconds[1]}`)}` : what;
}
