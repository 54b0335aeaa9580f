/**
 * The app at run time: devices in, facts out, one model for the screens. Everything a person can do comes through here,
 * from whichever way in, and takes the same path: utterance → session → append → store → model.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Fact } from '../domain/case/facts.ts';
import type { Utterance } from '../interpret/types.ts';
import type { Ring } from '../time/types.ts';
import { EarView } from './ear-view.ts';
import { createStores, SETTINGS_KEY, type Settings, type Stores } from '../stores/stores.ts';
import type { VisitEvent } from '../../machines/visit.types.ts';
import { buildModel, saveState } from './build-model.ts';
import { localDate } from './dates.ts';
import type { AppActions, AppModel, CaseListRow } from './model.ts';
import type { NewCase, NextVisit, OpenCase, Opened } from './open-case.ts';
import { soundSettings } from './settings.ts';
import type { Devices } from './ports.ts';
import type { Outcome } from './session.ts';

const BEEP_MS = 200;
export interface Runtime extends AppActions {
  readonly model: StoreApi<AppModel>;
  start(): Promise<void>;
  /** Consent that speech may leave this device. */
  mayLeaveDevice(): boolean;
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
  private readonly earView = new EarView();

  constructor(devices: Devices) {
    this.devices = devices;
    this.stores = createStores(devices.time.clock.now());
    this.model = createStore<AppModel>()(() => this.build());
  }

  private build(): AppModel {
    const { time, voice, log } = this.devices;
    return buildModel({
      ui: this.stores.ui.getState(),
      settings: this.stores.settings.getState(),
      cases: this.list,
      open: this.open,
      now: this.stores.clock.getState().now,
      ear: this.earView.state(voice.ear(), this.stores.settings.getState()),
      save: saveState(log.status(), this.stores.ui.getState().said),
      sound: time.sound.state(),
      canSpeak: voice.canSpeak(),
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
      voice.onTrouble((why) => this.ui({ trouble: why })),
      voice.onSpoken((spoken) => this.hear({ source: 'voice', ...spoken })),
      log.subscribe(() => this.redraw()),
    );
    await this.readSettings();
    await this.refreshCases();
  }

  private async readSettings(): Promise<void> {
    const read = await this.devices.settings.read(SETTINGS_KEY);
    if (read.ok) this.stores.settings.setState(soundSettings(read.value));
  }

  private set(change: Partial<Settings>): void {
    this.stores.settings.setState(change);
    void this.devices.settings.write(SETTINGS_KEY, this.stores.settings.getState());
    this.redraw();
  }

  mayLeaveDevice(): boolean {
    return this.stores.settings.getState().mayLeaveDevice;
  }

  setSpeechMayLeave(allowed: boolean): void {
    this.set({ mayLeaveDevice: allowed });
    this.devices.voice.listen(false);
    if (allowed) this.devices.voice.listen(true);
    this.redraw();
  }

  stop(): void {
    for (const stop of this.stops) stop();
    this.devices.voice.listen(false);
    this.devices.time.wakeLock.want(false);
  }

  private tick(now: number): void {
    this.stores.clock.setState({ now });
    this.earView.tick(now);
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
      this.devices.time.alarms.setDeadlines(open.deadlines(now));
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
    const kit = await import('./visit-kit.ts');
    this.adopt(await kit.openStored(id, loaded.facts, this.devices.time.clock));
  }

  newCase(input: { code: string; clinician: string; assistant: string; demo: boolean }): void {
    const code = input.code.trim();
    if (code === '' || input.clinician.trim() === '' || input.assistant.trim() === '') {
      this.ui({ trouble: 'A case needs a code and the initials of clinician and assistant.' });
      return;
    }
    void this.begin({ ...input, code, id: this.devices.newId(), language: this.stores.settings.getState().language });
  }

  private async begin(input: NewCase): Promise<void> {
    const kit = await import('./visit-kit.ts');
    const { opened, facts } = await kit.openNew(input, this.devices.time.clock);
    this.adopt(opened);
    await this.keep(facts, '');
  }

  openVisit(input: { visit: number; clinician: string; assistant: string }): void {
    void this.beginVisit({ ...input, language: this.stores.settings.getState().language });
  }

  private async beginVisit(input: NextVisit): Promise<void> {
    if (this.open === undefined) return;
    const kit = await import('./visit-kit.ts');
    const { opened, facts } = await kit.openVisit(this.open, input, this.devices.time.clock);
    this.adopt(opened);
    await this.keep(facts, '');
  }

  /** Durable first; only then does the screen say it is kept. */
  private async keep(facts: readonly Fact[], said: string): Promise<boolean> {
    const open = this.open;
    if (facts.length === 0 || open === undefined) return true;
    const written = await this.devices.log.append(facts, open.row());
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
    // What was asked for again may be the same words once more.
    if (trouble !== '' || this.open?.session.context().candidates !== undefined) this.devices.voice.askAgain();
    this.beepFor(outcome);
  }

  /** A beep is heard by the recogniser too: the ear is shut for it. */
  private beepFor({ trouble, facts }: Outcome): void {
    const waits = this.open?.session.context().pending !== undefined;
    const beep = trouble !== '' ? 'warn' : waits ? 'ask' : facts.length > 0 ? 'kept' : undefined;
    if (beep !== undefined && this.devices.time.sound.beep(beep)) this.devices.voice.hush(BEEP_MS);
  }

  private async speak(text: string): Promise<void> {
    const { speech, language } = this.stores.settings.getState();
    if (speech && this.devices.voice.canSpeak()) await this.devices.voice.say(text, language);
    this.pauseFrom = this.devices.time.clock.now();
  }

  private hear(utterance: Utterance): void {
    // Speech and keys belong to the visit's screen; what is touched elsewhere (a flag on the summary) counts too.
    if (this.stores.ui.getState().place !== 'visit' && utterance.source !== 'touch') return;
    const outcome = this.open?.session.hear(utterance);
    if (utterance.source === 'voice' && outcome !== undefined) {
      this.earView.heard(utterance.text, outcome, this.devices.time.clock.now());
    }
    this.done(outcome);
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
    this.devices.voice.unlock();
    this.devices.voice.listen(on);
    this.redraw();
  }

  setSpeech(on: boolean): void {
    this.devices.voice.setSpeaker({ silent: !on });
    this.set({ speech: on });
  }

  armSound(): void {
    void this.devices.time.sound.arm().then((state) => {
      // An alarm that was already ringing without a sound is heard now.
      if (state === 'armed' && this.model.getState().ringing.length > 0) this.devices.time.sound.ring();
      this.redraw();
    });
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
    const due = open.deadlines(ring.rangAt).find((d) => d.id === id);
    if (due === undefined) return;
    const outcome = open.session.rang(due.clock, due.phase, { dueAt: ring.dueAt, late: ring.late });
    void this.keep(outcome.facts, '');
    this.changed();
    const late = ring.late ? `, rang ${Math.round(ring.lateMs / 1000)} seconds late` : '';
    void this.speak(`${ring.label}${late}`);
  }
}

export function createRuntime(devices: Devices): Runtime {
  return new AppRuntime(devices);
}
