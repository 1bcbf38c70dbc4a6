// Finds the pages of the pressed site.
import { readdirSync } from 'node:fs';
import { settings } from './settings.mjs';

// Every page as its way from the site's root: "", "guides/soil/", "404.html".
export const pages = readdirSync(settings.site, { recursive: true })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.html'))
  .map((name) => name.replace(/(^|\/)index\.html$/, '$1'))
  .sort();

// The guides in the content's own language, "guides/soil/", and the page of the manual with calculations of its own.
export const guides = pages.filter((page) => /^(guides\/[^/]+|manual\/own-calculations)\/$/.test(page));
