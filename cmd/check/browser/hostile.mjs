// Presses what somebody wrote to have a reader's browser run it, and opens what the press lets through: each page, and
// each published file alone, as a server tells its kind and as one does that tells nothing.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { mkdtemp, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { after, test } from 'node:test';
import { promisify } from 'node:util';
import { control, files, published } from './hostile-files.mjs';
import { inHead, inText, mark, page as write, site, sources } from './hostile-text.mjs';
import { settings } from './settings.mjs';
import { launch } from './visit.mjs';

const folder = await mkdtemp(join(tmpdir(), 'acreleaf-hostile-'));
after(() => rm(folder, { recursive: true }));
const content = join(folder, 'content');
const together = 100; // vectors in the text of one page

// pagesOf parts vectors and links to files into pages by name.
function pagesOf(vectors, linked) {
  const texts = vectors.filter(({ field }) => !field);
  const heads = [...new Set(vectors.map(({ head }) => head))].filter((head) => head !== undefined);
  return new Map([
    ...Array.from({ length: Math.ceil(texts.length / together) }, (_, i) => (
      [`guides/t${i}.md`, write([], texts.slice(i * together, (i + 1) * together))])),
    ...heads.map((head) => [`guides/h${head}.md`, write(vectors.filter((vector) => vector.head === head), [])]),
    ['guides/files.md', write([], linked)],
  ]);
}

