/**
 * The app at run time: devices in, facts out, one model for the screens. Everything a person can do comes through here,
 * from whichever way in, and takes the same path: utterance → session → append → store → model.
 */
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Utterance } from '../interpret/types.ts';
import type { Language } from '../domain/protocol/types.ts';
import { createStores, type Settings, type Stores } from '../stores/stores.ts';
import type { VisitEvent } from '../../machines/visit.types.ts';
import { Aloud } from './aloud.ts';
import { buildModel, NOTHING_KNOWN, saveState } from './build-model.ts';
import { CaseDesk } from './case-desk.ts';
import { Keeping } from './keeping.ts';
import { goOn, letGo, standing } from './letting-go.ts';
import { asksToLock } from './lock-words.ts';
import { Locking } from './locking.ts';
import type { AppActions, AppModel } from './model.ts';
import { onceEach } from './once-each.ts';
import { OwnThings } from './own-things.ts';
import type { Devices } from './ports.ts';
import type { Listening } from './listening.ts';
import { FilesAndBackups } from './backing-up.ts';
import { Ringing } from './ringing.ts';
import type { Runtime } from './runtime.types.ts';
import { savePaper } from './papers.ts';
import { Preferences } from './preferences.ts';
import { spokenWords } from './spoken-words.ts';
import type { Outcome } from './session.ts';
import type * as visitKit from './visit-kit.ts';

type Kit = typeof visitKit;

class AppRuntime implements Runtime {
  readonly model: StoreApi<AppModel>;
  private readonly devices: Devices;
  private readonly stores: Stores;
  private readonly stops: (() => void)[] = [];
  private readonly desk: CaseDesk;
  private readonly aloud: Aloud;
  private readonly preferences: Preferences;
  private readonly keeping: Keeping;
  private readonly own: OwnThings;
  private readonly ringing: Ringing;
  private readonly files: FilesAndBackups;
  private readonly locking: Locking;
  private ear: Listening | undefined;
  private endEar = (): void => undefined;

