import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { Trouble } from '../parts/trouble.tsx';
import { t } from '../text.ts';

interface PasswordProps {
  name: string;
  /** The one before was wrong. */
  isAgain: boolean;
  answer(password: string): void;
  leave(): void;
}

/** Asks for the password of a file. It is used to open the file and kept nowhere. */
export function Password({ name, isAgain, answer, leave }: PasswordProps) {
  const [password, setPassword] = useState('');
  const field = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => field.current!.focus(), []);
  return (
    <main class="pdf-start">
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault();
          answer(password);
        }}
      >
        <h1>{t('pdfLocked')}</h1>
        <p class="wrap">{t('pdfLockedHow', name)}</p>
        <Trouble text={isAgain ? t('pdfPasswordWrong') : null} />
        <div class="field">
          <label for="pdf-password">{t('pdfPassword')}</label>
          <input
            id="pdf-password"
            ref={field}
            type="password"
            autocomplete="off"
            value={password}
            onInput={(event) => setPassword(event.currentTarget.value)}
          />
        </div>
        <div class="row">
          <button class="main">{t('pdfUnlock')}</button>
          <button type="button" onClick={leave}>
            {t('pdfAnother')}
          </button>
        </div>
      </form>
    </main>
  );
}
