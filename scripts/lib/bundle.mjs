/** How much JavaScript the page must load before anything shows, as it travels: compressed. */
import { readFileSync, readdirSync } from 'node:fs';
import { join, posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { parseSync } from 'vite';

/** A cold start on a slow tablet stays under a second up to here. */
export const budgetBytes = 150_000;

/**
 * The scripts that index.html asks for at once: its own and those it announces as needed by them.
 * @param {string} html
 * @returns {string[]} paths below the built folder
 */
export function initialScripts(html) {
  const tags = html.match(/<(script|link)\b[^>]*>/g) ?? [];
  const wanted = tags.filter((tag) => tag.startsWith('<script') || /rel="modulepreload"/.test(tag));
  const paths = wanted.flatMap((tag) => /(?:src|href)="([^"]+)"/.exec(tag)?.[1] ?? []);
  return paths.map((path) => path.replace(/^(\.?\/)/, ''));
}

/**
 * @param {string} code a built script
 * @returns {string[]} what it imports without waiting to be asked, as written
 */
export function staticImports(code) {
  const { staticImports: imports, staticExports } = parseSync('built.js', code).module;
  const exported = staticExports.flatMap((one) => one.entries.flatMap((entry) => entry.moduleRequest?.value ?? []));
  return [...imports.map((one) => one.moduleRequest.value), ...exported];
}

/**
 * @param {string} folder the built app
 * @returns {{ initial: string[], later: string[], initialBytes: number, laterBytes: number }} gzip bytes
 */
export function measureBundle(folder) {
  const gz = (/** @type {string} */ path) => gzipSync(readFileSync(join(folder, path)), { level: 9 }).length;
  const initial = new Set(initialScripts(readFileSync(join(folder, 'index.html'), 'utf8')));
  for (const path of initial) {
    for (const name of staticImports(readFileSync(join(folder, path), 'utf8')))
      initial.add(posix.join(posix.dirname(path), name));
  }
  const every = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => name.replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.js'));
  const later = every.filter((name) => !initial.has(name));
  /** @param {Iterable<string>} paths */
  const sum = (paths) => [...paths].reduce((total, path) => total + gz(path), 0);
  return { initial: [...initial], later, initialBytes: sum(initial), laterBytes: sum(later) };
}
