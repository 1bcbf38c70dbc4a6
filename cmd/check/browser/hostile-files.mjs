// Files that would run something when a browser opens them, or takes them for what they are not; and some that look like
// it and are harmless. All of it calls ran(), or fetches something from evil.invalid.
import { crc32 } from 'node:zlib';

const run = 'parent.ran?.(1);self.ran?.(1)';
const svg = (inside, more = '') => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"${more}>${inside}</svg>`;
const html = `<!DOCTYPE html><html><body><script>${run}</script><img src="http://evil.invalid/a.png"></body></html>`;
const png = '\x89PNG\r\n\x1a\n';

// four is a number in four bytes.
const four = (n) => String.fromCharCode(n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255);
const backward = (n) => [...four(n)].reverse().join('');
// A part of a PNG, and a segment of a JPEG, each with a text in it.
const chunk = (name, text) => four(text.length) + name + text + four(crc32(Buffer.from(name + text, 'latin1')));
const segment = (marker, text) => `\xff${marker}${four(text.length + 2).slice(2)}${text}`;

const drawings = {
  script: svg(`<script>${run}</script>`), upper: svg(`<SCRIPT>${run}</SCRIPT>`),
  prefixed: `<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:script>${run}</s:script></s:svg>`,
  fetched: svg('<script href="http://evil.invalid/a.js"/>'),
  html: svg(`<script xmlns="http://www.w3.org/1999/xhtml">${run}</script>`),
  onload: svg('', ` onload="${run}"`), onbegin: svg(`<animate attributeName="x" dur="1s" onbegin="${run}"/>`),
  onerror: svg(`<image href="x" onerror="${run}"/>`),
  set: svg(`<a><set attributeName="href" to="javascript:${run}"/></a>`),
  animate: svg(`<a><animate attributeName="href" values="javascript:${run}"/><text>a</text></a>`),
  link: svg(`<a href="javascript:${run}"><text y="5">a</text></a>`),
  foreign: svg(`<foreignObject><body xmlns="http://www.w3.org/1999/xhtml"><img src="x" onerror="${run}"/></body></foreignObject>`),
  frame: svg(`<foreignObject><iframe xmlns="http://www.w3.org/1999/xhtml" srcdoc="&lt;script>${run}&lt;/script>"/></foreignObject>`),
  use: svg('<use href="http://evil.invalid/a.svg#a"/>'),
  inside: svg('<use href="data:image/svg+xml,&lt;svg id=\'a\'/>#a"/>'),
  image: svg('<image href="http://evil.invalid/a.png"/>'),
  filter: svg('<filter><feImage href="http://evil.invalid/a.png"/></filter>'),
  url: svg('<rect style="fill:url(http://evil.invalid/a.svg#a)"/>'),
  attribute: svg('<rect fill="url(http://evil.invalid/a.svg#a)"/>'),
  imported: svg('<style>@import "http://evil.invalid/a.css";</style>'),
  font: svg('<style>@font-face{font-family:a;src:url(http://evil.invalid/a)}</style><text font-family="a">a</text>'),
  escaped: svg('<style>rect{fill:u\\72l(http://evil.invalid/a)}</style>'),
  cdata: svg('<style><![CDATA[svg{background:url(http://evil.invalid/a)}]]></style>'),
  sheet: `<?xml version="1.0"?><?xml-stylesheet href="http://evil.invalid/a.css"?>${svg('')}`,
  transform: `<?xml-stylesheet type="text/xsl" href="#a"?>${svg('')}`,
  entity: `<!DOCTYPE svg [<!ENTITY a "<script>${run}</script>">]>${svg('&a;')}`,
  external: `<!DOCTYPE svg SYSTEM "http://evil.invalid/a.dtd">${svg('')}`,
  encoded: `<?xml version="1.0" encoding="UTF-7"?>${svg('+ADw-script+AD4-')}`,
  base: svg('<image href="#a"/>', ' xml:base="http://evil.invalid/"'),
  mathml: svg(`<math xmlns="http://www.w3.org/1998/Math/MathML" href="javascript:${run}"/>`),
  handler: svg(`<handler xmlns:ev="http://www.w3.org/2001/xml-events" ev:event="load">${run}</handler>`),
  page: html, xhtml: `<html xmlns="http://www.w3.org/1999/xhtml"><script>${run}</script></html>`,
};

