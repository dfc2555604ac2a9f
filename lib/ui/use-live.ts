import { useEffect, useState } from 'preact/hooks';
import { onChange } from '#lib/store/changes.ts';
import type { StoreName } from '#lib/store/schema.ts';

export type Live<T> =
  { state: 'loading' } | { state: 'ready'; value: T } | { state: 'failed'; error: unknown };

/**
 * What `read` gives, read again whenever one of `stores` is written in any page. While it is read again, the value
 * before stays. `key` names what is read: another key starts afresh.
 */
export function useLive<T>(read: () => Promise<T>, stores: readonly StoreName[], key: string): Live<T> {
  const [live, setLive] = useState<{ key: string; value: Live<T> }>({ key, value: { state: 'loading' } });
  useEffect(() => {
    const closing = new AbortController();
    let latest = 0;
    const refresh = () => {
      const turn = ++latest;
      const show = (value: Live<T>) => {
        if (turn === latest && !closing.signal.aborted) setLive({ key, value });
      };
      read().then(
        (value) => show({ state: 'ready', value }),
        (error: unknown) => show({ state: 'failed', error }),
      );
    };
    refresh();
    onChange((change) => {
      if (change.stores.some((store) => stores.includes(store))) refresh();
    }, closing.signal);
    return () => closing.abort();
    // eslint-disable-next-line react-hooks/exhaustive-deps -- `key` stands for what `read` and `stores` close over
  }, [key]);
  return live.key === key ? live.value : { state: 'loading' };
}
