/** Where the sheet's fonts lie: files of the app's own, fetched only when a PDF is made. */
import type { SheetFonts } from './pdf.ts';

export const fontUrls = {
  regular: new URL('./fonts/sheet-regular.ttf', import.meta.url),
  bold: new URL('./fonts/sheet-bold.ttf', import.meta.url),
} as const;

/** Both fonts by way of `read`: the browser fetches, the command line reads files. Rejects when one cannot be had. */
export async function loadFonts(read: (url: URL) => Promise<Uint8Array>): Promise<SheetFonts> {
  const [regular, bold] = await Promise.all([read(fontUrls.regular), read(fontUrls.bold)]);
  return { regular, bold };
}
