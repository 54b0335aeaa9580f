/** A statechart as mermaid text, read from the machine itself. */
import type { AnyStateMachine, AnyStateNode } from 'xstate';

const idOf = (node: AnyStateNode): string => node.path.join('_') || 'top';

function guardName(guard: unknown): string {
  if (guard === undefined) return '';
  if (typeof guard === 'string') return guard;
  if (typeof guard === 'function') {
    const made = guard as { check?: { name: string }; guards?: readonly unknown[]; name: string };
    const parts = (made.guards ?? []).map(guardName);
    if (parts.length === 0) return made.name;
    return made.check?.name === 'checkNot'
      ? `not ${parts.join(' ')}`
      : parts.join(made.check?.name === 'checkOr' ? ' or ' : ' and ');
  }
  const { type, params } = guard as { type: string; params?: object };
  const given = params === undefined ? '' : ` ${Object.values(params).join(' ')}`;
  return `${type}${given}`;
}

/** "NEXT [mayPass]"; a transition that is always tried has no event. */
function label(event: string, guard: unknown): string {
  const when = guardName(guard);
  const name = event === '' ? 'at once' : event;
  return when === '' ? name : `${name} [${when}]`;
}

function edges(node: AnyStateNode): readonly string[] {
  const own = [...node.transitions.values(), ...(node.always === undefined ? [] : [node.always])].flat();
  const lines = own.flatMap(({ target, eventType, guard }) =>
    (target ?? []).map((to) => `  ${idOf(node)} --> ${idOf(to)}: ${label(eventType, guard)}`),
  );
  const staying = own
    .filter(({ target }) => target === undefined)
    .map(({ eventType, guard }) => `  ${idOf(node)} --> ${idOf(node)}: ${label(eventType, guard)}`);
  const all = node.path.length === 0 ? [] : [...lines, ...staying];
  return [...new Set(all), ...Object.values(node.states).flatMap((child) => edges(child as AnyStateNode))];
}

function nested(node: AnyStateNode, indent: string): readonly string[] {
  const children = Object.values(node.states) as AnyStateNode[];
  const inner = children.flatMap((child) => nested(child, node.path.length === 0 ? indent : `${indent}  `));
  const first = children.find((child) => node.initial?.target.includes(child));
  const start = first === undefined ? [] : [`${indent}${node.path.length === 0 ? '' : '  '}[*] --> ${idOf(first)}`];
  if (node.path.length === 0) return [...start, ...inner];
  const name = `${indent}state "${node.key}" as ${idOf(node)}`;
  if (children.length > 0) return [`${name} {`, ...start, ...inner, `${indent}}`];
  return node.type === 'final' ? [name, `${indent}${idOf(node)} --> [*]`] : [name];
}

/** Events that are taken in every state, as sentences: drawn, they would hide the rest. */
function everywhere(root: AnyStateNode): readonly string[] {
  return [...root.transitions.values()].flat().map(({ eventType, guard, target }) => {
    const to = target?.[0] === undefined ? 'stays' : `goes to ${target[0].key}`;
    return `- ${label(eventType, guard)}: ${to}`;
  });
}

export function machineDiagram(title: string, machine: AnyStateMachine): string {
  const root = machine.root as AnyStateNode;
  return [
    `# ${title}`,
    '',
    'Written by `npm run diagrams` from the machine; not by hand. In brackets: the condition under which an event is taken.',
    '',
    '```mermaid',
    'stateDiagram-v2',
    ...nested(root, '  '),
    ...edges(root),
    '```',
    '',
    'Taken in every state:',
    '',
    ...everywhere(root),
    '',
  ].join('\n');
}
