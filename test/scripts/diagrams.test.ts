/** The diagrams in docs are those of the machines and protocols as they are now, and show all of them. */
import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { diagrams } from '../../scripts/diagrams/all.ts';
import { protocolDiagram } from '../../scripts/diagrams/protocol.ts';
import { protocols } from '../../src/domain/protocol/index.ts';
import { dropStep } from '../../src/domain/protocol/edit.ts';
import { answersOf } from '../../src/domain/protocol/validate.ts';

const folder = new URL('../../docs/diagrams/', import.meta.url);
const made = diagrams();

describe('docs/diagrams', () => {
  it('holds exactly these files', () => {
    expect(readdirSync(folder).toSorted()).toEqual([...made.keys()].toSorted());
  });

  it.each([...made])('%s is up to date (npm run diagrams writes it)', (name, text) => {
    expect(readFileSync(new URL(name, folder), 'utf8')).toBe(text);
  });

  it.each(protocols.map((protocol) => [protocol.id, protocol] as const))(
    '%s has every step and branch',
    (id, protocol) => {
      const text = made.get(`${id}.md`)!;
      for (const step of protocol.steps) expect(text).toContain(step.title);
      const branches = protocol.steps.flatMap(answersOf).filter((answer) => answer.goto !== undefined);
      expect(text.split('\n').filter((line) => / (==>|\.->) s_/.test(line))).toHaveLength(branches.length);
    },
  );

  it('every state of a machine is drawn, and a step that is gone is missed', () => {
    for (const state of ['confirming', 'choosing', 'reasoning', 'held', 'clocking'])
      expect(made.get('machine-visit.md')).toContain(`state "${state}"`);
    for (const state of ['off', 'asking', 'hearing', 'blocked'])
      expect(made.get('machine-listening.md')).toContain(`state "${state}"`);
    expect(made.get('machine-listening.md')).toContain('route --> off: at once [not isWanted]');
    expect(made.get('machine-listening.md')).toContain('[isTrying and mustClose]');
    const [first] = protocols;
    expect(protocolDiagram(dropStep(first!, 'marks'))).not.toBe(made.get(`${first!.id}.md`));
  });
});
