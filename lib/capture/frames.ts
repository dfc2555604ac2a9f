/** Where a part of a page stands in the window of the topmost page, in CSS pixels, frames around it added up. */
export function boxInTop(part: Element | Range): {
  left: number;
  top: number;
  right: number;
  bottom: number;
} {
  const box = part.getBoundingClientRect();
  const { ownerDocument } = 'startContainer' in part ? part.startContainer : part;
  let [x, y] = [0, 0];
  let frame = ownerDocument?.defaultView?.frameElement;
  for (; frame; frame = frame.ownerDocument.defaultView?.frameElement) {
    const around = frame.getBoundingClientRect();
    x += around.left + frame.clientLeft;
    y += around.top + frame.clientTop;
  }
  return { left: box.left + x, top: box.top + y, right: box.right + x, bottom: box.bottom + y };
}
