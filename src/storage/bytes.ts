/** Bytes as text and back. */
export type Bytes = Uint8Array<ArrayBuffer>;

export function toBase64(bytes: Bytes): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += 8192) binary += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(binary);
}

/** Undefined for what is not base64. */
export function fromBase64(text: string): Bytes | undefined {
  let binary: string;
  try {
    binary = atob(text);
  } catch {
    return undefined;
  }
  // Letter by letter without an iterator: a tenth of the time, and a list of cases under a passphrase is thousands of these.
  const bytes = new Uint8Array(binary.length);
  for (let at = 0; at < bytes.length; at += 1) bytes[at] = binary.charCodeAt(at);
  return bytes;
}
