// A server of pressed sites whose network can be cut, and whose site can be exchanged while readers are about.
import { createServer } from 'node:http';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { extname, join, normalize } from 'node:path';
import { types } from './server.mjs';

// host serves folder under base ("/" or "/office/trees/"), as most hosts do: a folder without its slash leads to the one
// with it. The answer's folder may be set anew, and so may spoil, which is given each file and may change its bytes, or
// refuse it with null. cut ends every connection and takes none; mend takes them again, at the same port.
export async function host(folder, base = '/') {
  const own = { folder, base, spoil: (path, bytes) => bytes, requests: [], seen: [] };
  const server = createServer((request, response) => {
    own.requests.push(request.url);
    note(own.seen, request);
    const address = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    const send = (status, kind, bytes, more = {}) => {
      response.writeHead(status, { 'content-type': kind, 'cache-control': 'max-age=600', ...more });
      response.end(bytes);
    };
    const path = address.startsWith(base) ? normalize(address.slice(base.length) || '.') : '..';
    let file = join(own.folder, path);
    if (path.startsWith('..') || !existsSync(file)) {
      send(404, types['.html'], readFileSync(join(own.folder, '404.html')));
      return;
    }
    if (statSync(file).isDirectory()) {
      if (!address.endsWith('/')) {
        send(302, 'text/plain', '', { location: `${address}/` });
        return;
      }
      file = join(file, 'index.html');
    }
    const bytes = own.spoil(file.slice(own.folder.length + 1), readFileSync(file));
    send(bytes === null ? 404 : 200, types[extname(file)] ?? 'application/octet-stream', bytes ?? 'not found');
  });
  server.on('connect', (request, socket) => { note(own.seen, request); socket.destroy(); }); // a browser's proxy
  const listen = (port) => new Promise((resolve) => server.listen(port, '127.0.0.1', resolve));
  await listen(0);
  const { port } = server.address();
  const cut = () => new Promise((resolve) => { server.close(resolve); server.closeAllConnections(); });
  return Object.assign(own, { port, site: new URL(base, `http://127.0.0.1:${port}`).href, cut, mend: () => listen(port),
    close: () => server.listening && cut() });
}

// note writes a request down: what is asked for, with the headers and the body.
function note(seen, request) {
  const { method, url, headers } = request;
  const one = { method, url, headers, body: '' };
  seen.push(one);
  request.on('data', (bytes) => { one.body += bytes; });
}
