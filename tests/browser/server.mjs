// A small static server that can really be stopped in the middle of a test.
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize } from 'node:path';

const KINDS = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
};

export class Server {
  #folder;
  #server;
  #port = 0;
  #withheld;

  constructor(folder) {
    this.#folder = folder;
  }

  /** Begins to answer; after a stop, on the same port as before. */
  async start() {
    this.#server = createServer((request, response) => this.#answer(request, response));
    await new Promise((resolve, reject) => {
      this.#server.once('error', reject);
      this.#server.listen(this.#port, '127.0.0.1', resolve);
    });
    this.#port = this.#server.address().port;
  }

  /** Lets go of the port and of every open connection, as a network that is gone. */
  async stop() {
    const server = this.#server;
    this.#server = undefined;
    if (!server) return;
    const closed = new Promise((resolve) => server.close(resolve));
    server.closeAllConnections();
    await closed;
  }

  /** Answers for files of these names as a server that fails; nothing withholds none. */
  withhold(names) {
    this.#withheld = names;
  }

  get address() {
    return `http://127.0.0.1:${this.#port}/`;
  }

  async #answer(request, response) {
    const path = decodeURIComponent(new URL(request.url, this.address).pathname);
    const inside = normalize(path === '/' ? '/index.html' : path);
    if (this.#withheld?.test(inside)) {
      response.writeHead(503, { 'Content-Type': 'text/plain' });
      response.end('not now');
      return;
    }
    try {
      const content = await readFile(join(this.#folder, inside));
      const kind = KINDS[extname(inside)] ?? 'application/octet-stream';
      response.writeHead(200, { 'Content-Type': kind, 'Cache-Control': 'no-cache' });
      response.end(content);
    } catch {
      response.writeHead(404, { 'Content-Type': 'text/plain' });
      response.end('no such file');
    }
  }
}
