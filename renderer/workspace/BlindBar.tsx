import { Eye, EyeOff, PenLine } from 'lucide-react';
import { CommandButton } from '../commands/CommandButton.tsx';

/** What a blind reading hides, why, and the two ways in which it ends. */
export function BlindBar() {
  return (
    <section className="blindBar" aria-label="Blind reading">
      <EyeOff size={20} strokeWidth={1.6} aria-hidden="true" />
      <p>
        What the first reader marked, noted and signed, and all that the program says of this vehicle, is hidden so that
        your opinion is your own.{' '}
        <span className="soft">
          It ends when you sign. Looking now is kept in the record, with the time. This is courtesy and honest
          book-keeping, not secrecy: the files hold all of it.
        </span>
      </p>
      <div className="blindDeeds">
        <CommandButton id="vehicle.sign" icon={PenLine} look="main" words="Sign your opinion" />
        <CommandButton id="vehicle.look" icon={Eye} look="outline" words="Look now" />
      </div>
    </section>
  );
}
