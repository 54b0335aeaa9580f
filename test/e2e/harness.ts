/**
 * The built app in a real browser, as a person meets it. In a spec file:
 *
 *     const chair = inBrowser();
 *     it('…', async () => {
 *       const { page, troubles, axe } = await chair.open({ size: 'narrow' });
 *     });
 *
 * Every `open` is a fresh person: nothing stored, nothing allowed. With a `profile` of `newProfile()` the same person
 * comes back: what was stored in one `open` is there in the next, after the whole browser was closed.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type BrowserContext, type LaunchOptions, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, inject } from 'vitest';

export const sizes = { wide: { width: 1280, height: 800 }, narrow: { width: 820, height: 1180 } } as const;

export interface OpenOptions {
  readonly size?: keyof typeof sizes;
  /** Path and query below the app's address. */
  readonly path?: string;
  /** Runs in the page before any script of the app: a place for fakes of devices. */
  readonly before?: () => void;
  /** The same as text, for something bundled. */
  readonly beforeScript?: string;
  /** A folder from `newProfile()`. */
  readonly profile?: string;
  readonly permissions?: readonly string[];
}

export interface OpenApp {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors on the console, uncaught errors and failed requests, in order. */
  readonly troubles: () => readonly string[];
  readonly requests: () => readonly string[];
  /** Requests to anywhere but the app's own address. */
  readonly foreignRequests: () => readonly string[];
  /** One line for each accessibility rule that the page breaks now. */
  readonly axe: () => Promise<string[]>;
  /** Pictures of the page as it is now, at both sizes, in test/e2e/out. */
  readonly pictures: (name: string) => Promise<string[]>;
  readonly offline: (on: boolean) => Promise<void>;
  readonly close: () => Promise<void>;
}

/** Quiet and boxed in: the browser itself may look nothing up either. */
const flags = [
  '--no-sandbox --disable-gpu --disable-quic --no-first-run',
  '--disable-background-networking --disable-component-update --disable-sync',
].flatMap((line) => line.split(' '));

const launchOptions = (): LaunchOptions => ({
  executablePath: inject('browserPath'),
  headless: true,
  args: [...flags, '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1'],
});

const out = fileURLToPath(new URL('./out/', import.meta.url));
const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeFinding {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly target: readonly unknown[] }[];
}
declare const axe: { run(): Promise<{ violations: AxeFinding[] }> };

async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const findings: AxeFinding[] = await page.evaluate(async () => (await axe.run()).violations);
  return findings.map(
    ({ id, help, nodes }) => `${id}: ${help} (${nodes.map((node) => node.target.join(' ')).join('; ')})`,
  );
}

async function pictures(page: Page, name: string): Promise<string[]> {
  mkdirSync(out, { recursive: true });
  const before = page.viewportSize();
  const paths: string[] = [];
  for (const size of Object.values(sizes)) {
    const path = join(out, `${name}-${size.width}x${size.height}.png`);
    await page.setViewportSize(size);
    await page.screenshot({ path, animations: 'disabled' });
    paths.push(path);
  }
  if (before !== null) await page.setViewportSize(before);
  return paths;
}

function listen(page: Page) {
  const troubles: string[] = [];
  const requests: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') troubles.push(message.text());
  });
  page.on('pageerror', (error) => troubles.push(String(error)));
  page.on('request', (request) => requests.push(request.url()));
  page.on('requestfailed', (request) => troubles.push(`${request.url()}: ${request.failure()?.errorText ?? 'failed'}`));
  return { troubles, requests };
}

async function contextFor(browser: Browser, options: OpenOptions): Promise<BrowserContext> {
  const settings = { viewport: sizes[options.size ?? 'wide'], locale: 'en-GB', timezoneId: 'UTC' };
  const { profile } = options;
  if (profile === undefined) return browser.newContext(settings);
  return chromium.launchPersistentContext(profile, { ...launchOptions(), ...settings });
}

async function openIn(context: BrowserContext, options: OpenOptions): Promise<OpenApp> {
  const address = inject('address');
  if (options.permissions !== undefined) await context.grantPermissions([...options.permissions], { origin: address });
  if (options.before !== undefined) await context.addInitScript(options.before);
  if (options.beforeScript !== undefined) await context.addInitScript({ content: options.beforeScript });
  const page = context.pages()[0] ?? (await context.newPage());
  const { troubles, requests } = listen(page);
  await page.goto(address + (options.path ?? ''));
  return {
    page,
    context,
    troubles: () => troubles,
    requests: () => requests,
    foreignRequests: () => requests.filter((url) => !url.startsWith(address) && !url.startsWith(`blob:${address}`)),
    axe: () => axeFindings(page),
    pictures: (name) => pictures(page, name),
    offline: (on) => context.setOffline(on),
    close: () => context.close(),
  };
}

/** A browser for the tests of one spec file; everything opened in a test is closed after it. */
export function inBrowser() {
  let browser: Browser;
  let opened: OpenApp[] = [];
  const profiles: string[] = [];

  beforeAll(async () => {
    browser = await chromium.launch(launchOptions());
  });
  afterEach(async () => {
    await Promise.all(opened.map((app) => app.close()));
    opened = [];
  });
  afterAll(async () => {
    await browser.close();
    for (const folder of profiles) rmSync(folder, { recursive: true, force: true });
  });

  return {
    async open(options: OpenOptions = {}): Promise<OpenApp> {
      const app = await openIn(await contextFor(browser, options), options);
      opened.push(app);
      return app;
    },
    /** A folder for a person who comes back; removed after the file's tests. */
    newProfile(): string {
      const folder = mkdtempSync(join(tmpdir(), 'rimwise-profile-'));
      profiles.push(folder);
      return folder;
    },
  };
}
