import type { FunctionComponent } from 'preact';
import { useState } from 'preact/hooks';
import { t } from '../text.ts';

interface PopupSearchProps {
  courseId: string;
  fail(error: unknown): void;
}

/** Opens the search, which is loaded only then: the popup is there for its question. */
export function PopupSearch({ courseId, fail }: PopupSearchProps) {
  const [Box, setBox] = useState<FunctionComponent<{ courseId: string }> | null>(null);
  const load = () =>
    import('../search/search-box.tsx').then(({ SearchBox }) => setBox(() => SearchBox), fail);
  return (
    <details
      class="popup-search"
      onToggle={({ currentTarget }) => void (currentTarget.open && !Box && load())}
    >
      <summary>{t('pageSearch')}</summary>
      {Box && <Box courseId={courseId} />}
    </details>
  );
}
