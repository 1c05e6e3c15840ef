import { type Browser, type BrowserContext, chromium, type Page } from 'playwright';
import { type PreviewServer, preview } from 'vite';

const ROOT = new URL('../..', import.meta.url).pathname;

const LAUNCH = {
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--enable-unsafe-swiftshader',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-default-apps',
    '--disable-dev-shm-usage',
  ],
};

/** The built page on a server of its own, and a browser to look at it with. */
export interface Visit {
  readonly address: string;
  readonly browser: Browser;
  /** A fresh visitor: empty storage, a page that has not navigated yet, and what went wrong on it. */
  visitor(options?: Parameters<Browser['newContext']>[0]): Promise<Visitor>;
  close(): Promise<void>;
}

export interface Visitor {
  readonly context: BrowserContext;
  readonly page: Page;
  /** errors on the console, uncaught errors, breaches of the content policy, requests that leave the page's origin */
  readonly faults: string[];
}

export async function openVisit(): Promise<Visit> {
  const server: PreviewServer = await preview({
    root: `${ROOT}src/viewer`,
    configFile: `${ROOT}src/viewer/vite.config.ts`,
    preview: { port: 0, strictPort: false, host: '127.0.0.1' },
    logLevel: 'error',
  });
  const bound = server.httpServer.address();
  if (bound === null || typeof bound === 'string') throw new Error('no address');
  const address = `http://127.0.0.1:${bound.port}/`;
  const browser = await chromium.launch(LAUNCH);
  return {
    address,
    browser,
    visitor: async (options = {}) => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
      const page = await context.newPage();
      const faults: string[] = [];
      // A listener from the start, so that no chooser comes up before the browser has been told to hand it over.
      page.on('filechooser', () => {});
      page.on('console', (message) => {
        if (message.type() === 'error') faults.push(`console: ${message.text()}`);
      });
      page.on('pageerror', (error) => faults.push(`uncaught: ${error.message}`));
      page.on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(address) && !url.startsWith('data:') && !url.startsWith('blob:'))
          faults.push(`left: ${url}`);
      });
      await page.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => {
          console.error(`content policy: ${violatedDirective} ${blockedURI}`);
        });
      });
      return { context, page, faults };
    },
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

/** A text as it is read: spaces of all kinds alike. */
export const plain = (text: string | null): string =>
  (text ?? '').replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();

/** The large figures of the answer, Before first. */
export const figures = (page: Page): Promise<string[]> => page.locator('.answer .figure').allTextContents();

/** The answer in words. */
export const answer = async (page: Page): Promise<string> =>
  plain(await page.getByRole('region', { name: 'Answer', exact: true }).innerText());

/** Gives the page's file chooser a scenario, once `open` has asked for it. */
export async function chooseFile(page: Page, name: string, content: unknown, open: () => Promise<void>): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await open();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(content)) });
}

/** Waits until the car in hand is solved and its causes, not those of Before, are worked out. */
export async function solved(page: Page): Promise<void> {
  await page.locator('.causes:not(:has(.late)) ol li').first().waitFor({ state: 'attached' });
  await page.locator('.answer .figure').first().waitFor();
}

/** Clicks a button of this text in the very frame in which it comes: work that is short is over before a click from outside. */
export const clickOnceThere = (page: Page, within: string, text: string): Promise<void> =>
  page.evaluate(
    ([place, wanted]) =>
      new Promise<void>((resolve) => {
        const look = () => {
          const button = [...document.querySelectorAll<HTMLElement>(`${place} button`)].find(
            ({ textContent }) => textContent === wanted,
          );
          if (button === undefined) requestAnimationFrame(look);
          else {
            button.click();
            resolve();
          }
        };
        look();
      }),
    [within, text],
  );
