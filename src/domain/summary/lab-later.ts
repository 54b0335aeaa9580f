/** The order to the laboratory after visits 2 to 5, in working order, from what that visit measured and answered. */
import { liveOf, type CaseView } from '../case/fold.ts';
import { formatHundredths } from '../measure/length.ts';
import { answerOf, stepOf } from '../protocol/path.ts';
import type { VisitProtocol } from '../protocol/types.ts';
import type { Decided } from './decided.types.ts';
import { changeWords, pointText } from './decided-words.ts';
import { latest, mmText, tenthsText } from './latest.ts';
import type { LabLine, ReadingRow, VerticalDimension } from './types.ts';

export interface LaterFrom {
  readonly view: CaseView;
  readonly protocol: VisitProtocol;
  readonly rows: readonly ReadingRow[];
  readonly vertical: VerticalDimension;
  readonly decided: Decided;
}

const answered = ({ view }: LaterFrom, step: string) => view.answers.get(step)?.body.answer;

/** Remarks made at a step of this visit; without any, the answer in words. */
function saidAt({ view, protocol }: LaterFrom, step: string): readonly string[] {
  const notes = liveOf(view, 'note').flatMap(({ body }) => (body.step === step ? [body.text] : []));
  if (notes.length > 0) return notes;
  const given = view.answers.get(step)?.body.answer;
  const words = answerOf(stepOf(protocol, step), given)?.label;
  return words === undefined ? [] : [words];
}

/** "midline 1.5 mm", or nothing where it was not read. */
function read({ rows }: LaterFrom, reading: string, name: string): readonly string[] {
  const row = latest(rows, reading);
  return row === undefined ? [] : [`${name} ${formatHundredths(row.value)} ${row.unit}`];
}

/** Chosen in words: the words; without them it is said that they are missing, for the bench cannot guess them. */
function chosen(from: LaterFrom, step: string, name: string): readonly string[] {
  const notes = liveOf(from.view, 'note').flatMap(({ body }) => (body.step === step ? [body.text] : []));
  if (notes.length > 0) return notes.map((text) => `${name}: ${text}`);
  const given = answered(from, step);
  if (given === 'noted') return [`${name}: noted, but no words were kept: ask the clinic`];
  return given === undefined ? [] : [`${name}: ${saidAt(from, step).join(', ').toLowerCase()}`];
}

const line = (id: string, text: string, details: readonly string[] = []): LabLine => ({
  id,
  text,
  ...(details.length === 0 ? {} : { detail: details.join('; ') }),
});

const METHODS: Readonly<Record<string, string>> = {
  tracing: 'the needle-point tracing',
  'check-records': 'the two check records',
};

/** The closed height on the rims is what the records were made at: the pin changes only when the clinic asks for it. */
function mountAtClosed(from: LaterFrom): LabLine {
  const { vertical, decided } = from;
  const method = METHODS[answered(from, 'centric-method') ?? ''] ?? 'the centric record';
  const { closed, restSpaceMm, targetSpaceMm } = vertical;
  const { scatter } = decided.tracing ?? {};
  const { change } = decided;
  const wanted =
    change?.from === 'closed'
      ? [`Only if the clinic asks for a space of ${mmText(targetSpaceMm)}: ${changeWords(change)}`]
      : [];
  return line('mount-centric', `Mount by ${method}, at the closed height: pin as it stands.`, [
    ...(closed?.meanMm === undefined ? [] : [`closed ${mmText(closed.meanMm)}, ${closed.markSet}`]),
    ...(restSpaceMm === undefined ? [] : [`rest space ${mmText(restSpaceMm)}`]),
    ...(scatter === undefined ? [] : [`Middle of the points ${pointText(scatter)} on the sheet`]),
    ...wanted,
  ]);
}

function toothLines({ decided }: LaterFrom): readonly string[] {
  return (decided.teeth ?? []).map(({ label, lowMm, highMm, judge }) => {
    const size = lowMm === highMm ? mmText(lowMm) : `${tenthsText(lowMm)} to ${mmText(highMm)}`;
    return `${label} ${size}${judge ? ', the clinician judges' : ''}`;
  });
}

function setUp(from: LaterFrom): LabLine {
  const side = saidAt(from, 'midline-side').map((words) => words.toLowerCase());
  const midline = read(from, 'midline-offset', 'midline').map((words) => [words, ...side].join(', '));
  return line('set-up', 'Set up the teeth for the try-in.', [
    ...chosen(from, 'teeth-chosen', 'teeth'),
    ...chosen(from, 'shade-chosen', 'shade'),
    ...chosen(from, 'wish-arrangement', 'wishes'),
    ...(midline.length > 0 ? midline : side.map((words) => `midline ${words}`)),
    ...read(from, 'canine-lines', 'between the canine lines'),
    ...read(from, 'high-lip-line', 'rim edge to the high lip line'),
    ...toothLines(from),
  ]);
}

function afterSecond(from: LaterFrom): readonly LabLine[] {
  const seal = answered(from, 'rear-seal') === 'yes';
  return [
    line('trim-final', 'Trim the casts; keep the full width of the border.'),
    ...(seal ? [line('seal-line', 'The rear seal line is marked in the impression: carry it over to the cast.')] : []),
    mountAtClosed(from),
    setUp(from),
  ];
}

function sealLine(from: LaterFrom): readonly LabLine[] {
  const depth = latest(from.rows, 'seal-depth');
  return depth === undefined
    ? []
    : [line('seal-cut', `Cut the rear seal ${formatHundredths(depth.value)} mm deep at the line.`)];
}

const changesOf = (from: LaterFrom) =>
  ['try-shade', 'patient-content', 'companion-content'].flatMap((step) => {
    const given = answered(from, step);
    return given === 'changes' || given === 'no' ? saidAt(from, step) : [];
  });

function newRecord(from: LaterFrom): readonly LabLine[] {
  const { record } = from.vertical;
  const { change } = from.decided;
  const made = record?.medianMm === undefined ? '' : `, made at ${mmText(record.medianMm)}`;
  const pin =
    change?.from === 'record'
      ? [changeWords(change), `to stand at a space of ${mmText(from.vertical.targetSpaceMm)}`]
      : ['No height was read with the record in place: do not change the pin; ask the clinic'];
  return [
    line('mount-new', `Mount again by the new record${made}.`, pin),
    line('set-up-again', 'Set up again for a second try-in.', changesOf(from)),
  ];
}

function afterTryIn(from: LaterFrom): readonly LabLine[] {
  if (answered(from, 'bite-agrees') === 'no') return newRecord(from);
  const consent = answered(from, 'finish-consent');
  if (consent === 'yes')
    return [...sealLine(from), line('finish', 'Process and finish; keep the casts for the remount.', changesOf(from))];
  return consent === 'no' ? [line('change', 'Change as noted, back for another try-in.', changesOf(from))] : [];
}

function afterReview(from: LaterFrom): readonly LabLine[] {
  return answered(from, 'contacts') === 'remount'
    ? [line('remount', 'Remount the dentures by a new record and even the contacts.', changesOf(from))]
    : [];
}

/**
 * What the laboratory is to do after visit 2, 3, 4 or 5, without the casts to be poured. Empty when nothing goes there or
 * nothing was decided yet. Heights in millimetres between that visit's own marks; the pin range is the hinge model's.
 */
export function laterWork(from: LaterFrom): readonly LabLine[] {
  if (answered(from, 'lab-order') === 'no-order') return [];
  const { visit } = from.protocol;
  if (visit === 2) return afterSecond(from);
  if (visit === 3) return afterTryIn(from);
  return visit === 5 ? afterReview(from) : [];
}
