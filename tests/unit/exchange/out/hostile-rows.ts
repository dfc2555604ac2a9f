import type { OutRows } from '#lib/exchange/out/sections.ts';
import { aClip, aLine, aQuestion } from '../../builders.ts';
import { aSource } from '../../ui/a-course.ts';

/** Rows that would run or fetch something if anything of them were taken for markup. */
export const HOSTILE = (topicId: string): Partial<OutRows> => {
  const text = '<script>alert(1)</script><img src=http://127.0.0.1/a.png onerror=alert(1)>"\'';
  const source = aSource({ title: text, author: text, site: text, url: 'http://127.0.0.1/"><script>' });
  return {
    lines: [aLine({ topicId, lead: text, rest: `\\(${text}\\) \\(\\href{javascript:alert(1)}{x}\\)` })],
    questions: [aQuestion({ topicId, prompt: text, answer: text })],
    clips: [
      aClip({
        topicIds: [topicId],
        sourceId: source.id,
        ownWords: text,
        html:
          '<p style="background:url(http://127.0.0.1/b.png)">x<img src="http://127.0.0.1/c.png" srcset="http://127.0.0.1/d.png 2x">' +
          '<svg><image href="http://127.0.0.1/e.png"/></svg><script>alert(1)</script><a href="javascript:alert(1)">y</a>' +
          '<math><mtext><style>@import "http://127.0.0.1/f.css"</style></mtext></math></p>',
        text: 'x',
      }),
    ],
    sources: [source],
  };
};
