import type { Opinion } from '../../../core/record/opinionSchema.ts';
import { TextField } from '../../widgets/TextField.tsx';

interface SignatureProps {
  readonly author: Opinion['author'];
  onAuthor(author: Opinion['author']): void;
}

/** Who signs. Both are remembered for the next time. */
export function Signature({ author, onAuthor }: SignatureProps) {
  return (
    <div className="fields">
      <TextField
        label="Your name"
        value={author.name}
        maxLength={200}
        onValue={(name) => onAuthor({ ...author, name })}
      />
      <TextField
        label="Licence, if you want it there"
        value={author.licence}
        maxLength={200}
        onValue={(licence) => onAuthor({ ...author, licence })}
      />
    </div>
  );
}
