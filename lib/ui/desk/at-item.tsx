import { useEffect } from 'preact/hooks';
import type { Route } from './route.ts';

/** The name of a question's or line's place on a page. */
export const itemAnchor = (id: string): string => `item-${id}`;

/** Leads to the item that the address names, once the page that shows it is there. */
export function AtItem({ route }: { route: Route }) {
  const itemId = 'itemId' in route ? route.itemId : undefined;
  useEffect(() => {
    if (itemId === undefined) return;
    const item = document.getElementById(itemAnchor(itemId));
    item?.focus({ preventScroll: true });
    item?.scrollIntoView({ block: 'center' });
  }, [itemId]);
  return null;
}
