/** Bytes as text and back. */
export type Bytes = Uint8Array<ArrayBuffer>;

export function toBase64(bytes: Bytes): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += 8192) binary += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(binary);
}

/** Undefined for what is not base64. */
export function fromBase64(text: string): Bytes | undefined {
  try {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  } catch {
    return undefined;
  }
}
