import { useEffect, useState } from 'preact/hooks';
import { type Change, onChange } from '#lib/store/changes.ts';
import type { StoreName } from '#lib/store/schema.ts';

export type Live<T> =
  { state: 'loading' } | { state: 'ready'; value: T } | { state: 'failed'; error: unknown };

/**
 * What `read` gives, read again whenever one of `stores` is written in any page. While it is read again, the value
 * before stays. `key` names what is read: another key starts afresh.
 * @param follow what the value becomes by a change, without reading; null where it must be read again
 */
export function useLive<T>(
  read: () => Promise<T>,
  stores: readonly StoreName[],
  key: string,
  follow: (value: T, change: Change) => T | null = () => null,
): Live<T> {
  const [live, setLive] = useState<{ key: string; value: Live<T> }>({ key, value: { state: 'loading' } });
  useEffect(() => {
    const closing = new AbortController();
    let latest = 0;
    /** What the latest reading gave; null while it is under way. */
    let current: { value: T } | null = null;
    const show = (value: Live<T>) => setLive({ key, value });
    const refresh = () => {
      const turn = ++latest;
      current = null;
      const isWanted = () => turn === latest && !closing.signal.aborted;
      read().then(
        (value) => {
          if (!isWanted()) return;
          current = { value };
          show({ state: 'ready', value });
        },
        (error: unknown) => isWanted() && show({ state: 'failed', error }),
      );
    };
    refresh();
    onChange((change) => {
      if (!change.stores.some((store) => stores.includes(store))) return;
      // A reading under way may have missed it.
      const value = current && follow(current.value, change);
      if (value === null) return refresh();
      current = { value };
      show({ state: 'ready', value });
    }, closing.signal);
    return () => closing.abort();
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `key` stands for what `read` and `stores` close over
  }, [key]);
  return live.key === key ? live.value : { state: 'loading' };
}
