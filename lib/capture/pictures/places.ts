/** The places of pictures in a passage, in its order. */
export function picturePlaces(root: ParentNode): HTMLImageElement[] {
  return [...root.querySelectorAll<HTMLImageElement>('img[data-picture]')];
}

/** Which of the pictures belongs in a place. */
export const pictureAt = (place: Element): number => Number(place.getAttribute('data-picture'));

/**
 * Numbers the places anew so that only the pictures that were got have one; in the others' places stands their text.
 * Gives the pictures in the order of their new numbers.
 */
export function settlePlaces<P>(root: ParentNode, pictures: readonly (P | null)[]): P[] {
  const settled: P[] = [];
  for (const place of picturePlaces(root)) {
    const picture = pictures[pictureAt(place)];
    if (picture) place.setAttribute('data-picture', String(settled.push(picture) - 1));
    else place.replaceWith(place.alt);
  }
  return settled;
}