// letThrough takes out what the program finds a fault in, until it finds none, and leaves the pages with the rest.
async function letThrough(vectors, linked) {
  for (;;) {
    await rm(join(content, 'guides'), { recursive: true, force: true });
    await mkdir(join(content, 'guides'));
    const pages = pagesOf(vectors, linked);
    await Promise.all([...pages].map(([name, { text }]) => writeFile(join(content, name), text)));
    const proof = await promisify(execFile)(settings.acreleaf, ['proof', '--json', '--from', content],
      { maxBuffer: 1 << 28, cwd: folder }).catch((error) => error);
    const faults = JSON.parse(proof.stdout).messages.filter(({ level }) => level === 'error');
    if (faults.length === 0) {
      return { vectors, linked, pages };
    }
    const bad = new Set(faults.map((fault) => {
      const name = fault.file?.replace(/^.*?content\//, '');
      const found = pages.get(name)?.of[fault.line - 1] ?? linked.find(({ file }) => file === name);
      assert.ok(found, `a fault of no vector: ${JSON.stringify(fault)}`);
      return found;
    }));
    [vectors, linked] = [vectors, linked].map((all) => all.filter((one) => !bad.has(one)));
  }
}

await mkdir(content, { recursive: true });
await writeFile(join(content, 'site.yaml'), site);
await writeFile(join(content, 'sources.yaml'), sources);
await writeFile(join(content, 'home.md'), '---\ntitle: Home\nsummary: Guides.\n---\n');
await writeFile(join(content, 'row.png'), files['both.png']);
await Promise.all(Object.entries(files).map(([name, bytes]) => writeFile(join(content, name), bytes)));

const all = [...inText, ...inHead];
const links = Object.keys(files).map((file, i) => ({ number: all.length + i, file, text: `Read [it](../${file}).` }));
const kept = await letThrough(all, links);
const through = kept.linked.map(({ file }) => file);
await promisify(execFile)(settings.acreleaf, ['press', '--from', content, '--to', join(folder, 'site')],
  { maxBuffer: 1 << 28 });
const ways = (await readdir(join(folder, 'site'), { recursive: true })).filter((name) => name.endsWith('.html'));

const types = {
  '.html': 'text/html; charset=utf-8', '.css': 'text/css; charset=utf-8', '.js': 'text/javascript; charset=utf-8',
  '.svg': 'image/svg+xml', '.png': 'image/png', '.gif': 'image/gif', '.jpg': 'image/jpeg', '.webp': 'image/webp',
  '.pdf': 'application/pdf', '.txt': 'text/plain; charset=utf-8', '.csv': 'text/csv; charset=utf-8',
  '.json': 'application/json', '.zip': 'application/zip', '.wasm': 'application/wasm',
};

// The server: /bare/ says of no file what it is, /control.svg is no part of the site.
const server = createServer(async (request, response) => {
  const way = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
  const bare = way.startsWith('/bare/');
  const name = (bare ? way.slice('/bare'.length) : way).replace(/\/$/, '/index.html');
  const bytes = name === '/control.svg' ? Buffer.from(control)
    : await readFile(join(folder, 'site', name)).catch(() => null);
  const told = bare ? {} : { 'content-type': types[extname(name)] ?? 'application/octet-stream' };
  response.writeHead(bytes ? 200 : 404, name === '/frames' ? { 'content-type': types['.html'] } : told);
  response.end(bytes ?? '');
});
await new Promise((resolve) => { server.listen(0, '127.0.0.1', resolve); });
after(() => { server.close(); server.closeAllConnections(); });
const origin = `http://127.0.0.1:${server.address().port}`;

const browser = await launch();
const context = await browser.newContext({ acceptDownloads: false });
const nothing = () => ({ scripts: [], violations: [], outside: [] });
let seen = nothing();
await context.exposeBinding('tell', (_, kind, what) => { seen[kind].push(what); });
await context.addInitScript(() => {
  globalThis.ran = (number) => globalThis.tell('scripts', `V${number} ${document.URL}`);
  for (const name of ['alert', 'confirm', 'prompt']) {
    globalThis[name] = globalThis.ran;
  }
  document.addEventListener('securitypolicyviolation', (event) => {
    globalThis.tell('violations', `${document.URL} ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
  });
});
await context.route((url) => url.origin !== origin && url.protocol !== 'data:', (route) => {
  seen.outside.push(route.request().url());
  return route.abort();
});
const page = await context.newPage();

// named adds to what was seen the text of the vector whose number is in it.
function named(what) {
  const number = /\bv(\d+)\b/i.exec(what)?.[1];
  return number ? `${what}: ${[...all, ...links][number].text}` : what;
}

// alone opens a file alone; one that the browser would save is not opened.
async function alone(way) {
  await page.goto(`${origin}/${way}`, { waitUntil: 'load' }).catch((error) => {
    assert.match(error.message, /Download is starting|ERR_ABORTED/);
  });
  await page.waitForTimeout(20); // for what begins after it is loaded
}

// look lists what no page has: a script of its own text, a handler, a style of one element, an address that runs, each
// with the last mark before it. And it lists the marks.
function look() {
  const runs = /^[\x00-\x20]*(javascript|vbscript|livescript|data|blob|file|view-source|feed|jar)\s*:/i;
  const leads = new Set(['href', 'src', 'action', 'formaction', 'data', 'xlink:href']);
  const marks = [];
  const odd = [...document.querySelectorAll('*')].flatMap((element) => {
    if (element.localName === 'p' && /^Here begins V\d+\.$/.test(element.textContent)) {
      marks.push(element.textContent);
    }
    return [
      ...[...element.attributes].filter(({ name, value }) => (
        name.startsWith('on') || name === 'style' || name === 'srcdoc' || leads.has(name) && runs.test(value)))
        .map(({ name, value }) => `<${element.localName} ${name}="${value}">`),
      ...element.localName === 'script' && !element.src && element.type !== 'application/ld+json' ? ['<script>'] : [],
      ...['iframe', 'object', 'embed', 'base', 'style'].includes(element.localName) ? [`<${element.localName}>`] : [],
    ].map((what) => `${document.URL} ${marks.at(-1) ?? ''} ${what}`);
  });
  return { odd, marks };
}

test('the browser shows what a file does', async () => {
  for (const open of [() => alone('control.svg'), () => frames(['control.svg'])]) {
    await open();
    assert.ok(seen.scripts.length > 0, 'no script was seen');
    assert.ok(seen.outside.length > 0, 'no request was seen');
    seen = nothing();
  }
  await page.setContent('<p>Here begins V1.</p><p onclick="ran(1)"><a href="javascript:ran(1)">a</a></p>');
  const { odd, marks } = await page.evaluate(look);
  assert.deepEqual([odd.length, marks], [2, ['Here begins V1.']]);
});

test('just the harmless files are published', () => {
  assert.deepEqual(through.toSorted(), published.toSorted());
});

// frames opens many pages at once, each in a frame of its own with its own policy: it takes far less than one after
// another.
async function frames(addresses) {
  await page.goto(`${origin}/bare/frames`);
  await page.setContent(addresses.map((way) => `<iframe src="/${way}"></iframe>`).join(''));
  const opened = page.frames().slice(1);
  assert.equal(opened.length, addresses.length);
  return Promise.all(opened.map((frame) => frame.evaluate(look)));
}

test('the pages do nothing', async () => {
  const found = [];
  for (let at = 0; at < ways.length; at += 50) {
    found.push(...await frames(ways.slice(at, at + 50)));
  }
  assert.deepEqual([...found.flatMap(({ odd }) => odd), ...Object.values(seen).flat()].map(named), []);
  const inPages = kept.vectors.filter(({ field }) => !field).concat(kept.linked);
  assert.deepEqual(found.flatMap(({ marks }) => marks).toSorted(), inPages.map(mark).toSorted());
});

test('the published files do nothing when they are opened alone', async () => {
  for (const name of through) {
    await alone(name);
    await alone(`bare/${name}`);
  }
  assert.deepEqual(seen, nothing());
});

test('there are enough of them', (t) => {
  const opened = kept.vectors.length;
  t.diagnostic(`vectors: ${all.length}, of these refused: ${all.length - opened}, opened: ${opened} `
    + `on ${ways.length} pages`);
  t.diagnostic(`files: ${links.length}, of these refused: ${links.length - through.length}, opened alone twice: `
    + `${through.length}`);
  t.diagnostic(`seen: ${seen.scripts.length} scripts, ${seen.violations.length} violations, `
    + `${seen.outside.length} outside requests`);
  assert.ok(all.length >= 900 && opened >= 300, 'too few pages');
  assert.ok(links.length - through.length >= 40, 'too few files');
});
