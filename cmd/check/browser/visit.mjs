// Opens pages in Chromium and keeps whatever a page should not do: console messages, errors, policy violations,
// requests that leave the site or fail.
import { after } from 'node:test';
import { chromium } from 'playwright-core';
import { serve } from './server.mjs';
import { settings } from './settings.mjs';

// launch starts Chromium for as long as the tests run. Without it no test can say anything, so a start that fails ends
// the script. Without how.workers no page finds workers of its site, which would answer in the place of the server.
export async function launch(how = {}) {
  const browser = await chromium.launch({
    executablePath: settings.chromium,
    args: [
      '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
      '--disable-component-update', '--disable-sync',
    ],
  });
  after(() => browser.close());
  const begin = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await begin(options);
    if (!how.workers) {
      await context.addInitScript(() => { delete Navigator.prototype.serviceWorker; });
    }
    return context;
  };
  return browser;
}

// start starts Chromium, and a server for folder, for as long as the tests run.
export async function start(folder) {
  const browser = await launch();
  const { origin, close } = await serve(folder);
  after(close);
  return { browser, origin };
}

// visit opens address in a fresh context and waits until the page's script, where it has one, is ready.
//
// how.width and how.scheme choose the screen, how.script = false switches scripts off, how.folded = true leaves closed
// what is folded: all other readers have opened it. The answer has the page, a list of complaints that grows as the page
// lives, and a close.
export async function visit(browser, address, how = {}) {
  const visitor = await newcomer(browser, how.script ?? true, false, how.folded);
  return { ...await visitor.go(address, how), close: () => visitor.page.context().close() };
}

// regulars gives a visit like the one above, with scripts or without, for pages that leave nothing behind in the
// browser. A page that was closed is there for the next address: a browser takes far longer to begin one than to load
// it.
export function regulars(browser, script = true) {
  const free = [];
  return async (address, how) => {
    const visitor = free.pop() ?? await newcomer(browser, script, true);
    return { ...await visitor.go(address, how), close: () => free.push(visitor) };
  };
}

// newcomer is a page of the browser that can go to one address after another; forgetful, it keeps no reader's numbers.
async function newcomer(browser, script, forgetful, folded = false) {
  const context = await browser.newContext({ javaScriptEnabled: script });
  const page = await context.newPage();
  const at = { address: 'about:blank', complaints: [] };
  watch(page, at);
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy violation: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
    });
  });
  if (forgetful) {
    await page.addInitScript(() => sessionStorage.clear());
  }
  if (!folded) {
    await unfold(page);
  }
  const go = async (address, { width = 1280, height = 800, scheme = 'light' } = {}) => {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ media: null, colorScheme: scheme, reducedMotion: 'no-preference' });
    const complaints = [];
    Object.assign(at, { address, complaints });
    await page.goto(address, { waitUntil: 'load' });
    if (script) {
      await ready(page);
    }
    return { page, complaints };
  };
  return { page, go };
}

// unfold has every page that is opened from now on show what is folded in it.
export async function unfold(page) {
  await page.addInitScript(() => {
    document.addEventListener('DOMContentLoaded', () => {
      document.querySelectorAll('details').forEach((fold) => { fold.open = true; });
    });
  });
}

// ready waits until the module of the page, if it carries one, has been started, and until what comes after is there:
// ranges, the work in printed numbers, and what draws pictures.
export async function ready(page) {
  await page.waitForFunction(() => !document.getElementById('module')
    || (document.body.matches('.live.after') && globalThis.findRanges
      && (globalThis.drawPicture || !document.querySelector('.drawing'))));
}

// complete waits until what takes the page along is there too, which adds buttons. A page with no module has none.
export async function complete(page) {
  await page.waitForFunction(() => !document.getElementById('module') || document.body.matches('.paper'));
}

function watch(page, at) {
  const complain = (text) => at.complaints.push(text);
  page.on('console', (message) => complain(`console ${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => complain(`error: ${error.message}`));
  page.on('requestfailed', (request) => {
    const { errorText } = request.failure();
    // A browser drops the icon of a page that is left before it has come, and the script that nobody waits for.
    if (errorText !== 'net::ERR_ABORTED' || !/\/assets\/(icon\.\w+\.svg|paper\.\w+\.\w+\.js)$/.test(request.url())) {
      complain(`request failed: ${request.url()} ${errorText}`);
    }
  });
  page.on('request', (request) => {
    const { origin, protocol } = new URL(at.address);
    const to = new URL(request.url());
    if (to.protocol === 'data:' || (protocol === 'file:' ? to.protocol === protocol : to.origin === origin)) {
      return;
    }
    complain(`a request left the site: ${request.url()}`);
  });
}

// The screens that a page is looked at on.
const screens = [320, 1280].flatMap((width) => ['light', 'dark'].map((scheme) => ({ width, scheme })));

// The narrow ones.
export const narrow = screens.filter(({ width }) => width === 320);

// Two of them that share neither width nor scheme: enough where each width and each scheme has been seen already.
export const opposite = screens.filter(({ width, scheme }) => (width === 320) === (scheme === 'dark'));
