import { existsSync, readdirSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

const room = fileURLToPath(new URL('.', import.meta.url));
const dist = join(room, 'dist');
const sources = ['src', 'index.html', 'vite.config.ts', 'package.json', '../engine/src', '../sheets/src'];

export interface Served {
  /** Address to open in a browser. */
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** Serves the workbench on this machine only, with a plan file's content at /plan.json. Port 0 takes a free one. */
export async function serveWorkbench(plan: string, port = 0): Promise<Served> {
  await buildIfOlder();
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    if (path === '/plan.json') send(response, plan, '.json');
    else sendFile(response, path).catch(() => response.writeHead(404).end());
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  const { port: taken } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** Builds the page once and again only when a source is newer than the last build. */
export async function buildIfOlder(): Promise<void> {
  const built = join(dist, 'index.html');
  const newest = Math.max(...sources.map((source) => newestIn(join(room, source))));
  if (existsSync(built) && statSync(built).mtimeMs > newest) return;
  const { build } = await import('vite');
  await inProduction(() => build({ configFile: join(room, 'vite.config.ts'), logLevel: 'warn' }));
}

/** A build started from a test run would otherwise take the libraries' slow development versions. */
async function inProduction(work: () => Promise<unknown>): Promise<void> {
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await work();
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
}

function newestIn(path: string): number {
  if (!statSync(path).isDirectory()) return statSync(path).mtimeMs;
  const inside = readdirSync(path, { recursive: true, withFileTypes: true });
  const files = inside.filter((entry) => entry.isFile() && !/\.(test|bench)\.tsx?$|\.md$/.test(entry.name));
  return Math.max(0, ...files.map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs));
}

const kinds: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
};

/** A file of the build; an address of the page, which has no ending, gets the page itself. */
async function sendFile(response: ServerResponse, path: string): Promise<void> {
  const inside = normalize(path).replace(/^(\.\.[/\\])+/, '');
  const name = extname(inside) in kinds ? inside : 'index.html';
  send(response, await readFile(join(dist, name)), extname(name));
}

function send(response: ServerResponse, content: string | Buffer, ending: string): void {
  response.writeHead(200, { 'content-type': kinds[ending], 'cache-control': 'no-store' }).end(content);
}
