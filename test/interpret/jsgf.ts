/** Reads the part of the JSpeech Grammar Format our grammars use, and makes sentences from it. */
export type Node =
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'rule'; readonly name: string }
  | { readonly kind: 'list'; readonly items: readonly Node[] }
  | { readonly kind: 'choice'; readonly items: readonly Node[] }
  | { readonly kind: 'maybe'; readonly item: Node };

export interface Grammar {
  readonly header: string;
  readonly start: string;
  readonly rules: ReadonlyMap<string, Node>;
}

class Reader {
  private at = 0;
  private readonly tokens: readonly string[];

  constructor(text: string) {
    this.tokens = text.match(/<[^<>]+>|[[\]()|]|[^\s[\]()|<>]+/g) ?? [];
  }

  choice(): Node {
    const items = [this.list()];
    while (this.tokens[this.at] === '|') {
      this.at++;
      items.push(this.list());
    }
    return items.length === 1 ? (items[0] as Node) : { kind: 'choice', items };
  }

  private list(): Node {
    const items: Node[] = [];
    for (;;) {
      const token = this.tokens[this.at];
      if (token === undefined || token === '|' || token === ']') break;
      this.at++;
      if (token === '[') {
        items.push({ kind: 'maybe', item: this.choice() });
        if (this.tokens[this.at++] !== ']') throw new Error('unclosed bracket');
      } else
        items.push(token.startsWith('<') ? { kind: 'rule', name: token.slice(1, -1) } : { kind: 'word', word: token });
    }
    if (items.length === 0) throw new Error('empty choice');
    return { kind: 'list', items };
  }
}

export function parseJsgf(text: string): Grammar {
  const [header = '', name = '', ...lines] = text.trimEnd().split('\n');
  if (!/^grammar [\w.]+;$/.test(name)) throw new Error(`no grammar name: ${name}`);
  let start = '';
  const rules = new Map<string, Node>();
  for (const line of lines) {
    const match = /^(public )?<(\w+)> = (.+);$/.exec(line);
    if (!match) throw new Error(`no rule: ${line}`);
    const [, isPublic, rule = '', body = ''] = match;
    if (isPublic) start = rule;
    rules.set(rule, new Reader(body).choice());
  }
  return { header, start, rules };
}

/** A sentence, and the rules that were used in it with the words each gave. */
export interface Sentence {
  readonly words: readonly string[];
  readonly parts: readonly { readonly rule: string; readonly text: string }[];
}

const EMPTY: Sentence = { words: [], parts: [] };
const joined = (a: Sentence, b: Sentence): Sentence => ({
  words: [...a.words, ...b.words],
  parts: [...a.parts, ...b.parts],
});

/** `pick(n)` gives a number below n. */
export function sentenceFrom(grammar: Grammar, pick: (n: number) => number): Sentence {
  const expand = (node: Node): Sentence => {
    switch (node.kind) {
      case 'word':
        return { words: [node.word], parts: [] };
      case 'list':
        return node.items.map(expand).reduce(joined, EMPTY);
      case 'choice':
        return expand(node.items[pick(node.items.length)] as Node);
      case 'maybe':
        return pick(2) === 0 ? EMPTY : expand(node.item);
      case 'rule': {
        const rule = grammar.rules.get(node.name);
        if (!rule) throw new Error(`no rule <${node.name}>`);
        const inner = expand(rule);
        return { words: inner.words, parts: [...inner.parts, { rule: node.name, text: inner.words.join(' ') }] };
      }
    }
  };
  return expand({ kind: 'rule', name: grammar.start });
}
