import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** What is served at a path: markup, or anything with headers of its own. */
export type Served = string | { body: string | Buffer; headers: Record<string, string> };

export interface Served127 {
  origin: string;
  close(): Promise<void>;
}

/** Serves these paths on loopback until it is closed; any other path is not found. */
export async function serve(paths: Record<string, Served>): Promise<Served127> {
  const server = createServer((request, answer) => {
    const served = paths[new URL(request.url!, 'http://127.0.0.1').pathname];
    if (served === undefined) {
      answer.writeHead(404).end();
      return;
    }
    const { body, headers } = typeof served === 'string' ? { body: served, headers: {} } : served;
    answer.writeHead(200, { 'content-type': 'text/html; charset=utf-8', ...headers }).end(body);
  });
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    async close() {
      server.closeAllConnections();
      await new Promise((closed) => server.close(closed));
    },
  };
}
