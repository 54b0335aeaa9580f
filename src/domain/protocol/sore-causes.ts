/**
 * Where to look first when a region is sore. A habit of the trade, no finding: the clinician decides what it is. Kinds
 * from memory unless marked as common practice; nothing here was read in a source.
 */
export interface LookFirst {
  /** "the border length" */
  readonly at: string;
  readonly status: 'from memory' | 'common practice';
}

const BORDER: LookFirst = { at: 'the length of the border', status: 'from memory' };
const CREST: LookFirst = { at: 'the bite and a sharp edge of bone', status: 'from memory' };
const UNDERCUT: LookFirst = { at: 'an undercut', status: 'from memory' };
const NOTCH: LookFirst = { at: 'the relief for the frenum', status: 'common practice' };
const PRESSURE: LookFirst = { at: 'a pressing spot, with indicator paste', status: 'common practice' };
const COVER: LookFirst = { at: 'the length of the border over the pad', status: 'common practice' };
const SEAL: LookFirst = { at: 'the depth and length of the rear seal', status: 'common practice' };

const REGIONS: Readonly<Record<string, LookFirst>> = {
  'upper-lip-sulcus': BORDER,
  'upper-cheek-right': BORDER,
  'upper-cheek-left': BORDER,
  'upper-frenum': NOTCH,
  'upper-tuberosity-right': UNDERCUT,
  'upper-tuberosity-left': UNDERCUT,
  'upper-notch-right': BORDER,
  'upper-notch-left': BORDER,
  'upper-ridge': CREST,
  'upper-palate': PRESSURE,
  'upper-rear': SEAL,
  'lower-mylohyoid-right': UNDERCUT,
  'lower-mylohyoid-left': UNDERCUT,
  'lower-tongue-front': BORDER,
  'lower-tongue-right': BORDER,
  'lower-tongue-left': BORDER,
  'lower-lip-sulcus': BORDER,
  'lower-cheek-right': BORDER,
  'lower-cheek-left': BORDER,
  'lower-ridge': CREST,
  'lower-pad-right': COVER,
  'lower-pad-left': COVER,
  'lower-frenum': NOTCH,
};

/** What to look at first for a region; a region of a practice's own has none. Never a cause, never a diagnosis. */
export function lookFirst(region: string): LookFirst | undefined {
  return REGIONS[region];
}

/** "Look at an undercut first (from memory)". */
export function lookText({ at, status }: LookFirst): string {
  return `Look at ${at} first (${status})`;
}
