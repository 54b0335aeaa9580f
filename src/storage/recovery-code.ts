/** A code for the drawer: 25 letters and figures that cannot be mistaken for each other, 125 bits of chance. */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const GROUPS = 5;
const GROUP = 5;

/** "7KQ2M-…", five groups of five. */
export function newRecoveryCode(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(GROUPS * GROUP));
  // 256 is a multiple of 32: no letter is likelier than another.
  const letters = Array.from(bytes, (byte) => LETTERS[byte % LETTERS.length] ?? '0');
  return Array.from({ length: GROUPS }, (_, at) => letters.slice(at * GROUP, (at + 1) * GROUP).join('')).join('-');
}

/** As it was printed, from whatever was typed off the sheet: letters that are left out of the code are read as meant. */
export function readRecoveryCode(text: string): string {
  const letters = text
    .toUpperCase()
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1')
    .replace(/[^0-9A-Z]/g, '');
  return Array.from({ length: GROUPS }, (_, at) => letters.slice(at * GROUP, (at + 1) * GROUP)).join('-');
}
