/**
 * The app at run time: devices in, facts out, one model for the screens. Everything a person can do comes through here,
 * from whichever way in, and takes the same path: utterance → session → append → store → model.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Fact } from '../domain/case/facts.ts';
import { isKind } from '../domain/case/fold.ts';
import { defaultPractice, protocols } from '../domain/protocol/index.ts';
import { readingDefs } from '../domain/protocol/readings.ts';
import { clockRows, deadlines } from '../domain/summary/clocks.ts';
import type { Utterance } from '../interpret/types.ts';
import type { CaseRow, SaveStatus } from '../storage/types.ts';
import type { Ring } from '../time/types.ts';
import { createStores, type Stores } from '../stores/stores.ts';
import type { VisitEvent } from '../../machines/visit.types.ts';
import { buildModel } from './build-model.ts';
import { localDate } from './dates.ts';
import type { AppActions, AppModel, CaseListRow, SaveState } from './model.ts';
import { openFacts, openStored, type OpenCase, type Opened } from './open-case.ts';
import type { Devices } from './ports.ts';
import { openingFacts } from './opening.ts';
import type { Outcome } from './session.ts';
import { appVersion } from './version.ts';

/** Two readings of the same words by a restarting recogniser within this time are one. */
const EMPTY_SAVE: SaveState = { state: 'kept', what: '' };

export interface Runtime extends AppActions {
  readonly model: StoreApi<AppModel>;
  start(): Promise<void>;
  /** A phase is over: called by the alarms of time/. */
  ring(id: string, ring: Ring): void;
  stop(): void;
}

class AppRuntime implements Runtime {
  readonly model: StoreApi<AppModel>;
  private readonly devices: Devices;
  private readonly stores: Stores;
  private readonly stops: (() => void)[] = [];
  private open: OpenCase | undefined;
  private list: readonly CaseListRow[] = [];
  private pauseFrom = 0;

  constructor(devices: Devices) {
    this.devices = devices;
    this.stores = createStores(devices.time.clock.now());
    this.model = createStore<AppModel>()(() => this.build());
  }

  private build(): AppModel {
    const { time, voice, log } = this.devices;
    return buildModel({
      ui: this.stores.ui.getState(),
      cases: this.list,
      caseState: this.stores.cases.getState(),
      open: this.open,
      readings: readingDefs,
      now: this.stores.clock.getState().now,
      ear: voice.ear(),
      save: saveState(log.status(), this.stores.ui.getState().said),
      sound: time.sound.state(),
      speech: voice.canSpeak() ? this.stores.settings.getState().speech : undefined,
    });
  }

  private redraw(): void {
    this.model.setState(this.build(), true);
  }

  private ui(change: Partial<ReturnType<Stores['ui']['getState']>>): void {
    this.stores.ui.setState(change);
    this.redraw();
  }

  async start(): Promise<void> {
    const { time, voice, log } = this.devices;
    this.stops.push(
      time.ticker.onSecond((now) => this.tick(now)),
      time.sound.subscribe(() => this.redraw()),
      voice.onEar(() => this.redraw()),
      voice.onSpoken((spoken) => this.hear({ source: 'voice', ...spoken })),
      log.subscribe(() => this.redraw()),
    );
    await this.refreshCases();
  }

  stop(): void {
    for (const stop of this.stops) stop();
    this.devices.voice.listen(false);
    this.devices.time.wakeLock.want(false);
  }

  private tick(now: number): void {
    this.stores.clock.setState({ now });
    const { keepAfterMs } = this.stores.settings.getState();
    const pending = this.open?.session.context().pending;
    const waits = keepAfterMs > 0 && this.pauseFrom > 0 && pending?.certainty === 'sure';
    if (waits && now - this.pauseFrom >= keepAfterMs) this.done(this.open?.session.send({ type: 'PAUSE_OVER' }));
    else this.redraw();
  }

  private async refreshCases(): Promise<void> {
    const listed = await this.devices.log.cases();
    if (listed.ok) {
      this.list = listed.rows.map((row) => ({ ...row, at: localDate(row.lastAt) }));
    } else this.stores.ui.setState({ trouble: listed.why });
    this.redraw();
  }

