/** Once before all end-to-end tests: a browser, the built app, and a server for it on a free port of this machine. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { findBrowser, thisMachine } from '../../scripts/lib/browser.mjs';
import { dist, ensureBuilt } from '../../scripts/lib/build.mjs';
import { serve } from '../../scripts/lib/serve.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    address: string;
    browserPath: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const browser = findBrowser(thisMachine());
  if (!browser.ok) throw new Error(browser.why);
  const built = await ensureBuilt();
  if (!built.ok) throw new Error(`The app could not be built:\n${built.why}`);
  // A copy, so that a build that runs meanwhile cannot pull the files away.
  const folder = mkdtempSync(join(tmpdir(), 'rimwise-e2e-'));
  cpSync(dist, folder, { recursive: true });
  const served = await serve(folder, 0);
  if (!served.ok) throw new Error(served.why);
  project.provide('address', served.address);
  project.provide('browserPath', browser.path);
  return async () => {
    await served.close();
    rmSync(folder, { recursive: true, force: true });
  };
}
