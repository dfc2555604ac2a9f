import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { readChapter } from '#tests/unit/capture/find/refind/pages.ts';

export interface Chapters {
  origin: string;
  close(): Promise<void>;
}

/** Serves these chapters of a real manual on this machine only; every other address is an empty page. */
export async function serveChapters(chapters: readonly string[]): Promise<Chapters> {
  const server = createServer((request, answer) => {
    const chapter = chapters.find((each) => request.url?.split('?')[0] === `/${each}`);
    answer.setHeader('content-type', 'text/html; charset=utf-8');
    if (!chapter) return void answer.end('<!doctype html><title>Empty</title>');
    // Without its scripts and sheets, which would be fetched from elsewhere.
    void readChapter(chapter).then((html) =>
      answer.end(html.replace(/<script[^]*?<\/script>|<link [^>]*>/g, '')),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    async close() {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
