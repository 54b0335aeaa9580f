/** Visit 1 is at hand at once; the later visits are fetched when a case needs one of them. */
import type { VisitProtocol } from '../domain/protocol/types.ts';
import { visit1 } from '../domain/protocol/visit1.ts';

export { visit1 };

/** The protocol a visit was opened under; undefined when this build does not know it. */
export async function loadProtocol(id: string, version: number): Promise<VisitProtocol | undefined> {
  if (id === visit1.id && version === visit1.version) return visit1;
  const { protocolFor } = await import('../domain/protocol/index.ts');
  return protocolFor(id, version);
}

/** The newest protocol this build has for a visit. */
export async function latestProtocol(visit: number): Promise<VisitProtocol | undefined> {
  if (visit === visit1.visit) return visit1;
  const { protocols } = await import('../domain/protocol/index.ts');
  return protocols.findLast((protocol) => protocol.visit === visit);
}
