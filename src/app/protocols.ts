/**
 * Visit 1 is at hand at once; the later visits are fetched when a case needs one of them. The practice's own versions come
 * first; every version ever used is kept, so that a running visit finds the one it was opened under.
 */
import type { VisitProtocol } from '../domain/protocol/types.ts';
import { visit1 } from '../domain/protocol/visit1.ts';

export { visit1 };

type Own = readonly VisitProtocol[];

/** The protocol a visit was opened under; undefined when neither the practice nor this build knows it. */
export async function loadProtocol(id: string, version: number, own: Own = []): Promise<VisitProtocol | undefined> {
  const kept = own.find((protocol) => protocol.id === id && protocol.version === version);
  if (kept !== undefined) return kept;
  if (id === visit1.id && version === visit1.version) return visit1;
  const { protocolFor } = await import('../domain/protocol/index.ts');
  return protocolFor(id, version);
}

/** The newest protocol for a visit: the practice's own, else this build's. */
export async function latestProtocol(visit: number, own: Own = []): Promise<VisitProtocol | undefined> {
  const kept = own.filter((protocol) => protocol.visit === visit).toSorted((a, b) => a.version - b.version);
  const newest = kept.at(-1);
  if (newest !== undefined) return newest;
  if (visit === visit1.visit) return visit1;
  const { protocols } = await import('../domain/protocol/index.ts');
  return protocols.findLast((protocol) => protocol.visit === visit);
}
