/**
 * Where a stored fact came from. A fact written on this machine carries the plain version of the app; one that arrived in
 * a case file carries its writer and number behind it: "0.1.0 (lab-2 #14)". So the record itself, without a second list
 * beside it, can give every entry back to its chain, unchanged.
 */
import type { Ref } from './case-file.types.ts';

export const WRITER = /^[a-z0-9][a-z0-9-]{0,39}$/;
const ORIGIN = /^(.*) \(([a-z0-9][a-z0-9-]{0,39}) #([1-9]\d{0,15})\)$/s;

/** The app's version, and the entry a fact arrived as; no entry when it was written here. */
export function originOf(app: string): { readonly app: string; readonly from?: Ref } {
  const found = ORIGIN.exec(app);
  if (found === null) return { app };
  return { app: found[1] ?? '', from: { writer: found[2] ?? '', n: Number(found[3]) } };
}

/** The version with its origin behind it. */
export const withOrigin = (app: string, { writer, n }: Ref): string => `${app} (${writer} #${n})`;
