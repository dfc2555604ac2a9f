/** The ways in which a learning page may carry its maths. */
export type Markup =
  'mathml' | 'katex' | 'mathjax-chtml' | 'mathjax-svg' | 'mathjax-live' | 'image-alt' | 'sub-sup';

export type SiteKey =
  'ebbledore' | 'quillhaven' | 'lagoonery' | 'old-mole' | 'rough-water' | 'deep-water' | 'far-shore';

/** What a learning page says and how it is dressed. */
export interface Article {
  path: string;
  site: SiteKey;
  title: string;
  author: string;
  /** ISO date. */
  published: string;
  markup: Markup;
  /** One sentence under the title. */
  lede: string;
  /** HTML; TeX stands in \( \) and \[ \] where the markup is one that renders TeX. */
  body: () => string;
  /** HTML of the box beside the article. */
  aside: string;
  lang?: string;
  dir?: 'rtl';
  /** Extra HTML for the head. */
  head?: string;
}

export interface DemoQuestion {
  prompt: string;
  answer: string;
  marks: number;
}

/** A line whose second half is to be recalled from the first. */
export interface DemoLine {
  lead: string;
  rest: string;
}

/** What a student makes of a page: enough for a run to clip, tag and write questions. */
export interface Study {
  /** Code of the syllabus sub-topic that the page explains. */
  topicCode: string;
  /** CSS selector of an element whose text is a good passage to clip. */
  passageSelector: string;
  ownWords: string;
  questions: DemoQuestion[];
  lines: DemoLine[];
}

export interface Lesson {
  article: Article;
  study?: Study;
}

export type DemoPage = Pick<Article, 'path' | 'title' | 'markup' | 'author' | 'site'> & Study;
