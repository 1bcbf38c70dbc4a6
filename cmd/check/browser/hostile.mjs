// Presses what somebody wrote to have a reader's browser run it, and opens what the press lets through: each page, and
// each published file alone, as a server tells its kind and as one does that tells nothing.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { mkdtemp, mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { after, test } from 'node:test';
import { promisify } from 'node:util';
import { control, files, published } from './hostile-files.mjs';
import { site, sources, vectors } from './hostile-text.mjs';
import { settings } from './settings.mjs';
import { launch } from './visit.mjs';

const folder = await mkdtemp(join(tmpdir(), 'acreleaf-hostile-'));
after(() => rm(folder, { recursive: true }));
const content = join(folder, 'content');
const pageOf = (i) => `guides/v${i}.md`;
const withFile = (name) => `---\ntitle: A file\nsummary: One.\nreviewed: 2026-09-14\n---\n\nRead [it](../${name}).\n`;

// refused presses pages and gives which of them have a fault.
async function refused(pages) {
  await Promise.all(pages.map(([name, text]) => writeFile(join(content, name), text)));
  const proof = await promisify(execFile)(settings.acreleaf, ['proof', '--json', '--from', content],
    { maxBuffer: 1 << 28, cwd: folder }).catch((error) => error);
  const said = JSON.parse(proof.stdout).messages.filter(({ level }) => level === 'error');
  const nowhere = said.filter(({ file }) => !file);
  assert.deepEqual(nowhere, []);
  return new Set(said.map(({ file }) => file.replace(/^.*?content\//, '')));
}

await mkdir(join(content, 'guides'), { recursive: true });
await writeFile(join(content, 'site.yaml'), site);
await writeFile(join(content, 'sources.yaml'), sources);
await writeFile(join(content, 'home.md'), '---\ntitle: Home\nsummary: Guides.\n---\n');
await writeFile(join(content, 'row.png'), files['both.png']);
await Promise.all(Object.entries(files).map(([name, bytes]) => writeFile(join(content, name), bytes)));

const pages = vectors.map((text, i) => [pageOf(i), text]);
const links = Object.keys(files).map((name, i) => [`guides/f${i}.md`, withFile(name), name]);
const bad = await refused([...pages, ...links]);
const kept = [...pages, ...links].filter(([name]) => !bad.has(name));
const through = links.filter(([name, , file]) => !bad.has(name) && !bad.has(file)).map(([, , file]) => file);
const gone = [...pages, ...links].filter(([name, , file]) => bad.has(name) || file && bad.has(file));
await Promise.all(gone.map(([name]) => rm(join(content, name))));
await promisify(execFile)(settings.acreleaf, ['press', '--from', content, '--to', join(folder, 'site')],
  { maxBuffer: 1 << 28 });

const types = { '.html': 'text/html; charset=utf-8', '.css': 'text/css; charset=utf-8', '.js': 'text/javascript; charset=utf-8',
  '.svg': 'image/svg+xml', '.png': 'image/png', '.gif': 'image/gif', '.jpg': 'image/jpeg', '.webp': 'image/webp',
  '.pdf': 'application/pdf', '.txt': 'text/plain; charset=utf-8', '.csv': 'text/csv; charset=utf-8', '.json': 'application/json',
  '.zip': 'application/zip', '.wasm': 'application/wasm' };

// The server: /bare/ says of no file what it is, /control.svg is no part of the site.
const server = createServer(async (request, response) => {
  const way = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
  const bare = way.startsWith('/bare/');
  const name = (bare ? way.slice('/bare'.length) : way).replace(/\/$/, '/index.html');
  const bytes = name === '/control.svg' ? Buffer.from(control) : await readFile(join(folder, 'site', name)).catch(() => null);
  const told = bare ? {} : { 'content-type': types[extname(name)] ?? 'application/octet-stream' };
  response.writeHead(bytes ? 200 : 404, name === '/frames' ? { 'content-type': types['.html'] } : told);
  response.end(bytes ?? '');
});
await new Promise((resolve) => { server.listen(0, '127.0.0.1', resolve); });
after(() => { server.close(); server.closeAllConnections(); });
const origin = `http://127.0.0.1:${server.address().port}`;

const browser = await launch();
const context = await browser.newContext({ acceptDownloads: false });
let seen = { scripts: [], violations: [], outside: [] };
await context.exposeBinding('tell', (_, kind, what) => { seen[kind].push(what); });
await context.addInitScript(() => {
  globalThis.ran = () => globalThis.tell('scripts', document.URL);
  for (const name of ['alert', 'confirm', 'prompt']) {
    globalThis[name] = globalThis.ran;
  }
  document.addEventListener('securitypolicyviolation', (event) => {
    globalThis.tell('violations', `${document.URL} ${event.violatedDirective} ${event.blockedURI}`);
  });
});
await context.route((url) => url.origin !== origin && url.protocol !== 'data:', (route) => {
  seen.outside.push(route.request().url());
  return route.abort();
});
const page = await context.newPage();

const ways = kept.map(([name]) => name.replace(/\.md$/, '/'));
const together = 50;

// alone opens a file alone; one that the browser would save is not opened.
async function alone(way) {
  await page.goto(`${origin}/${way}`, { waitUntil: 'load' }).catch((error) => {
    assert.match(error.message, /Download is starting|ERR_ABORTED/);
  });
  await page.waitForTimeout(20); // for what begins after it is loaded
}

// odd lists what no page has: a script of its own text, a handler, a style of one element, an address that runs.
function odd() {
  const runs = /^[\x00-\x20]*(javascript|vbscript|livescript|data|blob|file|view-source|feed|jar)\s*:/i;
  const leads = new Set(['href', 'src', 'action', 'formaction', 'data', 'xlink:href']);
  return [...document.querySelectorAll('*')].flatMap((element) => [
    ...[...element.attributes].filter(({ name, value }) => (
      name.startsWith('on') || name === 'style' || name === 'srcdoc' || leads.has(name) && runs.test(value)))
      .map(({ name, value }) => `<${element.localName} ${name}="${value}">`),
    ...element.localName === 'script' && !element.src && element.type !== 'application/ld+json' ? ['<script>'] : [],
    ...['iframe', 'object', 'embed', 'base', 'style'].includes(element.localName) ? [`<${element.localName}>`] : [],
  ]);
}

test('the browser shows what a file does', async () => {
  await alone('control.svg');
  assert.ok(seen.scripts.length > 0, 'no script was seen');
  assert.ok(seen.outside.length > 0, 'no request was seen');
  seen = { scripts: [], violations: [], outside: [] };
});

test('just the harmless files are published', () => {
  assert.deepEqual(through.toSorted(), published.toSorted());
});

// Many pages at once, each in a frame of its own with its own policy: it takes far less than one after another.
test('the pages do nothing', async () => {
  const faults = [];
  for (let at = 0; at < ways.length; at += together) {
    await page.goto(`${origin}/bare/frames`);
    await page.setContent(ways.slice(at, at + together).map((way) => `<iframe src="/${way}"></iframe>`).join(''));
    const frames = page.frames().slice(1);
    assert.equal(frames.length, Math.min(together, ways.length - at));
    for (const found of await Promise.all(frames.map((frame) => frame.evaluate(odd)))) {
      faults.push(...found);
    }
  }
  assert.deepEqual({ faults, ...seen }, { faults: [], scripts: [], violations: [], outside: [] });
});

test('the published files do nothing when they are opened alone', async () => {
  for (const name of through) {
    await alone(name);
    await alone(`bare/${name}`);
  }
  assert.deepEqual(seen, { scripts: [], violations: [], outside: [] });
});

test('there are enough of them', (t) => {
  const texts = pages.filter(([name]) => bad.has(name)).length;
  t.diagnostic(`vectors: ${pages.length}, of these refused: ${texts}, opened: ${pages.length - texts}`);
  t.diagnostic(`files: ${links.length}, of these refused: ${links.length - through.length}, opened alone twice: `
    + `${through.length}`);
  t.diagnostic(`seen: ${seen.scripts.length} scripts, ${seen.violations.length} violations, ${seen.outside.length} requests`);
  assert.ok(pages.length >= 900 && pages.length - texts >= 300, 'too few pages');
  assert.ok(links.length - through.length >= 40, 'too few files');
});