const others = {
  'a.html': html, 'a.htm': html, 'a.xhtml': `<html xmlns="http://www.w3.org/1999/xhtml"><script>${run}</script></html>`,
  'a.xml': `<x:script xmlns:x="http://www.w3.org/1999/xhtml">${run}</x:script>`, 'a.js': run, 'a.mjs': run,
  'a.css': '@import "http://evil.invalid/a"',
  'a.mml': '<math xmlns="http://www.w3.org/1998/Math/MathML"/>', 'a.svgz': svg(''), 'a.shtml': html, 'a': html,
  'html.png': html, 'html.jpg': html, 'html.gif': html, 'html.webp': html, 'html.avif': html, 'html.pdf': html,
  'html.csv': html,
  'html.txt': `  \n${html}`, 'html.json': html, 'html.zip': html, 'html.mp3': html, 'html.mp4': html,
  'html.webm': html, 'html.docx': html,
  'svg.png': svg(`<script>${run}</script>`), 'xml.txt': `<?xml version="1.0"?>${svg(`<script>${run}</script>`)}`,
  'cut.png': '\x89PNG<script>',
  // Those that begin as they should and end as something else.
  'sign.png': png, 'begun.png': png + html, 'begun.gif': `GIF89a/*${html}*/=1;${run}`, 'begun.jpg': `\xff\xd8\xff${html}`,
  'begun.pdf': `%PDF-1.7\n${html}`, 'begun.webp': `RIFF\0\0\0\0WEBP${html}`, 'begun.zip': `PK\x03\x04${html}`,
};

// Those that are published: a browser does not run them, and here it must show that.
const harmless = {
  'both.png': png + chunk('IHDR', '\0\0\0\x01\0\0\0\x01\x08\0\0\0\0') + chunk('tEXt', `a\0${html}`)
    + chunk('IDAT', '\x78\x9c\x63\0\0\0\x02\0\x01') + chunk('IEND', '') + html,
  'both.gif': `GIF89a/*\x01\0\0\0\0,\0\0\0\0\x01\0\x01\0\0\x02\x02D\x01\0;*/=1;${run};/*${html}`,
  'both.jpg': `\xff\xd8${segment('\xfe', html)}${segment('\xc0', '\x08\0\x01\0\x01\0')}${segment('\xda', '\0')}\xff\xd9${html}`,
  'both.pdf': `%PDF-1.7\n${html}%%EOF`,
  'both.webp': `RIFF${backward(html.length + 12 + html.length % 2)}WEBPVP8L${backward(html.length)}${html}\0`,
  'both.zip': `PK\x03\x04${html}PK\x05\x06${'\0'.repeat(18)}`, 'late.txt': `a ${html}`,
  'late.csv': `=cmd|'/c calc'!A1,${html}`,
  'script.txt': run, 'svg.csv': svg(`<script>${run}</script>`), 'late.json': `{"a": "${html.replaceAll('"', '')}"}`,
  'plain.svg': svg('<rect width="9" height="9" fill="url(#a)"/><style>rect{opacity:.5}</style>'),
  'picture.svg': svg('<image width="9" height="9" href="data:image/png;base64,iVBORw0KGgo="/>'),
  'text.svg': svg(`<text y="5">&lt;script>${run}&lt;/script></text><title>javascript:${run}</title>`),
  'notes.svg': svg(`<metadata><i:a xmlns:i="http://www.inkscape.org/namespaces/inkscape" onload="${run}"><i:script>${run}</i:script></i:a></metadata>`),
};

// files are all of them by name, as bytes.
export const files = Object.fromEntries([
  ...Object.entries(drawings).map(([name, text]) => [`${name}.svg`, text]), ...Object.entries(others), ...Object.entries(harmless),
].map(([name, text]) => [name, Buffer.from(text, 'latin1')]));
export const published = Object.keys(harmless);

// control runs a script and fetches from elsewhere: what nobody would see there, nobody sees in the files above.
export const control = svg(`<script>${run}</script><image href="http://evil.invalid/a.png"/>`);
