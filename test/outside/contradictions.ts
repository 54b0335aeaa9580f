/** Where a printed figure does not follow from its own rule, or two sources contradict each other. Nothing is bent to fit. */
import { edentulousClass } from '../../src/domain/measure/edentulous.ts';
import { defaultHinge, hingePoints, solveHinge } from '../../src/domain/measure/hinge.ts';
import { roomSetting, studySlopes, TEMPERATURE_STUDIES } from '../../src/domain/measure/mixing.ts';
import { pinRule } from '../../src/domain/measure/pin.ts';
import { toothSizes } from '../../src/domain/measure/teeth.ts';
import { h, of } from './check.ts';

export interface Contradiction {
  readonly about: string;
  /** The figure as printed or stated. */
  readonly printed: string;
  /** What its own rule, or the other source, gives. */
  readonly other: () => number | string;
  readonly whatWeDo: string;
}

const steepest = () => Math.max(...TEMPERATURE_STUDIES.flatMap(studySlopes).map(Math.abs));
const estimate = (face: Parameters<typeof toothSizes>[0], rule: string) =>
  of(toothSizes(face)).estimates.find((e) => e.rule === rule)?.mm ?? NaN;

export const contradictions: readonly Contradiction[] = [
  {
    about: 'Pin rule, pin 1 mm: incisors. The paper prints 0.6; its ratio 6 : 4 gives',
    printed: '0.6',
    other: () => of(pinRule(1)).incisalMm,
    whatWeDo: 'The ratio is computed; the printed figure is cut off, not rounded.',
  },
  {
    about: 'Pin rule, pin opening for 1 mm at the second molar. The paper’s text says 3.33; its ratio 6 : 2 gives',
    printed: '3.33',
    other: () => 1 / of(pinRule(1)).molar2Mm,
    whatWeDo: 'The ratio is computed; the text is a slip.',
  },
  {
    about: 'Front to back. The folk rule says 3 at the front is 1 at the back; the pin rule (second molar) gives',
    printed: '3',
    other: () => of(pinRule(1)).incisalMm / of(pinRule(1)).molar2Mm,
    whatWeDo: 'Both the pin rule and the exact model are shown; the folk rule compares pin and second molar.',
  },
  {
    about: 'Front to back, first molar, exact model; against 2 from the pin rule',
    printed: '2.0',
    other: () => {
      const move = of(solveHinge('chin', 3));
      return move.incisalMm / move.molarMm;
    },
    whatWeDo: 'Different teeth: the first molar stands further forward. Named with each figure.',
  },
  {
    about:
      'Side of the triangle, 101.6 mm (glossary, skulls), against 121.5 mm by facebow over the skin: incisors for +3 at the chin',
    printed: '2.491',
    other: () => of(solveHinge('chin', 3, { radiusMm: (121.5 * Math.sqrt(3)) / 2 })).incisalMm,
    whatWeDo: 'The glossary’s value unless a facebow gave the patient’s own; the range shown covers both.',
  },
  {
    about: 'Nose to chin at closure: rest height less 2 to 4 mm makes 64 to 68; the model’s assumed marks give',
    printed: '68',
    other: () => {
      const { chin, nose } = hingePoints(defaultHinge);
      return Math.hypot(chin.x - nose.x, chin.y - nose.y);
    },
    whatWeDo: 'Kept: only changes are used, and the positions of the marks are varied in the range shown.',
  },
  {
    about: 'Alginate, room at 23 °C: observed 149.6 s; the regression printed beside it gives',
    printed: '149.6',
    other: () => of(roomSetting('regular', 23)),
    whatWeDo: 'Neither is used as a clock. The observed slope enters a warning, the line is shown as printed.',
  },
  {
    about: 'Alginate, room at 31 °C: observed 96.4 s; the regression gives',
    printed: '96.4',
    other: () => of(roomSetting('regular', 31)),
    whatWeDo: 'As above: the line runs under both ends.',
  },
  {
    about: 'Alginate: a handbook rule of 20 s for each °C; the steepest slope of three studies is',
    printed: '20',
    other: steepest,
    whatWeDo: 'The studies’ span is shown, the handbook rule is not.',
  },
  {
    about: 'Six front teeth at the mean male face width 142.6: measured 46.02; face width / 3.3 gives',
    printed: '46.02',
    other: () => estimate({ bizygomatic: h(142.6) }, 'face width / 3.3'),
    whatWeDo: 'Shown with a note that it runs small; the spread goes with it.',
  },
  {
    about: 'Canine tips at nose width 36.38: measured 34.15 in the same people; × 1.03 gives',
    printed: '34.15',
    other: () => estimate({ interalar: h(36.38) }, 'nose width × 1.03'),
    whatWeDo: 'Shown with its source; never alone deciding.',
  },
  {
    about: 'Central width: published male mean 8.87; interpupillary 64.0 / 6.6 gives',
    printed: '8.87',
    other: () => estimate({ interpupillary: 6400 }, 'interpupillary / 6.6'),
    whatWeDo: 'Shown with a note never to use it alone.',
  },
  {
    about: 'Published face table: nasion to chin 101.8; its own parts add up to',
    printed: '101.8',
    other: () => 51 + 76.4,
    whatWeDo: 'That cell is not used.',
  },
  {
    about: 'Width of the retromolar pad in 150 people, quoted from one study as 6.16 and as',
    printed: '6.16',
    other: () => 6.17,
    whatWeDo: 'Neither is used.',
  },
  {
    about: 'Edentulous class, patient 2: at first sight decided by bone height and upper ridge; by the table by',
    printed: 'bone height, upper ridge',
    other: () =>
      of(
        edentulousClass({ boneMm: 17, relation: 'I', maxilla: 'B', muscle: 'B', psychosocial: 'minor' }),
      ).decidedBy.join(', '),
    whatWeDo: 'The table decides: a minor psychosocial factor is class II as well. The class is the same.',
  },
];
