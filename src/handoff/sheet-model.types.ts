/** The lab sheet as data: what stands on it and in which order. Text, PDF and any other form are drawn from this alone. */

export interface Pair {
  readonly label: string;
  readonly value: string;
}

export interface NumberedLine {
  readonly text: string;
  readonly detail?: string;
}

export interface TableRow {
  readonly cells: readonly string[];
  /** Struck through on the record; one of its cells says so in words, for a sheet read without colour. */
  readonly struck?: boolean;
}

/** Readings of one set on a millimetre scale. */
export interface RulerDrawing {
  readonly kind: 'ruler';
  readonly title: string;
  /** Ends of the scale, millimetres. */
  readonly from: number;
  readonly to: number;
  readonly marks: readonly { readonly mm: number; readonly suspect: boolean }[];
  readonly medianMm?: number;
}

export interface HeightColumn {
  readonly label: string;
  readonly lines: readonly { readonly name: string; readonly mm: number }[];
  readonly spaceMm?: number;
  readonly uncertaintyMm?: number;
}

/** Rest, closed and record height, one column for each set of marks. Columns are never compared with one another. */
export interface HeightsDrawing {
  readonly kind: 'heights';
  readonly title: string;
  readonly columns: readonly HeightColumn[];
}

export type Drawing = RulerDrawing | HeightsDrawing;

export type Block =
  | { readonly kind: 'lines'; readonly lines: readonly string[] }
  | { readonly kind: 'numbered'; readonly lines: readonly NumberedLine[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly string[];
      /** Widths of the columns as shares of the page; their sum is 1. */
      readonly shares: readonly number[];
      readonly rows: readonly TableRow[];
    }
  | { readonly kind: 'drawings'; readonly drawings: readonly { readonly drawing: Drawing; readonly alt: string }[] };

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly blocks: readonly Block[];
}

export interface SheetModel {
  readonly title: string;
  /** Said beside the title: "demo, invented data". */
  readonly mark: string;
  readonly head: readonly Pair[];
  readonly sections: readonly Section[];
  readonly foot: readonly string[];
  /** SHA-256 of the case as handed over, lower-case hex; absent when the sheet was made without a case file. */
  readonly digest?: string;
}

/** Words for times in the zone of whoever reads the sheet; the model itself knows no clock. */
export interface SheetTimes {
  readonly zone: string;
  date(at: number): string;
  time(at: number): string;
}
