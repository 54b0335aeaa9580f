// @vitest-environment node
/** The library's build for browsers has no fonts of its own: the sheet must do with ours from the first moment. */
import { readFileSync } from 'node:fs';
import { afterAll, expect, it, vi } from 'vitest';
import { sheetPdf } from '../../src/handoff/pdf.ts';
import { sheetModel } from '../../src/handoff/sheet-model.ts';
import { sheetTimes } from '../../src/handoff/sheet-times.ts';
import { DIGEST } from './cases.ts';
import { DAY, oneOfEverything } from './fixture.ts';
import { run, scratch } from './tools.ts';

vi.mock('pdfkit', () => vi.importActual('../../node_modules/pdfkit/js/pdfkit.browser.mjs'));
vi.setConfig({ testTimeout: 30_000 });

const files = scratch();
afterAll(() => files.remove());

it('the browser build makes the same sheet, from plain bytes', async () => {
  const font = (name: string) =>
    new Uint8Array(readFileSync(new URL(`../../src/handoff/fonts/${name}`, import.meta.url)));
  const fonts = { regular: font('sheet-regular.ttf'), bold: font('sheet-bold.ttf') };
  const sheet = sheetModel(oneOfEverything, sheetTimes('UTC'), DIGEST);
  const file = files.put('browser.pdf', await sheetPdf(sheet, { paper: 'A4', fonts, madeAt: DAY }));
  expect(run('qpdf', ['--check', file])).toContain('No syntax or stream encoding errors');
  const words = run('pdftotext', ['-layout', file, '-'])
    .replaceAll(/[ \t]+/g, ' ')
    .replaceAll(/\n\s*\n/g, '\n');
  await expect(words).toMatchFileSnapshot('golden/sheet-A4.txt');
});
