/** Whether the whole element is seen: in the window, and covered by nothing at its middle and near its corners. */
export function isWhollySeen(element: Element, view: Window): boolean {
  const { left, top, right, bottom, width, height } = element.getBoundingClientRect();
  if (left < 0 || top < 0 || right > view.innerWidth || bottom > view.innerHeight) return false;
  const near = [0.05, 0.5, 0.95];
  return near.every((across) =>
    near.every((down) => {
      const hit = element.ownerDocument.elementFromPoint(left + width * across, top + height * down);
      return element.contains(hit);
    }),
  );
}
