/** A second window of the same browser, for specs that need two. */
import type { BrowserContext, Page } from 'playwright-core';
import { inject } from 'vitest';

export async function secondWindow(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await page.goto(inject('address'));
  return page;
}

/** The process of this page's window ends, as when the system kills it. */
export async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  // The window that is asked is gone before it can answer.
  void session.send('Page.crash').catch(() => undefined);
  await page.waitForEvent('crash');
}
