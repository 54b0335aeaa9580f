/**
 * A case file under a passphrase: argon2id makes the key (RFC 9106), AES-256-GCM seals the text (NIST SP 800-38D). The
 * head is sealed with it, so that no part of the file can be changed unseen. Loaded only when a passphrase is in play.
 */
import { argon2id } from 'hash-wasm';
import * as v from 'valibot';
import { refuse } from './case-file.ts';
import type { Outcome } from './case-file.types.ts';
import { canonical } from './chain.ts';

/** OWASP's first recommendation for argon2id: 19 MiB, two passes, one lane (from its cheat sheet, as of 2024). */
const COST = { memoryKiB: 19_456, passes: 2, lanes: 1 } as const;

const base64 = v.pipe(v.string(), v.maxLength(200), v.base64());
/** Looked at letter by letter: an expression that repeats groups runs out of stack on a long text. */
const longBase64 = v.pipe(
  v.string(),
  v.check((text) => text.length % 4 === 0 && !/[^A-Za-z0-9+/=]/.test(text), 'This is not base64.'),
);
const sealedSchema = v.strictObject({
  format: v.literal('rimwise-case-sealed'),
  v: v.literal(1),
  kdf: v.strictObject({
    name: v.literal('argon2id'),
    // Bounds: a file must not be able to make the reader work without end.
    memoryKiB: v.pipe(v.number(), v.integer(), v.minValue(8192), v.maxValue(262_144)),
    passes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(10)),
    lanes: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(4)),
    // Argon2 asks for eight bytes at least.
    salt: v.pipe(base64, v.minLength(12)),
  }),
  cipher: v.strictObject({ name: v.literal('AES-256-GCM'), iv: base64 }),
  data: longBase64,
});
type Sealed = v.InferOutput<typeof sealedSchema>;

function toBase64(bytes: Uint8Array): string {
  let binary = '';
  for (let i = 0; i < bytes.length; i += 8192) binary += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(binary);
}

function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  const letters = atob(text);
  const bytes = new Uint8Array(letters.length);
  for (let at = 0; at < letters.length; at += 1) bytes[at] = letters.charCodeAt(at);
  return bytes;
}

/** Passphrases are compared as people type them: composed letters, no blanks at the ends. */
const typed = (passphrase: string) => passphrase.normalize('NFC').trim();

/** Undefined where WebAssembly or WebCrypto is not to be had. */
async function keyOf(passphrase: string, kdf: Sealed['kdf']): Promise<CryptoKey | undefined> {
  try {
    return await derived(passphrase, kdf);
  } catch {
    return undefined;
  }
}

const unsupported = () =>
  refuse(
    'unsupported',
    '',
    'This browser does not allow a key to be made from a passphrase. Use the file without one, or another browser.',
  );

async function derived(passphrase: string, { memoryKiB, passes, lanes, salt }: Sealed['kdf']): Promise<CryptoKey> {
  const raw = await argon2id({
    password: typed(passphrase),
    salt: fromBase64(salt),
    memorySize: memoryKiB,
    iterations: passes,
    parallelism: lanes,
    hashLength: 32,
    outputType: 'binary',
  });
  return crypto.subtle.importKey('raw', raw as Uint8Array<ArrayBuffer>, 'AES-GCM', false, ['encrypt', 'decrypt']);
}

const headOf = ({ data: _data, ...head }: Sealed) => new TextEncoder().encode(canonical(head));

/** The text under a passphrase; refuses one of fewer than eight letters. */
export async function seal(text: string, passphrase: string): Promise<Outcome<string>> {
  if (typed(passphrase).length < 8) return refuse('locked', '', 'A passphrase has at least eight letters.');
  const salt = toBase64(crypto.getRandomValues(new Uint8Array(16)));
  const iv = crypto.getRandomValues(new Uint8Array(12));
  const head: Sealed = {
    format: 'rimwise-case-sealed',
    v: 1,
    kdf: { name: 'argon2id', ...COST, salt },
    cipher: { name: 'AES-256-GCM', iv: toBase64(iv) },
    data: '',
  };
  const key = await keyOf(passphrase, head.kdf);
  if (key === undefined) return unsupported();
  const cipher = { name: 'AES-GCM', iv, additionalData: headOf(head) };
  const data = await crypto.subtle.encrypt(cipher, key, new TextEncoder().encode(text));
  return { ok: true, value: `${canonical({ ...head, data: toBase64(new Uint8Array(data)) })}\n` };
}

/** True for JSON that says it is sealed, whether or not it can be opened. */
export function isSealed(json: unknown): boolean {
  return typeof json === 'object' && json !== null && (json as { format?: unknown }).format === 'rimwise-case-sealed';
}

/** The text that was sealed. A wrong passphrase and a changed file cannot be told apart. */
export async function unseal(json: unknown, passphrase: string): Promise<Outcome<string>> {
  const parsed = v.safeParse(sealedSchema, json, { abortEarly: true });
  if (!parsed.success) {
    const where = v.getDotPath(parsed.issues[0]) ?? '';
    return refuse('malformed', where, `The sealed file is damaged at ${where === '' ? 'its top' : where}.`);
  }
  const sealed = parsed.output;
  const wrong = refuse('wrongPassphrase', '', 'The passphrase does not open this file, or the file was changed.');
  const key = await keyOf(passphrase, sealed.kdf);
  if (key === undefined) return unsupported();
  try {
    const cipher = { name: 'AES-GCM', iv: fromBase64(sealed.cipher.iv), additionalData: headOf(sealed) };
    const plain = await crypto.subtle.decrypt(cipher, key, fromBase64(sealed.data));
    return { ok: true, value: new TextDecoder('utf-8', { fatal: true }).decode(plain) };
  } catch {
    return wrong;
  }
}
