/** What the page holds at a moment, as the browser counts it, and what the record says of its alarms. */
import { setTimeout as wait } from 'node:timers/promises';
import type { CDPSession, Page } from 'playwright-core';
import { readStored } from '../crash/check.ts';
import { realAt, simulated, type TimePlan } from './fast-time.ts';
import type { Look, Rung } from './judge.ts';

interface Counted {
  readonly rimwiseEars: number;
}

/** Made-up speech that ends its sessions by itself, as browsers do about every minute, and counts how often it was begun. */
export const RESTLESS_EAR = `
  window.rimwiseEars = 0;
  const ear = window.rimwiseFakeSpeech;
  // What it remembers for tests would be the app's leak here.
  window.rimwiseForget = () => {
    window.rimwiseEars += ear.sessions.length;
    for (const list of [ear.sessions, ear.spoken, ear.log]) list.length = 0;
  };
  let turn = 0;
  const end = () => {
    ear.finish();
    turn += 1;
    setTimeout(end, 45_000 + ((turn * 7919) % 30) * 1000);
  };
  setTimeout(end, 60_000);
`;

/** Requests to the disk and tones on their way to their end are let go of a moment later: the least of so many looks. */
const LOOKS = 5;
const BETWEEN_MS = 100;

type Counts = Pick<Look, 'heapBytes' | 'nodes' | 'listeners' | 'documents'>;

async function counts(session: CDPSession): Promise<Counts> {
  // Twice: what the first round lets go of may have held something.
  await session.send('HeapProfiler.collectGarbage');
  await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const of = (name: string): number => metrics.find((one) => one.name === name)?.value ?? Number.NaN;
  return {
    heapBytes: of('JSHeapUsedSize'),
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
    documents: of('Documents'),
  };
}

async function least(session: CDPSession): Promise<Counts> {
  const all: Counts[] = [];
  for (let turn = 0; turn < LOOKS; turn += 1) {
    all.push(await counts(session));
    await wait(BETWEEN_MS);
  }
  const of = (name: keyof Counts): number => Math.min(...all.map((one) => one[name]));
  return { heapBytes: of('heapBytes'), nodes: of('nodes'), listeners: of('listeners'), documents: of('documents') };
}

interface Snapshot {
  readonly snapshot: { readonly meta: { readonly node_fields: readonly string[]; readonly node_types: [string[]] } };
  readonly nodes: readonly number[];
}

/** Bytes of everything but the code the browser has compiled and what it has learnt about the shapes of objects. */
export function heldIn({ snapshot: { meta }, nodes }: Snapshot): number {
  const size = meta.node_fields.indexOf('self_size');
  const compiled = ['code', 'object shape'].map((name) => meta.node_types[0].indexOf(name));
  let held = 0;
  for (let at = 0; at < nodes.length; at += meta.node_fields.length)
    if (!compiled.includes(nodes[at] ?? -1)) held += nodes[at + size] ?? Number.NaN;
  return held;
}

async function heldBytes(session: CDPSession): Promise<number> {
  const pieces: string[] = [];
  const take = ({ chunk }: { chunk: string }): void => void pieces.push(chunk);
  session.on('HeapProfiler.addHeapSnapshotChunk', take);
  await session.send('HeapProfiler.takeHeapSnapshot', { reportProgress: false });
  session.off('HeapProfiler.addHeapSnapshotChunk', take);
  return heldIn(JSON.parse(pieces.join('')) as Snapshot);
}

export interface Watch {
  /** `closely`: also tells apart what the browser has compiled; takes a second or two. */
  look(since: Pick<Look, 'at' | 'visits'>, closely: boolean): Promise<Look>;
}

export async function watch(page: Page): Promise<Watch> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  return {
    look: async (since, closely) => {
      const seen = await page.evaluate(() => {
        (window as unknown as { rimwiseForget(): void }).rimwiseForget();
        return {
          ears: (window as unknown as Counted).rimwiseEars,
          targets: document.querySelectorAll('button').length,
        };
      });
      const all = { ...since, ...seen, ...(await least(session)) };
      return closely ? { ...all, heldBytes: await heldBytes(session) } : all;
    },
  };
}

interface Entry {
  readonly at: number;
  readonly body: { readonly kind: string; readonly dueAt: number };
}

const stored = async (page: Page): Promise<Entry[]> => Object.values(await readStored(page)).flat() as Entry[];

/** The last alarm is seen; answers by how much the app's clock is off from the time that was made for it. */
export async function clockOff(page: Page): Promise<number> {
  const at = await page.evaluate(() => {
    document.querySelector<HTMLButtonElement>('.ringing button')?.click();
    return Date.now();
  });
  await page.locator('.ringing').waitFor({ state: 'detached' });
  await page.locator('.save-kept').waitFor();
  const seen = (await stored(page)).filter(({ body }) => body.kind === 'alarmSeen').map((entry) => entry.at);
  return Math.max(...seen) - at;
}

/** Every alarm on the record of every case, by when it was due. */
export async function rungs(page: Page, plan: TimePlan): Promise<Rung[]> {
  const trueFrom = simulated(plan, plan.until);
  return (await stored(page))
    .filter(({ body }) => body.kind === 'rang')
    .map(({ at, body: { dueAt } }) => ({
      due: dueAt - plan.from,
      lateSimulatedMs: at - dueAt,
      lateRealMs: realAt(plan, at) - realAt(plan, dueAt),
      trueSpeed: dueAt >= trueFrom,
    }))
    .toSorted((a, b) => a.due - b.due);
}
