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

/** How long whatever is waited for may take, on a slow machine too [ms]. */
const PATIENCE = 90_000;

/** The built page on a server of its own, and a browser to look at it with. */
export interface Visit {
  /** A fresh visitor: empty storage, a page that has not navigated yet (to `/`), and what went wrong on it. */
  visitor(options?: VisitorOptions): Promise<Visitor>;
  close(): Promise<void>;
}

export type VisitorOptions = Parameters<Browser['newContext']>[0];

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
    visitor: async (options = {}) => {
      const context = await browser.newContext({
        baseURL: address,
        viewport: { width: 1440, height: 900 },
        ...options,
      });
      context.setDefaultTimeout(PATIENCE);
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
