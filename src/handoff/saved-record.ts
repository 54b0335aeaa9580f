/** A record saved in need, when the disk took nothing more, read as the case file that its device would have made. */
import { MOST_FILE_BYTES } from '../domain/case/fileSize.ts';
import { parseFacts } from '../domain/case/parse.ts';
import { readJson } from '../domain/case/plainJson.ts';
import { refuse, toCaseFile } from './case-file.ts';
import type { CaseFile, Outcome } from './case-file.types.ts';

/** True for text that begins as such a record does; what is in it is looked at by `readSavedRecord`. */
export const isSavedRecord = (text: string): boolean => text.slice(0, 100).includes('"rimwise-facts"');

/**
 * The whole case of a saved record. It has no chain of its own, so damage that leaves every entry readable is not noticed.
 * Refuses what is not plain JSON, a case of which a part is missing or stands apart, and a record that does not name the
 * device it is from: its entries would come twice once that device hands its own file over.
 */
export async function readSavedRecord(text: string): Promise<Outcome<CaseFile>> {
  const json = readJson(text, MOST_FILE_BYTES);
  if (!json.ok) return refuse(json.reason === 'notJson' ? 'notJson' : 'malformed', json.path, json.text);
  const { v, caseId, complete, facts, apart, writer } = (json.value ?? {}) as Readonly<Record<string, unknown>>;
  if (v !== 1) return refuse('newerFormat', 'v', 'This saved record is from a newer version of the app.');
  const parsed = parseFacts(Array.isArray(facts) ? facts : []);
  if (!parsed.ok) return refuse('malformed', `facts.${parsed.at - 1}`, parsed.text);
  const foreign = parsed.facts.some((fact) => fact.caseId !== caseId);
  if (foreign) return refuse('foreign', 'facts', 'This saved record holds entries of different cases.');
  if (complete !== true || !Array.isArray(apart) || apart.length > 0)
    return refuse('cut', '', 'This saved record is not the whole case: it cannot be taken in. Keep the file.');
  if (typeof writer !== 'string')
    return refuse('malformed', 'writer', 'This saved record does not name the device it is from. Keep the file.');
  return toCaseFile(parsed.facts, writer);
}
