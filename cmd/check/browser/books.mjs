// Checks books with the checker from npm, and names those that have an error or a warning.
import { readFile } from 'node:fs/promises';
import { EpubCheck } from '@likecoin/epubcheck-ts';

for (const book of process.argv.slice(2)) {
  const { messages } = await EpubCheck.validate(new Uint8Array(await readFile(book)), {}, book);
  const wrong = messages.filter(({ severity }) => ['fatal', 'error', 'warning'].includes(severity));
  for (const { id, severity, message, location } of wrong) {
    console.log(`${severity} ${id}: ${message} (${location?.path ?? ''}:${location?.line ?? ''})`);
  }
  if (wrong.length > 0) {
    console.log(`refused ${book}`);
  }
}
