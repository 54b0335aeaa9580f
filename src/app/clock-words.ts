/** What is read aloud of clocks, in the language of the visit: alarms, and what "how long" answers. */
import type { PhaseId } from '../domain/case/facts.ts';
import type { Language } from '../domain/protocol/types.ts';
import { dueOf } from '../domain/summary/planned.ts';
import type { ClockRow } from '../domain/summary/types.ts';
import type { RunningClock } from './model.ts';

interface ClockWords {
  /** A clock by its name in the protocol and the words for its screen, which are English. */
  name(clock: string, label: string): string;
  readonly phases: Readonly<Partial<Record<PhaseId, string>>>;
  readonly minutes: readonly [one: string, many: string];
  readonly seconds: readonly [one: string, many: string];
  left(time: string): string;
  over(time: string): string;
  /** What is planned back from the working time; the other acts are due when their phase ends. */
  readonly acts: Readonly<Record<'load' | 'seat', readonly [inTime: (time: string) => string, now: string]>>;
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
    acts: {
      load: [(time) => `load the tray in ${time}`, 'load the tray now'],
      seat: [(time) => `seat in ${time}`, 'seat now'],
    },
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
    acts: {
      load: [(time) => `Löffel füllen in ${time}`, 'jetzt Löffel füllen'],
      seat: [(time) => `einsetzen in ${time}`, 'jetzt einsetzen'],
    },
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
    acts: {
      load: [(time) => `cargar la cubeta en ${time}`, 'cargar la cubeta ahora'],
      seat: [(time) => `asentar en ${time}`, 'asentar ahora'],
    },
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
    acts: {
      load: [(time) => `garnir le porte-empreinte dans ${time}`, 'garnir le porte-empreinte maintenant'],
      seat: [(time) => `insérer dans ${time}`, 'insérer maintenant'],
    },
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

interface Asked {
  readonly language: Language;
  now(): number;
}

/** ", seat in 20 seconds": what is due before the phase ends. */
function plannedWords(row: ClockRow, { language, now }: Asked): string {
  const due = dueOf(row, now());
  if (due === undefined || due.state === 'over' || (due.act !== 'load' && due.act !== 'seat')) return '';
  const [inTime, atOnce] = words[language].acts[due.act];
  return `, ${due.state === 'now' ? atOnce : inTime(spokenDuration(due.at - now(), language))}`;
}

function clockText(row: RunningClock, asked: Asked): string {
  const { name, phases, left, over } = words[asked.language];
  const whose = row.case === undefined ? '' : `${row.case.code}, `;
  const label = `${whose}${name(row.clock, row.label)}`;
  const phase = row.phases.find((p) => p.id === row.now);
  if (phase === undefined) return label;
  const ms = phase.dueAt - asked.now();
  const time = spokenDuration(Math.abs(ms), asked.language);
  return `${label}: ${phases[phase.id] ?? phase.label}, ${ms >= 0 ? left(time) : over(time)}${plannedWords(row, asked)}`;
}

/** What every running clock has left or by how much it is over, and what is to be done; the soonest first. */
export function howLongText(rows: readonly RunningClock[], asked: Asked): string {
  const running = rows.filter((row) => !row.stopped && row.now !== undefined);
  if (running.length === 0) return words[asked.language].none;
  const now = asked.now();
  const dueAt = (row: ClockRow) => dueOf(row, now)?.at ?? row.phases.find((p) => p.id === row.now)?.dueAt ?? now;
  return running
    .toSorted((a, b) => dueAt(a) - dueAt(b))
    .map((row) => clockText(row, asked))
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
