/** The digest of a case as a QR code, for paper and for the screen. */
import { generate } from 'lean-qr';

/** What stands in the code: a name for the content, not an address. */
export const digestCode = (digest: string): string => `urn:sha256:${digest}`;

/** The modules of the code; `true` is dark. */
export function codeModules(digest: string): { readonly size: number; dark(x: number, y: number): boolean } {
  const code = generate(digestCode(digest));
  return { size: code.size, dark: (x, y) => code.get(x, y) };
}

/** The code as an SVG path, one stroke of squares for each run of dark modules; readers want four modules of white around. */
export function codePath(digest: string): { readonly path: string; readonly size: number } {
  const { size, dark } = codeModules(digest);
  const runs: string[] = [];
  for (let y = 0; y < size; y += 1) {
    for (let x = 0; x < size; x += 1) {
      const from = x;
      while (x < size && dark(x, y)) x += 1;
      if (x > from) runs.push(`M${from} ${y}h${x - from}v1h${from - x}z`);
    }
  }
  return { path: runs.join(''), size };
}
