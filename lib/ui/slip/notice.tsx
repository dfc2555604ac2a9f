import { useLayoutEffect, useRef } from 'preact/hooks';
import { t } from '../text.ts';

export interface NoticeProps {
  text: string;
  action?: { label: string; run(): void } | undefined;
  leave(): void;
}

/** A slip that only says something: why nothing can be kept, and what to do. */
export function Notice({ text, action, leave }: NoticeProps) {
  const first = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => first.current!.querySelector('button')!.focus(), []);
  return (
    <div class="stack" ref={first}>
      <p role="alert">{text}</p>
      <div class="row">
        {action && (
          <button class="main" onClick={action.run}>
            {action.label}
          </button>
        )}
        <button onClick={leave}>
          {t('slipLeave')} <kbd>Esc</kbd>
        </button>
      </div>
    </div>
  );
}
