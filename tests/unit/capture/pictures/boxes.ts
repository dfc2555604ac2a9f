import type { WindowBox } from '#lib/capture/pictures/size.ts';

/** Gives an element a place in the window, since there is no layout here. */
export function placeAt(element: Element, { left, top, width, height }: WindowBox): void {
  element.getBoundingClientRect = () => new DOMRect(left, top, width, height);
}

/** Gives every element its place from its attribute `data-box="left top width height"`. */
export function layOut(root: ParentNode): void {
  for (const element of root.querySelectorAll('[data-box]')) {
    const [left, top, width, height] = element.getAttribute('data-box')!.split(' ').map(Number);
    placeAt(element, { left: left!, top: top!, width: width!, height: height! });
  }
}

globalThis.DOMRect ??= class {
  left: number;
  top: number;
  width: number;
  height: number;
  constructor(left: number, top: number, width: number, height: number) {
    Object.assign(this, { left, top, width, height });
    this.left = left;
    this.top = top;
    this.width = width;
    this.height = height;
  }
  get right() {
    return this.left + this.width;
  }
  get bottom() {
    return this.top + this.height;
  }
} as never;
