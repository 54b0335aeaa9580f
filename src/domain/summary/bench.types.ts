/** What goes to and fro between clinic and laboratory, laid out for reading. Data only, no markup. */

/** One number of a line, as it is shown large: "66.5", "−2.4 to −3.0". */
export interface BenchFigure {
  readonly label: string;
  readonly digits: string;
  /** "mm", "°" … ; '' where the digits say it all. */
  readonly unit: string;
  readonly more?: string;
}

export interface BenchMark {
  readonly seq: number;
  readonly act: number;
  readonly at: number;
  /** Initials. */
  readonly by: string;
}

export interface BenchLine {
  /** Names the line in the record; another attempt at an impression is another line. */
  readonly id: string;
  readonly text: string;
  readonly detail?: string;
  readonly at?: number;
  readonly figures: readonly BenchFigure[];
  readonly done?: BenchMark;
  /** The clinic wrote something after the line was ticked: its numbers are to be looked at again. */
  readonly outdated: boolean;
  /** The impression that this line pours, where it still waits. */
  readonly clock?: string;
}

export interface BenchQuestion extends BenchMark {
  /** "visit 1" */
  readonly visit: string;
  /** Id of the line it is about; '' = the work as a whole. */
  readonly line: string;
  /** The same in words where they are known. */
  readonly about: string;
  readonly text: string;
  readonly answer?: BenchMark & { readonly text: string };
}

export interface BenchReturned extends BenchMark {
  readonly visit: string;
  readonly text: string;
}

/** One entry as it was written; struck ones stay. */
export interface BenchEntry extends BenchMark {
  readonly kind: 'done' | 'question' | 'answer' | 'returned' | 'taken';
  readonly visit: string;
  readonly text: string;
  readonly struck: boolean;
}

export interface BenchSummary {
  /** seq of the opening of the visit whose order this is. */
  readonly order: number;
  readonly lines: readonly BenchLine[];
  /** Every number of the visit that stands, for the bench to read from. */
  readonly numbers: readonly BenchFigure[];
  /** Of all visits, those that stand, oldest first; without an answer they are open. */
  readonly questions: readonly BenchQuestion[];
  readonly returned: readonly BenchReturned[];
  readonly log: readonly BenchEntry[];
  /** Visit by name → how many lines of its order stand as done. */
  readonly doneOf: Readonly<Record<string, number>>;
}