  private around() {
    return {
      readings: readingDefs,
      appVersion,
      now: () => this.devices.time.clock.now(),
      append: () => undefined,
    };
  }

  private adopt(opened: Opened): void {
    if (!opened.ok) {
      this.ui({ trouble: opened.text });
      return;
    }
    this.open = opened.open;
    this.devices.time.wakeLock.want(true);
    const closed = opened.open.session.view().closed !== undefined;
    this.stores.ui.setState({ place: closed ? 'summary' : 'visit', said: '', trouble: '', keypadOpen: false });
    this.changed();
  }

  private changed(): void {
    const open = this.open;
    const now = this.devices.time.clock.now();
    this.stores.clock.setState({ now });
    if (open !== undefined) {
      const view = open.session.view();
      const before = this.stores.cases.getState().turn;
      this.stores.cases.setState({ caseId: open.id, view, turn: before + 1 });
      const rung = new Set(
        view.log.facts.flatMap((f) => (isKind(f, 'rang') ? [`${f.body.clock}:${f.body.phase}`] : [])),
      );
      const due = deadlines(clockRows(view, open.protocol, now));
      this.devices.time.alarms.setDeadlines(due.filter((d) => !rung.has(d.id)));
    }
    this.redraw();
  }

  openCase(id: string): void {
    void this.load(id);
  }

  private async load(id: string): Promise<void> {
    const loaded = await this.devices.log.open(id);
    if (!loaded.ok && loaded.reason !== 'gap') {
      this.ui({ trouble: loaded.why });
      return;
    }
    if (!loaded.ok) {
      this.ui({ trouble: `${loaded.why} Nothing was changed. Save a file of it and ask for help.` });
      return;
    }
    this.adopt(openStored(id, loaded.facts, this.around()));
  }

  newCase(input: { code: string; clinician: string; assistant: string; demo: boolean }): void {
    const code = input.code.trim();
    const protocol = protocols.findLast((p) => p.visit === 1);
    if (code === '' || input.clinician.trim() === '' || input.assistant.trim() === '') {
      this.ui({ trouble: 'A case needs a code and the initials of clinician and assistant.' });
      return;
    }
    if (protocol === undefined) return;
    const id = this.devices.newId();
    const head = {
      case: code,
      visit: 1 as const,
      clinician: input.clinician.trim(),
      assistant: input.assistant.trim(),
      language: this.stores.settings.getState().language,
    };
    const facts = openingFacts({
      head,
      protocol,
      practice: defaultPractice,
      at: this.devices.time.clock.now(),
      app: appVersion,
      demo: input.demo,
      caseId: id,
    });
    this.adopt(openFacts(id, facts, this.around()));
    void this.keep(facts, '');
  }

  /** Durable first; only then does the screen say it is kept. */
  private async keep(facts: readonly Fact[], said: string): Promise<boolean> {
    const open = this.open;
    if (facts.length === 0 || open === undefined) return true;
    const written = await this.devices.log.append(facts, rowOf(open));
    if (said !== '') this.stores.ui.setState({ said: written.ok ? said : `In memory only: ${said}` });
    if (!written.ok) this.stores.ui.setState({ trouble: written.why });
    this.redraw();
    void this.refreshCases();
    return written.ok;
  }

  private done(outcome: Outcome | undefined): void {
    if (outcome === undefined) return;
    const { facts, said, trouble, speak } = outcome;
    this.pauseFrom = 0;
    this.stores.ui.setState({
      trouble,
      ...(facts.length === 0 ? { said } : {}),
      keypadOpen: trouble === '' ? false : this.stores.ui.getState().keypadOpen,
    });
    this.changed();
    void this.keep(facts, said).then((kept) => {
      if (speak !== '') void this.speak(kept || facts.length === 0 ? speak : `Not safe yet. ${speak}`);
    });
    if (trouble !== '') this.devices.time.sound.beep('warn');
    else if (this.open?.session.context().pending !== undefined) this.devices.time.sound.beep('ask');
    else if (facts.length > 0) this.devices.time.sound.beep('kept');
  }

