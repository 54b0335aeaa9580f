/** The practice's own things while somebody works on them: settings saved at once, a visit edited as a draft. */
import { problemText } from '../domain/case/fileFormat.ts';
import { addStep, dropStep, moveStep, rewordStep } from '../domain/protocol/edit.ts';
import { cautionPlaces } from '../domain/protocol/own.ts';
import { readingDefs } from '../domain/protocol/readings.ts';
import type { Language, VisitProtocol } from '../domain/protocol/types.ts';
import { commandWords, loadLanguage } from '../interpret/index.ts';
import type { OwnRequest, OwnView, ProtocolView } from './own.types.ts';
import { VISITS, type Kept, type PracticeStore } from './practice-store.ts';

export interface DeskParts {
  readonly store: PracticeStore;
  download(name: string, text: string): void;
}

/** What came of a request: what was done, or why not. */
export interface Done {
  readonly said: string;
  readonly trouble: string;
}

const LANGUAGES: readonly Language[] = ['en', 'de', 'es', 'fr'];
const QUIET: Done = { said: '', trouble: '' };
const said = (text: string): Done => ({ said: text, trouble: '' });
const outcome = (kept: Kept, text: string): Done => (kept.ok ? said(text) : { said: '', trouble: kept.text });

const takenIn = (language: Language): readonly string[] => Object.values(commandWords(language)).flat();

export class Desk {
  readonly #store: PracticeStore;
  readonly #download: DeskParts['download'];
  #newest: readonly VisitProtocol[] = [];
  #before: VisitProtocol | undefined;
  #draft: VisitProtocol | undefined;

  constructor({ store, download }: DeskParts) {
    this.#store = store;
    this.#download = download;
  }

  /** Nobody waits for the languages: their words are wanted only once a reason is written down. */
  async sitDown(): Promise<void> {
    void Promise.allSettled(LANGUAGES.map((language) => loadLanguage(language)));
    await this.refresh();
  }

  async refresh(): Promise<void> {
    this.#newest = await Promise.all(VISITS.map((visit) => this.#store.latest(visit)));
  }

  view(): OwnView {
    const protocol = this.#protocolView();
    return {
      practice: this.#store.practice,
      visits: this.#newest.map(({ id, visit, title, version }) => ({
        visit,
        title,
        version: `${id}, version ${version}`,
      })),
      cautions: cautionPlaces(this.#newest),
      readings: readingDefs,
      taken: { en: takenIn('en'), de: takenIn('de'), es: takenIn('es'), fr: takenIn('fr') },
      ...(protocol === undefined ? {} : { protocol }),
    };
  }

  #protocolView(): ProtocolView | undefined {
    if (this.#before === undefined || this.#draft === undefined) return undefined;
    const { protocol, problems, warnings, difference } = this.#store.proposed(this.#before, this.#draft);
    return {
      before: this.#before,
      draft: this.#draft,
      version: protocol.version,
      problems: problems.map(problemText),
      warnings,
      difference,
    };
  }

  #open(protocol: VisitProtocol | undefined): Done {
    this.#before = protocol;
    this.#draft = protocol;
    return QUIET;
  }

  #edited(draft: VisitProtocol): Done {
    this.#draft = draft;
    return QUIET;
  }

  async ask(request: OwnRequest): Promise<Done> {
    const done = await this.#do(request);
    await this.refresh();
    return done;
  }

  #do(request: OwnRequest): Promise<Done> | Done {
    switch (request.ask) {
      case 'savePractice':
        return this.#store
          .savePractice(request.practice)
          .then((kept) => outcome(kept, 'Settings of the practice saved.'));
      case 'importPractice':
        return this.#store.importPractice(request.text).then((kept) => outcome(kept, 'Settings taken from the file.'));
      case 'exportPractice':
        this.#download('rimwise-practice.json', this.#store.practiceFile());
        return said('Settings of the practice saved as a file.');
      case 'edit':
        return this.#store.latest(request.visit).then((protocol) => this.#open(protocol));
      default:
        return this.#edit(request);
    }
  }

  #edit(request: Exclude<OwnRequest, { ask: 'savePractice' | 'importPractice' | 'exportPractice' | 'edit' }>) {
    const draft = this.#draft;
    const before = this.#before;
    if (draft === undefined || before === undefined) return QUIET;
    switch (request.ask) {
      case 'move':
        return this.#edited(moveStep(draft, request.step, request.by));
      case 'drop':
        return this.#edited(dropStep(draft, request.step));
      case 'reword':
        return this.#edited(rewordStep(draft, request.step, request.wording));
      case 'add':
        return this.#edited(addStep(draft, request.step, request.wording));
      case 'dropChanges':
        return this.#open(before);
      case 'exportProtocol':
        this.#download(`rimwise-${draft.id}.json`, this.#store.protocolFile(draft));
        return said('The visit is saved as a file.');
      case 'saveProtocol':
        return this.#kept(this.#store.saveProtocol(before, draft), before);
      case 'importProtocol':
        return this.#kept(this.#store.importProtocol(request.text), before);
    }
  }

  /** A new version is what the next edit starts from. */
  async #kept(saving: Promise<Kept>, before: VisitProtocol): Promise<Done> {
    const kept = await saving;
    if (!kept.ok) return outcome(kept, '');
    const newest = await this.#store.latest(before.visit);
    this.#open(newest);
    return said(
      `Saved as a new version; visits opened from now on follow it. Visit ${newest.visit}: ${newest.version}.`,
    );
  }
}
