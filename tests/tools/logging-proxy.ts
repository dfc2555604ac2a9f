import { createServer, request } from 'node:http';
import type { AddressInfo, Socket } from 'node:net';

export interface ProxiedRequest {
  method: string;
  /** The address asked for; for CONNECT only host and port. */
  url: string;
}

export interface LoggingProxy {
  port: number;
  /** Requests passed on to a server on 127.0.0.1. */
  forwarded: ProxiedRequest[];
  /** All other requests, none of which left this machine. */
  refused: ProxiedRequest[];
  close(): Promise<void>;
}

/** Starts an HTTP proxy that passes on requests to 127.0.0.1 only, and writes down every request it gets. */
export async function startLoggingProxy(): Promise<LoggingProxy> {
  const forwarded: ProxiedRequest[] = [];
  const refused: ProxiedRequest[] = [];
  const server = createServer((incoming, answer) => {
    const { method = 'GET', url = '', headers } = incoming;
    if (!URL.canParse(url) || new URL(url).hostname !== '127.0.0.1') {
      refused.push({ method, url });
      answer.writeHead(403).end();
      return;
    }
    forwarded.push({ method, url });
    const outgoing = request(url, { method, headers }, (reply) => {
      answer.writeHead(reply.statusCode ?? 502, reply.headers);
      reply.pipe(answer);
    });
    outgoing.on('error', () => (answer.headersSent ? answer.destroy() : answer.writeHead(502).end()));
    incoming.pipe(outgoing);
  });
  server.on('connect', ({ method = 'CONNECT', url = '' }, socket: Socket) => {
    refused.push({ method, url });
    socket.on('error', () => socket.destroy());
    socket.end('HTTP/1.1 403 Forbidden\r\n\r\n');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    forwarded,
    refused,
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