  readonly press = (intent: string): void => this.say('touch', intent);
  readonly key = (key: string): void => this.say('key', key);
  readonly type = (text: string): void => this.say('keypad', text);
  readonly saveFile = (): void => this.keeping.saveFile(this.desk.open);
  readonly savePaper: AppActions['savePaper'] = (wish) =>
    void savePaper(wish, this.desk.open, { devices: this.devices, tell: (said) => this.ui(said) });
  readonly askOwn: AppActions['askOwn'] = (request) => this.locking.whenOpen(() => this.own.ask(request));
  readonly askFiles: AppActions['askFiles'] = (request) => this.locking.whenOpen(() => this.files.ask(request));
  readonly go: AppActions['go'] = (place) => this.locking.whenOpen(() => this.went(place));
  readonly askLock: AppActions['askLock'] = (request) => this.locking.ask(request);
  readonly touched = (): void => this.locking.touched();
  readonly armSound = (): void => this.alarming.armSound();
  readonly silence = (): void => this.alarming.silence();
  readonly ring: Runtime['ring'] = (id, ring) => this.alarming.ring(id, ring);
  readonly openKeypad = (open: boolean): void => this.ui({ keypadOpen: open, trouble: '' });
  readonly setSpeech = (on: boolean): void => this.setPreferences({ speech: on });
  readonly print = (): void => this.devices.print();
  readonly openCase = (id: string): void => this.locking.whenOpen(() => void this.desk.load(id));
  readonly newCase: AppActions['newCase'] = (input) => this.locking.whenOpen(() => this.desk.begin(input));
  readonly openVisit: AppActions['openVisit'] = (input) => this.desk.openVisit(input);
  readonly takeOver = (): void => void this.keeping.writer.takeOver();
  readonly takeUpdate = (): void => void this.keeping.takeUpdate(this.desk.open?.id ?? '');
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
      readAnew: (id) => void this.desk.readAnew(id),
      listed: () => void this.ringing.others.look(),
    });
    this.aloud = new Aloud(devices, () => this.preferences.now.speech);
    this.desk = new CaseDesk({
      devices,
      stores,
      keeping: this.keeping,
      own: this.own,
      preferences: this.preferences,
      arrived: (kit) => this.listenWith(kit),
      changed: () => this.changed(),
      redraw: () => this.redraw(),
    });
    this.ringing = new Ringing({
      devices,
      aloud: this.aloud,
      keeping: this.keeping,
      open: () => this.desk.open,
      ringing: () => this.model.getState().ringing,
      changed: () => this.changed(),
      redraw: () => this.redraw(),
      send: (event) => this.send(event),
      fromLog: (id) => this.desk.fromLog(id),
      tell: (said) => this.ui(said),
    });
    this.files = new FilesAndBackups({
      devices,
      own: this.own,
      preferences: this.preferences,
      keeping: this.keeping,
      open: () => this.desk.open,
      opened: (id, facts) => this.desk.fromFacts(id, facts),
      readAnew: (id) => this.desk.readAnew(id),
      took: (id) => this.took(id),
      changed: () => this.changed(),
      trouble: () => this.stores.ui.getState().trouble,
      tell: (said) => this.ui(said),
    });
    this.locking = this.lockable();
    this.model = createStore<AppModel>()(() => this.build());
  }

  private lockable(): Locking {
    const { devices, stores, desk, keeping, ringing, files } = this;
    const holders = { desk, keeping, ringing, files, stores, devices };
    return new Locking({
      devices,
      preferences: () => this.preferences.now,
      standing: () => standing(holders),
      alarms: () => ringing.lockedAlarms(),
      letGo: () => {
        this.endEar();
        letGo(holders);
      },
      rang: (alarm) => ringing.rangLocked(alarm),
      goOn: (back) => goOn(holders, back),
      sayAloud: (text) => void this.aloud.say(text, 'en'),
      redraw: () => this.redraw(),
    });
  }

  /** Who answers for what rings. */
  private get alarming(): Pick<Ringing, 'ring' | 'silence' | 'armSound'> {
    return this.locking.shut ? this.locking : this.ringing;
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
      open: this.desk.open,
      others: this.ringing.others,
      own: {
        ...this.own.parts(this.stores.ui.getState().place),
        files: this.files.view(),
        ...(this.devices.lock === undefined ? {} : { lock: this.locking.view() }),
      },
      now: this.stores.clock.getState().now,
      ear: this.ear?.state(this.language()) ?? { state: 'off' },
      save: saveState(log.status(), this.stores.ui.getState().said),
      sound: time.sound.state(),
      canSpeak: voice.canSpeak(),
      ...(this.locking.shut ? NOTHING_KNOWN : {}),
    });
  }

  private language(): Language {
    return this.desk.open?.language ?? this.preferences.now.language;
  }

  /** The ear is told what the visit does; what it does then is drawn with the rest. */
  private redraw(): void {
    this.devices.voice.setLanguage(this.language());
    const visible = this.stores.ui.getState().place === 'visit';
    this.ear?.attend(this.preferences.now.earMode, visible ? this.desk.open : undefined);
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
    if (await this.locking.start()) await this.keeping.start();
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
    this.endEar();
    this.locking.stop();
    this.keeping.writer.stop();
    this.devices.voice.listen(false);
    this.devices.time.wakeLock.want(false);
  }

  private tick(now: number): void {
    this.stores.clock.setState({ now });
    this.ear?.tick(now);
    this.locking.tick(now);
    this.ringing.again();
    const { keepAfterMs } = this.preferences.now;
    const pending = this.desk.open?.session.context().pending;
    const keeps = pending?.certainty === 'sure' && this.aloud.quietFor(keepAfterMs, now);
    if (keeps) this.done(this.desk.open?.session.send({ type: 'PAUSE_OVER' }));
    else this.redraw();
  }

  /** The ear comes with what runs a visit: nothing is to be heard before. */
  private listenWith({ Listening: Ear }: Kit): void {
    if (this.ear !== undefined) return;
    this.ear = new Ear(this.devices.voice, this.preferences.now.earMode, () => this.redraw());
    const stop = this.ear.start();
    this.endEar = () => {
      stop();
      this.ear = undefined;
    };
  }

  private changed(): void {
    const { open } = this.desk;
    const now = this.devices.time.clock.now();
    this.stores.clock.setState({ now });
    if (open !== undefined) {
      const view = open.session.view();
      const before = this.stores.cases.getState().turn;
      this.stores.cases.setState({ caseId: open.id, view, turn: before + 1 });
      this.devices.voice.setPhrases(open.phrases(this.preferences.now.addressWord));
    }
    if (this.locking.shut) this.locking.attend();
    else this.ringing.attend();
    this.locking.follow();
    this.redraw();
  }

  /** In the laboratory a case that arrives is what is worked on next. */
  private async took(id: string): Promise<void> {
    if (this.preferences.now.standsAt === 'lab') await this.desk.load(id);
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
    void this.keeping.keep(facts, said, this.desk.open).then((kept) => {
      this.ear?.understood();
      const language = speakIn ?? this.language();
      const safe = kept || facts.length === 0 ? speak : `${spokenWords[language].notSafe} ${speak}`;
      if (speak !== '') void this.aloud.say(safe, language);
    });
    // What was asked for again may be the same words once more.
    if (trouble !== '' || this.desk.open?.session.context().candidates !== undefined) this.devices.voice.askAgain();
    this.aloud.beep(outcome, this.desk.open?.session.context().pending !== undefined);
  }

  private hear(utterance: Utterance): void {
    // Speech and keys belong to the visit's screen; what is touched elsewhere (a flag on the summary) counts too.
    if (this.stores.ui.getState().place !== 'visit' && utterance.source !== 'touch') return;
    const { source, text } = utterance;
    this.locking.touched();
    if (asksToLock(text, this.language(), this.preferences.now.addressWord)) this.askLock({ ask: 'lock' });
    if (this.locking.shut || !this.keeping.mayWrite()) return;
    if (source === 'voice' && this.ear?.takes(text) !== true) return;
    const outcome = this.ringing.told(this.desk.open?.session.hear(utterance, this.preferences.now.addressWord));
    if (source === 'voice' && outcome !== undefined) this.ear?.became(text, outcome, this.devices.time.clock.now());
    this.done(outcome);
  }

  private say(source: Utterance['source'], text: string): void {
    this.hear({ source, text, alternatives: [], at: this.devices.time.clock.now() });
  }

  private send(event: VisitEvent): void {
    if (this.keeping.mayWrite()) this.done(this.desk.open?.session.send(event));
  }

  private went(place: AppModel['place']): void {
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
}

export const createRuntime = (devices: Devices): Runtime => new AppRuntime(devices);