  private async speak(text: string): Promise<void> {
    const { speech, language } = this.stores.settings.getState();
    if (speech && this.devices.voice.canSpeak()) await this.devices.voice.say(text, language);
    this.pauseFrom = this.devices.time.clock.now();
  }

  private hear(utterance: Utterance): void {
    // Speech and keys belong to the visit's screen; what is touched elsewhere (a flag on the summary) counts too.
    if (this.stores.ui.getState().place !== 'visit' && utterance.source !== 'touch') return;
    this.done(this.open?.session.hear(utterance));
  }

  private say(source: Utterance['source'], text: string): void {
    this.hear({ source, text, alternatives: [], at: this.devices.time.clock.now() });
  }

  press(intent: string): void {
    this.say('touch', intent);
  }

  key(key: string): void {
    this.say('key', key);
  }

  type(text: string): void {
    this.say('keypad', text);
  }

  private send(event: VisitEvent): void {
    this.done(this.open?.session.send(event));
  }

  go(place: AppModel['place']): void {
    if (place === 'cases') void this.refreshCases();
    this.ui({ place, trouble: '' });
  }

  setEar(on: boolean): void {
    this.devices.voice.listen(on);
    this.redraw();
  }

  setSpeech(on: boolean): void {
    this.stores.settings.setState({ speech: on });
    this.redraw();
  }

  armSound(): void {
    void this.devices.time.sound.arm().then(() => this.redraw());
  }

  silence(): void {
    this.devices.time.sound.silence();
    for (const ringing of this.model.getState().ringing) {
      this.send({ type: 'ALARM_SEEN', clock: ringing.clock, phase: ringing.phase });
    }
  }

  openKeypad(open: boolean): void {
    this.ui({ keypadOpen: open, trouble: '' });
  }

  correct(seq: number): void {
    this.stores.ui.setState({ place: 'visit' });
    this.say('touch', `correct:${seq}`);
  }

  note(text: string): void {
    if (text.trim() !== '') this.send({ type: 'NOTE', text: text.trim(), source: 'keypad' });
  }

  answerFlag(flag: string, answer: 'keep' | 'measureAgain', reason: string): void {
    this.press(answer === 'keep' ? `flagKeep:${flag}|${reason}` : `flagAgain:${flag}`);
    if (answer === 'measureAgain') this.ui({ place: 'visit' });
  }

  saveFile(): void {
    const open = this.open;
    if (open === undefined) return;
    void this.devices.log.exportFile(open.id).then((file) => {
      this.devices.download(file.name, file.text);
      const whole = file.complete ? '' : ` ${file.why}`;
      this.ui({ said: `File saved: ${file.facts} entries.${whole}` });
    });
  }

  print(): void {
    this.devices.print();
  }

  ring(id: string, ring: Ring): void {
    const open = this.open;
    if (open === undefined) return;
    const due = deadlines(clockRows(open.session.view(), open.protocol, ring.rangAt)).find((d) => d.id === id);
    if (due === undefined) return;
    const outcome = open.session.rang(due.clock, due.phase, { dueAt: ring.dueAt, late: ring.late });
    void this.keep(outcome.facts, '');
    this.changed();
    const late = ring.late ? `, rang ${Math.round(ring.lateMs / 1000)} seconds late` : '';
    void this.speak(`${ring.label}${late}`);
  }
}

function saveState(status: SaveStatus, said: string): SaveState {
  if (status.state === 'memory') return { state: 'memory', why: status.why, unsaved: status.unsaved };
  if (status.state === 'keeping') return { state: 'keeping' };
  return said === '' ? EMPTY_SAVE : { state: 'kept', what: said };
}

/** The case's row in the list, as of its latest fact. */
function rowOf(open: OpenCase): CaseRow {
  const view = open.session.view();
  const facts = view.log.facts;
  return {
    id: open.id,
    code: view.opened?.body.code ?? '',
    demo: view.opened?.body.demo ?? false,
    openedAt: view.opened?.at ?? 0,
    lastAt: facts.at(-1)?.at ?? 0,
    visit: open.protocol.visit,
    closed: view.closed !== undefined,
    lastSeq: facts.length,
  };
}

export function createRuntime(devices: Devices): Runtime {
  return new AppRuntime(devices);
}
