import { Link2, Unlink2 } from 'lucide-react';
import { LINK_WORDS } from '../../core/evidence/words/opinions.ts';
import type { LinkState } from '../../core/opinions/chain.ts';

/** Whether what was signed is joined to what was signed before it: a sign and its words. */
export function ChainSign({ state }: { readonly state: LinkState }) {
  const Icon = state === 'whole' ? Link2 : Unlink2;
  return (
    <span className={`chainSign ${state}`} data-chain={state}>
      <Icon size={16} strokeWidth={2} aria-hidden="true" />
      {LINK_WORDS[state]}
    </span>
  );
}
