/** A grammar without recursion as one regular expression, to tell whole sentences from the beginnings of some. */

const RULE = /(?:public\s+)?<([^>]+)>\s*=\s*([^;]*);/g;
const PIECE = /<[^>]+>|[[\]()|]|[^\s[\]()|<>]+/g;

const SIGNS: Readonly<Record<string, string>> = { '[': '(?:', ']': ')?', '(': '(?:', ')': ')', '|': '|' };
const quoted = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** True for sentences the grammar's public rule can give; words are separated by one blank. */
export function accepts(jsgf: string): (sentence: string) => boolean {
  const rules = new Map([...jsgf.matchAll(RULE)].map(([, name, body]) => [name ?? '', body ?? '']));
  const start = /public\s+<([^>]+)>/.exec(jsgf)?.[1] ?? '';
  const expand = (name: string, above: readonly string[]): string => {
    const body = rules.get(name);
    if (body === undefined || above.includes(name)) throw new RangeError(`no use for the rule <${name}>`);
    const pieces = body.match(PIECE) ?? [];
    const parts = pieces.map((piece) =>
      piece.startsWith('<') ? expand(piece.slice(1, -1), [...above, name]) : (SIGNS[piece] ?? `${quoted(piece)} `),
    );
    return `(?:${parts.join('')})`;
  };
  const whole = new RegExp(`^${expand(start, [])}$`);
  return (sentence) => whole.test(`${sentence} `);
}

const SAID = /(public\s+<[^>]+>\s*=\s*)([^;]*);/;

/** The grammar once for each choice of its public rule, with only that choice. */
export function choices(jsgf: string): readonly string[] {
  const [whole, head, body] = SAID.exec(jsgf) ?? ['', '', ''];
  return (body ?? '').split(' | ').map((choice) => jsgf.replace(whole, `${head}${choice};`));
}
