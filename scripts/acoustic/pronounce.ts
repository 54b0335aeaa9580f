/** How words sound that the recogniser's dictionary lacks: names of readings, spellings of another country. */
import { readFileSync } from 'node:fs';
import { run } from '../lib/run.mjs';

/** A speech synthesizer's signs for American English and the recogniser's. Longer signs come first where one begins another. */
const PHONES: Readonly<Record<string, string>> = {
  p: 'P',
  b: 'B',
  t: 'T',
  't#': 'T',
  d: 'D',
  k: 'K',
  g: 'G',
  tS: 'CH',
  dZ: 'JH',
  f: 'F',
  v: 'V',
  T: 'TH',
  D: 'DH',
  s: 'S',
  z: 'Z',
  S: 'SH',
  Z: 'ZH',
  h: 'HH',
  m: 'M',
  n: 'N',
  'n-': 'AH N',
  N: 'NG',
  l: 'L',
  '@L': 'AH L',
  r: 'R',
  'r-': 'R',
  w: 'W',
  j: 'Y',
  ';': '',
  '?': 'T',
  'i:': 'IY',
  i: 'IY',
  I: 'IH',
  I2: 'IH',
  E: 'EH',
  a: 'AE',
  'a#': 'AH',
  'A:': 'AA',
  'A@': 'AA R',
  'O:': 'AO',
  'O@': 'AO R',
  'o@': 'AO R',
  U: 'UH',
  'u:': 'UW',
  u: 'UW',
  'U@': 'UH R',
  V: 'AH',
  '@': 'AH',
  '@2': 'AH',
  '3': 'ER',
  '3:': 'ER',
  eI: 'EY',
  aI: 'AY',
  OI: 'OY',
  oU: 'OW',
  aU: 'AW',
  'i@': 'IH',
  'i@3': 'IH R',
  'e@': 'EH R',
  aI3: 'AY ER',
  aI_: 'AY',
};

/** The recogniser's phones for one word in the synthesizer's signs, or the sign that is not known. */
export function phonesOf(
  signs: string,
): { readonly ok: true; readonly phones: string } | { readonly ok: false; readonly sign: string } {
  const phones: string[] = [];
  for (const raw of signs.trim().split('_')) {
    const sign = raw.replace(/[',|%=!]/g, '').replace(/^:+$/, '');
    if (sign === '') continue;
    const phone = PHONES[sign];
    if (phone === undefined) return { ok: false, sign };
    if (phone !== '') phones.push(phone);
  }
  return { ok: true, phones: phones.join(' ') };
}

/** Words of a dictionary file, without the numbers of their variants. */
export function dictionaryWords(path: string): ReadonlySet<string> {
  const words = readFileSync(path, 'utf8')
    .split('\n')
    .map((line) => line.slice(0, line.search(/[\s(]/)));
  return new Set(words);
}

/** Lines "word PH ON ES" for the words a dictionary lacks. */
export async function pronunciations(words: readonly string[]): Promise<string> {
  const lines: string[] = [];
  for (const word of words) {
    const { code, output } = await run('espeak-ng', ['-q', '-x', '--sep=_', '-v', 'en-us', word]);
    const found = phonesOf(output);
    if (code !== 0 || !found.ok || found.phones === '')
      throw new Error(`no pronunciation for "${word}": ${output.trim()}`);
    lines.push(`${word} ${found.phones}\n`);
  }
  return lines.join('');
}

/** The words a grammar in JSGF can give: what is neither rule, sign nor header. */
export function grammarWords(jsgf: string): ReadonlySet<string> {
  const rules = jsgf
    .replace(/\/\/.*$/gm, '')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^#JSGF[^;]*;/, '')
    .replace(/^\s*grammar[^;]*;/m, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\bpublic\b/g, ' ')
    .replace(/\/[\d.]+\//g, ' ');
  return new Set(rules.match(/[\p{L}'][\p{L}\p{N}'.-]*/gu) ?? []);
}
