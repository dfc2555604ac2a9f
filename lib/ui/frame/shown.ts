/** When what was changed in the page is on the screen: after two frames. */
export function shown(doc: Document): Promise<void> {
  const view = doc.defaultView!;
  return new Promise((done) => view.requestAnimationFrame(() => view.requestAnimationFrame(() => done())));
}
