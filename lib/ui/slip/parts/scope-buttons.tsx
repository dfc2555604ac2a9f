import { t } from '../../text.ts';
import type { Scope } from './widener.ts';

/** The scopes that are not the present one, to go to; null is the selection. */
export function ScopeButtons({ scope, goTo }: { scope: Scope | null; goTo(to: Scope | null): void }) {
  const button = (to: Scope | null, name: string) =>
    to !== scope && (
      <button type="button" class="plain" onClick={() => goTo(to)}>
        {name}
      </button>
    );
  return (
    <div class="row scopes">
      {button(null, t('slipSelection'))}
      {button('section', t('slipSection'))}
      {button('main', t('slipMain'))}
    </div>
  );
}
