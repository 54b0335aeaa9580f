/** Every diagram by its file name, made anew from machines and protocols. */
import type { AnyStateMachine } from 'xstate';
import { listeningMachine } from '../../machines/listening.ts';
import { visitMachine } from '../../machines/visit.ts';
import { protocols } from '../../src/domain/protocol/index.ts';
import { machineDiagram } from './machine.ts';
import { protocolDiagram } from './protocol.ts';

// The statechart types differ by what they emit; the drawing needs none of that.
const plain = (machine: unknown) => machine as AnyStateMachine;

export function diagrams(): ReadonlyMap<string, string> {
  return new Map([
    ['machine-visit.md', machineDiagram('The visit', plain(visitMachine))],
    ['machine-listening.md', machineDiagram('The ear', plain(listeningMachine))],
    ...protocols.map((protocol) => [`${protocol.id}.md`, protocolDiagram(protocol)] as const),
  ]);
}
