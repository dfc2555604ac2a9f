import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { t, tell } from '../text.ts';
import { Trouble } from './trouble.tsx';

/** A page whose code is loaded when it is first shown, because most visits do without it and it is large. */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let loaded: ComponentType<P> | undefined;
  return function Later(props: P) {
    const [, setReady] = useState(loaded !== undefined);
    const [trouble, setTrouble] = useState<string | null>(null);
    useEffect(() => {
      if (loaded) return;
      load().then(
        (page) => {
          loaded = page;
          setReady(true);
        },
        (error: unknown) => setTrouble(tell(error)),
      );
    }, []);
    if (trouble !== null) return <Trouble text={trouble} />;
    const Page = loaded;
    return Page ? <Page {...props} /> : <p class="soft">{t('reading')}</p>;
  };
}
