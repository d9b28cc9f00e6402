import { Eye, EyeOff, PenLine } from 'lucide-react';
import { CommandButton } from '../commands/CommandButton.tsx';

/** What a blind reading hides, why, and the two ways in which it ends. */
export function BlindBar() {
  return (
    <section className="blindBar" aria-label="Blind reading">
      <EyeOff size={20} strokeWidth={1.6} aria-hidden="true" />
      <p>
        The first reader’s marks, notes and opinions, and all that the program says, are hidden so that your opinion is
        your own.{' '}
        <span className="soft">
          It ends when you sign; looking now is recorded, with the time. Courtesy, not secrecy: the files hold all of
          it.
        </span>
      </p>
      <div className="blindDeeds">
        <CommandButton id="vehicle.sign" icon={PenLine} look="main" words="Sign your opinion" />
        <CommandButton id="vehicle.look" icon={Eye} look="outline" words="Look now" />
      </div>
    </section>
  );
}
