import { useState } from 'preact/hooks';
import { percent, t } from '../text.ts';
import { FULL_SIZE, type Zoom } from './use-zoom.ts';

interface ToolbarProps {
  page: number;
  pages: number;
  goTo(page: number): void;
  zoom: Zoom;
  /** Something is selected. */
  canKeep: boolean;
  keep(): void;
  isFraming: boolean;
  frame(): void;
}

/** What can be done while a PDF is read. */
export function Toolbar(props: ToolbarProps) {
  const { zoom, canKeep, keep, isFraming, frame } = props;
  return (
    <div class="pdf-tools row" role="group" aria-label={t('pdfTools')}>
      <GoTo {...props} />
      <div class="row" role="group" aria-label={t('pdfZoom')}>
        <button onClick={zoom.farther} aria-label={t('pdfFarther')}>
          −
        </button>
        <span class="pdf-zoom">{percent(zoom.scale / FULL_SIZE)}</span>
        <button onClick={zoom.closer} aria-label={t('pdfCloser')}>
          +
        </button>
        <button onClick={zoom.fit} aria-pressed={zoom.isFit}>
          {t('pdfFit')}
        </button>
      </div>
      <div class="row">
        {/* The pointer must not take the selection away that the button is for. */}
        <button
          class="main"
          disabled={!canKeep}
          onMouseDown={(event) => event.preventDefault()}
          onClick={keep}
        >
          {t('pdfKeepPassage')}
        </button>
        <button aria-pressed={isFraming} onClick={frame}>
          {t('pdfKeepFrame')}
        </button>
      </div>
    </div>
  );
}

function GoTo({ page, pages, goTo }: Pick<ToolbarProps, 'page' | 'pages' | 'goTo'>) {
  // While the field has the keyboard it stands, however the pages scroll; else it follows them.
  const [typed, setTyped] = useState<string | null>(null);
  const go = () => {
    const wanted = Math.round(Number(typed ?? page));
    setTyped(null);
    if (wanted >= 1 && wanted <= pages) goTo(wanted);
  };
  return (
    <form
      class="row pdf-goto"
      onSubmit={(event) => {
        event.preventDefault();
        go();
      }}
    >
      <label for="pdf-page-number">{t('pdfPage')}</label>
      <input
        id="pdf-page-number"
        inputMode="numeric"
        autocomplete="off"
        value={typed ?? String(page)}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onFocus={(event) => {
          setTyped(event.currentTarget.value);
          event.currentTarget.select();
        }}
        onBlur={() => setTyped(null)}
      />
      <span>{t('pdfOfPages', pages)}</span>
    </form>
  );
}
