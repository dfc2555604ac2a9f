// The two libraries ship no types: what the experiment calls of them.
declare module 'dom-anchor-text-quote' {
  export interface Quote {
    exact: string;
    prefix: string;
    suffix: string;
  }
  export function fromRange(root: Element, range: Range): Quote;
  export function toRange(root: Element, quote: Quote, options: { hint: number }): Range | null;
}

declare module 'dom-anchor-text-position' {
  export function fromRange(root: Element, range: Range): { start: number; end: number };
}
