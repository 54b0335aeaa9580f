/** XHTML for people who open the bundle without a program for it. Made by this template only, so that nothing gets through. */
import type { Narrative } from '@medplum/fhirtypes';
import type { Block, Section } from './sheet-model.types.ts';

/** Text that is XML already, made in this file and nowhere else. */
class Markup {
  readonly xml: string;
  constructor(xml: string) {
    this.xml = xml;
  }
}

const ENTITY: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** XML 1.0 allows these and no other code points; others are spelled out. */
function allowed(code: number): boolean {
  if (code === 9 || code === 10 || code === 13) return true;
  return (code >= 0x20 && code <= 0xd7ff) || (code >= 0xe000 && code <= 0xfffd) || code >= 0x10000;
}

/** Text made harmless: no mark-up in it survives as mark-up. */
export function escaped(text: string): string {
  const spell = (letter: string) => {
    const code = letter.codePointAt(0) ?? 0;
    return allowed(code) ? (ENTITY[letter] ?? letter) : `[U+${code.toString(16).toUpperCase().padStart(4, '0')}]`;
  };
  return [...text].map(spell).join('');
}

type Part = string | Markup | readonly Markup[];

function written(part: Part): string {
  if (typeof part === 'string') return escaped(part);
  return part instanceof Markup ? part.xml : part.map((one) => one.xml).join('');
}

function xhtml(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(strings.map((text, i) => text + (i < parts.length ? written(parts[i] ?? '') : '')).join(''));
}

const list = (lines: readonly string[]) => xhtml`<ul>${lines.map((line) => xhtml`<li>${line}</li>`)}</ul>`;

function blockXml(block: Block): Markup {
  if (block.kind === 'lines') return list(block.lines);
  if (block.kind === 'drawings') return list(block.drawings.map(({ alt }) => alt));
  if (block.kind === 'numbered') {
    const items = block.lines.map(({ text, detail }) =>
      detail === undefined ? xhtml`<li>${text}</li>` : xhtml`<li>${text}<br/>${detail}</li>`,
    );
    return xhtml`<ol>${items}</ol>`;
  }
  // Struck rows say so in words: HTML's mark for deleted text is not among what FHIR allows here.
  const row = ({ cells }: (typeof block.rows)[number]) =>
    xhtml`<tr>${cells.map((cell) => xhtml`<td>${cell}</td>`)}</tr>`;
  const heads = block.columns.map((column) => xhtml`<th>${column}</th>`);
  return xhtml`<table><caption>${block.caption}</caption><thead><tr>${heads}</tr></thead><tbody>${block.rows.map(row)}</tbody></table>`;
}

const narrative = (inside: Markup): Narrative => ({
  status: 'generated',
  div: xhtml`<div xmlns="http://www.w3.org/1999/xhtml">${inside}</div>`.xml,
});

/** One section of the sheet as a narrative. */
export const sectionNarrative = ({ blocks }: Section): Narrative =>
  narrative(xhtml`<div>${blocks.map((block) => blockXml(block))}</div>`);

/** Plain lines as a narrative. */
export const linesNarrative = (lines: readonly string[]): Narrative => narrative(list(lines));
