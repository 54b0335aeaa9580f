/**
 * The app at run time: devices in, facts out, one model for the screens. Everything a person can do comes through here,
 * from whichever way in, and takes the same path: utterance → session → append → store → model.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Utterance } from '../interpret/types.ts';
import type { Ring } from '../time/types.ts';
import type { Language } from '../domain/protocol/types.ts';
import { createStores, type Settings, type Stores } from '../stores/stores.ts';
import type { VisitEvent } from '../../machines/visit.types.ts';
import { Aloud } from './aloud.ts';
import { buildModel, saveState } from './build-model.ts';
import { Keeping } from './keeping.ts';
import type { AppActions, AppModel } from './model.ts';
import { whyNotBegun, type KitHost, type OpenCase, type Opened } from './open-case.ts';
import { onceEach } from './once-each.ts';
import { OwnThings } from './own-things.ts';
import type { Devices } from './ports.ts';
import type { Listening } from './listening.ts';
import type { Runtime } from './runtime.types.ts';
import { savePaper } from './papers.ts';
import { caseOnTheClock } from './under-way.ts';
import { Preferences, wordsMissing } from './preferences.ts';
import { spokenWords } from './spoken-words.ts';
import type { Outcome } from './session.ts';
import type * as visitKit from './visit-kit.ts';

type Kit = typeof visitKit;

class AppRuntime implements Runtime {
  readonly model: StoreApi<AppModel>;
  private readonly devices: Devices;
  private readonly stores: Stores;
  private readonly stops: (() => void)[] = [];
  private open: OpenCase | undefined;
  private readonly aloud: Aloud;
  private readonly preferences: Preferences;
  private readonly keeping: Keeping;
  private readonly own: OwnThings;
  /** Comes with the first visit: nothing is to be heard before. */
  private ear: Listening | undefined;

  readonly press = (intent: string): void => this.say('touch', intent);
  readonly key = (key: string): void => this.say('key', key);
  readonly type = (text: string): void => this.say('keypad', text);
  readonly saveFile = (): void => this.keeping.saveFile(this.open);
  readonly savePaper: AppActions['savePaper'] = (wish) =>
    void savePaper(wish, this.open, { devices: this.devices, tell: (said) => this.ui(said) });
  readonly askOwn: AppActions['askOwn'] = (request) => this.own.ask(request);
  readonly openKeypad = (open: boolean): void => this.ui({ keypadOpen: open, trouble: '' });
  readonly setSpeech = (on: boolean): void => this.setPreferences({ speech: on });
  readonly print = (): void => this.devices.print();
  readonly takeOver = (): void => void this.keeping.writer.takeOver();
  readonly takeUpdate = (): void => void this.keeping.takeUpdate(this.open?.id ?? '');
  readonly fetchOnDevice = (): void =>
    void this.preferences.fetchOnDevice().then((ready) => ready && this.ear?.retry());
  readonly trySpeech = (): void => void this.preferences.trySpeech();

  constructor(devices: Devices) {
    this.devices = devices;
    const stores = createStores(devices.time.clock.now());
    this.stores = stores;
    this.own = new OwnThings({ devices, stores, changed: () => this.redraw() });
    this.preferences = new Preferences({ devices, stores, changed: () => this.redraw() });
    this.keeping = new Keeping({
      devices,
      stores,
      changed: () => this.redraw(),
      readAnew: (id) => void this.readAnew(id),
    });
    this.aloud = new Aloud(devices, () => this.preferences.now.speech);
    this.model = createStore<AppModel>()(() => this.build());
  }

  private build(): AppModel {
    const { time, voice, log } = this.devices;
    return buildModel({
      ui: this.stores.ui.getState(),
      settings: this.stores.settings.getState(),
      cases: this.keeping.cases,
      casesRead: this.keeping.casesRead,
      writer: this.keeping.writer.state(),
      safety: this.keeping.safety(),
      updateWaits: this.devices.updates?.available() ?? false,
      open: this.open,
      own: this.own.parts(this.stores.ui.getState().place),
      now: this.stores.clock.getState().now,
      ear: this.ear?.state(this.language()) ?? { state: 'off' },
      save: saveState(log.status(), this.stores.ui.getState().said),
      sound: time.sound.state(),
      canSpeak: voice.canSpeak(),
    });
  }

  private language(): Language {
    return this.open?.language ?? this.preferences.now.language;
  }

  /** The ear is told what the visit does; what it does then is drawn with the rest. */
  private redraw(): void {
    this.devices.voice.setLanguage(this.language());
    const visible = this.stores.ui.getState().place === 'visit';
    this.ear?.attend(this.preferences.now.earMode, visible ? this.open : undefined);
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
      voice.onTrouble(onceEach((why) => this.ui({ trouble: why }))),
      voice.onSpoken((spoken) => this.hear({ source: 'voice', ...spoken })),
      log.subscribe(() => this.redraw()),
    );
    await this.preferences.read();
    this.devices.updates?.start(() => this.redraw());
    await this.keeping.start();
    await this.resumeClocks();
  }

  mayLeaveDevice(): boolean {
    return this.preferences.now.mayLeaveDevice;
  }

  /** Agreeing opens the ear that asked; taking it back closes the ear at once. */
  setSpeechMayLeave(allowed: boolean): void {
    this.setPreferences({ mayLeaveDevice: allowed });
    if (allowed) this.ear?.want(true);
  }

  setPreferences(change: Partial<Settings>): void {
    this.preferences.change(change);
    if (change.mayLeaveDevice !== undefined) this.ear?.consent(change.mayLeaveDevice);
  }

  stop(): void {
    for (const stop of this.stops) stop();
    this.keeping.writer.stop();
    this.devices.voice.listen(false);
    this.devices.time.wakeLock.want(false);
  }

  private tick(now: number): void {
    this.stores.clock.setState({ now });
    this.ear?.tick(now);
    const { keepAfterMs } = this.preferences.now;
    const pending = this.open?.session.context().pending;
    const keeps = pending?.certainty === 'sure' && this.aloud.quietFor(keepAfterMs, now);
    if (keeps) this.done(this.open?.session.send({ type: 'PAUSE_OVER' }));
    else this.redraw();
  }

  private async resumeClocks(): Promise<void> {
    const id = await caseOnTheClock(this.keeping.cases, (one) => this.fromLog(one), this.devices.time.clock.now());
    if (id !== undefined && this.open === undefined) await this.load(id, 'cases');
  }

  private async fromLog(id: string): Promise<Opened> {
    return (await this.kit()).openFromLog(id, this.devices.log, await this.own.host());
  }

  private adopt(opened: Opened, place?: 'cases'): void {
    // Somebody has opened a case meanwhile: that one stays.
    if (place !== undefined && this.open !== undefined) return;
    if (!opened.ok) {
      this.ui({ trouble: opened.text });
      return;
    }
    this.open = opened.open;
    this.devices.updates?.setIdle(false);
    this.devices.time.wakeLock.want(true);
    const closed = opened.open.session.view().closed !== undefined;
    const said = opened.recovered ?? '';
    this.stores.ui.setState({ place: place ?? (closed ? 'summary' : 'visit'), said, trouble: '', keypadOpen: false });
    if (!opened.open.hasWords) this.stores.ui.setState({ trouble: wordsMissing(opened.open.language) });
    this.changed();
  }

  /** What runs a visit, and the ear with it. */
  private async kit(): Promise<Kit> {
    const kit = await import('./visit-kit.ts');
    if (this.ear === undefined) {
      this.ear = new kit.Listening(this.devices.voice, this.preferences.now.earMode, () => this.redraw());
      this.stops.push(this.ear.start());
    }
    return kit;
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
      this.devices.voice.setPhrases(open.phrases(this.preferences.now.addressWord));
    }
    this.redraw();
  }

  openCase(id: string): void {
    void this.load(id);
  }

  /** The right to write comes first: what is read after it cannot be overtaken. */
  private async load(id: string, place?: 'cases'): Promise<void> {
    await this.keeping.writer.open(id);
    this.adopt(await this.fromLog(id), place);
  }

  /** Another window has written, or may have: the case as it is on the disk now, with the screen where it was. */
  private async readAnew(id: string): Promise<void> {
    if (this.open?.id !== id) return;
    const opened = await this.fromLog(id);
    if (!opened.ok || this.open?.id !== id) return;
    this.open = opened.open;
    this.changed();
  }

  newCase(input: { code: string; clinician: string; assistant: string; demo: boolean }): void {
    const why = whyNotBegun(input);
    if (why !== '') return this.ui({ trouble: why });
    const { language } = this.preferences.now;
    const made = { ...input, code: input.code.trim(), id: this.devices.newId(), language };
    void this.begin((kit, host) => kit.openNew(made, host));
  }

  openVisit(input: { visit: number; clinician: string; assistant: string }): void {
    const { open } = this;
    const { language } = this.preferences.now;
    if (open !== undefined && this.keeping.mayWrite())
      void this.begin((kit, host) => kit.openVisit(open, { ...input, language }, host));
  }

  private async begin(begun: (kit: Kit, host: KitHost) => ReturnType<Kit['openNew']>): Promise<void> {
    const { opened, facts } = await begun(await this.kit(), await this.own.host());
    if (opened.ok) await this.keeping.writer.open(opened.open.id);
    this.adopt(opened);
    if (opened.ok) await this.keeping.keep(facts, '', this.open);
  }

  private done(outcome: Outcome | undefined): void {
    if (outcome === undefined) return this.ear?.understood();
    const { facts, said, trouble, speak, speakIn } = outcome;
    this.aloud.restart();
    this.stores.ui.setState({
      trouble,
      ...(facts.length === 0 ? { said } : {}),
      keypadOpen: trouble === '' ? false : this.stores.ui.getState().keypadOpen,
    });
    this.changed();
    void this.keeping.keep(facts, said, this.open).then((kept) => {
      this.ear?.understood();
      const language = speakIn ?? this.language();
      const safe = kept || facts.length === 0 ? speak : `${spokenWords[language].notSafe} ${speak}`;
      if (speak !== '') void this.aloud.say(safe, language);
    });
    // What was asked for again may be the same words once more.
    if (trouble !== '' || this.open?.session.context().candidates !== undefined) this.devices.voice.askAgain();
    this.aloud.beep(outcome, this.open?.session.context().pending !== undefined);
  }

  private hear(utterance: Utterance): void {
    // Speech and keys belong to the visit's screen; what is touched elsewhere (a flag on the summary) counts too.
    if (this.stores.ui.getState().place !== 'visit' && utterance.source !== 'touch') return;
    if (!this.keeping.mayWrite()) return;
    const { source, text } = utterance;
    if (source === 'voice' && this.ear?.takes(text) !== true) return;
    const outcome = this.open?.session.hear(utterance, this.preferences.now.addressWord);
    if (source === 'voice' && outcome !== undefined) this.ear?.became(text, outcome, this.devices.time.clock.now());
    this.done(outcome);
  }

  private say(source: Utterance['source'], text: string): void {
    this.hear({ source, text, alternatives: [], at: this.devices.time.clock.now() });
  }

  private send(event: VisitEvent): void {
    if (this.keeping.mayWrite()) this.done(this.open?.session.send(event));
  }

  go(place: AppModel['place']): void {
    if (place === 'cases') void this.keeping.refresh().then(() => this.devices.updates?.look());
    if (place === 'settings') void this.preferences.lookOnDevice();
    this.ui({ place, trouble: '' });
  }

  setEar(on: boolean): void {
    this.devices.voice.unlock();
    this.ear?.want(on);
  }

  talk(held: boolean): void {
    if (held) this.devices.voice.unlock();
    this.ear?.talk(held);
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

  ring(id: string, ring: Ring): void {
    const open = this.open;
    // The window that writes also writes down that it rang; the tone is heard from all.
    if (open === undefined || this.keeping.writer.state() === 'elsewhere') return;
    const due = open.deadlines(ring.rangAt).find((d) => d.id === id);
    if (due === undefined) return;
    const outcome = open.session.rang(due.clock, due.phase, { dueAt: ring.dueAt, late: ring.late });
    void this.keeping.keep(outcome.facts, '', open);
    this.changed();
    const late = ring.late ? `, rang ${Math.round(ring.lateMs / 1000)} seconds late` : '';
    void this.aloud.say(`${ring.label}${late}`, 'en');
  }
}

export const createRuntime = (devices: Devices): Runtime => new AppRuntime(devices);
